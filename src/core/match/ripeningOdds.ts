/** How often, and when, crops ripen between spring and the end of the season: counted over weather years. */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { type EndOfSeasonFigures, endOfSeasonOn } from '../phenology/endOfSeason.ts';
import {
  bloomOn,
  DAYS_SD,
  daysFromBloom,
  type GrownFrom,
  leastDaysMetOn,
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
  type YearOfDays,
} from '../phenology/growingYear.ts';
import { growthStartsOn } from '../phenology/growthStart.ts';
import type { DoySpread } from './answers.ts';
import { count, newTally, spread, type Tally } from './tally.ts';

/** Growing years looked at: a share is then good to 3 points, a date to a day. Standing: ours. */
const RIPENING_YEARS = 300;
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

interface CaseTally {
  readonly outdoors: Tally[];
  readonly headStart: Tally[];
  readonly budbreak: Tally;
  readonly start: Tally;
  readonly bloom: Tally;
  readonly end: Tally;
}

/**
 * One need in one year: for each tree looked at the day of its first ripe fruit, `DAYS_PER_YEAR` when the year does not bring it, into `days`. The
 * `fifths` tell by how many standard deviations a tree is off its class, the earliest first.
 */
function ripeDays(
  days: Int32Array,
  grown: GrownFrom,
  need: RipeningNeed,
  calendar: GrowingCalendar,
  fifths: readonly number[],
): void {
  const { heatSum } = grown;
  if (need.by === 'heat') {
    const soonest = leastDaysMetOn(grown, need);
    let day = grown.from;
    for (let i = 0; i < days.length; i += 1) {
      const heat = grown.baseline + need.heat * (1 + NEED_SD_SHARE * (fifths[i] as number));
      // The next tree is a few days behind the one before.
      if (i === 0 || (heatSum[DAYS_PER_YEAR] as number) < heat) day = reachedOn(heatSum, day, heat);
      else while ((heatSum[day + 1] as number) < heat) day += 1;
      days[i] = Math.min(DAYS_PER_YEAR, Math.max(day, soonest));
    }
    return;
  }
  const bloom = bloomOn(grown, need.bloomHeat);
  const warmEnough = leastHeatMetOn(heatSum, bloom, need.leastHeat);
  const grownOn = daysFromBloom(bloom, need.days, calendar);
  for (let i = 0; i < days.length; i += 1) {
    const day = Math.max(warmEnough, grownOn + Math.round(DAYS_SD * (fifths[i] as number)));
    days[i] = Math.min(DAYS_PER_YEAR, day);
  }
}

/** Counts the trees of one need: ripe on a day of the season, or not this year. The tree at its word is the one of `sharp`. */
function countRipe(tally: Tally, days: Int32Array, end: number, sharp: number): void {
  for (let i = 0; i < days.length; i += 1) {
    const day = days[i] as number;
    count(tally, day < end ? day : DAYS_PER_YEAR);
  }
  if (sharp >= 0 && (days[sharp] as number) < end) tally.sharp += 1;
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

/** Days of the trees looked at, kept from year to year. */
interface TreeDays {
  readonly outdoors: Int32Array;
  readonly ahead: Int32Array;
  readonly fifths: readonly number[];
  /** Which of them takes its need at its word. */
  readonly sharp: number;
}

function countYear(
  tally: CaseTally,
  { rules, needs, headStart }: HeatCase,
  heatSum: Float64Array,
  season: Season,
  calendar: GrowingCalendar,
  trees: TreeDays,
): void {
  const { budbreak, start, end } = season;
  count(tally.budbreak, budbreak);
  count(tally.start, start);
  count(tally.end, end);
  const outdoors = grownOutdoors(heatSum, season, rules);
  const ahead = grownAhead(outdoors, headStart, season, rules);
  const [first] = needs;
  if (first?.by === 'bloom') count(tally.bloom, bloomOn(outdoors, first.bloomHeat));
  for (let n = 0; n < needs.length; n += 1) {
    const need = needs[n] as RipeningNeed;
    ripeDays(trees.outdoors, outdoors, need, calendar, trees.fifths);
    countRipe(tally.outdoors[n] as Tally, trees.outdoors, end, trees.sharp);
    if (ahead !== null) {
      ripeDays(trees.ahead, ahead, need, calendar, trees.fifths);
      for (let i = 0; i < trees.ahead.length; i += 1) {
        trees.ahead[i] = Math.min(trees.ahead[i] as number, trees.outdoors[i] as number);
      }
    }
    const helped = ahead === null ? trees.outdoors : trees.ahead;
    countRipe(tally.headStart[n] as Tally, helped, end, trees.sharp);
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
 * deviations, the earliest first; `[0]` takes needs at their word. Throws a RangeError for fewer than two weather years.
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
  const trees: TreeDays = {
    outdoors: new Int32Array(fifths.length),
    ahead: new Int32Array(fifths.length),
    fifths,
    sharp: fifths.indexOf(0),
  };
  for (const from of starts) {
    sumHeat(heatSum, years, from, heatFrom, baseC, capC);
    const year = { tminC: years.tminC, tmaxC: years.tmaxC, from };
    for (let i = 0; i < cases.length; i += 1) {
      const heatCase = cases[i] as HeatCase;
      const season = seasonOf(year, heatSum, heatCase.rules, calendar);
      countYear(tallies[i] as CaseTally, heatCase, heatSum, season, calendar, trees);
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
