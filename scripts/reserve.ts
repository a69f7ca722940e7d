/** `npm run reserve`: sets plants of a lot aside for a buyer, or lets them go. */

import { planRelease, planReserve } from '../src/core/recording/reservation.ts';
import { changeFlags, changeHelp, changeRecords, dayGiven } from './changeRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { countGiven } from './given.ts';

const help = `Sets plants of a lot aside for a buyer: they are not for sale until then. For whom stands in the private folder only.

  npm run reserve -- LOT PLANTS --to "A. Buyer" --until 2026-12-15
  npm run reserve -- LOT --off --to "A. Buyer"

  --to WHO          for whom; private
  --until DAY       the last day they are kept; left out: until they are sold or let go
  --note TEXT       private
  --off             lets them go; --to says whose, where several buyers have some
${changeHelp}`;

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    to: { type: 'string' },
    until: { type: 'string' },
    note: { type: 'string' },
    off: { type: 'boolean' },
    ...changeFlags,
  });
  const [lot, plants, ...more] = positionals;
  const { to, note, off } = values;
  if (lot === undefined || more.length > 0)
    throw new UsageError('say which lot: npm run reserve -- 26-cut-03 2 --to "A. Buyer"');
  if (off) {
    if (plants !== undefined) throw new UsageError('--off lets all of them go; leave the number out.');
    return changeRecords(yard => planRelease(yard, { lot, to }), values);
  }
  if (plants === undefined || to === undefined)
    throw new UsageError(
      'say how many, and for whom with --to: npm run reserve -- 26-cut-03 2 --to "A. Buyer"',
    );
  const count = countGiven(plants, 'the number of plants');
  const until = dayGiven(values.until, '--until');
  return changeRecords(
    yard => planReserve(yard, { lot, plants: count, to, until, note, on: yard.today }),
    values,
  );
}

await runIfMain(import.meta, main);
