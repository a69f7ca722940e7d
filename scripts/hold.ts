/** `npm run hold`: keeps a lot from sale, or lets it go again. */

import { planHold } from '../src/core/recording/lotKeys.ts';
import { changeFlags, changeHelp, changeRecords, dayGiven } from './changeRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const help = `Keeps a whole lot from sale, or lets it go again. Customers read why.

  npm run hold -- LOT --why "Spider mite found; held until it is clean"
  npm run hold -- LOT --off

  --why TEXT        the reason; shown to customers
  --since DAY       the day it began; else today
  --off             ends the hold
${changeHelp}`;

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    why: { type: 'string' },
    since: { type: 'string' },
    off: { type: 'boolean' },
    ...changeFlags,
  });
  const [lot, ...more] = positionals;
  if (lot === undefined || more.length > 0)
    throw new UsageError('say which lot: npm run hold -- 26-cut-03 --why "..."');
  if ((values.off === true) === (values.why !== undefined))
    throw new UsageError('give either --why or --off.');
  const since = dayGiven(values.since, '--since');
  return changeRecords(
    yard => planHold(yard, { lot, why: values.off ? null : (values.why ?? ''), since: since ?? yard.today }),
    values,
  );
}

await runIfMain(import.meta, main);
