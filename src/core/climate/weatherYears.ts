/**
 * Synthetic years of daily minimum and maximum temperature, drawn from monthly figures. Every climate statement about a
 * place is a quantile over them. Same figures, same years: on any machine, for ever, until `MODEL_VERSION` changes.
 *
 * Daily Tmin = curve + spread x z, where z remembers the days before it (`memory.ts`) and leans to the warm side. How far the result can be trusted is measured in `src/core/evidence`.
 */
import type { Random } from '../random.ts';
import { randomFromText } from '../random.ts';
import { DAYS_PER_YEAR, seasonStartDoy, wrapDoy } from './calendar.ts';
import type { DailyNormals } from './dailySpread.ts';
import { dailyNormals, ESTIMATE_VERSION } from './dailySpread.ts';
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
  /** Day of the year on which every season starts (July 24 north, January 24 south). */
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
  const { lat, tmaxC, tminC, sdTminC, sdTmaxC, sdAbout, lag1, published } = figures;
  // A published coldest night has a say in the spread only where the spread is estimated.
  const coldestNight = sdTminC === null && published.annualMin ? [published.annualMin.meanC] : [];
  const estimate = sdTminC === null || sdTmaxC === null ? [ESTIMATE_VERSION] : [];
  const drawnFrom = [lat, tmaxC, tminC, sdTminC, sdTmaxC, sdAbout, lag1, ...coldestNight, ...estimate];
  return JSON.stringify([MODEL_VERSION, count, ...drawnFrom]);
}

function inSeasonOrder({ meanC, sdC }: DailyNormals, firstDoy: number): DailyNormals {
  const rotated = (table: Float64Array) =>
    table.map((_, day) => table[wrapDoy(firstDoy + day) - 1] as number);
  return { meanC: rotated(meanC), sdC: rotated(sdC) };
}

/** Fills a season at a time with anomalies of unit variance that remember the days before them. */
function anomalies(random: Random, lag1: number | null): (into: Float64Array) => void {
  const { quickLag, slowLag, quickWeight, slowWeight } = memoryOf(lag1);
  const carried = new Float64Array(2);
  return into => {
    random.fillNormal(into);
    let quick = carried[0] as number;
    let slow = carried[1] as number;
    for (let day = 0; day < into.length; day += 1) {
      const chance = into[day] as number;
      quick = quickLag * quick + chance;
      slow = slowLag * slow + chance;
      into[day] = quickWeight * quick + slowWeight * slow;
    }
    carried[0] = quick;
    carried[1] = slow;
  };
}

interface SeasonParts {
  readonly low: DailyNormals;
  readonly high: DailyNormals;
  /** Anomalies of the nights, and the days' own part of theirs. */
  readonly nights: Float64Array;
  readonly own: Float64Array;
}

const OWN_SHARE = Math.sqrt(1 - TMIN_TMAX_CORRELATION * TMIN_TMAX_CORRELATION);
/** Weight of the squared anomaly that gives the skewness (Cornish and Fisher 1938), and the scale that keeps unit variance. */
const LEAN = SKEWNESS / 6;
const LEAN_SCALE = 1 / Math.sqrt(1 + 2 * LEAN * LEAN);

/** Writes one season of minima and maxima; with sign -1 the mirror image of its anomalies. */
function writeSeason(
  { low, high, nights, own }: SeasonParts,
  sign: 1 | -1,
  tminC: Float32Array,
  tmaxC: Float32Array,
  from: number,
): void {
  const { meanC: lowC, sdC: lowSdC } = low;
  const { meanC: highC, sdC: highSdC } = high;
  for (let day = 0; day < DAYS_PER_YEAR; day += 1) {
    const night = sign * (nights[day] as number);
    const leaning = LEAN_SCALE * (night + LEAN * (night * night - 1));
    const both = TMIN_TMAX_CORRELATION * night + OWN_SHARE * sign * (own[day] as number);
    const minimum = (lowC[day] as number) + (lowSdC[day] as number) * leaning;
    const maximum = (highC[day] as number) + (highSdC[day] as number) * both;
    tminC[from + day] = minimum;
    tmaxC[from + day] = Math.max(maximum, minimum);
  }
}

/**
 * Draws `count` seasons for a place. The second half mirrors the first: where the one is mild the other is as much colder,
 * so that means and middle dates hardly depend on the luck of the draw (antithetic variates, Hammersley and Morton 1956).
 * Throws a RangeError for figures that cannot be modeled (see `figuresFault`).
 * Costs about 10 ms and 3 MB per 1,000 seasons.
 */
export function weatherYears(figures: ClimateFigures, count: number = DEFAULT_SEASONS): WeatherYears {
  const fault = figuresFault(figures);
  if (fault !== null) throw new RangeError(`climate figures: ${fault}`);
  const firstDoy = seasonStartDoy(figures.lat);
  const low = inSeasonOrder(dailyNormals(figures, 'tmin'), firstDoy);
  const high = inSeasonOrder(dailyNormals(figures, 'tmax'), firstDoy);
  const tminC = new Float32Array(count * DAYS_PER_YEAR);
  const tmaxC = new Float32Array(count * DAYS_PER_YEAR);
  const nights = new Float64Array(DAYS_PER_YEAR);
  const own = new Float64Array(DAYS_PER_YEAR);
  const parts: SeasonParts = { low, high, nights, own };
  const random = randomFromText(weatherKey(figures, count));
  const nextNights = anomalies(random, figures.lag1);
  const nextOwn = anomalies(random, figures.lag1);
  // A season is drawn and thrown away, so that the first day kept is as free as any other.
  nextNights(nights);
  nextOwn(own);
  const half = Math.ceil(count / 2);
  for (let season = 0; season < half; season += 1) {
    nextNights(nights);
    nextOwn(own);
    writeSeason(parts, 1, tminC, tmaxC, season * DAYS_PER_YEAR);
    const mirrored = half + season;
    if (mirrored < count) writeSeason(parts, -1, tminC, tmaxC, mirrored * DAYS_PER_YEAR);
  }
  const spreadEstimated = figures.sdTminC === null || figures.sdTmaxC === null;
  return { lat: figures.lat, firstDoy, count, tminC, tmaxC, spreadEstimated };
}
