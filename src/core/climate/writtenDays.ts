/** Days as stations, consoles and spreadsheets write them. Whether the day or the month comes first is seen from the whole column. */

import { type Day, parseDay } from '../days.ts';

type DayOrder = 'year-first' | 'month-first' | 'day-first';

/** How the days of a column are written; null where they do not tell, or contradict each other. */
export interface WrittenDays {
  order: DayOrder | null;
  read(text: string): Day | null;
  /** Whether a text is a day that the order would tell, and the order is not known. */
  isUnsure(text: string): boolean;
}

const clock = /[T\s,]+\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?\s*(?:[ap]\.?m?\.?)?(?:Z|[+-]\d{2}:?\d{2})?$/i;

/** The text without a time of day behind it. */
const withoutClock = (text: string) => text.trim().replace(clock, '').trim();

/** Whether a time of day stands behind a day. */
export const hasClock = (text: string) => clock.test(text.trim());

const yearFirst = /^(\d{4})[-/.]?(\d{1,2})[-/.]?(\d{1,2})$/;
const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4}|\d{2})$/;

const two = (text: string) => text.padStart(2, '0');
/** Two digits are taken for years from 1930 to 2029, as spreadsheets do. */
const fullYear = (year: string) => (year.length === 4 ? year : `${Number(year) < 30 ? 20 : 19}${year}`);

export function writtenDays(texts: readonly string[]): WrittenDays {
  let [dayFirst, monthFirst, short] = [false, false, false];
  for (const text of texts) {
    const parts = yearLast.exec(withoutClock(text));
    if (!parts) continue;
    short = true;
    if (Number(parts[1]) > 12) dayFirst = true;
    if (Number(parts[2]) > 12) monthFirst = true;
  }
  const order = !short
    ? 'year-first'
    : dayFirst === monthFirst
      ? null
      : dayFirst
        ? 'day-first'
        : 'month-first';
  return {
    order,
    isUnsure: text => order === null && yearLast.test(withoutClock(text)),
    read(text) {
      const written = withoutClock(text);
      const first = yearFirst.exec(written);
      if (first && (written.length === 8 || /\D/.test(written))) {
        return parseDay(`${first[1]}-${two(first[2]!)}-${two(first[3]!)}`);
      }
      const last = yearLast.exec(written);
      if (!last || order === null) return null;
      const [month, date] = order === 'day-first' ? [last[2]!, last[1]!] : [last[1]!, last[2]!];
      return parseDay(`${fullYear(last[3]!)}-${two(month)}-${two(date)}`);
    },
  };
}
