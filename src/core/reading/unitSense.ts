/** Whether a number outside its bounds would fit if it had been taken in another unit. */

import { celsiusToFahrenheit, fahrenheitToCelsius, roundTo } from '../units.ts';

interface Slip {
  /** End of the key. */
  ending: string;
  /** The unit it may have been taken in. */
  unit: string;
  convert: (value: number) => number;
}

const slips: readonly Slip[] = [
  { ending: '_cm', unit: 'mm', convert: value => value / 10 },
  { ending: '_in', unit: 'cm', convert: value => value / 2.54 },
  { ending: '_mm', unit: 'tenths of a mm', convert: value => value / 10 },
  { ending: '_c', unit: 'F', convert: fahrenheitToCelsius },
  { ending: '_f', unit: 'C', convert: celsiusToFahrenheit },
  { ending: '_share', unit: '%', convert: value => value / 100 },
  { ending: '_m', unit: 'feet', convert: value => value * 0.3048 },
  { ending: '_lb', unit: 'ounces', convert: value => value / 16 },
];

/** Decimals the suggestion is rounded to. */
const suggestionStep = 0.1;

interface Doubtful {
  key: string;
  /** Whether the number is one of a list that has one unit. */
  inList: boolean;
  value: number;
  low: number | null;
  high: number | null;
}

/** `was it taken in mm? Then write 300.`, or null when no other unit makes the number fit. */
export function unitQuestion({ key, inList, value, low, high }: Doubtful): string | null {
  const slip = slips.find(({ ending }) => key.endsWith(ending));
  if (!slip) return null;
  const converted = roundTo(slip.convert(value), slip.unit === '%' ? 0.001 : suggestionStep);
  if (converted < (low ?? -Infinity) || converted > (high ?? Infinity)) return null;
  if (inList && slip.unit === 'F') return `is the list in F? Then name its key "${key.slice(0, -1)}f".`;
  return `was it taken in ${slip.unit}? Then write ${converted}.`;
}
