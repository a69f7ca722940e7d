/**
 * Calendar days. A day is a date on the wall calendar, never an instant: no clock and no time zone here.
 * Arithmetic is in the proleptic Gregorian calendar (ISO 8601).
 */

declare const dayBrand: unique symbol;
/** An existing calendar day written `YYYY-MM-DD`. Compare two of them with `<` and `>`: the text sorts as time does. */
export type Day = string & { readonly [dayBrand]: true };

/** A span of days, both ends included. */
export interface DayRange {
  from: Day;
  to: Day;
}

const dayPattern = /^(\d{4})-(\d{2})-(\d{2})$/;
const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
/** Days before each month in a year of 365 days. */
const daysBeforeMonth = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334] as const;

/** Whether a Gregorian year has a February 29. */
export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

/** Days in a month (1 to 12) of a year. */
export function daysInMonth(year: number, month: number): number {
  return month === 2 && isLeapYear(year) ? 29 : (monthLengths[month - 1] ?? 0);
}

/** Reads `YYYY-MM-DD`; null for any other text and for days that do not exist, such as 2026-02-30. */
export function parseDay(text: string): Day | null {
  const match = dayPattern.exec(text);
  if (!match) return null;
  const [year, month, date] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || date < 1 || date > daysInMonth(year, month)) return null;
  return text as Day;
}

/** A day from text the caller knows to be good. Throws a RangeError otherwise: for literals and checked records only. */
export function day(text: string): Day {
  const parsed = parseDay(text);
  if (parsed === null) throw new RangeError(`not a calendar day: ${text}`);
  return parsed;
}

export interface DayParts {
  year: number;
  /** 1 to 12 */
  month: number;
  /** 1 to 31 */
  date: number;
}

/** Year, month and day of the month. */
export function dayParts(of: Day): DayParts {
  return { year: Number(of.slice(0, 4)), month: Number(of.slice(5, 7)), date: Number(of.slice(8, 10)) };
}

/** Builds a day from its parts; throws a RangeError when there is no such day. */
export function dayFromParts(year: number, month: number, date: number): Day {
  const pad = (value: number, width: number) => String(value).padStart(width, '0');
  return day(`${pad(year, 4)}-${pad(month, 2)}-${pad(date, 2)}`);
}

/** Whole days since 1970-01-01, negative before it. Years counted from March so that leap days come last. */
export function dayNumber(of: Day): number {
  const { year, month, date } = dayParts(of);
  const marchYear = month <= 2 ? year - 1 : year;
  const era = Math.floor(marchYear / 400);
  const yearOfEra = marchYear - era * 400;
  const dayOfMarchYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + date - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfMarchYear;
  return era * 146097 + dayOfEra - 719468;
}

/** The day that many whole days after 1970-01-01. */
export function dayFromNumber(count: number): Day {
  const shifted = count + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) /
      365,
  );
  const dayOfMarchYear =
    dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const marchMonth = Math.floor((5 * dayOfMarchYear + 2) / 153);
  const month = marchMonth < 10 ? marchMonth + 3 : marchMonth - 9;
  const date = dayOfMarchYear - Math.floor((153 * marchMonth + 2) / 5) + 1;
  return dayFromParts(yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, date);
}

/** The day `count` days later (earlier when negative). */
export function addDays(to: Day, count: number): Day {
  return dayFromNumber(dayNumber(to) + Math.round(count));
}

/** Order of days, the earliest first. Their text has it, and comparing it is many times faster than asking a language for its order. */
export function byDay(a: string, b: string): number {
  return a < b ? -1 : Number(a > b);
}

/** Whole days from one day to another; negative when `to` is earlier. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from);
}

/**
 * Day of a year of 365 days, 1 to 365, as climate normals count them: February 29 shares the number of February 28.
 */
export function dayOfYear(of: Day): number {
  const { month, date } = dayParts(of);
  return (daysBeforeMonth[month - 1] ?? 0) + Math.min(date, monthLengths[month - 1] ?? 31);
}

/** Month and date of a day of a 365-day year, as `MM-DD`; days outside 1 to 365 wrap round. */
export function monthDay(doy: number): string {
  const wrapped = ((((Math.round(doy) - 1) % 365) + 365) % 365) + 1;
  let month = 11;
  while ((daysBeforeMonth[month] ?? 0) >= wrapped) month -= 1;
  const date = wrapped - (daysBeforeMonth[month] ?? 0);
  return `${String(month + 1).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
}

/** Day of a 365-day year of an `MM-DD`; null when it is none. 02-29 counts as 02-28. */
export function doyFromMonthDay(text: string): number | null {
  const leapDay = parseDay(`2024-${text}`);
  return leapDay === null ? null : dayOfYear(leapDay);
}

/** 1 Monday to 7 Sunday, as in ISO 8601. */
export function weekday(of: Day): number {
  return ((((dayNumber(of) + 3) % 7) + 7) % 7) + 1;
}

/** The earlier of two days. */
export function earlier(a: Day, b: Day): Day {
  return a < b ? a : b;
}

/** The later of two days. */
export function later(a: Day, b: Day): Day {
  return a > b ? a : b;
}

const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Name of a month, 1 to 12. Throws a RangeError for any other number. */
export function monthInWords(month: number): string {
  const name = monthNames[month - 1];
  if (name === undefined) throw new RangeError(`not a month: ${month}`);
  return name;
}

/** A day in words: `April 9, 2026`. */
export function dayInWords(of: Day): string {
  const { year, month, date } = dayParts(of);
  return `${monthNames[month - 1]} ${date}, ${year}`;
}

/** A span in words, repeating no month or year: `April 9 to 24, 2026`, `March 28 to April 4, 2026`. */
export function rangeInWords({ from, to }: DayRange): string {
  if (from === to) return dayInWords(from);
  const [a, b] = [dayParts(from), dayParts(to)];
  if (a.year !== b.year) return `${dayInWords(from)} to ${dayInWords(to)}`;
  const start = `${monthNames[a.month - 1]} ${a.date}`;
  return `${start} to ${a.month === b.month ? `${b.date}, ${b.year}` : dayInWords(to)}`;
}
