/**
 * The year of one species in one place, as days of the season: when leaves fall, when it is dormant, when buds break, when a pot is at
 * risk, when frosts come and go. Everything the calendars schedule is read off this.
 */

import { DAYS_PER_YEAR, daysForward, wrapDoy } from '../climate/calendar.ts';
import { hargreavesEtoMm } from '../climate/evapotranspiration.ts';
import type { ClimateSummary, FreezeKey } from '../climate/summary.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { doyFromMonthDay } from '../days.ts';
import { type ChillOfPlace, chillNeed } from '../phenology/chill.ts';
import { growingCalendar } from '../phenology/growingYear.ts';
import { heatCountsFrom } from '../phenology/heatStart.ts';
import { type Ripeness, ripenesses } from '../phenology/puttingAway.ts';
import type { PlaceClass } from '../records/cultivar.ts';
import { freezeThresholds } from '../records/freezeNames.ts';
import type { Species } from '../records/species.ts';
import { careFigures } from './careFigures.ts';
import { type BySeason, NEVER, watchSeasons } from './seasonWatch.ts';

/** Days of the season (0 on July 24, January 24 south) by which it has happened in 1, 5 and 9 years in ten; null where it has not. */
export interface SeasonDays {
  readonly p10: number | null;
  readonly p50: number | null;
  readonly p90: number | null;
}

/** What is asked of the climate of a place beside its weather years. */
export interface CareSummary extends Pick<ClimateSummary, 'freeze' | 'annualMinC' | 'class'> {
  readonly chill: { readonly answer: ChillOfPlace };
  readonly ribbon: Pick<ClimateSummary['ribbon'], 'lowC' | 'highC'>;
}

export interface CareClimate {
  readonly id: string;
  /** Name of the place as a sentence uses it. */
  readonly name: string;
  readonly years: WeatherYears;
  readonly summary: CareSummary;
}

export interface CareYear {
  readonly placeId: string;
  readonly placeName: string;
  readonly placeClass: PlaceClass;
  readonly species: Species;
  readonly firstDoy: number;
  readonly potLiters: number;
  readonly firstFreeze: Readonly<Record<FreezeKey, SeasonDays>>;
  /** p90: after it a later freeze comes in 1 year in 10. */
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

const EVERGREEN_ABOVE_C = careFigures.evergreenAbove.low;

/** A share of years must see it before a date is given. */
function quantiles(happened: BySeason, neverIs: 'late' | 'early'): SeasonDays {
  const sorted = happened
    .map(day => (day !== NEVER ? day : neverIs === 'late' ? DAYS_PER_YEAR : NEVER))
    .sort();
  const at = (p: number) => {
    const day = sorted[Math.max(0, Math.ceil(p * sorted.length) - 1)] as number;
    return day === DAYS_PER_YEAR || day === NEVER ? null : day;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
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

/** The year of a species in a place. `potLiters` decides how soon an open pot is at risk. */
export function careYear(climate: CareClimate, species: Species, potLiters: number): CareYear {
  const { years, summary } = climate;
  const { firstDoy } = years;
  const [heatFrom] = heatCountsFrom(years, [chillNeed(species)], summary.chill.answer) as [number];
  const midwinter = daysForward(firstDoy, growingCalendar(years.lat).firstDoy);
  const found = watchSeasons(years, species, potLiters, midwinter + heatFrom);
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
    potLiters,
    firstFreeze: freezes('first'),
    lastFreeze: freezes('last'),
    leafFall,
    dormant: quantiles(found.dormant, 'late'),
    budbreak: quantiles(found.budbreak, 'late'),
    potRiskFirst: quantiles(found.pot.first, 'late'),
    potRiskLast: quantiles(found.pot.last, 'early'),
    coldRiskFirst: {
      young: quantiles(found.young.first, 'late'),
      established: quantiles(found.established.first, 'late'),
    },
    coldRiskLast: {
      young: quantiles(found.young.last, 'early'),
      established: quantiles(found.established.last, 'early'),
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
