/**
 * What a daily record says about a climate: monthly means, the spread of single days about a smooth curve, how long a departure
 * lasts, freeze dates and the coldest nights. Temperatures in C. The record may have gaps; what they cost is told.
 */

import { day, dayNumber, dayOfYear, dayParts, monthDay } from '../days.ts';
import { fahrenheitToCelsius } from '../units.ts';
import { DAYS_PER_YEAR, daysForward, seasonStartDoy } from './calendar.ts';
import { dailyCurve } from './dailyCurve.ts';
import type { DayRow } from './dailyRows.ts';
import { type DateQuantiles, type FreezeThresholdF, freezeThresholdsF } from './figures.ts';
import { sortedQuantile } from './quantiles.ts';

/** A month of one year counts when it has this many days. Our working figure. */
const FEWEST_DAYS_OF_MONTH = 20;
/** A season with more days missing is left out of the freeze dates. Source: rule of the Utah Climate Center. */
const MOST_DAYS_MISSING = 10;
/** With fewer whole years a record says little about its climate, and a model of it less. Our working figure. */
export const FEWEST_WHOLE_YEARS = 10;
/** Years that make a climate. Source: WMO, Guidelines on the Calculation of Climate Normals (WMO-No. 1203), 30 years. */
const YEARS_OF_NORMALS = 30;
/** Records keep tenths of a degree, so 28 F (-2.22 C) is written -2.2: a reading within half of the last digit counts. */
const LAST_DIGIT_C = 0.05;

interface RecordFreeze {
  first: DateQuantiles;
  last: DateQuantiles;
  /** Share of seasons without one, 0 to 1. */
  none: number;
}

/** What is missing or thin: days not read, months or seasons left out for it, or a record too short. */
export interface RecordNote {
  kind: 'unread' | 'left-out' | 'short';
  /** One sentence. */
  text: string;
}

export interface DailyRecordFigures {
  /** First and last day with a reading. */
  from: string;
  to: string;
  tmaxC: number[];
  tminC: number[];
  /** Standard deviation of single days about the smooth curve through the monthly means. */
  sdTmaxC: number[];
  sdTminC: number[];
  /** Correlation of the departure of Tmin with that of the day before. */
  lag1: number;
  /** Seasons with at most `MOST_DAYS_MISSING` days missing: what the rest is taken from. */
  seasons: number;
  /** Null without a whole season. */
  freeze: Map<FreezeThresholdF, RecordFreeze> | null;
  annualMinMeanC: number | null;
  notes: RecordNote[];
}

type Element = 'tminC' | 'tmaxC';

interface Reading {
  /** 0 to 11 */
  month: number;
  /** 1 to 365 */
  doy: number;
  /** Days since 1970-01-01. */
  number: number;
  value: number;
}

/**
 * Readings of one element, without the months of a year that have too few of them. The months at either end of the record, which
 * may have begun late or ended early, are not counted as left out.
 */
function readingsOf(
  rows: readonly DayRow[],
  element: Element,
): { readings: Reading[]; monthsLeftOut: number } {
  const byMonth = new Map<string, Reading[]>();
  for (const row of rows) {
    const value = row[element];
    if (value === null) continue;
    const key = row.day.slice(0, 7);
    const reading = {
      month: dayParts(row.day).month - 1,
      doy: dayOfYear(row.day),
      number: dayNumber(row.day),
      value,
    };
    const month = byMonth.get(key);
    if (month) month.push(reading);
    else byMonth.set(key, [reading]);
  }
  const ends = [rows[0], rows.at(-1)].map(row => row?.day.slice(0, 7));
  const months = [...byMonth];
  const whole = months.filter(([, month]) => month.length >= FEWEST_DAYS_OF_MONTH);
  const torn = months.filter(([key, month]) => month.length < FEWEST_DAYS_OF_MONTH && !ends.includes(key));
  return { readings: whole.flatMap(([, month]) => month), monthsLeftOut: torn.length };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function byMonth(readings: readonly Reading[], value: (reading: Reading) => number): number[][] {
  const months: number[][] = Array.from({ length: 12 }, () => []);
  for (const reading of readings) (months[reading.month] as number[]).push(value(reading));
  return months;
}

interface Spread {
  meanC: number[];
  sdC: number[];
  /** Departures from the curve in units of the month's standard deviation, by day number. */
  departures: Map<number, number>;
}

/** Monthly means and the spread about the smooth curve through them; null when a month has no reading at all. */
function spreadOfDays(readings: readonly Reading[]): Spread | null {
  const months = byMonth(readings, ({ value }) => value);
  if (months.some(month => month.length === 0)) return null;
  const meanC = months.map(mean);
  const curve = dailyCurve(meanC);
  const departure = ({ doy, value }: Reading) => value - (curve[doy - 1] as number);
  const sdC = byMonth(readings, departure).map(month => Math.sqrt(mean(month.map(each => each * each))));
  const departures = new Map(
    readings.map(reading => [reading.number, departure(reading) / (sdC[reading.month] || 1)]),
  );
  return { meanC, sdC, departures };
}

/** Correlation of each departure with that of the day before, over the pairs that are there. */
function lagOne(departures: ReadonlyMap<number, number>): number {
  let [pairs, products, squares] = [0, 0, 0];
  for (const [number, today] of departures) {
    const yesterday = departures.get(number - 1);
    if (yesterday === undefined) continue;
    pairs += 1;
    products += today * yesterday;
    squares += (today * today + yesterday * yesterday) / 2;
  }
  return pairs === 0 || squares === 0 ? 0 : products / squares;
}

/** Minima of one season by the day of the season, 0 the first. */
interface Season {
  /** Days since 1970-01-01 of its first day. */
  start: number;
  length: number;
  days: { day: number; tminC: number }[];
}

/** The record cut into seasons that start on July 24 (January 24 in the south). */
function seasonsOf(rows: readonly DayRow[], lat: number): Season[] {
  const startDoy = seasonStartDoy(lat);
  const startIn = (year: number) => dayNumber(day(`${year}-${monthDay(startDoy)}`));
  const seasons = new Map<number, Season>();
  for (const { day: read, tminC } of rows) {
    if (tminC === null) continue;
    const doy = dayOfYear(read);
    const year = dayParts(read).year - (doy < startDoy ? 1 : 0);
    let season = seasons.get(year);
    if (!season) {
      season = { start: startIn(year), length: startIn(year + 1) - startIn(year), days: [] };
      seasons.set(year, season);
    }
    season.days.push({ day: daysForward(startDoy, doy), tminC });
  }
  return [...seasons.values()];
}

function isWhole({ days, length }: Season): boolean {
  return length - days.length <= MOST_DAYS_MISSING;
}

/** First and last freezes over the whole seasons. A season without one counts as later and as earlier than any date. */
function freezeOf(seasons: readonly Season[], thresholdF: FreezeThresholdF, lat: number): RecordFreeze {
  const limitC = fahrenheitToCelsius(thresholdF) + LAST_DIGIT_C;
  const freezing = seasons.map(({ days }) =>
    days.filter(({ tminC }) => tminC <= limitC).map(({ day }) => day),
  );
  const firsts = freezing
    .map(days => (days.length === 0 ? DAYS_PER_YEAR : Math.min(...days)))
    .sort((a, b) => a - b);
  const lasts = freezing.map(days => (days.length === 0 ? -1 : Math.max(...days))).sort((a, b) => a - b);
  const date = (day: number) =>
    day < 0 || day === DAYS_PER_YEAR ? null : monthDay(seasonStartDoy(lat) + day);
  const quantiles = (sorted: number[]): DateQuantiles => ({
    p10: date(sortedQuantile(sorted, 0.1)),
    p50: date(sortedQuantile(sorted, 0.5)),
    p90: date(sortedQuantile(sorted, 0.9)),
  });
  const without = freezing.filter(days => days.length === 0).length;
  return { first: quantiles(firsts), last: quantiles(lasts), none: without / seasons.length };
}

function plural(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? '' : 's'}`;
}

function notesOn(
  rows: readonly DayRow[],
  seasons: readonly Season[],
  wholeSeasons: number,
  monthsLeftOut: number,
): RecordNote[] {
  const notes: RecordNote[] = [];
  const note = (kind: RecordNote['kind'], text: string) => notes.push({ kind, text });
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) return notes;
  const [start, end] = [dayNumber(first.day), dayNumber(last.day) + 1];
  const unread = end - start - rows.filter(({ tminC, tmaxC }) => tminC !== null && tmaxC !== null).length;
  if (unread > 0) {
    note('unread', `${plural(unread, 'day')} of ${end - start} have no reading of both temperatures.`);
  }
  if (monthsLeftOut > 0) {
    const months = plural(monthsLeftOut, 'month');
    note('left-out', `${months} with under ${FEWEST_DAYS_OF_MONTH} days left out of the means.`);
  }
  const voided = seasons.filter(season => {
    const within = Math.min(season.start + season.length, end) - Math.max(season.start, start);
    return !isWhole(season) && within - season.days.length > MOST_DAYS_MISSING;
  }).length;
  if (voided > 0) {
    const lost = plural(voided, 'season');
    note(
      'left-out',
      `${lost} with more than ${MOST_DAYS_MISSING} days missing left out of the freeze dates.`,
    );
  }
  if (wholeSeasons < FEWEST_WHOLE_YEARS) {
    const whole = plural(wholeSeasons, 'whole year');
    note(
      'short',
      `Only ${whole}: fewer than ${FEWEST_WHOLE_YEARS} say little about a climate; take official normals where there are some.`,
    );
  }
  return notes;
}

/**
 * The last thirty calendar years of a record that is longer; older ones tell of a climate that has passed. A last year that breaks off
 * before December is not one of them. Rows in order of day.
 */
export function lastNormalYears(rows: readonly DayRow[]): readonly DayRow[] {
  const [first, last] = [rows[0], rows.at(-1)];
  if (!first || !last) return rows;
  const { year, month } = dayParts(last.day);
  const to = month === 12 ? year : year - 1;
  const from = to - YEARS_OF_NORMALS + 1;
  if (dayParts(first.day).year >= from) return rows;
  return rows.filter(({ day: read }) => dayParts(read).year >= from && dayParts(read).year <= to);
}

/**
 * Figures of a daily record (rows in order of day, each day once) at a latitude. Null when some month of the year was never read
 * for `FEWEST_DAYS_OF_MONTH` days, so that no curve can be drawn.
 */
export function dailyRecordFigures(rows: readonly DayRow[], lat: number): DailyRecordFigures | null {
  const tmin = readingsOf(rows, 'tminC');
  const tmax = readingsOf(rows, 'tmaxC');
  const [low, high] = [spreadOfDays(tmin.readings), spreadOfDays(tmax.readings)];
  const [first, last] = [rows[0], rows.at(-1)];
  if (low === null || high === null || !first || !last) return null;

  const seasons = seasonsOf(rows, lat);
  const whole = seasons.filter(isWhole);
  const lowest = whole.map(({ days }) => Math.min(...days.map(({ tminC }) => tminC)));

  return {
    from: first.day,
    to: last.day,
    tmaxC: high.meanC,
    tminC: low.meanC,
    sdTmaxC: high.sdC,
    sdTminC: low.sdC,
    lag1: lagOne(low.departures),
    seasons: whole.length,
    freeze:
      whole.length === 0
        ? null
        : new Map(freezeThresholdsF.map(thresholdF => [thresholdF, freezeOf(whole, thresholdF, lat)])),
    annualMinMeanC: lowest.length === 0 ? null : mean(lowest),
    notes: notesOn(rows, seasons, whole.length, Math.max(tmin.monthsLeftOut, tmax.monthsLeftOut)),
  };
}
