/**
 * Synthetic years of daily minimum and maximum temperature, drawn from monthly figures. Every climate statement about a
 * place is a quantile over them. Same figures, same years: on any machine, for ever, until `MODEL_VERSION` changes.
 *
 * Daily Tmin = curve + spread x z, where z keeps part of yesterday's value (first-order autoregression) and leans to the
 * warm side. How far the result can be trusted is measured in `src/core/evidence`.
 */
import { randomFromText } from '../random.ts';
import { DAYS_PER_YEAR, seasonStartDoy, wrapDoy } from './calendar.ts';
import type { DailyNormals } from './dailySpread.ts';
import { dailyNormals } from './dailySpread.ts';
import type { ClimateFigures } from './figures.ts';
import { figuresFault } from './figures.ts';

/** Goes into the seed, so that a change of the model never passes for a change of the weather. */
export const MODEL_VERSION = 1;

/** Seasons per place unless asked otherwise. */
export const DEFAULT_SEASONS = 1000;

/**
 * Share of a day's anomaly kept the next day when the place does not give its own. Stations measure 0.53 to 0.79; this
 * value gave the smallest freeze date errors over 44 of them. Standing: ours.
 */
const DEFAULT_LAG1 = 0.65;

/**
 * Skewness of daily anomalies: the coldest nights are less extreme than a symmetrical distribution has them. Chosen by
 * the errors of freeze dates and winter lows at 44 stations. Standing: ours.
 */
const SKEWNESS = 0.2;

/** Correlation of the same day's Tmin and Tmax anomalies. Standing: ours, from long daily records. */
const TMIN_TMAX_CORRELATION = 0.65;

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
  const low = inSeasonOrder(dailyNormals(figures, 'tmin'), firstDoy);
  const high = inSeasonOrder(dailyNormals(figures, 'tmax'), firstDoy);
  const lag = figures.lag1 ?? DEFAULT_LAG1;
  const fresh = Math.sqrt(1 - lag * lag);
  const ownShare = Math.sqrt(1 - TMIN_TMAX_CORRELATION * TMIN_TMAX_CORRELATION);
  const lean = SKEWNESS / 6;
  const leanScale = 1 / Math.sqrt(1 + 2 * lean * lean);
  const tminC = new Float32Array(count * DAYS_PER_YEAR);
  const tmaxC = new Float32Array(count * DAYS_PER_YEAR);
  const chance = new Float64Array(2 * DAYS_PER_YEAR);
  let night = 0;
  let own = 0;
  // Season -1 is drawn and thrown away, so that the first day kept is as free as any other.
  for (let season = -1; season < count; season += 1) {
    random.fillNormal(chance);
    const from = season * DAYS_PER_YEAR;
    for (let day = 0; day < DAYS_PER_YEAR; day += 1) {
      night = lag * night + fresh * (chance[2 * day] as number);
      own = lag * own + fresh * (chance[2 * day + 1] as number);
      if (season < 0) continue;
      const leaning = leanScale * (night + lean * (night * night - 1));
      const both = TMIN_TMAX_CORRELATION * night + ownShare * own;
      const minimum = (low.meanC[day] as number) + (low.sdC[day] as number) * leaning;
      const maximum = (high.meanC[day] as number) + (high.sdC[day] as number) * both;
      tminC[from + day] = minimum;
      tmaxC[from + day] = Math.max(maximum, minimum);
    }
  }
  const spreadEstimated = figures.sdTminC === null || figures.sdTmaxC === null;
  return { lat: figures.lat, firstDoy, count, tminC, tmaxC, spreadEstimated };
}
