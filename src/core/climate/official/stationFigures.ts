/** Figures of one station from its normals files, given together or alone. In the agency's units: F and in. */

import type { FreezeThresholdF } from '../figures.ts';
import { numberCell } from './cell.ts';
import { freezeDates, type StationFreeze } from './freezeDates.ts';
import type { OfficialKind, OfficialTable } from './table.ts';

export interface StationFigures {
  station: string;
  /** As the agency writes it: `LEBANON MUNI AP, NH US`. */
  name: string;
  lat: number;
  lon: number;
  elevationM: number;
  period: string;
  tmaxF: number[];
  tminF: number[];
  rainIn: number[] | null;
  /** Standard deviation of daily values about the daily normal, degrees F; null without a daily file. */
  sd: { tminF: number[]; tmaxF: number[] } | null;
  freeze: Map<FreezeThresholdF, StationFreeze> | null;
  /** What could not be used, and what was taken for granted, in words. */
  notes: string[];
}

export type StationResult = { figures: StationFigures } | { refused: string };

/** Months in which every wanted value of a column is there, averaged by `average`; null when a month lacks one. */
function byMonth(
  table: OfficialTable,
  column: string,
  scale: 10 | 100,
  average: (values: number[]) => number,
): number[] | null {
  const months: number[][] = Array.from({ length: 12 }, () => []);
  for (const [row, cells] of table.rows.entries()) {
    const date = (cells.get('DATE') ?? '').trim();
    if (date === '02-29') continue;
    const cell = numberCell(table, row, column, scale);
    const month = months[Number(date.slice(0, 2)) - 1];
    if (!('value' in cell) || !month) return null;
    month.push(cell.value);
  }
  return months.every(month => month.length > 0) ? months.map(average) : null;
}

function mean(values: number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Mean of standard deviations, taken over their squares. */
function meanSpread(values: number[]): number {
  return Math.sqrt(mean(values.map(value => value * value)));
}

/** Longest record a 15-year set can have; the files themselves do not name their period. */
const YEARS_OF_SHORT_SET = 15;

/** Most years used for any value of a file, or null when the layout does not say. */
function yearsUsed({ rows }: OfficialTable): number | null {
  const counts = rows.flatMap(row =>
    [...row].flatMap(([title, cell]) => {
      const years = title.startsWith('years_') && cell.trim() !== '' ? Number(cell) : Number.NaN;
      return Number.isFinite(years) ? [years] : [];
    }),
  );
  return counts.length === 0 ? null : Math.max(...counts);
}

const setsOfLayout = 'the sets 1991-2020 and 2006-2020 look alike';

/**
 * The period of files of one layout, or why it cannot be told: 1991-2020 and 2006-2020 have the same layout and do not name themselves, but
 * the years used do, where there are more than fifteen.
 */
function periodOf(tables: readonly OfficialTable[]): { period: string } | { refused: string } {
  const { layout } = tables[0]!;
  const used = tables.flatMap(table => {
    const years = yearsUsed(table);
    return years === null ? [] : [{ kind: table.kind, years }];
  });
  const short = used.filter(({ years }) => years <= YEARS_OF_SHORT_SET);
  if (short.length === 0) return { period: layout };
  const [first] = short;
  const long = used.find(({ years }) => years > YEARS_OF_SHORT_SET);
  if (long) {
    return {
      refused: `The ${long.kind} file uses up to ${long.years} years, the ${first!.kind} file at most ${first!.years}: ${setsOfLayout}, and these may be of both. Take all files from one set; if they are, say --period ${layout}.`,
    };
  }
  return {
    refused: `No value uses more than ${first!.years} years, and ${setsOfLayout}: say --period 2006-2020 or --period ${layout}.`,
  };
}

/** What does not fit between files that should be of one station and one set; null when all fits. */
function misfit(tables: readonly OfficialTable[]): string | null {
  const stations = [...new Set(tables.map(({ station }) => station))];
  if (stations.length > 1) return `The files are of different stations: ${stations.join(' and ')}.`;
  const layouts = [...new Set(tables.map(({ layout }) => layout))].sort();
  if (layouts.length > 1) return `The files are of different periods: ${layouts.join(' and ')}.`;
  const kinds = tables.map(({ kind }) => kind);
  const twice = kinds.find((kind, i) => kinds.indexOf(kind) !== i);
  if (twice) return `Two ${twice} files are given.`;
  return null;
}

/**
 * Figures of a station. The monthly file gives means and rain, the daily file the spread of single days (and the means when there is
 * no monthly one), the annual file freeze dates. `period` overrules what the files say.
 */
export function stationFigures(
  tables: readonly OfficialTable[],
  period: string | null = null,
): StationResult {
  const wrong = misfit(tables);
  if (wrong !== null) return { refused: wrong };
  const of = (kind: OfficialKind) => tables.find(table => table.kind === kind);
  const [monthly, daily, annual] = [of('monthly'), of('daily'), of('annual')];
  const base = monthly ?? daily;
  if (!base) {
    return {
      refused: 'The annual file has no monthly temperatures; give the monthly file of the station with it.',
    };
  }
  const prefix = base === monthly ? 'MLY' : 'DLY';
  const tmaxF = byMonth(base, `${prefix}-TMAX-NORMAL`, 10, mean);
  const tminF = byMonth(base, `${prefix}-TMIN-NORMAL`, 10, mean);
  if (!tmaxF || !tminF) {
    return {
      refused: `Station ${base.station} has no normals of temperature for every month; choose another.`,
    };
  }
  const told = period === null ? periodOf(tables) : { period };
  if ('refused' in told) return told;
  const notes: string[] = [];
  const rainIn = monthly ? byMonth(monthly, 'MLY-PRCP-NORMAL', 100, mean) : null;
  if (!rainIn) notes.push('No rain for every month: it is left out.');
  const sdTminF = daily ? byMonth(daily, 'DLY-TMIN-STDDEV', 10, meanSpread) : null;
  const sdTmaxF = daily ? byMonth(daily, 'DLY-TMAX-STDDEV', 10, meanSpread) : null;
  if (!sdTminF || !sdTmaxF) {
    notes.push('No standard deviation of daily values: it will be estimated. The daily file has it.');
  }
  if (!annual) notes.push('No freeze dates: they will be modeled. The annual file has them.');
  return {
    figures: {
      station: base.station,
      name: base.name,
      lat: base.lat,
      lon: base.lon,
      elevationM: base.elevationM,
      period: told.period,
      tmaxF,
      tminF,
      rainIn,
      sd: sdTminF && sdTmaxF ? { tminF: sdTminF, tmaxF: sdTmaxF } : null,
      freeze: annual ? freezeDates(annual, notes) : null,
      notes,
    },
  };
}
