/** Calendar days against an independent implementation: the temporal-polyfill package. */

import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import {
  addDays,
  type Day,
  day,
  dayFromNumber,
  dayFromParts,
  dayInWords,
  dayNumber,
  dayOfYear,
  dayParts,
  daysBetween,
  daysInMonth,
  doyFromMonthDay,
  earlier,
  isLeapYear,
  later,
  monthDay,
  parseDay,
  rangeInWords,
  weekday,
} from './days.ts';

/** Every 97th day over eight centuries, and every day of years around the leap rules. */
const sampled: Temporal.PlainDate[] = [];
for (let date = Temporal.PlainDate.from('1700-01-01'); date.year < 2500; date = date.add({ days: 97 }))
  sampled.push(date);
for (const year of [1899, 1900, 1999, 2000, 2023, 2024, 2099, 2100]) {
  for (
    let date = Temporal.PlainDate.from({ year, month: 1, day: 1 });
    date.year === year;
    date = date.add({ days: 1 })
  ) {
    sampled.push(date);
  }
}
const epoch = Temporal.PlainDate.from('1970-01-01');

describe('days agree with temporal-polyfill', () => {
  it('in their number, and back', () => {
    for (const date of sampled) {
      const text = day(date.toString());
      expect(dayNumber(text)).toBe(epoch.until(date, { largestUnit: 'days' }).days);
      expect(dayFromNumber(dayNumber(text))).toBe(text);
    }
  });

  it('in weekday, leap years, month lengths and parts', () => {
    for (const date of sampled) {
      const text = day(date.toString());
      expect(weekday(text)).toBe(date.dayOfWeek);
      expect(isLeapYear(date.year)).toBe(date.inLeapYear);
      expect(daysInMonth(date.year, date.month)).toBe(date.daysInMonth);
      expect(dayParts(text)).toEqual({ year: date.year, month: date.month, date: date.day });
      expect(dayFromParts(date.year, date.month, date.day)).toBe(text);
    }
  });

  it('in sums and differences', () => {
    for (const [index, date] of sampled.entries()) {
      const count = ((index * 7919) % 3000) - 1500;
      const moved = date.add({ days: count });
      const text = day(date.toString());
      expect(addDays(text, count)).toBe(moved.toString());
      expect(daysBetween(text, day(moved.toString()))).toBe(count);
    }
  });

  it('in the day of the year, February 29 sharing the number of February 28', () => {
    for (const date of sampled) {
      const afterLeapDay = date.inLeapYear && date.dayOfYear >= 60;
      expect(dayOfYear(day(date.toString()))).toBe(date.dayOfYear - (afterLeapDay ? 1 : 0));
    }
  });

  it('in which days exist', () => {
    for (let month = 0; month <= 13; month += 1) {
      for (let date = 0; date <= 32; date += 1) {
        for (const year of [1900, 2000, 2023, 2024]) {
          const text = `${year}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
          let exists = true;
          try {
            Temporal.PlainDate.from({ year, month, day: date }, { overflow: 'reject' });
          } catch {
            exists = false;
          }
          expect(parseDay(text), text).toBe(exists ? text : null);
        }
      }
    }
  });
});

describe('days as text', () => {
  it.each(['2026-2-3', '2026-02-3', '26-02-03', '2026-02-30', '2026-02-03T00:00', '', ' 2026-02-03'])(
    'refuses %j',
    text => {
      expect(parseDay(text)).toBeNull();
      expect(() => day(text)).toThrow(RangeError);
    },
  );

  it('keeps order as text', () => {
    const [a, b] = [day('2026-09-30'), day('2026-10-01')];
    expect([earlier(a, b), later(a, b)]).toEqual([a, b]);
    expect([earlier(b, a), later(b, a)]).toEqual([a, b]);
  });

  it('goes to MM-DD and back for every day of a year', () => {
    for (let doy = 1; doy <= 365; doy += 1) expect(doyFromMonthDay(monthDay(doy))).toBe(doy);
    expect(monthDay(366)).toBe('01-01');
    expect(monthDay(0)).toBe('12-31');
    expect(doyFromMonthDay('02-30')).toBeNull();
    expect(doyFromMonthDay('02-29')).toBe(59);
  });

  it.each<[Day, Day, string]>([
    [day('2026-04-09'), day('2026-04-24'), 'April 9 to 24, 2026'],
    [day('2026-03-28'), day('2026-04-04'), 'March 28 to April 4, 2026'],
    [day('2026-12-28'), day('2027-01-04'), 'December 28, 2026 to January 4, 2027'],
    [day('2026-04-09'), day('2026-04-09'), 'April 9, 2026'],
  ])('tells %s to %s in words', (from, to, words) => {
    expect(rangeInWords({ from, to })).toBe(words);
    // Within one month the month stands once, at the start.
    expect(words.endsWith(dayInWords(to).replace(/^\w+ /, ''))).toBe(true);
  });
});
