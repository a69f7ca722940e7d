/** `npm run price`: gives a lot a price of its own. */

import { planPrice } from '../src/core/recording/lotKeys.ts';
import { changeFlags, changeHelp, changeRecords, dayGiven } from './changeRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const help = `Gives a lot a price of its own, or gives the computed one back. Customers read why.

  npm run price -- LOT 45 --why "Two stems each"
  npm run price -- LOT --off

  --why TEXT        the reason; shown to customers; left out: the one it has
  --until DAY       the last day of a sale price; from then on the computed price holds again
  --off             back to the computed price
${changeHelp}`;

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    why: { type: 'string' },
    until: { type: 'string' },
    off: { type: 'boolean' },
    ...changeFlags,
  });
  const [lot, amount, ...more] = positionals;
  if (lot === undefined || more.length > 0)
    throw new UsageError('say which lot and the price: npm run price -- 26-cut-03 45 --why "..."');
  if ((values.off === true) === (amount !== undefined)) throw new UsageError('give either a price or --off.');
  const price =
    amount === undefined ? null : { amount, why: values.why, until: dayGiven(values.until, '--until') };
  return changeRecords(yard => planPrice(yard, { lot, price }), values);
}

await runIfMain(import.meta, main);
