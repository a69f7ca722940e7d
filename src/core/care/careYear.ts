/**
 * The year of one species in one place, as days of the season: when leaves fall, when it is dormant, when buds break, when a pot is at
 * risk, when frosts come and go. Everything the calendars schedule is read off this.
 */

import { DAYS_PER_YEAR, daysForward, wrapDoy } from '../climate/calendar.ts';
import { hargreavesEtoMm } from '../climate/evapotranspiration.ts';
import type { ClimateSummary, FreezeKey } from '../climate/summary.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { doyFromMonthDay } from '../days.ts';
import { budbreak, budbreakNeed } from '../phenology/budbreak.ts';
import { chillNeed, heatCountsFrom } from '../phenology/chill.ts';
import { restMet } from '../phenology/dormancy.ts';
import { growingCalendar } from '../phenology/growingYear.ts';
import { leafFall, leafFallFigures } from '../phenology/leafFall.ts';
import { puttingAwayNightsC, type Ripeness, ripenesses } from '../phenology/puttingAway.ts';
import type { PlaceClass } from '../records/cultivar.ts';
import { freezeThresholds } from '../records/place.ts';
import type { Species } from '../records/species.ts';
import { careFigures } from './careFigures.ts';
import { mixFollower } from './potFreeze.ts';

/** Days of the season (0 on 24 July, 24 January south) by which it has happened in 1, 5 and 9 years of ten; null where it has not. */
export interface SeasonDays {
  readonly p10: number | null;
  readonly p50: number | null;
  readonly p90: number | null;
}

export interface CareClimate {
  readonly id: string;
  /** Name of the place as a sentence uses it. */
  readonly name: string;
  readonly years: WeatherYears;
  readonly summary: ClimateSummary;
}

export interface CareYear {
  readonly placeId: string;
  readonly placeName: string;
  readonly placeClass: PlaceClass;
  readonly species: Species;
  readonly firstDoy: number;
  readonly potLitres: number;
  readonly firstFreeze: Readonly<Record<FreezeKey, SeasonDays>>;
  /** p90: after it a later freeze comes in 1 year of 10. */
  readonly lastFreeze: Readonly<Record<FreezeKey, SeasonDays>>;
  readonly leafFall: SeasonDays;
  readonly dormant: SeasonDays;
  readonly budbreak: SeasonDays;
  /** First and last day on which the mix in an open pot reaches the limit of the roots. */
  readonly potRiskFirst: SeasonDays;
  readonly potRiskLast: SeasonDays;
  /** First and last night a dormant tree does not stand: young in its first winter in the ground, and established. */
  readonly coldRiskFirst: { readonly young: SeasonDays; readonly established: SeasonDays };
  readonly coldRiskLast: { readonly young: SeasonDays; readonly established: SeasonDays };
  /** The tree never really rests: no leaf fall and warm coldest weeks. */
  readonly evergreen: boolean;
  /** Mean temperature by day of the season, C. */
  readonly meanC: readonly number[];
  readonly coldestDay: number;
  readonly hottestDay: number;
  /** Usual high of the hottest days, C. */
  readonly hottestHighC: number;
  /** Reference evapotranspiration by day of the season, mm a day. */
  readonly etoMm: readonly number[];
  /** First nights that a potted tree should meet before it is put away, and first nights before which it is in, by how ripe it is. */
  readonly nights: Readonly<Record<Ripeness, { readonly meets: SeasonDays; readonly before: SeasonDays }>>;
  /** Low of one winter in ten, C. */
  readonly winterLowC: number;
}

/** Seasons looked at: quantiles of 250 seasons differ from those of 1,000 by about a day. */
const SEASONS = 250;

const EVERGREEN_ABOVE_C = careFigures.evergreenAbove.low;

const NEVER = -1;

/** A share of years must see it before a date is given. */
function quantiles(happened: Int16Array, neverIs: 'late' | 'early'): SeasonDays {
  const sorted = happened
    .map(day => (day !== NEVER ? day : neverIs === 'late' ? DAYS_PER_YEAR : NEVER))
    .sort();
  const at = (p: number) => {
    const day = sorted[Math.max(0, Math.ceil(p * sorted.length) - 1)] as number;
    return day === DAYS_PER_YEAR || day === NEVER ? null : day;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

interface Happenings {
  nights: Record<Ripeness, { meets: Int16Array; before: Int16Array }>;
  leafFall: Int16Array;
  dormant: Int16Array;
  budbreak: Int16Array;
  riskFirst: Int16Array;
  riskLast: Int16Array;
  youngFirst: Int16Array;
  youngLast: Int16Array;
  oldFirst: Int16Array;
  oldLast: Int16Array;
}

/** One pass over the seasons. */
function watchSeasons(
  years: WeatherYears,
  species: Species,
  potLitres: number,
  heatFrom: number,
): Happenings {
  const seasons = Math.min(SEASONS, years.count);
  const empty = () => new Int16Array(seasons).fill(NEVER);
  const limits = ripenesses.map(name => ({ name, ...puttingAwayNightsC(name) }));
  const found: Happenings = {
    nights: Object.fromEntries(
      ripenesses.map(name => [name, { meets: empty(), before: empty() }]),
    ) as Happenings['nights'],
    leafFall: empty(),
    dormant: empty(),
    budbreak: empty(),
    riskFirst: empty(),
    riskLast: empty(),
    youngFirst: empty(),
    youngLast: empty(),
    oldFirst: empty(),
    oldLast: empty(),
  };
  const mark = (first: Int16Array, last: Int16Array, season: number, day: number) => {
    if (first[season] === NEVER) first[season] = day;
    last[season] = day;
  };
  const makeLeafFall = leafFall(leafFallFigures(species));
  const makeRest = restMet('in-pot');
  const makeBudbreak = budbreak(budbreakNeed(species));
  const rootC = species.rootInjuryC.value;
  const [youngC, oldC] = [species.dormantFirstWinterC.value, species.dormantEstablishedC.value];
  for (let season = 0; season < seasons; season += 1) {
    const mixOf = mixFollower(potLitres);
    const leavesFall = makeLeafFall();
    const sleeps = makeRest();
    const budsBreak = makeBudbreak();
    for (let day = 0; day < DAYS_PER_YEAR; day += 1) {
      const low = years.tminC[season * DAYS_PER_YEAR + day] as number;
      const high = years.tmaxC[season * DAYS_PER_YEAR + day] as number;
      const mean = (low + high) / 2;
      if (found.leafFall[season] === NEVER) {
        if (leavesFall(low, high, day)) found.leafFall[season] = day;
      } else if (found.dormant[season] === NEVER) {
        const since = day - (found.leafFall[season] as number) - 1;
        if (sleeps(low, high, since)) found.dormant[season] = day;
      }
      if (day >= heatFrom && found.budbreak[season] === NEVER) {
        if (budsBreak(low, high, day - heatFrom)) found.budbreak[season] = day;
      }
      for (const { name, meetsC, beforeC } of limits) {
        const { meets, before } = found.nights[name];
        if (low <= meetsC && meets[season] === NEVER) meets[season] = day;
        if (low <= beforeC && before[season] === NEVER) before[season] = day;
      }
      if (mixOf(mean) <= rootC) mark(found.riskFirst, found.riskLast, season, day);
      if (low <= youngC) mark(found.youngFirst, found.youngLast, season, day);
      if (low <= oldC) mark(found.oldFirst, found.oldLast, season, day);
    }
  }
  return found;
}

/** Half the window over which the coldest and hottest weeks are sought, days. */
const HALF_WINDOW = 15;

function extremeDay(values: readonly number[], sign: 1 | -1): number {
  const smoothed = values.map((_, day) => {
    let sum = 0;
    for (let i = -HALF_WINDOW; i <= HALF_WINDOW; i += 1)
      sum += values[(day + i + DAYS_PER_YEAR) % DAYS_PER_YEAR] as number;
    return sum * sign;
  });
  return smoothed.indexOf(Math.max(...smoothed));
}

/** The year of a species in a place. `potLitres` decides how soon an open pot is at risk. */
export function careYear(climate: CareClimate, species: Species, potLitres: number): CareYear {
  const { years, summary } = climate;
  const { firstDoy } = years;
  const [heatFrom] = heatCountsFrom(years, [chillNeed(species)], summary.chill.answer) as [number];
  const midwinter = daysForward(firstDoy, growingCalendar(years.lat).firstDoy);
  const found = watchSeasons(years, species, potLitres, midwinter + heatFrom);
  const toSeason = (text: string | null) =>
    text === null ? null : daysForward(firstDoy, doyFromMonthDay(text) as number);
  const freezes = (which: 'first' | 'last') =>
    Object.fromEntries(
      freezeThresholds.map(key => {
        const { p10, p50, p90 } = summary.freeze[key].answer[which];
        return [key, { p10: toSeason(p10), p50: toSeason(p50), p90: toSeason(p90) }];
      }),
    ) as Record<FreezeKey, SeasonDays>;
  const { lowC, highC } = summary.ribbon;
  const bySeason = (table: ArrayLike<number>) =>
    Array.from({ length: DAYS_PER_YEAR }, (_, day) => table[(firstDoy - 1 + day) % DAYS_PER_YEAR] as number);
  const highs = bySeason(highC);
  const lows = bySeason(lowC);
  const meanC = lows.map((low, day) => (low + (highs[day] as number)) / 2);
  const coldestDay = extremeDay(meanC, -1);
  const leafFall = quantiles(found.leafFall, 'late');
  return {
    placeId: climate.id,
    placeName: climate.name,
    placeClass: summary.class.answer,
    species,
    firstDoy,
    potLitres,
    firstFreeze: freezes('first'),
    lastFreeze: freezes('last'),
    leafFall,
    dormant: quantiles(found.dormant, 'late'),
    budbreak: quantiles(found.budbreak, 'late'),
    potRiskFirst: quantiles(found.riskFirst, 'late'),
    potRiskLast: quantiles(found.riskLast, 'early'),
    coldRiskFirst: {
      young: quantiles(found.youngFirst, 'late'),
      established: quantiles(found.oldFirst, 'late'),
    },
    coldRiskLast: {
      young: quantiles(found.youngLast, 'early'),
      established: quantiles(found.oldLast, 'early'),
    },
    evergreen: leafFall.p50 === null && (meanC[coldestDay] as number) >= EVERGREEN_ABOVE_C,
    meanC,
    coldestDay,
    hottestDay: extremeDay(meanC, 1),
    hottestHighC: Math.max(...highs),
    etoMm: lows.map((low, day) =>
      hargreavesEtoMm(years.lat, wrapDoy(firstDoy + day), low, highs[day] as number),
    ),
    nights: Object.fromEntries(
      ripenesses.map(name => {
        const { meets, before } = found.nights[name];
        return [name, { meets: quantiles(meets, 'late'), before: quantiles(before, 'late') }];
      }),
    ) as CareYear['nights'],
    winterLowC: summary.annualMinC.answer.p10,
  };
}
