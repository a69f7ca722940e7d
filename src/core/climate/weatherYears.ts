/**
 * Synthetic years of daily minimum and maximum temperature, drawn from monthly figures. Every climate statement about a
 * place is a quantile over them. Same figures, same years: on any machine, for ever, until `MODEL_VERSION` changes.
 *
 * Daily Tmin = curve + spread x z, where z remembers the days before it (`memory.ts`) and leans to the warm side. How far the result can be trusted is measured in `src/core/evidence`.
 */
import { randomFromText } from '../random.ts';
import { DAYS_PER_YEAR, seasonStartDoy, wrapDoy } from './calendar.ts';
import type { DailyNormals } from './dailySpread.ts';
import { dailyNormals } from './dailySpread.ts';
import type { ClimateFigures } from './figures.ts';
import { figuresFault } from './figures.ts';
import { memoryOf } from './memory.ts';

/** Goes into the seed, so that a change of the model never passes for a change of the weather. */
export const MODEL_VERSION = 1;

/** Seasons per place unless asked otherwise. */
export const DEFAULT_SEASONS = 1000;

/**
 * Skewness of daily anomalies: the coldest nights are less extreme than a symmetrical distribution has them. Chosen by
 * the errors of freeze dates and winter lows at 44 stations. Standing: ours.
 */
const SKEWNESS = 0.2;

/** Correlation of the same day's Tmin and Tmax anomalies. Standing: ours, from long daily records. */
const TMIN_TMAX_CORRELATION = 0.5;

export interface WeatherYears {
  /** Degrees north; negative south. */
  readonly lat: number;
  /** Day of the year on which every season starts (24 July north, 24 January south). */
  readonly firstDoy: number;
  /** Number of seasons of 365 days. */
  readonly count: number;
  /** Daily minima, C, one unbroken series of `count * 365` days: season n starts at `n * 365`. */
  readonly tminC: Float32Array;
  /** Daily maxima of the same days, never below the minima. */
  readonly tmaxC: Float32Array;
  /** True when a standard deviation was estimated from the monthly means rather than given. */
  readonly spreadEstimated: boolean;
}

/** A text that is equal for two places exactly when their weather years are: for seeds and for keeping results. */
export function weatherKey(figures: ClimateFigures, count: number = DEFAULT_SEASONS): string {
  const { lat, tmaxC, tminC, sdTminC, sdTmaxC, sdAbout, lag1 } = figures;
  return JSON.stringify([MODEL_VERSION, count, lat, tmaxC, tminC, sdTminC, sdTmaxC, sdAbout, lag1]);
}

function inSeasonOrder({ meanC, sdC }: DailyNormals, firstDoy: number): DailyNormals {
  const rotated = (table: Float64Array) =>
    table.map((_, day) => table[wrapDoy(firstDoy + day) - 1] as number);
  return { meanC: rotated(meanC), sdC: rotated(sdC) };
}

/**
 * Draws `count` seasons for a place. Throws a RangeError for figures that cannot be modelled (see `figuresFault`).
 * Costs about 20 ms and 3 MB per 1,000 seasons.
 */
export function weatherYears(figures: ClimateFigures, count: number = DEFAULT_SEASONS): WeatherYears {
  const fault = figuresFault(figures);
  if (fault !== null) throw new RangeError(`climate figures: ${fault}`);
  const random = randomFromText(weatherKey(figures, count));
  const firstDoy = seasonStartDoy(figures.lat);
  const { meanC: lowC, sdC: lowSdC } = inSeasonOrder(dailyNormals(figures, 'tmin'), firstDoy);
  const { meanC: highC, sdC: highSdC } = inSeasonOrder(dailyNormals(figures, 'tmax'), firstDoy);
  const { quickLag, slowLag, quickWeight, slowWeight } = memoryOf(figures.lag1);
  const ownShare = Math.sqrt(1 - TMIN_TMAX_CORRELATION * TMIN_TMAX_CORRELATION);
  const lean = SKEWNESS / 6;
  const leanScale = 1 / Math.sqrt(1 + 2 * lean * lean);
  const tminC = new Float32Array(count * DAYS_PER_YEAR);
  const tmaxC = new Float32Array(count * DAYS_PER_YEAR);
  const chance = new Float64Array(2 * DAYS_PER_YEAR);
  let nightQuick = 0;
  let nightSlow = 0;
  let ownQuick = 0;
  let ownSlow = 0;
  // Season -1 is drawn and thrown away, so that the first day kept is as free as any other.
  for (let season = -1; season < count; season += 1) {
    random.fillNormal(chance);
    const from = season * DAYS_PER_YEAR;
    for (let day = 0; day < DAYS_PER_YEAR; day += 1) {
      const nightChance = chance[2 * day] as number;
      const ownChance = chance[2 * day + 1] as number;
      nightQuick = quickLag * nightQuick + nightChance;
      nightSlow = slowLag * nightSlow + nightChance;
      ownQuick = quickLag * ownQuick + ownChance;
      ownSlow = slowLag * ownSlow + ownChance;
      if (season < 0) continue;
      const night = quickWeight * nightQuick + slowWeight * nightSlow;
      const own = quickWeight * ownQuick + slowWeight * ownSlow;
      const leaning = leanScale * (night + lean * (night * night - 1));
      const both = TMIN_TMAX_CORRELATION * night + ownShare * own;
      const minimum = (lowC[day] as number) + (lowSdC[day] as number) * leaning;
      const maximum = (highC[day] as number) + (highSdC[day] as number) * both;
      tminC[from + day] = minimum;
      tmaxC[from + day] = Math.max(maximum, minimum);
    }
  }
  const spreadEstimated = figures.sdTminC === null || figures.sdTmaxC === null;
  return { lat: figures.lat, firstDoy, count, tminC, tmaxC, spreadEstimated };
}
