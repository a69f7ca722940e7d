/** The answers of a climate that a match needs, read off weather years alone: for points with no published figures. */
import { type ClimateFigures, freezeThresholdsF } from '../climate/figures.ts';
import { findWinters, freezeOdds, seasonDays } from '../climate/freezes.ts';
import {
  airClass,
  ripeningAir,
  seasonClass,
  summerClass,
  winklerDegreeDaysC,
  winterClass,
} from '../climate/placeClass.ts';
import type { Spread } from '../climate/quantiles.ts';
import type { ClimateStanding, FreezeKey } from '../climate/summary.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { halfZoneIndex, winterLow } from '../climate/winterZone.ts';
import type { ChillOfPlace } from '../phenology/chill.ts';
import type { PlaceClimate } from './placeOutlook.ts';

export interface ModeledClimate extends PlaceClimate {
  /** Days between last and first freeze at 32 F; p10 is the short season. */
  readonly season: Spread;
}

export interface Modeled {
  readonly figures: ClimateFigures;
  readonly years: WeatherYears;
  /** Usual coldest night of a winter, C, where it is known otherwise; null takes that of the years. */
  readonly coldestC: number | null;
  readonly chill: PlaceClimate['chill'] | ChillOfPlace;
  readonly standing: ClimateStanding;
  /** How it was modeled, in words for people. */
  readonly source: string;
}

/** Freezes, coldest night, season and class of a point. */
export function modeledClimate({
  figures,
  years,
  coldestC,
  chill,
  standing,
  source,
}: Modeled): ModeledClimate {
  const winters = findWinters(years);
  const { meanC, p10C } = winterLow(winters);
  const mean = coldestC ?? meanC;
  const answer = <T>(value: T) => ({ answer: value, standing, source });
  const freeze = Object.fromEntries(
    freezeThresholdsF.map(thresholdF => [`${thresholdF}F`, answer(freezeOdds(winters, thresholdF))]),
  ) as Record<FreezeKey, PlaceClimate['freeze'][FreezeKey]>;
  const season = seasonDays(winters);
  return {
    freeze,
    annualMinC: answer({ mean, p10: mean + p10C - meanC }),
    chill: 'answer' in chill ? chill : answer(chill),
    class: answer({
      winter: winterClass(halfZoneIndex(mean)),
      season: seasonClass(season.p50),
      summer: summerClass(winklerDegreeDaysC(figures)),
      air: airClass(ripeningAir(figures)),
    }),
    season,
  };
}
