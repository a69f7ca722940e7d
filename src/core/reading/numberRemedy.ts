/** What to write in the place of a text that should be a number. Only a number that was surely meant is named. */

import { celsiusToFahrenheit, fahrenheitToCelsius, roundTo } from '../units.ts';

/** Units as people write them behind a number, by how keys end that are in that unit. */
const written: Record<string, RegExp> = {
  c: /^(?:°? ?c|celsius|degrees? c)$/i,
  f: /^(?:°? ?f|fahrenheit|degrees? f)$/i,
  in: /^(?:"|\u2033|\u201d|in\.?|inch(?:es)?)$/i,
  ft: /^(?:'|\u2032|\u2019|ft\.?|foot|feet)$/i,
  cm: /^cm$/i,
  mm: /^mm$/i,
  m: /^(?:m|meters?|metres?)$/i,
  lb: /^(?:lbs?\.?|pounds?)$/i,
  oz: /^(?:oz\.?|ounces?)$/i,
  days: /^(?:d|days?)$/i,
  share: /^%$/,
  sqft: /^(?:sq\.? ?ft\.?|square feet)$/i,
};

const unitNames: Record<string, string> = {
  ...{ c: 'C', f: 'F', in: 'inches', ft: 'feet', m: 'meters', lb: 'pounds', oz: 'ounces' },
  ...{ share: 'a share from 0 to 1', sqft: 'square feet' },
};
/** What is counted, which a count need not say. */
const counted = /^(?:plants?|trees?|pots?|layers?|cuttings?|pieces?|pcs\.?)$/i;

/** Units of length in mm (the inch is 25.4 mm by definition), and of weight in ounces. */
const inMm: Record<string, number> = { mm: 1, cm: 10, in: 25.4, ft: 304.8, m: 1000 };
const inOunces: Record<string, number> = { oz: 1, lb: 16 };

/** A number taken in one unit in another one; null where the two measure different things. */
function converted(value: number, from: string, to: string): number | null {
  if (from === 'c' && to === 'f') return celsiusToFahrenheit(value);
  if (from === 'f' && to === 'c') return fahrenheitToCelsius(value);
  for (const table of [inMm, inOunces]) {
    const [one, other] = [table[from], table[to]];
    if (one !== undefined && other !== undefined) return (value * one) / other;
  }
  return null;
}

const wholeNumber = /^[-+\u2212]?\d+(?:[.,]\d+)?$/;
const numberAndUnit = /^([-+\u2212]?\d+(?:[.,]\d+)?) ?([^\d\s].*)$/;
const thousands = /^[-+]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;

const digits = (text: string) => text.replace(',', '.').replace('\u2212', '-').replace('+', '');

/** `key` is the key or column the text stands under: `coldest_f` is in F. */
export function numberRemedy(text: string, key: string): string {
  const found = text.trim();
  if (thousands.test(found)) return 'write it without commas; decimals stand behind a point.';
  if (wholeNumber.test(found)) {
    const number = digits(found);
    return number === found ? `take the quotes away: ${number}.` : `write only the number: ${number}.`;
  }
  const [, number, unit = ''] = numberAndUnit.exec(found) ?? [];
  const keyUnit = /_([a-z]+)$/.exec(key)?.[1] ?? '';
  const inUnit = Object.keys(written).find(name => written[name]!.test(unit));
  if (number !== undefined && counted.test(unit) && !written[keyUnit])
    return `write only the number: ${digits(number)}.`;
  if (number === undefined || inUnit === undefined) return 'write one number in digits.';
  if (inUnit === keyUnit && inUnit !== 'share') return `write only the number: ${digits(number)}.`;
  const named = unitNames[keyUnit] ?? keyUnit;
  const other = converted(Number(digits(number)), inUnit, keyUnit);
  if (other !== null) return `the key is in ${named}: write ${roundTo(other, 0.1)}.`;
  if (inUnit === 'share' && keyUnit === 'share')
    return `write it as ${named}: ${roundTo(Number(digits(number)) / 100, 0.0001)}.`;
  return written[keyUnit]
    ? `write one number, in ${named}, without the unit.`
    : 'write one number, without a unit.';
}
