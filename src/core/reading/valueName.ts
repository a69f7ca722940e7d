/** How a message calls a value. */

import { monthInWords } from '../days.ts';
import type { KeyPath } from './problem.ts';

/** Lists of twelve months, by the shape of their keys. */
const monthly = /^(?:t(?:min|max)|rain|dew)_(?:c|f|mm|in)$/;

/** `"raised"`; `entry 2 of "forms"`; `July of "tmax_c"`; `entry 4 of the list`. */
export function valueName(path: KeyPath): string {
  const last = path.at(-1);
  const above = path.at(-2);
  if (last === undefined) return 'the record';
  if (typeof last === 'string') return `"${last}"`;
  if (typeof above !== 'string')
    return above === undefined ? `entry ${last + 1} of the list` : `entry ${last + 1}`;
  return monthly.test(above) && last < 12
    ? `${monthInWords(last + 1)} of "${above}"`
    : `entry ${last + 1} of "${above}"`;
}
