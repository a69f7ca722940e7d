/** How often, and when, heat needs are met between spring and the killing freeze. */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { type EndOfSeasonFigures, endOfSeasonOn, type YearOfDays } from '../phenology/endOfSeason.ts';
import {
  doyOfIndex,
  growingCalendar,
  growingYearStarts,
  heatMetOn,
  sumHeat,
} from '../phenology/growingYear.ts';
import { growthStartsOn } from '../phenology/growthStart.ts';
import type { DoySpread } from './answers.ts';
import { normalShareBelow } from './normal.ts';

/** How badly a heat need is known, as a share of it. Standing: ours; two plantings of one fig differed by 12 % (Souza et al. 2009). */
export const NEED_SD_SHARE = 0.08;
/** Growing years looked at: a share is then good to 3 points, a date to a day. Standing: ours. */
export const RIPENING_YEARS = 300;
/** Below this share of years a date would mislead more than it tells. */
export const SMALLEST_SHARE_FOR_A_DATE = 0.1;

/** What starts and ends a species' season. */
export interface SeasonRules {
  /** Index from which heat counts. */
  readonly heatFrom: number;
  /** C-degree-days from there to budbreak. */
  readonly budbreakHeat: number;
  /** A spring night at or below this after budbreak sets the tree back, C; null: never. */
  readonly leafDamageC: number | null;
  /** Null: the season lasts until midwinter. */
  readonly end: EndOfSeasonFigures | null;
}

interface SeasonBounds {
  budbreak: number;
  /** First day that counts towards ripening. */
  start: number;
  /** Day that ends the season; the length of the year when nothing does. */
  end: number;
}

/** Writes the bounds of one growing year into `bounds`. */
function findBounds(
  bounds: SeasonBounds,
  year: YearOfDays,
  heatSum: Float64Array,
  rules: SeasonRules,
  midsummer: number,
): void {
  bounds.budbreak = heatMetOn(heatSum, rules.heatFrom, rules.budbreakHeat);
  bounds.start = growthStartsOn(year, bounds.budbreak, rules.leafDamageC, midsummer);
  bounds.end = rules.end === null ? DAYS_PER_YEAR : endOfSeasonOn(year, midsummer, rules.end);
}

/** A tree that starts the outdoor season with some heat behind it. */
export interface HeadStart {
  /** Index of the day it is moved out. */
  readonly moveOut: number;
  /** C-degree-days gathered under cover, budbreak done. */
  readonly credit: number;
}

export interface HeatCase {
  readonly rules: SeasonRules;
  /** Needs from budbreak to ripe, C-degree-days. */
  readonly needs: readonly number[];
  /** Null where no late freeze keeps a tree under cover. */
  readonly headStart: HeadStart | null;
}

export interface NeedOdds {
  /** Share of years that meet the need, when the need itself is only known to `NEED_SD_SHARE`. */
  readonly share: number;
  /** The same for the need taken at its word. */
  readonly sharpShare: number;
  /** In the years that meet it; null below one in ten. */
  readonly dates: DoySpread | null;
}

export interface CaseOdds {
  /** By need, in the order given. */
  readonly outdoors: NeedOdds[];
  readonly headStart: NeedOdds[];
  readonly budbreak: DoySpread | null;
  readonly start: DoySpread | null;
  /** The day that ends the season; null where it comes in under one year in ten. */
  readonly end: DoySpread | null;
}

/** Counts of days by index: quantiles without sorting. The last place holds years in which the thing does not happen. */
interface Tally {
  readonly byDay: Uint32Array;
  /** Sum of the shares of each year, need uncertain. */
  share: number;
}

const newTally = (): Tally => ({ byDay: new Uint32Array(DAYS_PER_YEAR + 1), share: 0 });

function spread(byDay: Uint32Array, toDoy: (index: number) => number, yearCount: number): DoySpread | null {
  const happened = yearCount - (byDay[DAYS_PER_YEAR] as number);
  if (happened < yearCount * SMALLEST_SHARE_FOR_A_DATE) return null;
  const at = (share: number) => {
    const rank = Math.max(1, Math.ceil(share * happened - 1e-9));
    let day = 0;
    for (let seen = byDay[0] as number; seen < rank; seen += byDay[day] as number) day += 1;
    return toDoy(day);
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

interface CaseTally {
  readonly outdoors: Tally[];
  readonly headStart: Tally[];
  readonly budbreak: Tally;
  readonly start: Tally;
  readonly end: Tally;
}

function count(tally: Tally, index: number): void {
  tally.byDay[index] = (tally.byDay[index] as number) + 1;
}

function countNeed(tally: Tally, supply: number, need: number, index: number): void {
  count(tally, index);
  tally.share += normalShareBelow((supply - need) / (NEED_SD_SHARE * need));
}

function countYear(tally: CaseTally, heatCase: HeatCase, heatSum: Float64Array, bounds: SeasonBounds): void {
  const { start, end } = bounds;
  count(tally.budbreak, bounds.budbreak);
  count(tally.start, start);
  count(tally.end, end);
  const heatAtEnd = heatSum[end] as number;
  const supply = start < end ? heatAtEnd - (heatSum[start] as number) : 0;
  const { headStart } = heatCase;
  const movedOut = headStart !== null && headStart.moveOut < end;
  const helped = movedOut ? headStart.credit + heatAtEnd - (heatSum[headStart.moveOut] as number) : 0;
  const { needs } = heatCase;
  for (let i = 0; i < needs.length; i += 1) {
    const need = needs[i] as number;
    const met = supply >= need ? heatMetOn(heatSum, start, need) : DAYS_PER_YEAR;
    countNeed(tally.outdoors[i] as Tally, supply, need, Math.min(met, DAYS_PER_YEAR));
    let metHelped = DAYS_PER_YEAR;
    if (movedOut && helped >= need) {
      metHelped = heatMetOn(heatSum, headStart.moveOut, Math.max(0, need - headStart.credit));
    }
    countNeed(tally.headStart[i] as Tally, Math.max(supply, helped), need, Math.min(met, metHelped));
  }
}

/**
 * Odds of all cases that share a base and a cap (C), over the first `RIPENING_YEARS` whole growing years. Linear in years,
 * cases and needs; the heat of a day is computed once. Throws a RangeError for fewer than two weather years.
 */
export function ripeningOdds(
  years: WeatherYears,
  baseC: number,
  capC: number,
  cases: readonly HeatCase[],
): CaseOdds[] {
  const calendar = growingCalendar(years.lat);
  const heatFrom = Math.min(...cases.map(({ rules }) => rules.heatFrom));
  const starts = growingYearStarts(years, RIPENING_YEARS);
  const tallies = cases.map<CaseTally>(({ needs }) => ({
    outdoors: needs.map(newTally),
    headStart: needs.map(newTally),
    budbreak: newTally(),
    start: newTally(),
    end: newTally(),
  }));
  if (starts.length < 1) throw new RangeError('two weather years or more are needed');
  const heatSum = new Float64Array(DAYS_PER_YEAR + 1);
  const bounds: SeasonBounds = { budbreak: 0, start: 0, end: 0 };
  for (const from of starts) {
    sumHeat(heatSum, years, from, heatFrom, baseC, capC);
    const year = { tminC: years.tminC, tmaxC: years.tmaxC, from };
    for (let i = 0; i < cases.length; i += 1) {
      const heatCase = cases[i] as HeatCase;
      findBounds(bounds, year, heatSum, heatCase.rules, calendar.midsummer);
      countYear(tallies[i] as CaseTally, heatCase, heatSum, bounds);
    }
  }
  const total = starts.length;
  const toDoy = (index: number) => doyOfIndex(calendar, index);
  const odds = (tally: Tally): NeedOdds => ({
    share: tally.share / total,
    sharpShare: 1 - (tally.byDay[DAYS_PER_YEAR] as number) / total,
    dates: spread(tally.byDay, toDoy, total),
  });
  return tallies.map(tally => ({
    outdoors: tally.outdoors.map(odds),
    headStart: tally.headStart.map(odds),
    budbreak: spread(tally.budbreak.byDay, toDoy, total),
    start: spread(tally.start.byDay, toDoy, total),
    end: spread(tally.end.byDay, toDoy, total),
  }));
}
