/**
 * A small yard for tests: a test states only what differs from it. Everything goes through the same schemas and normalisation as the
 * grower's files, so that no test works on a record that could not be written. The yard is invented; the climates are real.
 */

import { assemble, type Catalogue } from '../src/core/catalogue.ts';
import { day } from '../src/core/days.ts';
import { normaliseCultivar, type WrittenCultivar, writtenCultivar } from '../src/core/records/cultivar.ts';
import { normaliseLot, type WrittenLot, writtenLot } from '../src/core/records/lot.ts';
import { normalisePlace, type Place, type WrittenPlace, writtenPlace } from '../src/core/records/place.ts';
import type { DailyReading, Records } from '../src/core/records/records.ts';
import { normaliseSpecies, type WrittenSpecies, writtenSpecies } from '../src/core/records/species.ts';
import type { Walk, WalkRow } from '../src/core/records/walk.ts';
import { normaliseYard, type WrittenYard, writtenYard } from '../src/core/records/yard.ts';

const figure = <U extends string>(value: number | [number, number], unit: U) => ({
  value,
  unit,
  standing: 'ours' as const,
  source: 'A figure of the test yard.',
});
const practice = (value: number | [number, number]) => ({
  ...figure(value, 'days'),
  standing: 'practice' as const,
});

export const baseYard: WrittenYard = {
  name: 'Testing Bench',
  tagline: 'Trees that exist in tests only',
  address: 'https://bench.example',
  home: 'hills',
  time_zone: 'America/New_York',
  currency: 'USD',
  language: 'en-US',
  contact: {},
  ordering: { how: 'Write to us.', lead_days: 3 },
  flavor_classes: [{ id: 'honey', name: 'Honey', means: 'Sweet' }],
  smallest: [{ container: '#1', height_cm: 40, caliper_mm: 6 }],
  walk_fresh_days: 45,
  prices: {
    series: 'R10',
    base: { fig: 40 },
    base_size: '#1',
    steps_per_size: 2,
    steps_per_scarcity: 1,
    form_steps: { 'leafed-pot': 0, 'dormant-pot': 0, 'bare-root': -1 },
    rounding: [{ below: 40, to: 1 }, { below: 150, to: 5 }, { to: 10 }],
  },
  costs: {
    start: { 'air-layer': '3.00', cutting: '1.00', division: '2.00', graft: '4.00' },
    space_week: '0.20',
    area_sqft: { '#1': 0.3, '#3': 0.8 },
    pot: { '#1': '1.20', '#3': '3.40' },
    packing: '4.00',
    fee_share: 0.05,
    sell_through: 0.9,
    margin: 0.25,
  },
  cartons: [
    { name: 'Long', inner_in: [40, 8, 8], outer_in: [40.5, 8.5, 8.5], tare_lb: 1.5 },
    { name: 'Wide', inner_in: [44, 16, 16], outer_in: [44.5, 16.5, 16.5], tare_lb: 3 },
  ],
  parcel_rules: [
    {
      name: 'Ground',
      divisor: 139,
      rounding: 'nearest',
      longest_in: 108,
      length_and_girth_in: 165,
      heaviest_lb: 150,
      checked: '2026-01-05',
    },
  ],
  sending: { weekdays: ['mon'], transit_days: 3, cut_back_in: 30, not_to: [] },
};

export const baseSpecies: WrittenSpecies = {
  botanical: 'Ficus carica',
  common: ['fig'],
  hardiness: {
    leaf_damage: figure(-1, 'C'),
    dormant_established: figure(-10, 'C'),
    dormant_first_winter: figure(-5, 'C'),
    root_injury: figure(-4, 'C'),
    root_severe: figure(-7, 'C'),
  },
  dormancy: {
    leaf_fall_night: figure(29, 'F'),
    leaf_fall_mean: figure(9, 'C'),
    leaf_fall_spell: figure(14, 'days'),
  },
  heat: {
    base: figure(8, 'C'),
    cap: figure(36, 'C'),
    budbreak: figure(200, 'degree-days C'),
    ripens_above: figure(12, 'C'),
    need: { main: { mid: figure(1950, 'degree-days C') } },
  },
  propagation: {
    'air-layer': {
      rooting_warm_days: figure([21, 28], 'days'),
      // Weaned about six weeks after severing, strongly rooted about six months after: common practice, no source.
      wean: practice(42),
      strongly_rooted: practice(180),
      success: figure(0.9, 'share'),
    },
    cutting: {
      rooting_warm_days: figure([25, 40], 'days'),
      wean: figure([28, 42], 'days'),
      strongly_rooted: figure(180, 'days'),
      success: figure(0.8, 'share'),
    },
  },
  storage: { temperature: figure([1, 4], 'C'), bare_root: figure(60, 'days') },
  hazards: [],
  movement: 'Ask the plant health authority before plants move.',
};

const baseCultivar: WrittenCultivar = {
  name: 'Test Fig',
  species: 'fig',
  flavor: 'honey',
  ripening: 'mid',
  crops: ['main'],
  pollination: 'unaided',
  fruit: {
    skin: 'violet',
    flesh: 'red',
    shape: 'pear',
    length_mm: 50,
    width_mm: 40,
    eye: 'closed',
    splits: 'low',
    rain: 'good',
  },
  vigour: 'medium',
  suits: { winter: ['cool'], season: ['long'], air: ['humid'] },
  offered: 'some',
  mothers: 4,
};

const baseLot: WrittenLot = {
  lot: 'a-1',
  cultivar: 'test-fig',
  method: 'air-layer',
  started: '2026-06-06',
  severed: '2026-07-11',
  pottings: [{ date: '2026-07-11', container: '#1' }],
  raised: 20,
  forms: ['leafed-pot', 'dormant-pot', 'bare-root'],
};

/**
 * Asheville, North Carolina. Means: NOAA U.S. Climate Normals 1981-2010, station USW00053877; standard deviations: USDA-ARS CLIGEN
 * station parameters, Bent Creek NC.
 */
export const hills: WrittenPlace = {
  name: 'Asheville',
  region: 'North Carolina',
  country: 'US',
  lat: 35.4944,
  lon: -82.6142,
  elevation_m: 656,
  tmax_c: [8.3, 10.3, 14.6, 19.4, 23.3, 26.2, 27.9, 27.4, 24.2, 19.9, 14.8, 9.1],
  tmin_c: [-4.8, -3.1, -0.1, 4.3, 9.2, 13.7, 15.8, 15.2, 11.6, 4.9, 0.1, -3.6],
  sd: {
    tmin_c: [6.07, 5.76, 5.48, 5.03, 4.5, 3.6, 2.47, 2.74, 4.46, 5.65, 5.96, 6.09],
    tmax_c: [6.17, 6.06, 6.08, 5.46, 4.15, 3.24, 2.86, 2.88, 3.82, 4.49, 5.68, 5.77],
    source: 'USDA-ARS CLIGEN, Bent Creek NC',
  },
  period: '1981-2010',
  source: 'NOAA U.S. Climate Normals',
  terms: 'Public domain',
};

/** Canberra. Means of monthly CLIMAT reports 2003-2021, WMO 94926: Deutscher Wetterdienst open data. */
export const southern: WrittenPlace = {
  name: 'Canberra',
  region: 'Australian Capital Territory',
  country: 'AU',
  lat: -35.31,
  lon: 149.2,
  elevation_m: 578,
  tmax_c: [30.5, 28.1, 25.2, 21.1, 16.8, 13.2, 12.5, 14.2, 17.7, 21.6, 25.1, 27.6],
  tmin_c: [14.4, 13.6, 11.1, 6.8, 2.7, 1.6, 0.3, 1, 3.3, 6.4, 10, 12.4],
  period: '2003-2021',
  source: 'Deutscher Wetterdienst, CLIMAT reports',
  terms: 'CC BY 4.0',
};

/** Singapore, where no tree sleeps. Monthly means 1991-2020: Meteorological Service Singapore, from memory. */
export const tropics: WrittenPlace = {
  name: 'Singapore',
  region: 'Singapore',
  country: 'SG',
  lat: 1.37,
  lon: 103.98,
  elevation_m: 5,
  tmax_c: [30.6, 31.5, 32.2, 32.4, 32.3, 31.9, 31.4, 31.4, 31.6, 31.8, 31.2, 30.5],
  tmin_c: [24.3, 24.6, 24.9, 25.3, 25.7, 25.7, 25.4, 25.3, 25.2, 25, 24.6, 24.3],
  period: '1991-2020',
  source: 'Meteorological Service Singapore (from memory)',
  terms: 'Facts',
};

/** What a line of a walk may state; the rest was not looked at. */
export type Line = Partial<Omit<WalkRow, 'line'>>;

const blankRow: WalkRow = {
  lot: 'a-1',
  left: null,
  lost: null,
  returned: null,
  heightCm: null,
  caliperMm: null,
  roots: null,
  leaves: null,
  wood: null,
  health: null,
  where: null,
  line: 2,
};

export interface World {
  yard?: Partial<WrittenYard>;
  species?: Partial<WrittenSpecies>;
  cultivar?: Partial<WrittenCultivar>;
  /** Several cultivars by id instead of the one called test-fig. */
  cultivars?: Record<string, Partial<WrittenCultivar>>;
  lots?: Partial<WrittenLot>[];
  /** Lines by day of the walk; a line without a lot is about lot a-1. */
  walks?: Record<string, Line[]>;
  home?: WrittenPlace;
  log?: DailyReading[];
}

export function walkOn(on: string, lines: readonly Line[]): Walk {
  return {
    day: day(on),
    file: `walks/${on}.csv`,
    rows: lines.map((line, index) => ({ ...blankRow, ...line, line: index + 2 })),
  };
}

/** The records of a world, in the order the reading would give them. */
export function worldRecords(world: World = {}): Records {
  const yard = normaliseYard(writtenYard.parse({ ...baseYard, ...world.yard }));
  const species = normaliseSpecies('fig', writtenSpecies.parse({ ...baseSpecies, ...world.species }));
  const home: Place = normalisePlace('hills', writtenPlace.parse(world.home ?? hills));
  const cultivars = Object.entries(world.cultivars ?? { 'test-fig': world.cultivar ?? {} }).map(
    ([id, differs]) =>
      normaliseCultivar(id, writtenCultivar.parse({ ...baseCultivar, ...differs }), { text: '', line: 1 }),
  );
  const lots = (world.lots ?? [{}]).map((differs, index) =>
    normaliseLot(
      writtenLot.parse({ ...baseLot, ...differs }),
      { file: 'lots/test.yaml', index },
      yard.currency,
    ),
  );
  return {
    yard,
    species: new Map([['fig', species]]),
    cultivars: new Map(cultivars.map(cultivar => [cultivar.id, cultivar])),
    lots,
    walks: Object.entries(world.walks ?? {})
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([on, lines]) => walkOn(on, lines)),
    places: new Map([['hills', home]]),
    guides: new Map(),
    videos: [],
    dailyRecords: new Map(),
    temperatures: world.log ?? [],
    addresses: [],
    changes: [],
  };
}

/** The catalogue of records for a day, without the climates that only pages show. */
export function catalogueOf(records: Records, asOf: string): Catalogue {
  return assemble(records, day(asOf), new Map());
}

/** A lot as it stood in late summer: in leaf outdoors, rooted and sound. */
export const lateSummer = {
  '2026-08-29': [
    {
      left: 19,
      roots: 'holding',
      leaves: 'full',
      heightCm: 47,
      caliperMm: 7,
      health: 'sound',
      where: 'outdoors',
    },
  ],
} satisfies World['walks'];
