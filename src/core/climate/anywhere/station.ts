/** A weather station as the figures of any point are worked out from it. */

/** Period a station's monthly means are of. */
export type StationPeriod = '1981-2010' | '2003-2021';

/** Official freeze dates at 32 F, days of the year (1 to 365); null where that share of years has no such date. */
export interface OfficialFreeze {
  /** Early date of the last freeze of spring: nine years in ten have a later one. */
  readonly last: { readonly p10: number | null; readonly p50: number | null };
  /** Late date of the first freeze of fall: nine years in ten have an earlier one. */
  readonly first: { readonly p50: number | null; readonly p90: number | null };
}

/**
 * How much wider or narrower the spread of nights must be taken in each season for the model to meet what the station observed; null where
 * nothing observed tells.
 */
export interface ObservedFactors {
  readonly spring: number | null;
  readonly fall: number | null;
  readonly winter: number | null;
}

export interface Station {
  /** GHCN id (eleven signs) or WMO number (five digits). */
  readonly id: string;
  readonly name: string;
  /** Postal code of the state in the United States, empty elsewhere. */
  readonly region: string;
  /** ISO 3166 code. */
  readonly country: string;
  /** Degrees, south and west negative. */
  readonly lat: number;
  readonly lon: number;
  readonly elevationM: number;
  readonly period: StationPeriod;
  /** Mean daily minimum and maximum of each month, C, January first. */
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  readonly rainMm: readonly number[] | null;
  /** Standard deviation of daily means within the month, C. */
  readonly sdMeanC: readonly number[] | null;
  /** Mean vapor pressure of each month, hPa. */
  readonly vaporHpa: readonly number[] | null;
  /** Official dates of 1981-2010; null where none were published. */
  readonly official: OfficialFreeze | null;
  /** Official growing degree days a year above 50 F, 1981-2010. */
  readonly gdd50F: number | null;
  /** Mean of the coldest night of each winter, C, and of how many winters. */
  readonly coldestNightC: number | null;
  readonly winters: number;
  /** Years of reports behind the means; 30 for the normals. */
  readonly years: number;
  readonly factors: ObservedFactors | null;
}
