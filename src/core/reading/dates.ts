/** What is wrong with a text that should be a day, and which day was likely meant. */

import { daysInMonth, monthInWords, parseDay } from '../days.ts';
import { meant, quote, remedyOf } from './problem.ts';

const isoShape = /^(\d{4})-(\d{2})-(\d{2})$/;
const yearFirst = /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})(?:[T ].*)?$/;
const yearLast = /^(\d{1,2})[-/. ]+(\d{1,2})[-/. ]+(\d{4})$/;

/** Message and remedy for a text that is no day; `name` is how the message calls the value. */
export function dayWords(name: string, got: string): { message: string; remedy: string } {
  const iso = isoShape.exec(got.trim());
  const [year, month] = [Number(iso?.[1]), Number(iso?.[2])];
  if (iso && month >= 1 && month <= 12) {
    return {
      message: `${name} is ${quote(got)}, a day that does not exist`,
      remedy: `${monthInWords(month)} ${year} has ${daysInMonth(year, month)} days.`,
    };
  }
  if (iso) {
    return {
      message: `${name} is ${quote(got)}, and there is no month ${iso[2]}`,
      remedy: 'write year, month, day, such as 2026-03-01.',
    };
  }
  return {
    message: `${name} is ${quote(got)}, not a day`,
    remedy: remedyOf(meant(guessDay(got)), 'Write year, month, day, such as 2026-03-01.'),
  };
}

/** The day meant when digits and order leave no doubt; null when 3/4/2026 could be either. */
function guessDay(got: string): string | null {
  const first = yearFirst.exec(got.trim());
  if (first) return dayOf(first[1]!, first[2]!, first[3]!);
  const last = yearLast.exec(got.trim());
  if (!last) return null;
  const [a, b, year] = [Number(last[1]), Number(last[2]), last[3]!];
  if (a > 12 && b <= 12) return dayOf(year, last[2]!, last[1]!);
  if (b > 12 && a <= 12) return dayOf(year, last[1]!, last[2]!);
  return a === b ? dayOf(year, last[1]!, last[2]!) : null;
}

function dayOf(year: string, month: string, date: string): string | null {
  return parseDay(`${year}-${month.padStart(2, '0')}-${date.padStart(2, '0')}`);
}
