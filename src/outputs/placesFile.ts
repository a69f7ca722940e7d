/** places.json: the climate of every place, for machines. */

import { z } from 'zod';
import type { Catalogue } from '../core/catalogue.ts';
import { type FreezeThresholdF, freezeThresholdsF } from '../core/climate/figures.ts';
import { airClasses, seasonClasses, summerClasses, winterClasses } from '../core/climate/placeClass.ts';
import type { ClimateStanding, ClimateSummary, FreezeKey } from '../core/climate/summary.ts';
import { countryPattern, monthDayPattern, type Place, zonePattern } from '../core/records/place.ts';
import { roundTo } from '../core/units.ts';
import { openId, publishedSchema } from './openFile.ts';

/** Raised when a field changes its meaning or goes away; new fields do not raise it. */
const PLACES_FILE_VERSION = 1;

const openDate = z.string().regex(monthDayPattern).nullable();
const openDates = z
  .strictObject({ p10: openDate, p50: openDate, p90: openDate })
  .describe('MM-DD by which it has happened in 10, 50 and 90 of 100 years; null where that does not happen.');

const openFreeze = z.strictObject({
  first: openDates.describe('First freeze of the winter: p10 is the early date.'),
  last: openDates.describe('Last freeze of the winter: p90 is the late, cautious date.'),
  none: z.number().min(0).max(1).describe('Share of years without such a freeze.'),
});

const openSpread = z.strictObject({ p10: z.number(), p50: z.number(), p90: z.number() });
const openMean = z.strictObject({ mean: z.number(), sd: z.number() });

const climateStandings = [
  'published',
  'from records',
  'modeled',
  'modeled from an estimate',
] as const satisfies readonly ClimateStanding[];
const openStanding = z.enum(climateStandings);

/** An object with one member for each freeze threshold. */
function byThreshold<T>(make: (key: FreezeKey) => T): Record<FreezeKey, T> {
  const keyOf = (thresholdF: FreezeThresholdF): FreezeKey => `${thresholdF}F`;
  return Object.fromEntries(freezeThresholdsF.map(keyOf).map(key => [key, make(key)])) as Record<
    FreezeKey,
    T
  >;
}

const openPlace = z.strictObject({
  place: openId,
  name: z.string(),
  region: z.string(),
  country: z.string().regex(countryPattern).describe('ISO 3166 two-letter code.'),
  lat: z.number().min(-90).max(90),
  lon: z.number().min(-180).max(180),
  class: z.strictObject({
    winter: z.enum(winterClasses),
    season: z.enum(seasonClasses),
    summer: z.enum(summerClasses).describe('By Winkler degree days, April to October.'),
    air: z.enum(airClasses),
  }),
  freeze: z
    .strictObject(byThreshold(() => openFreeze))
    .describe('By threshold: a night at or below so many degrees F.'),
  seasonDays: openSpread.describe('Days between last and first freeze at 32 F; 365: no freeze.'),
  winterZone: z.strictObject({
    zone: z.string().regex(zonePattern),
    basis: z.string().describe('Map or record it is read from, or how it is computed.'),
  }),
  annualMinC: z
    .strictObject({ mean: z.number(), p10: z.number() })
    .describe('Coldest night of a winter, C: the mean, and the low of one winter in ten.'),
  heat: z.strictObject({
    base8cap36: openMean.describe('C-degree-days a year above 8 C, counted up to 36 C.'),
    base50F: openMean.describe('F-degree-days a year above 50 F.'),
  }),
  chillPortions: openSpread.describe('Dynamic Model, October to March; April to September in the south.'),
  standing: z
    .strictObject({
      class: openStanding,
      freeze: z.strictObject(byThreshold(() => openStanding)),
      seasonDays: openStanding,
      winterZone: openStanding,
      annualMinC: openStanding,
      heat: openStanding,
      chillPortions: openStanding,
    })
    .describe('How each figure is known. Sources and terms of use stand on the page of the place.'),
});

const placesFileShape = z.strictObject({
  version: z.literal(PLACES_FILE_VERSION),
  places: z.array(openPlace),
});

export type PlacesFile = z.infer<typeof placesFileShape>;

/** Rounds each number of an object to a step. */
function rounded<T extends Record<string, number>>(values: T, step: number): T {
  return Object.fromEntries(Object.entries(values).map(([name, value]) => [name, roundTo(value, step)])) as T;
}

function openPlaceOf(place: Place, climate: ClimateSummary): PlacesFile['places'][number] {
  const { id, name, region, country, lat, lon } = place;
  const { seasonDays, winterZone, annualMinC, heat, chill, freeze } = climate;
  const { zone, basis } = winterZone.answer;
  const { winter, season, summer, air } = climate.class.answer;
  return {
    place: id,
    name,
    region,
    country,
    lat,
    lon,
    class: { winter, season, summer, air },
    freeze: byThreshold(key => {
      const { first, last, none } = freeze[key].answer;
      return { first: { ...first }, last: { ...last }, none: roundTo(none, 0.001) };
    }),
    seasonDays: rounded({ ...seasonDays.answer }, 1),
    winterZone: { zone, basis },
    annualMinC: rounded({ ...annualMinC.answer }, 0.1),
    heat: {
      base8cap36: rounded({ ...heat.base8cap36.answer }, 1),
      base50F: rounded({ ...heat.base50F.answer }, 1),
    },
    chillPortions: rounded({ ...chill.answer.portions }, 0.1),
    standing: {
      class: climate.class.standing,
      freeze: byThreshold(key => freeze[key].standing),
      seasonDays: seasonDays.standing,
      winterZone: winterZone.standing,
      annualMinC: annualMinC.standing,
      heat: heat.base8cap36.standing,
      chillPortions: chill.standing,
    },
  };
}

/** The content of places.json. */
export function placesFile({ places, climates }: Pick<Catalogue, 'places' | 'climates'>): PlacesFile {
  return {
    version: PLACES_FILE_VERSION,
    places: places.flatMap(place => {
      const climate = climates.get(place.id);
      return climate === undefined ? [] : [openPlaceOf(place, climate)];
    }),
  };
}

/** JSON Schema of places.json, published as places.schema.json. */
export function placesFileSchema(): Record<string, unknown> {
  return publishedSchema(placesFileShape, 'Climates of places');
}
