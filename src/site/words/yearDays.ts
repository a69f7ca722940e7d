/** Days of any year, `MM-DD`, as they are printed on pages. */

import { day, dayInWords, dayParts, monthInWords } from '../../core/days.ts';

/** The year is only there to make a day of it; a leap year has them all. */
function inLeapYear(monthDay: string) {
  return day(`2024-${monthDay}`);
}

/** `April 9`. Throws a RangeError for text that is no day. */
export function monthDayInWords(monthDay: string): string {
  return dayInWords(inLeapYear(monthDay)).replace(', 2024', '');
}

/** `Apr`. Takes 1 to 12. */
export function shortMonth(month: number): string {
  return monthInWords(month).slice(0, 3);
}

/** `Apr 9`, for tables. */
export function shortMonthDay(monthDay: string): string {
  const { month, date } = dayParts(inLeapYear(monthDay));
  return `${shortMonth(month)} ${date}`;
}

/** `early April`, `mid April` or `late April`: as exact as a date that differs from year to year deserves. */
export function partOfMonth(monthDay: string): string {
  const { month, date } = dayParts(inLeapYear(monthDay));
  const part = date <= 10 ? 'early' : date <= 20 ? 'mid' : 'late';
  return `${part} ${monthInWords(month)}`;
}
