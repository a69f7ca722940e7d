/** What happens to a tree in each of many seasons, as days of the season: one look through the weather years for each thing asked. */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { DayRule } from '../climate/forecast.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { budbreak, budbreakNeed } from '../phenology/budbreak.ts';
import { restMet } from '../phenology/dormancy.ts';
import { leafFallFigures, leafFallOn } from '../phenology/leafFall.ts';
import { puttingAwayNightsC, type Ripeness, ripenesses } from '../phenology/puttingAway.ts';
import type { Species } from '../records/species.ts';
import { mixFollower } from './potFreeze.ts';

/** Seasons looked at: quantiles of 250 seasons differ from those of 1,000 by about a day. */
const SEASONS = 250;

/** Stands for a season in which a thing does not happen. */
export const NEVER = -1;

/** A day for each season. */
export type BySeason = Int16Array;

interface FirstAndLast {
  readonly first: BySeason;
  readonly last: BySeason;
}

export interface Happenings {
  /** First night that a tree should meet before it is put away, and first night before which it is in. */
  readonly nights: Readonly<Record<Ripeness, { readonly meets: BySeason; readonly before: BySeason }>>;
  readonly leafFall: BySeason;
  readonly dormant: BySeason;
  readonly budbreak: BySeason;
  /** Days on which the mix in an open pot is at the limit of the roots or below. */
  readonly pot: FirstAndLast;
  /** Nights that dormant wood does not stand: in its first winter in the ground, and established. */
  readonly young: FirstAndLast;
  readonly established: FirstAndLast;
}

type Series = Pick<WeatherYears, 'tminC' | 'tmaxC'>;

/** First place from `from` to before `to` with a low at or below a limit; `to` when there is none. */
function firstNight(tminC: Float32Array, from: number, to: number, limitC: number): number {
  let at = from;
  while (at < to && (tminC[at] as number) > limitC) at += 1;
  return at;
}

function firstNights(tminC: Float32Array, seasons: number, limitC: number): BySeason {
  return Int16Array.from({ length: seasons }, (_, season) => {
    const from = season * DAYS_PER_YEAR;
    const day = firstNight(tminC, from, from + DAYS_PER_YEAR, limitC) - from;
    return day === DAYS_PER_YEAR ? NEVER : day;
  });
}

function nightsAtOrBelow(tminC: Float32Array, seasons: number, limitC: number): FirstAndLast {
  const first = firstNights(tminC, seasons, limitC);
  const last = first.map((day, season) => {
    if (day === NEVER) return NEVER;
    let at = DAYS_PER_YEAR - 1;
    while ((tminC[season * DAYS_PER_YEAR + at] as number) > limitC) at -= 1;
    return at;
  });
  return { first, last };
}

/** Days on which the mix of an open pot is at or below a limit. */
function potDays({ tminC, tmaxC }: Series, seasons: number, liters: number, limitC: number): FirstAndLast {
  const first = new Int16Array(seasons).fill(NEVER);
  const last = new Int16Array(seasons).fill(NEVER);
  const meanC = (at: number) => ((tminC[at] as number) + (tmaxC[at] as number)) / 2;
  // A mix is no colder than the mean of the last two days until it begins to freeze.
  const matters = Math.max(0, limitC);
  for (let season = 0; season < seasons; season += 1) {
    const from = season * DAYS_PER_YEAR;
    const to = from + DAYS_PER_YEAR;
    let start = from;
    while (start < to && meanC(start) > matters) start += 1;
    if (start === to) continue;
    const mixOf = mixFollower(liters);
    for (let at = Math.max(from, start - 1); at < to; at += 1) {
      if (mixOf(meanC(at)) > limitC) continue;
      if (first[season] === NEVER) first[season] = at - from;
      last[season] = at - from;
    }
  }
  return { first, last };
}

/** The day on which a rule comes true that is started anew in each season on a day of it; never where it is not started. */
function ruleDays(
  { tminC, tmaxC }: Series,
  seasons: number,
  startOn: (season: number) => number | null,
  makeRule: () => DayRule,
): BySeason {
  return Int16Array.from({ length: seasons }, (_, season) => {
    const start = startOn(season);
    if (start === null) return NEVER;
    const rule = makeRule();
    const from = season * DAYS_PER_YEAR;
    for (let day = start; day < DAYS_PER_YEAR; day += 1) {
      if (rule(tminC[from + day] as number, tmaxC[from + day] as number, day - start)) return day;
    }
    return NEVER;
  });
}

function leafFalls(years: Series, seasons: number, species: Species): BySeason {
  const figures = leafFallFigures(species);
  return Int16Array.from({ length: seasons }, (_, season) => {
    const day = leafFallOn({ ...years, from: season * DAYS_PER_YEAR }, 0, DAYS_PER_YEAR, figures);
    return day === DAYS_PER_YEAR ? NEVER : day;
  });
}

/** Looks through the first seasons. `heatFrom` is the day of the season from which heat counts toward budbreak. */
export function watchSeasons(
  years: WeatherYears,
  species: Species,
  potLiters: number,
  heatFrom: number,
): Happenings {
  const { tminC, tmaxC } = years;
  const series = { tminC, tmaxC };
  const seasons = Math.min(SEASONS, years.count);
  const nightsOf = (name: Ripeness) => {
    const { meetsC, beforeC } = puttingAwayNightsC(name);
    return { meets: firstNights(tminC, seasons, meetsC), before: firstNights(tminC, seasons, beforeC) };
  };
  const leafFall = leafFalls(series, seasons, species);
  const afterLeafFall = (season: number) => {
    const day = leafFall[season] as number;
    return day === NEVER ? null : day + 1;
  };
  return {
    nights: Object.fromEntries(ripenesses.map(name => [name, nightsOf(name)])) as Happenings['nights'],
    leafFall,
    dormant: ruleDays(series, seasons, afterLeafFall, restMet('in-pot')),
    budbreak: ruleDays(series, seasons, () => heatFrom, budbreak(budbreakNeed(species))),
    pot: potDays(series, seasons, potLiters, species.rootInjuryC.value),
    young: nightsAtOrBelow(tminC, seasons, species.dormantFirstWinterC.value),
    established: nightsAtOrBelow(tminC, seasons, species.dormantEstablishedC.value),
  };
}
