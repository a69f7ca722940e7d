/** Bars of a season on the axis of the year ribbon: the year starts in January, south of the equator in July. */

import { DAYS_PER_YEAR, daysForward } from '../../core/climate/calendar.ts';
import type { ClimateSummary } from '../../core/climate/summary.ts';
import { dayFromParts, dayOfYear, doyFromMonthDay } from '../../core/days.ts';
import type { DoySpread, RipeningVerdict } from '../../core/match/answers.ts';

/** One unit is a day. */
export const BAR_WIDTH = DAYS_PER_YEAR;

export interface BarPart {
  from: number;
  width: number;
}

export interface CropBar {
  parts: BarPart[];
  /** Middle year. */
  middle: number;
  /** Only with a head start under cover. */
  headStart: boolean;
}

const FIRST_OF_JULY = dayOfYear(dayFromParts(2001, 7, 1));

function startOf(lat: number): number {
  return lat < 0 ? FIRST_OF_JULY : 1;
}

/** Days from the left end of the axis. */
export function alongAxis(doy: number, lat: number): number {
  return daysForward(startOf(lat), doy);
}

/** A span of days as one bar, or two when it runs over the right end. */
export function barParts(fromDoy: number, toDoy: number, lat: number): BarPart[] {
  const [from, to] = [alongAxis(fromDoy, lat), alongAxis(toDoy, lat)];
  if (to >= from) return [{ from, width: to - from + 1 }];
  return [
    { from, width: DAYS_PER_YEAR - from },
    { from: 0, width: to + 1 },
  ];
}

function cropBar({ p10, p50, p90 }: DoySpread, headStart: boolean, lat: number): CropBar {
  return { parts: barParts(p10, p90, lat), middle: alongAxis(p50, lat), headStart };
}

/** One bar for each crop that ripens outdoors in some years, or else with a head start. */
export function cropBars(ripening: readonly RipeningVerdict[], lat: number): CropBar[] {
  return ripening.flatMap(({ blocked, word, dates, headStart }) => {
    if (blocked !== null) return [];
    if (dates !== null && word !== 'not-outdoors') return [cropBar(dates, false, lat)];
    return headStart.dates !== null && headStart.word !== 'not-outdoors'
      ? [cropBar(headStart.dates, true, lat)]
      : [];
  });
}

/** The usual season between the freezes; the whole axis where most years have none. */
export function freezeFreeParts({ freeze }: Pick<ClimateSummary, 'freeze'>, lat: number): BarPart[] {
  const { first, last } = freeze['32F'].answer;
  const [from, to] = [last.p50, first.p50].map(date => (date === null ? null : doyFromMonthDay(date)));
  if (typeof from !== 'number' || typeof to !== 'number') return [{ from: 0, width: DAYS_PER_YEAR }];
  return barParts(from, to, lat);
}
