import { parseAmount } from '../../money.ts';
import type { Draft } from '../draft.ts';
import { atValue, type KeyPath, type Problem, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** An amount has no more decimals than the currency. */
export const amountDecimals: Check = draft => {
  const { yard } = draft;
  if (!yard) return [];
  const { currency } = yard.value;
  return amountsOf(draft)
    .filter(({ text }) => parseAmount(text, currency) === null)
    .map(
      ({ file, path, text }): Problem => ({
        rule: 'bad-amount',
        file,
        spot: atValue(...path),
        got: quote(text),
        expected: `an amount in ${currency}`,
        message: `${quote(text)} has more decimals than ${currency} has`,
        remedy: 'write as many decimals as a price tag has.',
      }),
    );
};

interface Amount {
  file: string;
  path: KeyPath;
  text: string;
}

function amountsOf({ costs: from, lots, yard }: Draft): Amount[] {
  const prices = lots.flatMap(({ file, index, written }): Amount[] =>
    written.price ? [{ file, path: [index, 'price', 'amount'], text: written.price.amount }] : [],
  );
  const delivery = (yard?.written.delivery?.areas ?? []).flatMap(({ prices: bands }, area) =>
    bands.map(
      ({ price }, band): Amount => ({
        file: yard!.file,
        path: ['delivery', 'areas', area, 'prices', band, 'price'],
        text: price,
      }),
    ),
  );
  prices.push(...delivery);
  if (!from) return prices;
  const { file, written: costs } = from;
  const each = (path: KeyPath, amounts: Record<string, string>) =>
    Object.entries(amounts).map(([key, text]): Amount => ({ file, path: [...path, key], text }));
  const { space_week, packing } = costs;
  return [
    ...prices,
    ...each(['costs', 'start'], costs.start),
    ...each(['costs', 'pot'], costs.pot),
    ...each(['costs'], { space_week, packing }),
  ];
}
