/** The compact tables of stations, unpacked. How they are laid out is written in `src/stations/README.md`. */

import type { OfficialFreeze, Station } from './station.ts';

/** Columns both tables have. Texts are joined with line feeds; positions are steps from the station before. */
interface SharedColumns {
  readonly id: string;
  readonly name: string;
  readonly lat: readonly number[];
  readonly lon: readonly number[];
  /** Tenths of a meter, steps. */
  readonly elevation: readonly number[];
  /** Tenths of C; January, then the step to each month. */
  readonly tmin: readonly number[];
  /** Maximum less minimum, laid out like `tmin`. */
  readonly range: readonly number[];
  /** Whole mm, laid out like `tmin`; a single null for a station without rain. */
  readonly rain: readonly (number | null)[];
}

export interface NormalsTable extends SharedColumns {
  readonly region: string;
  /** Days of the year, 0 for no such date, null for not published. */
  readonly last50: readonly (number | null)[];
  readonly last10: readonly (number | null)[];
  readonly first50: readonly (number | null)[];
  readonly first90: readonly (number | null)[];
  readonly gdd50f: readonly (number | null)[];
}

export interface ReportsTable extends SharedColumns {
  readonly country: string;
  /** Hundredths of C and tenths of hPa, laid out like `rain`. */
  readonly sdMean: readonly (number | null)[];
  readonly vapor: readonly (number | null)[];
  /** Tenths of C. */
  readonly coldest: readonly (number | null)[];
  readonly winters: readonly number[];
  readonly years: readonly number[];
}

function summed(steps: readonly number[], unit: number): number[] {
  let at = 0;
  return steps.map(step => {
    at += step;
    return at / unit;
  });
}

/** Twelve numbers a station, in `1 / unit`. */
function monthly(steps: readonly (number | null)[], unit: number): (number[] | null)[] {
  const stations: (number[] | null)[] = [];
  for (let at = 0; at < steps.length; ) {
    if (steps[at] === null) {
      stations.push(null);
      at += 1;
      continue;
    }
    stations.push(summed(steps.slice(at, at + 12) as number[], unit));
    at += 12;
  }
  return stations;
}

/** Tenths added to tenths, without the dust of binary fractions. */
const tenths = (value: number) => Math.round(value * 10) / 10;

function sharedOf(table: SharedColumns, degrees: number) {
  const ids = table.id.split('\n');
  const names = table.name.split('\n');
  const lat = summed(table.lat, degrees);
  const lon = summed(table.lon, degrees);
  const elevation = summed(table.elevation, 10);
  const tmin = monthly(table.tmin, 10) as number[][];
  const range = monthly(table.range, 10) as number[][];
  const rain = monthly(table.rain, 1);
  const columns = { names, lat, lon, elevation, tmin, range, rain };
  for (const [column, values] of Object.entries(columns)) {
    if (values.length !== ids.length) {
      throw new RangeError(`station table: ${column} has ${values.length} stations, id has ${ids.length}`);
    }
  }
  return ids.map((id, i) => ({
    id,
    name: names[i] as string,
    lat: lat[i] as number,
    lon: lon[i] as number,
    elevationM: elevation[i] as number,
    tminC: tmin[i] as number[],
    tmaxC: (tmin[i] as number[]).map((low, month) => tenths(low + (range[i]?.[month] as number))),
    rainMm: rain[i] as number[] | null,
  }));
}

/** States that are countries of their own in ISO 3166, and the one Canadian station of the product. */
const regionCountries: Readonly<Record<string, string>> = {
  PR: 'PR',
  VI: 'VI',
  GU: 'GU',
  AS: 'AS',
  MP: 'MP',
  FM: 'FM',
  PW: 'PW',
  MH: 'MH',
  UM: 'UM',
  ON: 'CA',
};

function officialOf(table: NormalsTable, i: number): OfficialFreeze | null {
  const [last50, last10, first50, first90] = [table.last50, table.last10, table.first50, table.first90].map(
    column => column[i] as number | null,
  );
  if (last50 === null || first50 === null) return null;
  const date = (doy: number | null | undefined) => doy || null;
  return {
    last: { p10: date(last10), p50: date(last50) },
    first: { p50: date(first50), p90: date(first90) },
  };
}

/** Stations of the U.S. Climate Normals 1981-2010. Throws a RangeError for columns of unequal length. */
export function normalsStations(table: NormalsTable): Station[] {
  const regions = table.region.split('\n');
  return sharedOf(table, 1e4).map((shared, i) => ({
    ...shared,
    region: regions[i] as string,
    country: regionCountries[regions[i] as string] ?? 'US',
    period: '1981-2010',
    sdMeanC: null,
    vaporHpa: null,
    official: officialOf(table, i),
    gdd50F: table.gdd50f[i] ?? null,
    coldestNightC: null,
    winters: 0,
    years: 30,
    factors: null,
  }));
}

/** South of it lies Antarctica, whose stations the reports list under the countries that run them. Source: Antarctic Treaty 1959, Article VI. */
const ANTARCTICA_SOUTH_OF = -60;

/** Stations of the monthly CLIMAT reports 2003-2021. Throws a RangeError for columns of unequal length. */
export function reportsStations(table: ReportsTable): Station[] {
  const countries = table.country.split('\n');
  const sdMean = monthly(table.sdMean, 100);
  const vapor = monthly(table.vapor, 10);
  return sharedOf(table, 100).map((shared, i) => ({
    ...shared,
    region: '',
    country: shared.lat < ANTARCTICA_SOUTH_OF ? 'AQ' : (countries[i] as string),
    period: '2003-2021',
    sdMeanC: sdMean[i] ?? null,
    vaporHpa: vapor[i] ?? null,
    official: null,
    gdd50F: null,
    coldestNightC: table.coldest[i] === null ? null : (table.coldest[i] as number) / 10,
    winters: table.winters[i] ?? 0,
    years: table.years[i] ?? 0,
    factors: null,
  }));
}

/** Hundredths, in the order of the stations of both tables. */
export interface FactorsTable {
  /** Version of the model they were worked out with. */
  readonly model: number;
  readonly spring: readonly (number | null)[];
  readonly fall: readonly (number | null)[];
  readonly winter: readonly (number | null)[];
}

/** The stations with their season factors. Throws a RangeError for a table of another number of stations. */
export function withSeasonFactors(stations: readonly Station[], table: FactorsTable): Station[] {
  if (table.spring.length !== stations.length) {
    throw new RangeError(
      `season factors: ${table.spring.length} of ${stations.length} stations; run npm run station-factors`,
    );
  }
  const factor = (hundredths: number | null | undefined) =>
    hundredths === null || hundredths === undefined ? null : hundredths / 100;
  return stations.map((station, i) => {
    const factors = {
      spring: factor(table.spring[i]),
      fall: factor(table.fall[i]),
      winter: factor(table.winter[i]),
    };
    const none = factors.spring === null && factors.fall === null && factors.winter === null;
    return { ...station, factors: none ? null : factors };
  });
}
