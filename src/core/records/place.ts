/** A reference climate. File: content/places/ID.yaml. */

import { z } from 'zod';
import { fahrenheitToCelsius } from '../units.ts';
import { oneUnit, text } from './common.ts';
import { type FreezeThreshold, freezeThresholds } from './freezeNames.ts';

const months = (description: string, low: number, high: number) =>
  z
    .array(z.number().min(low).max(high))
    .length(12)
    .describe(`${description} Twelve numbers, January to December.`);
export const monthDayPattern = /^(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/;
export const countryPattern = /^[A-Z]{2}$/;
export const zonePattern = /^(?:[1-9]|1[0-3])[ab]$/;
export const dailyNamePattern = /^[a-z0-9][a-z0-9.-]*\.csv$/;

const monthDay = z
  .string()
  .regex(monthDayPattern)
  .nullable()
  .describe('MM-DD in quotes, or null when it does not happen that often.');

const freezeDates = z.strictObject({
  p10: monthDay.optional(),
  p50: monthDay,
  p90: monthDay.optional(),
});

export { type FreezeThreshold, freezeThresholds } from './freezeNames.ts';

/** What a standard deviation of daily values may have been taken about. */
export const sdReferences = ['month', 'curve'] as const;
type SdReference = (typeof sdReferences)[number];

const freezeAt = z
  .strictObject({
    first: freezeDates
      .describe(
        'First freeze of fall: p10 is the early date (10 % of years earlier), p90 the late one. Leave out p10 or p90 when only the middle date is published.',
      )
      .optional(),
    last: freezeDates
      .describe('Last freeze of spring: p90 is the cautious date (10 % of years later).')
      .optional(),
    none: z.number().min(0).max(1).describe('Share of years without such a freeze.').optional(),
  })
  .optional();

export const writtenPlace = z
  .strictObject({
    name: text('Name of the place.', 80),
    region: text('State, province or part of the country.', 80),
    country: z.string().regex(countryPattern).describe('ISO 3166 two-letter code, such as US.'),
    lat: z.number().min(-90).max(90).describe('Latitude in degrees, south negative.'),
    lon: z.number().min(-180).max(180).describe('Longitude in degrees, west negative.'),
    elevation_m: z.number().min(-450).max(6000).describe('Height above the sea, m.'),
    tmax_c: months('Mean daily maximum, C.', -60, 60).optional(),
    tmin_c: months('Mean daily minimum, C.', -70, 50).optional(),
    tmax_f: months('Mean daily maximum, F.', -80, 140).optional(),
    tmin_f: months('Mean daily minimum, F.', -95, 125).optional(),
    rain_mm: months('Rain and melted snow, mm.', 0, 3000).optional(),
    rain_in: months('Rain and melted snow, in.', 0, 120).optional(),
    dew_c: months('Mean dew point, C.', -70, 40).optional(),
    sd: z
      .strictObject({
        tmin_c: months('Standard deviation of daily minima, C.', 0, 20),
        tmax_c: months('Standard deviation of daily maxima, C.', 0, 20),
        about: z
          .enum(sdReferences)
          .describe(
            'month: taken about the mean of the month, as in CLIGEN station files (when left out); curve: about a smooth daily curve, as in daily normals.',
          )
          .optional(),
        source: text('Where these come from.'),
      })
      .describe('How much single days differ from the mean; estimated when left out.')
      .optional(),
    lag1: z
      .number()
      .min(0)
      .max(0.95)
      .describe("Correlation of one day's departure with the next; the usual value when left out.")
      .optional(),
    freeze: z
      .strictObject({
        '36F': freezeAt,
        '32F': freezeAt,
        '28F': freezeAt,
        '24F': freezeAt,
        '20F': freezeAt,
        source: text('Where the freeze dates are published.'),
      })
      .describe('Published freeze dates; they win over modeled ones.')
      .optional(),
    winter_zone: z
      .strictObject({
        zone: z.string().regex(zonePattern).describe('Winter zone, such as 6b.'),
        basis: text('Which map or which record it is read from.'),
      })
      .optional(),
    annual_min_c: z
      .strictObject({
        mean: z.number().min(-70).max(30).describe('Mean of the coldest night of each year, C.'),
        source: text('Where it comes from.'),
      })
      .optional(),
    daily: z
      .string()
      .regex(dailyNamePattern)
      .describe(
        'A daily record in content/places (CSV with date, tmin_c, tmax_c, or _f), instead of monthly figures.',
      )
      .optional(),
    period: text('Years the figures are means of, such as 1991-2020.', 40),
    source: text('Who publishes the figures, and where.', 600),
    terms: text('Terms under which they may be used.', 300),
  })
  .check(oneUnit('tmax_c', 'tmax_f'))
  .check(oneUnit('tmin_c', 'tmin_f'))
  .check(oneUnit('rain_mm', 'rain_in'));

export type WrittenPlace = z.infer<typeof writtenPlace>;

/** `MM-DD`, or null when it does not happen that often; the outer dates are left out where only the middle one is published. */
type PublishedDates = z.infer<typeof freezeDates>;

export interface PublishedFreeze {
  first: PublishedDates | null;
  last: PublishedDates | null;
  /** Share of years without it; null when not published. */
  none: number | null;
}

export interface Place {
  id: string;
  name: string;
  region: string;
  country: string;
  lat: number;
  lon: number;
  elevationM: number;
  /** Twelve monthly means; empty until a daily record has been read into them. */
  tmaxC: number[];
  tminC: number[];
  rainMm: number[] | null;
  dewC: number[] | null;
  sd: { tminC: number[]; tmaxC: number[]; about: SdReference; source: string } | null;
  lag1: number | null;
  freeze: { source: string; at: Partial<Record<FreezeThreshold, PublishedFreeze>> } | null;
  winterZone: { zone: string; basis: string } | null;
  annualMin: { meanC: number; source: string } | null;
  daily: string | null;
  period: string;
  source: string;
  terms: string;
}

function inCelsius(inC: number[] | undefined, inF: number[] | undefined): number[] {
  return inC ?? inF?.map(fahrenheitToCelsius) ?? [];
}

/** A place with everything in C and mm. */
export function normalisePlace(id: string, written: WrittenPlace): Place {
  const { freeze } = written;
  const at: Partial<Record<FreezeThreshold, PublishedFreeze>> = {};
  for (const threshold of freezeThresholds) {
    const published = freeze?.[threshold];
    if (!published) continue;
    at[threshold] = {
      first: published.first ?? null,
      last: published.last ?? null,
      none: published.none ?? null,
    };
  }
  return {
    id,
    name: written.name,
    region: written.region,
    country: written.country,
    lat: written.lat,
    lon: written.lon,
    elevationM: written.elevation_m,
    tmaxC: inCelsius(written.tmax_c, written.tmax_f),
    tminC: inCelsius(written.tmin_c, written.tmin_f),
    rainMm: written.rain_mm ?? written.rain_in?.map(inches => inches * 25.4) ?? null,
    dewC: written.dew_c ?? null,
    sd: written.sd
      ? {
          tminC: written.sd.tmin_c,
          tmaxC: written.sd.tmax_c,
          about: written.sd.about ?? 'month',
          source: written.sd.source,
        }
      : null,
    lag1: written.lag1 ?? null,
    freeze: freeze ? { source: freeze.source, at } : null,
    winterZone: written.winter_zone ?? null,
    annualMin: written.annual_min_c
      ? { meanC: written.annual_min_c.mean, source: written.annual_min_c.source }
      : null,
    daily: written.daily ?? null,
    period: written.period,
    source: written.source,
    terms: written.terms,
  };
}
