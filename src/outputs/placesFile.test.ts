import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { hills, southern, tropics } from '../../tests/world.ts';
import { figuresOfPlace } from '../core/climate/place.ts';
import { climateSummary } from '../core/climate/summary.ts';
import { normalisePlace, writtenPlace } from '../core/records/place.ts';
import { placesFile, placesFileSchema } from './placesFile.ts';

const places = Object.entries({ hills, southern, tropics }).map(([id, written]) =>
  normalisePlace(id, writtenPlace.parse(written)),
);
const climates = new Map(places.map(place => [place.id, climateSummary(figuresOfPlace(place))]));
const file = JSON.parse(JSON.stringify(placesFile({ places, climates }))) as ReturnType<typeof placesFile>;
const validate = new Ajv({ strict: true, allErrors: true }).compile(placesFileSchema());

describe('places.json', () => {
  it('keeps to its published schema (checked with Ajv, JSON Schema 2020-12)', () => {
    validate(file);
    expect(validate.errors).toBeNull();
    expect(file.places).toHaveLength(3);
  });

  it.each([
    ['a date in words', { first: { p10: 'October 12', p50: null, p90: null } }],
    ['a share above one', { none: 2 }],
  ])('has a schema that refuses %s', (_, change) => {
    const [first] = file.places;
    const freeze = { ...first!.freeze, '32F': { ...first!.freeze['32F'], ...change } };
    expect(validate({ ...file, places: [{ ...first, freeze }] })).toBe(false);
  });

  it('has the members it is documented to have, and no others', () => {
    expect(Object.keys(file)).toEqual(['version', 'places']);
    expect(Object.keys(file.places[0]!)).toEqual([
      'place',
      'name',
      'region',
      'country',
      'lat',
      'lon',
      'class',
      'freeze',
      'seasonDays',
      'winterZone',
      'annualMinC',
      'heat',
      'chillPortions',
      'standing',
    ]);
    expect(Object.keys(file.places[0]!.freeze)).toEqual(['36F', '32F', '28F', '24F', '20F']);
  });

  it('gives what the climate says, rounded, and null for what does not happen', () => {
    const [cold, , hot] = file.places;
    const climate = climates.get('hills')!;
    expect(cold!.freeze['32F'].last).toEqual(climate.freeze['32F'].answer.last);
    expect(cold!.annualMinC.mean).toBeCloseTo(climate.annualMinC.answer.mean, 0);
    expect(cold!.heat.base50F.mean).toBe(Math.round(climate.heat.base50F.answer.mean));
    expect(hot!.freeze['32F']).toEqual({
      first: { p10: null, p50: null, p90: null },
      last: { p10: null, p50: null, p90: null },
      none: 1,
    });
    expect(hot!.seasonDays).toEqual({ p10: 365, p50: 365, p90: 365 });
    expect(file.places[1]!.standing.heat).toBe('modeled from an estimate');
    expect(cold!.standing.freeze['32F']).toBe('modeled');
  });
});
