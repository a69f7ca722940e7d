/** How often, and when, crops ripen between spring and the end of the season: counted over weather years. */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { type EndOfSeasonFigures, endOfSeasonOn, type YearOfDays } from '../phenology/endOfSeason.ts';
import {
  bloomOn,
  DAYS_SD,
  daysFromBloom,
  type GrownFrom,
  leastHeatMetOn,
  NEED_SD_SHARE,
  type RipeningNeed,
} from '../phenology/fruit.ts';
import {
  doyOfIndex,
  type GrowingCalendar,
  growingCalendar,
  growingYearStarts,
  heatMetOn,
  reachedOn,
  sumHeat,
} from '../phenology/growingYear.ts';
import { growthStartsOn } from '../phenology/growthStart.ts';
import type { DoySpread } from './answers.ts';

/** Growing years looked at: a share is then good to 3 points, a date to a day. Standing: ours. */
export const RIPENING_YEARS = 300;
/** Below this share of years a date would mislead more than it tells. */
export const SMALLEST_SHARE_FOR_A_DATE = 0.1;

/**
 * Every year is looked at for five trees whose needs differ as far as the need of a class is unknown: the middles of the five fifths of
 * a normal distribution. The third is the need at its word.
 */
export const NEED_FIFTHS: readonly number[] = [-1.2816, -0.5244, 0, 0.5244, 1.2816];

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

/** A tree that starts the outdoor season with some heat behind it. */
export interface HeadStart {
  /** Index of the day it is moved out. */
  readonly moveOut: number;
  /** C-degree-days gathered under cover, budbreak done. */
  readonly credit: number;
}

export interface HeatCase {
  readonly rules: SeasonRules;
  readonly needs: readonly RipeningNeed[];
  /** Null where no late freeze keeps a tree under cover. */
  readonly headStart: HeadStart | null;
}

export interface NeedOdds {
  /** Share of years in which it ripens, when the need itself is only known so well. */
  readonly share: number;
  /** The same for the need taken at its word. */
  readonly sharpShare: number;
  /** First ripe fruit in the years that have any, how badly the need is known counted; null below one in ten. */
  readonly dates: DoySpread | null;
}

export interface CaseOdds {
  /** By need, in the order given. */
  readonly outdoors: NeedOdds[];
  readonly headStart: NeedOdds[];
  readonly budbreak: DoySpread | null;
  readonly start: DoySpread | null;
  /** Full bloom of a species that is timed by it; null for the others. */
  readonly bloom: DoySpread | null;
  /** The day that ends the season; null where it comes in under one year in ten. */
  readonly end: DoySpread | null;
}

/** Counts of days by index: quantiles without sorting. The last place holds years in which the thing does not happen. */
interface Tally {
  readonly byDay: Uint32Array;
  /** Years in which the need at its word is met. */
  sharp: number;
}

const newTally = (): Tally => ({ byDay: new Uint32Array(DAYS_PER_YEAR + 1), sharp: 0 });

function spread(byDay: Uint32Array, toDoy: (index: number) => number): DoySpread | null {
  const counted = byDay.reduce((sum, count) => sum + count, 0);
  const happened = counted - (byDay[DAYS_PER_YEAR] as number);
  if (happened === 0 || happened < counted * SMALLEST_SHARE_FOR_A_DATE) return null;
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
  readonly bloom: Tally;
  readonly end: Tally;
}

function count(tally: Tally, index: number): void {
  tally.byDay[index] = (tally.byDay[index] as number) + 1;
}

/** Counts one tree: ripe on a day of the season, or not this year. */
function countRipe(tally: Tally, ripe: number, end: number, sharp: boolean): void {
  const inTime = ripe < end;
  count(tally, inTime ? ripe : DAYS_PER_YEAR);
  if (sharp && inTime) tally.sharp += 1;
}

/** One need in one year: the day of the first ripe fruit for a tree that is `fifth` standard deviations off its class. */
function ripeOn(grown: GrownFrom, need: RipeningNeed, calendar: GrowingCalendar): (fifth: number) => number {
  if (need.by === 'heat') {
    return fifth =>
      reachedOn(grown.heatSum, grown.from, grown.baseline + need.heat * (1 + NEED_SD_SHARE * fifth));
  }
  const bloom = bloomOn(grown, need.bloomHeat);
  const warmEnough = leastHeatMetOn(grown.heatSum, bloom, need.leastHeat);
  const days = daysFromBloom(bloom, need.days, calendar);
  return fifth => Math.max(warmEnough, days + Math.round(DAYS_SD * fifth));
}

interface Season {
  readonly start: number;
  readonly budbreak: number;
  readonly end: number;
}

/** Heat counts from spring, or again from budbreak after a freeze that cost the shoots. */
function grownOutdoors(heatSum: Float64Array, { start, budbreak }: Season, rules: SeasonRules): GrownFrom {
  return start > budbreak
    ? {
        heatSum,
        from: Math.min(start, DAYS_PER_YEAR),
        baseline: (heatSum[start] as number) - rules.budbreakHeat,
      }
    : { heatSum, from: rules.heatFrom, baseline: heatSum[rules.heatFrom] as number };
}

/** The same for a tree with a head start; null where that is no gain this year. */
function grownAhead(
  outdoors: GrownFrom,
  headStart: HeadStart | null,
  { end }: Season,
  { budbreakHeat }: SeasonRules,
): GrownFrom | null {
  if (headStart === null || headStart.moveOut >= end) return null;
  const { heatSum } = outdoors;
  const baseline = (heatSum[headStart.moveOut] as number) - headStart.credit - budbreakHeat;
  return baseline < outdoors.baseline ? { heatSum, from: headStart.moveOut, baseline } : null;
}

function countYear(
  tally: CaseTally,
  heatCase: HeatCase,
  heatSum: Float64Array,
  season: Season,
  calendar: GrowingCalendar,
  fifths: readonly number[],
): void {
  const { rules, needs } = heatCase;
  const { budbreak, start, end } = season;
  count(tally.budbreak, budbreak);
  count(tally.start, start);
  count(tally.end, end);
  const outdoors = grownOutdoors(heatSum, season, rules);
  const ahead = grownAhead(outdoors, heatCase.headStart, season, rules);
  const [first] = needs;
  if (first?.by === 'bloom') count(tally.bloom, bloomOn(outdoors, first.bloomHeat));
  for (let i = 0; i < needs.length; i += 1) {
    const need = needs[i] as RipeningNeed;
    const ripe = ripeOn(outdoors, need, calendar);
    const helped = ahead && ripeOn(ahead, need, calendar);
    for (const fifth of fifths) {
      const day = ripe(fifth);
      countRipe(tally.outdoors[i] as Tally, day, end, fifth === 0);
      countRipe(tally.headStart[i] as Tally, helped ? Math.min(day, helped(fifth)) : day, end, fifth === 0);
    }
  }
}

function seasonOf(
  year: YearOfDays,
  heatSum: Float64Array,
  rules: SeasonRules,
  { midsummer }: GrowingCalendar,
): Season {
  const budbreak = heatMetOn(heatSum, rules.heatFrom, rules.budbreakHeat);
  return {
    budbreak,
    start: growthStartsOn(year, budbreak, rules.leafDamageC, midsummer),
    end: rules.end === null ? DAYS_PER_YEAR : endOfSeasonOn(year, midsummer, rules.end),
  };
}

/**
 * Odds of all cases that share a base and a cap (C), over the first `RIPENING_YEARS` whole growing years. Linear in years,
 * cases and needs; the heat of a day is computed once. `fifths` tells how far the trees looked at differ from their class, in standard
 * deviations; `[0]` takes needs at their word. Throws a RangeError for fewer than two weather years.
 */
export function ripeningOdds(
  years: WeatherYears,
  baseC: number,
  capC: number,
  cases: readonly HeatCase[],
  fifths: readonly number[] = NEED_FIFTHS,
): CaseOdds[] {
  const calendar = growingCalendar(years.lat);
  const heatFrom = Math.min(...cases.map(({ rules }) => rules.heatFrom));
  const starts = growingYearStarts(years, RIPENING_YEARS);
  const tallies = cases.map<CaseTally>(({ needs }) => ({
    outdoors: needs.map(newTally),
    headStart: needs.map(newTally),
    budbreak: newTally(),
    start: newTally(),
    bloom: newTally(),
    end: newTally(),
  }));
  if (starts.length < 1) throw new RangeError('two weather years or more are needed');
  const heatSum = new Float64Array(DAYS_PER_YEAR + 1);
  for (const from of starts) {
    sumHeat(heatSum, years, from, heatFrom, baseC, capC);
    const year = { tminC: years.tminC, tmaxC: years.tmaxC, from };
    for (let i = 0; i < cases.length; i += 1) {
      const heatCase = cases[i] as HeatCase;
      const season = seasonOf(year, heatSum, heatCase.rules, calendar);
      countYear(tallies[i] as CaseTally, heatCase, heatSum, season, calendar, fifths);
    }
  }
  const total = starts.length;
  const toDoy = (index: number) => doyOfIndex(calendar, index);
  const odds = (tally: Tally): NeedOdds => ({
    share: 1 - (tally.byDay[DAYS_PER_YEAR] as number) / (total * fifths.length),
    sharpShare: tally.sharp / total,
    dates: spread(tally.byDay, toDoy),
  });
  return tallies.map(tally => ({
    outdoors: tally.outdoors.map(odds),
    headStart: tally.headStart.map(odds),
    budbreak: spread(tally.budbreak.byDay, toDoy),
    start: spread(tally.start.byDay, toDoy),
    bloom: spread(tally.bloom.byDay, toDoy),
    end: spread(tally.end.byDay, toDoy),
  }));
}
