/**
 * What the climate of a place is computed from: monthly figures and whatever has been published about it.
 * Independent of how a place record is written. Temperatures in C, rain in mm, months January to December.
 */

/** Freeze thresholds reported, in whole degrees F as the agencies do. A night at or below the threshold is a freeze. */
export const freezeThresholdsF = [36, 32, 28, 24, 20] as const;
export type FreezeThresholdF = (typeof freezeThresholdsF)[number];

/**
 * Dates `MM-DD` by which the thing has happened in 10, 50 and 90 of 100 years, in the order of the season: p10 is always
 * the early date and p90 the late one, for last freezes too (agencies often name those the other way round, by the risk
 * of a later one). Null where that share of years does not reach it.
 */
export interface DateQuantiles {
  readonly p10: string | null;
  readonly p50: string | null;
  readonly p90: string | null;
}

/** The same as published: the outer dates are left out where only the middle one is known. */
export interface PublishedDates {
  readonly p10?: string | null | undefined;
  readonly p50: string | null;
  readonly p90?: string | null | undefined;
}

/** Published first and last freeze dates at one threshold. */
export interface PublishedFreeze {
  readonly first: PublishedDates;
  readonly last: PublishedDates;
  /** Share of years without such a freeze, 0 to 1; null when the source does not say. */
  readonly none: number | null;
  /** Publication and period. */
  readonly source: string;
}

/** Published length of the season between last and first freeze, in days, at 32 F; p10 is the short season. */
interface PublishedSeason {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly source: string;
}

interface PublishedWinterZone {
  /** `1a` to `13b` */
  readonly zone: string;
  /** How the zone was found, in words, for instance `2023 map` or `computed by the map's definition`. */
  readonly basis: string;
  readonly source: string;
}

/** Mean of the coldest Tmin of each winter, and the winter low expected in one year in ten where it is known. */
interface PublishedAnnualMin {
  readonly meanC: number;
  readonly p10C: number | null;
  readonly source: string;
}

/** Figures published about the place. They win over modeled ones. */
export interface PublishedClimate {
  readonly freeze: ReadonlyMap<FreezeThresholdF, PublishedFreeze>;
  readonly season: PublishedSeason | null;
  readonly winterZone: PublishedWinterZone | null;
  readonly annualMin: PublishedAnnualMin | null;
}

export const nothingPublished: PublishedClimate = {
  freeze: new Map(),
  season: null,
  winterZone: null,
  annualMin: null,
};

export interface ClimateFigures {
  /** Degrees north, negative south of the equator. */
  readonly lat: number;
  /** Mean daily maximum of each month, C. */
  readonly tmaxC: readonly number[];
  /** Mean daily minimum of each month, C. */
  readonly tminC: readonly number[];
  readonly rainMm: readonly number[] | null;
  readonly dewPointC: readonly number[] | null;
  /** Standard deviation of the daily minimum within each month, C; null when unknown (it is then estimated). */
  readonly sdTminC: readonly number[] | null;
  /** The same of the daily maximum. */
  readonly sdTmaxC: readonly number[] | null;
  /**
   * What the standard deviations were taken about: the `month` mean (so that they hold the drift of the season through
   * the month, as in USDA CLIGEN station files), or the smooth daily `curve` (as in NOAA's daily normals).
   */
  readonly sdAbout: 'month' | 'curve';
  /** Correlation of the Tmin anomaly with the day before, 0 to 1; null when unknown. */
  readonly lag1: number | null;
  readonly published: PublishedClimate;
}

/**
 * Whether the figures can be modeled; the reason in words when not. Ranges that ask "is this Fahrenheit?" belong to the
 * reading of place records; this is the last line of defence.
 */
export function figuresFault(figures: ClimateFigures): string | null {
  const { lat, tmaxC, tminC } = figures;
  if (!Number.isFinite(lat) || Math.abs(lat) > 90) return `latitude ${lat} is outside -90 to 90`;
  const monthly: [string, readonly number[] | null][] = [
    ['mean daily maximum', tmaxC],
    ['mean daily minimum', tminC],
    ['rain', figures.rainMm],
    ['dew point', figures.dewPointC],
    ['standard deviation of Tmin', figures.sdTminC],
    ['standard deviation of Tmax', figures.sdTmaxC],
  ];
  for (const [what, values] of monthly) {
    if (values !== null && (values.length !== 12 || !values.every(Number.isFinite))) {
      return `${what}: twelve monthly numbers are needed, got ${values.length}`;
    }
  }
  const crossed = tminC.findIndex((low, month) => low > (tmaxC[month] as number));
  if (crossed >= 0) return `month ${crossed + 1}: the minimum is above the maximum`;
  if ([figures.sdTminC, figures.sdTmaxC].some(sd => sd?.some(value => value < 0))) {
    return 'a standard deviation is negative';
  }
  if (figures.lag1 !== null && !(figures.lag1 >= 0 && figures.lag1 < 1))
    return `lag ${figures.lag1} is outside 0 to 1`;
  return null;
}
