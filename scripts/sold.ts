/** `npm run sold`: writes a sale down. */

import { either } from '../src/core/reading/problem.ts';
import { lotsForSale } from '../src/core/recording/lotsForSale.ts';
import { planSale } from '../src/core/recording/sale.ts';
import { forms } from '../src/core/records/common.ts';
import { choice, line, wholeNumber } from './ask.ts';
import { changeFlags, changeHelp, changeRecords, dayGiven } from './changeRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const help = `Writes a sale down: the count that is left in the walk of the day, and buyer and price in the private folder.

  npm run sold -- LOT PLANTS
  npm run sold -- 26-cut-03 2 --to "A. Buyer, paid" --price 45

  --to WHO          who bought; private
  --form FORM       ${either(forms)}; private
  --price AMOUNT    what one plant was sold for; private
  --note TEXT       private
  --on DAY          the day of the sale; else today
${changeHelp}`;

function formGiven(text: string | undefined) {
  const form = forms.find(each => each === text);
  if (text !== undefined && form === undefined)
    throw new UsageError(`"${text}" is no form; write ${either(forms)}.`);
  return form;
}

function plantsGiven(text: string): number {
  if (!/^\d{1,6}$/.test(text)) throw new UsageError(`"${text}" is no number of plants; write one such as 2.`);
  return Number(text);
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    to: { type: 'string' },
    form: { type: 'string' },
    price: { type: 'string' },
    note: { type: 'string' },
    on: { type: 'string' },
    ...changeFlags,
  });
  const [lot, plants, ...more] = positionals;
  if (more.length > 0)
    throw new UsageError(`"${more.join(' ')}" is too much; write LOT and PLANTS. Try --help.`);
  const asks = process.stdin.isTTY && lot === undefined;
  if (!asks && (lot === undefined || plants === undefined))
    throw new UsageError('say which lot and how many plants: npm run sold -- 26-cut-03 2');
  const given = { form: formGiven(values.form), price: values.price, note: values.note };
  const on = dayGiven(values.on, '--on');
  return changeRecords(async yard => {
    const request = asks
      ? {
          lot: await choice('Which lot?', lotsForSale(yard)),
          plants: await wholeNumber('How many plants?', 1),
          to: await line('To whom? (private; Enter for nobody)'),
        }
      : { lot: lot!, plants: plantsGiven(plants!), to: values.to };
    return planSale(yard, { ...given, ...request, on: on ?? yard.today });
  }, values);
}

await runIfMain(import.meta, main);
