/** `npm run waiting`: who waits for a cultivar. */

import { either } from '../src/core/reading/problem.ts';
import { planWait, planWaitOver } from '../src/core/recording/reservation.ts';
import { forms } from '../src/core/records/common.ts';
import { changeFlags, changeHelp, changeRecords } from './changeRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { countGiven, wordGiven } from './given.ts';

const help = `Puts somebody on the waiting list of a cultivar, or takes them off. The list is private; npm run book shows it.

  npm run waiting -- CULTIVAR PLANTS --to "A. Buyer"
  npm run waiting -- CULTIVAR --off --to "A. Buyer"

  --to WHO          who waits
  --form FORM       ${either(forms)}; left out: any
  --note TEXT
  --off             they wait no longer
${changeHelp}`;

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    to: { type: 'string' },
    form: { type: 'string' },
    note: { type: 'string' },
    off: { type: 'boolean' },
    ...changeFlags,
  });
  const [cultivar, plants, ...more] = positionals;
  const { to, note, off } = values;
  if (cultivar === undefined || to === undefined || more.length > 0)
    throw new UsageError('say for which cultivar, and who: npm run waiting -- wrenfoot 2 --to "A. Buyer"');
  if (off) return changeRecords(yard => planWaitOver(yard, { cultivar, to }), values);
  const count = countGiven(plants ?? '1', 'the number of plants');
  const form = values.form === undefined ? undefined : wordGiven(values.form, forms, 'form');
  return changeRecords(
    yard => planWait(yard, { cultivar, plants: count, form, to, note, on: yard.today }),
    values,
  );
}

await runIfMain(import.meta, main);
