/** Reads the station blocks and place lines of the evidence data into figures. */
import type { ClimateFigures, FreezeThresholdF } from '../climate/figures.ts';
import { freezeThresholdsF, nothingPublished } from '../climate/figures.ts';
import { gridFreezes } from './data/gridFreezes.ts';
import { longRecords } from './data/longRecords.ts';
import { stationFreezes } from './data/stationFreezes.ts';
import { zonePlaces } from './data/zonePlaces.ts';
import { allNumbersOf } from './table.ts';

/** Where the freeze dates and means of a block come from. */
const freezeSources: Readonly<Record<string, string>> = {
  ghcn: 'NOAA NCEI, GHCN-Daily, quantiles of the daily record',
  daymet: 'Daymet V4 R1 grid cell, ORNL DAAC, doi:10.3334/ORNLDAAC/2129, quantiles of the daily values',
  fortcollins: 'Colorado Climate Center, daily record 1900-1999, quantiles of the daily record',
  champion: 'NOAA NCEI, GHCN-Daily, daily record of Champion, Nebraska, 1982-2018; quantiles counted in it',
  kenai: 'NOAA, daily record of Kenai airport, quantiles of the daily record',
  normals1991: 'NOAA NCEI, U.S. Climate Normals 1991-2020, annual and seasonal, as published',
  normals2006: 'NOAA NCEI, U.S. Climate Normals 2006-2020, annual and seasonal, as published',
  umass: 'NOAA freeze/frost occurrence tables, as reprinted by UMass Extension',
};

/** Observed freeze dates at one threshold: `MM-DD` or null, early to late, and the share of seasons without one. */
export interface ObservedFreeze {
  readonly thresholdF: FreezeThresholdF;
  readonly first: readonly (string | null)[];
  readonly last: readonly (string | null)[];
  /** Null where the source does not say. */
  readonly none: number | null;
}

export interface EvidenceStation {
  readonly name: string;
  readonly source: string;
  readonly figures: ClimateFigures;
  readonly freezes: readonly ObservedFreeze[];
  readonly annualMinC: number | null;
}

const bareFigures = {
  rainMm: null,
  dewPointC: null,
  lag1: null,
  published: nothingPublished,
} as const;

const cell = (text: string | undefined) => (text === undefined || text === '-' ? null : text);
const numberCell = (text: string | undefined) => (cell(text) === null ? null : Number(text));

function readFreeze(key: string, line: string): ObservedFreeze {
  const thresholdF = freezeThresholdsF.find(threshold => key === `${threshold}F`);
  if (thresholdF === undefined) throw new RangeError(`unknown threshold ${key}`);
  const cells = line.trim().split(/\s+/);
  if (cells.length !== 7) throw new RangeError(`seven cells are needed: ${line}`);
  return {
    thresholdF,
    first: cells.slice(0, 3).map(cell),
    last: cells.slice(3, 6).map(cell),
    none: numberCell(cells[6]),
  };
}

function readStation(block: string): EvidenceStation {
  const [head = '', ...lines] = block.split('\n');
  const [name = '', , lat, , lag1, annualMin, sourceKey = ''] = head.split('|').map(part => part.trim());
  const fields = new Map(lines.map(line => line.trim().split(': ') as [string, string]));
  const monthly = (key: string) => allNumbersOf(fields.get(key) ?? '');
  const spread = (key: string) => (fields.get(key) === '-' ? null : monthly(key));
  const source = freezeSources[sourceKey];
  if (source === undefined) throw new RangeError(`unknown source ${sourceKey} of ${name}`);
  return {
    name: sourceKey === 'daymet' ? `${name} (grid cell)` : name,
    source,
    figures: {
      ...bareFigures,
      lat: Number(lat),
      tminC: monthly('tmin'),
      tmaxC: monthly('tmax'),
      sdTminC: spread('sdTmin'),
      sdTmaxC: spread('sdTmax'),
      sdAbout: 'month',
      lag1: numberCell(lag1),
    },
    freezes: [...fields].filter(([key]) => key.endsWith('F')).map(([key, line]) => readFreeze(key, line)),
    annualMinC: numberCell(annualMin),
  };
}

/** Stations and grid cells with observed or published freeze dates. */
export function freezeStations(): EvidenceStation[] {
  return [stationFreezes, gridFreezes].flatMap(text =>
    text
      .trim()
      .split(/\n(?=\S)/)
      .map(readStation),
  );
}

/**
 * Correlation of the daily low and high assumed where only the spread of the low and of the daily mean is known. Johnson
 * County, where the spread of the high is known too, has 0.65 in summer and 0.85 in winter.
 */
const LOW_HIGH_CORRELATION = 0.7;

/** Spread of the daily maximum from that of the minimum and of the mean of the two, C. */
function spreadOfHigh(sdLowC: number, sdMeanC: number): number {
  const r = LOW_HIGH_CORRELATION;
  return -r * sdLowC + Math.sqrt(r * r * sdLowC ** 2 - sdLowC ** 2 + 4 * sdMeanC ** 2);
}

/** The five long records as figures. */
export function longRecordFigures(): { record: (typeof longRecords)[number]; figures: ClimateFigures }[] {
  return longRecords.map(record => ({
    record,
    figures: {
      ...bareFigures,
      lat: record.lat,
      tminC: record.tminC,
      tmaxC: record.tmaxC,
      sdTminC: record.sdTminC,
      sdTmaxC: record.sdTminC.map((sd, month) => spreadOfHigh(sd, record.sdMeanC[month] as number)),
      sdAbout: 'curve',
      lag1: record.lag1,
    },
  }));
}

export interface ZonePlace {
  readonly name: string;
  readonly zone: string;
  readonly figures: ClimateFigures;
}

/** Places with a zone on the 2023 map. */
export function placesWithZone(): ZonePlace[] {
  return zonePlaces
    .trim()
    .split('\n')
    .map(line => {
      const [name = '', lat, zone = '', , ...monthly] = line.split('|').map(part => part.trim());
      const [tminC = [], tmaxC = [], sdTminC = [], sdTmaxC = []] = monthly.map(allNumbersOf);
      return {
        name,
        zone,
        figures: { ...bareFigures, lat: Number(lat), tminC, tmaxC, sdTminC, sdTmaxC, sdAbout: 'month' },
      };
    });
}
