/**
 * A record of daily lows and highs as a weather station, a console or an agency writes it, to readings in C. Tables have their columns found
 * by name; the files of GHCN-Daily that have no header are known by their first line.
 */

import { parse } from 'csv-parse/sync';
import type { Day } from '../days.ts';
import { fahrenheitToCelsius } from '../units.ts';
import { type Column, type DailyColumns, dailyColumns } from './dailyColumns.ts';
import {
  COLDEST_EVER_C,
  type DailyStation,
  type DayRow,
  Faults,
  type FoundDay,
  flagged,
  HOTTEST_EVER_C,
  inOrder,
  noStation,
  type RecordProblem,
} from './dailyRows.ts';
import { ghcnForm, readGhcnDaily } from './ghcnDaily.ts';
import { hasClock, writtenDays } from './writtenDays.ts';

/** Units a daily file may be in; GHCN-Daily station files are in tenths of a degree Celsius. */
export const dailyUnits = ['C', 'F', 'tenths-C'] as const;
export type DailyUnit = (typeof dailyUnits)[number];

const toCelsius: Record<DailyUnit, (value: number) => number> = {
  C: value => value,
  F: fahrenheitToCelsius,
  'tenths-C': value => value / 10,
};

export interface DailyRecord {
  /** In order of day, each day once; days that stand nowhere in the file are not filled in. */
  rows: DayRow[];
  /** Null when the file does not say and was not told. */
  unit: DailyUnit | null;
  station: DailyStation;
  problems: RecordProblem[];
}

const missingMarks = new Set([
  '',
  '-',
  '--',
  '---',
  '--.-',
  'm',
  'na',
  'n/a',
  'nan',
  'null',
  '-9999',
  '-9999.0',
  '9999',
]);
const plainNumber = /^[+-]?(?:\d+\.?\d*|\.\d+)$/;

/** Lines in which a header is looked for: exports of consoles begin with a title or two. Our working figure. */
const HEADER_WITHIN = 12;
/** A day with a smaller share of the usual readings may lack its coldest or warmest hour. Our working figure. */
const FEWEST_READINGS = 0.75;

/** The sign between cells: the one that most often stands in the first lines. */
function delimiterOf(text: string): ',' | ';' | '\t' {
  const start = text.split('\n', HEADER_WITHIN).join('\n');
  const count = (sign: string) => start.split(sign).length;
  return ([',', ';', '\t'] as const).reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}

function cellsOf(text: string, to?: number): string[][] {
  const table: string[][] = parse(text, {
    bom: true,
    delimiter: delimiterOf(text),
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
    ...(to === undefined ? {} : { to }),
  });
  return table.map(row => row.map(cell => cell.trim()));
}

interface Header {
  titles: string[];
  columns: DailyColumns;
  /** Rows of the table up to and with the header. */
  rows: number;
}

/**
 * Finds the header: one row, or two of which the upper holds the first words of the titles. Lows and highs are looked for before a single
 * temperature.
 */
function headerOf(table: readonly string[][]): Header | null {
  for (let index = 0; index < Math.min(table.length, HEADER_WITHIN); index += 1) {
    const row = table[index]!;
    const above = table[index - 1] ?? [];
    const found = [row, row.map((title, at) => `${above[at] ?? ''} ${title}`.trim())].flatMap(titles => {
      const columns = dailyColumns(titles);
      return columns ? [{ titles: titles.map(title => title.toLowerCase()), columns, rows: index + 1 }] : [];
    });
    const both = found.find(({ columns }) => columns.tmin.index !== columns.tmax.index);
    if (both ?? found[0]) return both ?? found[0]!;
  }
  return null;
}

/** Whether a text looks like a daily record in any of its forms. */
export function looksDaily(text: string): boolean {
  if (ghcnForm(text) !== null) return true;
  try {
    return headerOf(cellsOf(text, HEADER_WITHIN)) !== null;
  } catch {
    return false;
  }
}

function stationOf(titles: readonly string[], first: readonly string[] | undefined): DailyStation {
  const cell = (title: string) => first?.[titles.indexOf(title)] || null;
  const number = (title: string) => {
    const value = Number(cell(title) ?? Number.NaN);
    return Number.isFinite(value) ? value : null;
  };
  return {
    station: cell('station'),
    name: cell('name'),
    lat: number('latitude'),
    lon: number('longitude'),
    elevationM: number('elevation'),
  };
}

function refused(message: string, line = 0): DailyRecord {
  return { rows: [], unit: null, station: noStation, problems: [{ level: 'error', line, message }] };
}

interface Place {
  column: Omit<Column, 'unit'> & { unit: DailyUnit };
  /** Whether a comma stands for the decimal point, as where cells are parted by semicolons. */
  decimalComma: boolean;
}

/** A cell in C; null when it was not read or cannot be used. What is wrong with it goes to `faults`. */
function temperature(
  cells: readonly string[],
  { column: { index, unit, flags }, decimalComma }: Place,
  faults: Faults,
  line: number,
): number | null {
  const cell = cells[index] ?? '';
  if (missingMarks.has(cell.toLowerCase())) return null;
  if (cells[flags]?.split(',')[1]?.trim()) {
    faults.add('warning', flagged, line);
    return null;
  }
  const written = decimalComma ? cell.replace(',', '.') : cell;
  if (!plainNumber.test(written)) {
    faults.add(
      'error',
      `"${cell}" is no temperature; leave a cell empty when nothing was read`,
      line,
      'no number',
    );
    return null;
  }
  const value = Number(written);
  const celsius = toCelsius[unit](value);
  if (celsius >= COLDEST_EVER_C && celsius <= HOTTEST_EVER_C) return celsius;
  const question =
    unit === 'C' && value > 0 && toCelsius.F(value) <= HOTTEST_EVER_C ? '; is the file in F?' : '';
  faults.add('error', `no such temperature has ever been measured in ${unit}${question}`, line);
  return null;
}

/** One day of several readings: its lowest and highest. Days with far fewer than usual are left out and told. */
function wholeDays(readings: readonly FoundDay[], faults: Faults): FoundDay[] {
  const byDay = new Map<Day, FoundDay[]>();
  for (const reading of readings) {
    const known = byDay.get(reading.day);
    if (known) known.push(reading);
    else byDay.set(reading.day, [reading]);
  }
  const counts = [...byDay.values()].map(({ length }) => length).sort((a, b) => a - b);
  const usual = counts[counts.length >> 1] ?? 1;
  const end = (values: (number | null)[], pick: (...values: number[]) => number) => {
    const read = values.filter(value => value !== null);
    return read.length === 0 ? null : pick(...read);
  };
  return [...byDay].map(([day, all]) => {
    const { line } = all[0]!;
    if (all.length < FEWEST_READINGS * usual) {
      faults.add('warning', 'the day has fewer readings than most; it is left out', line);
      return { day, line, tminC: null, tmaxC: null };
    }
    const low = end(
      all.map(({ tminC }) => tminC),
      Math.min,
    );
    const high = end(
      all.map(({ tmaxC }) => tmaxC),
      Math.max,
    );
    return { day, line, tminC: low, tmaxC: high };
  });
}

const unsure = 'days such as "01/02/2026" do not tell the day from the month here; write days as 2026-01-31';

function readTable(text: string, table: readonly string[][], unit: DailyUnit | null): DailyRecord {
  const header = headerOf(table);
  if (header === null) {
    const seen = table[0]?.slice(0, 8).join(', ').toLowerCase() || 'nothing';
    return refused(`a daily record has the columns date, tmin_c and tmax_c (or _f); seen: ${seen}`, 1);
  }
  const { titles, columns, rows } = header;
  const [minUnit, maxUnit] = [columns.tmin.unit ?? unit, columns.tmax.unit ?? unit];
  if (minUnit === null || maxUnit === null) {
    return refused('the unit is not said: name the columns tmin_c and tmax_c, or tmin_f and tmax_f', rows);
  }
  const decimalComma = delimiterOf(text) === ';';
  const tmin = { column: { ...columns.tmin, unit: minUnit }, decimalComma };
  const tmax = { column: { ...columns.tmax, unit: maxUnit }, decimalComma };

  const faults = new Faults();
  const body = table.slice(rows);
  const dateOf = (cells: readonly string[]) => cells[columns.date] ?? '';
  const days = writtenDays(body.map(dateOf));
  const found: FoundDay[] = [];
  for (const [index, cells] of body.entries()) {
    const line = rows + index + 1;
    if (cells.every(cell => cell === '')) continue;
    const day = days.read(dateOf(cells));
    if (day === null) {
      const why = days.isUnsure(dateOf(cells))
        ? unsure
        : `"${dateOf(cells)}" is no day; write days as 2026-01-31`;
      faults.add('error', why, line, 'no day');
      continue;
    }
    const tminC = temperature(cells, tmin, faults, line);
    found.push({ day, line, tminC, tmaxC: temperature(cells, tmax, faults, line) });
  }
  const isWithinDays =
    columns.time >= 0 || columns.tmin.index === columns.tmax.index || body.some(row => hasClock(dateOf(row)));
  const { rows: ordered, problems } = inOrder(isWithinDays ? wholeDays(found, faults) : found, faults);
  return { rows: ordered, unit: minUnit, station: stationOf(titles, body[0]), problems };
}

/**
 * Reads a daily record. Columns are found by name (`date`, `tmin_c` or `tmin_f` or `tmin`, `tmax` likewise, or the names a console gives
 * them); `unit` serves columns whose name does not say it. Several readings a day become its lowest and highest. Blank cells and the usual
 * marks (M, NA, -9999) are days not read, and so are values an agency flagged as failing its quality control. Never throws; with an error
 * among the problems the rows are not to be used.
 */
export function readDailyRecord(text: string, unit: DailyUnit | null = null): DailyRecord {
  if (ghcnForm(text) !== null) {
    const { stations, days, faults } = readGhcnDaily(text);
    if (stations.size > 1) return refused(`the file holds ${stations.size} stations; give the file of one`);
    const { rows, problems } = inOrder(days, faults);
    return { rows, unit: 'tenths-C', station: { ...noStation, station: [...stations][0] ?? null }, problems };
  }
  let table: string[][];
  try {
    table = cellsOf(text);
  } catch (problem) {
    return refused(`the file is no CSV: ${problem instanceof Error ? problem.message : String(problem)}`);
  }
  return readTable(text, table, unit);
}
