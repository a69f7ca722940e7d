/** A daily record of Tmin and Tmax, as a weather station or an agency writes it (CSV), to readings in C. */

import { parse } from 'csv-parse/sync';
import { type Day, parseDay } from '../days.ts';
import { fahrenheitToCelsius } from '../units.ts';

/** Units a daily file may be in; GHCN-Daily station files are in tenths of a degree Celsius. */
export const dailyUnits = ['C', 'F', 'tenths-C'] as const;
export type DailyUnit = (typeof dailyUnits)[number];

const toCelsius: Record<DailyUnit, (value: number) => number> = {
  C: value => value,
  F: fahrenheitToCelsius,
  'tenths-C': value => value / 10,
};

export interface DayRow {
  day: Day;
  /** Null when it was not read. */
  tminC: number | null;
  tmaxC: number | null;
}

export interface RecordProblem {
  level: 'error' | 'warning';
  /** Line of the file, 1 the header; 0 when no line is meant. */
  line: number;
  message: string;
}

/** What a file of an agency says about its station. */
export interface DailyStation {
  station: string | null;
  name: string | null;
  lat: number | null;
  lon: number | null;
  elevationM: number | null;
}

export interface DailyRecord {
  /** In order of day, each day once; days that stand nowhere in the file are not filled in. */
  rows: DayRow[];
  /** Null when the file does not say and was not told. */
  unit: DailyUnit | null;
  station: DailyStation;
  problems: RecordProblem[];
}

interface Column {
  index: number;
  unit: DailyUnit | null;
  /** Column of the agency's flags (GHCN-Daily: measurement, quality, source), -1 when there is none. */
  flags: number;
}

const missingMarks = new Set(['', '-', '--', '---', 'm', 'na', 'nan', 'null', '-9999', '-9999.0', '9999']);

/** Lowest and highest air temperature measured on earth, C (WMO World Weather and Climate Extremes Archive: Vostok, Furnace Creek). */
const COLDEST_EVER_C = -89.2;
const HOTTEST_EVER_C = 56.7;

/** Share of days whose minimum may lie above the maximum before the columns must be wrong. Our working figure. */
const CROSSED_SHARE = 0.01;

function temperatureColumn(header: readonly string[], name: 'tmin' | 'tmax'): Column | null {
  const pattern = new RegExp(`^${name}(?:[ _]?[([]?(?:°|deg)?[ ]?([cf])[)\\]]?)?$`);
  const index = header.findIndex(title => pattern.test(title));
  if (index < 0) return null;
  const letter = pattern.exec(header[index] as string)?.[1];
  const unit = letter === undefined ? null : (letter.toUpperCase() as DailyUnit);
  return { index, unit, flags: header.indexOf(`${name}_attributes`) };
}

function lines(...numbers: number[]): string {
  const shown = numbers.slice(0, 5).join(', ');
  const more = numbers.length > 5 ? ` and ${numbers.length - 5} more` : '';
  return `${numbers.length === 1 ? 'line' : 'lines'} ${shown}${more}`;
}

/** Whether a text looks like a daily record: a date and both temperatures among its columns. */
export function isDailyHeader(header: readonly string[]): boolean {
  const titles = header.map(title => title.trim().toLowerCase());
  return (
    titles.some(title => title === 'date' || title === 'day') &&
    temperatureColumn(titles, 'tmin') !== null &&
    temperatureColumn(titles, 'tmax') !== null
  );
}

function stationOf(header: readonly string[], first: readonly string[] | undefined): DailyStation {
  const cell = (title: string) => first?.[header.indexOf(title)]?.trim() || null;
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

const nothing: DailyRecord = {
  rows: [],
  unit: null,
  station: { station: null, name: null, lat: null, lon: null, elevationM: null },
  problems: [],
};

function refused(message: string, line = 0): DailyRecord {
  return { ...nothing, problems: [{ level: 'error', line, message }] };
}

/** Faults met row by row, gathered so that each kind becomes one message. */
class Faults {
  readonly #kinds = new Map<string, { level: RecordProblem['level']; at: number[] }>();

  add(level: RecordProblem['level'], what: string, line: number): void {
    const kind = this.#kinds.get(what) ?? { level, at: [] };
    kind.at.push(line);
    this.#kinds.set(what, kind);
  }

  count(what: string): number {
    return this.#kinds.get(what)?.at.length ?? 0;
  }

  problems(): RecordProblem[] {
    return [...this.#kinds].map(([what, { level, at }]) => ({
      level,
      line: at[0] ?? 0,
      message: `${what} (${lines(...at)})`,
    }));
  }
}

const crossed = 'the minimum is above the maximum; the day is left out';

interface Layout {
  date: number;
  tmin: Column & { unit: DailyUnit };
  tmax: Column & { unit: DailyUnit };
}

/** Finds the columns; a message when one is not there or its unit is not known. */
function layoutOf(header: readonly string[], unit: DailyUnit | null): Layout | string {
  const date = header.findIndex(title => title === 'date' || title === 'day');
  const [tmin, tmax] = [temperatureColumn(header, 'tmin'), temperatureColumn(header, 'tmax')];
  if (date < 0 || !tmin || !tmax) {
    const seen = header.slice(0, 8).join(', ') || 'nothing';
    return `a daily record has the columns date, tmin_c and tmax_c (or _f); seen: ${seen}`;
  }
  const [minUnit, maxUnit] = [tmin.unit ?? unit, tmax.unit ?? unit];
  if (minUnit === null || maxUnit === null) {
    return 'the unit is not said: name the columns tmin_c and tmax_c, or tmin_f and tmax_f';
  }
  return { date, tmin: { ...tmin, unit: minUnit }, tmax: { ...tmax, unit: maxUnit } };
}

/** A cell in C; null when it was not read or cannot be used. What is wrong with it goes to `faults`. */
function temperature(
  cells: readonly string[],
  { index, unit, flags }: Layout['tmin'],
  faults: Faults,
  line: number,
): number | null {
  const cell = cells[index] ?? '';
  if (missingMarks.has(cell.toLowerCase())) return null;
  if (cells[flags]?.split(',')[1]?.trim()) {
    faults.add('warning', 'the agency flagged the value as doubtful; it is left out', line);
    return null;
  }
  const value = Number(cell);
  if (!Number.isFinite(value)) {
    faults.add('error', `"${cell}" is no temperature; leave a cell empty when nothing was read`, line);
    return null;
  }
  const celsius = toCelsius[unit](value);
  if (celsius >= COLDEST_EVER_C && celsius <= HOTTEST_EVER_C) return celsius;
  const question =
    unit === 'C' && value > 0 && toCelsius.F(value) <= HOTTEST_EVER_C ? '; is the file in F?' : '';
  faults.add('error', `no such temperature has ever been measured in ${unit}${question}`, line);
  return null;
}

/**
 * Reads a daily record. Columns are found by name (`date`, `tmin_c` or `tmin_f` or `tmin`, `tmax` likewise; others are ignored);
 * `unit` serves columns whose name does not say it. Blank cells and the usual marks (M, NA, -9999) are days not read, and so are
 * values an agency flagged as failing its quality control. Never throws; with an error among the problems the rows are not to be used.
 */
export function readDailyRecord(text: string, unit: DailyUnit | null = null): DailyRecord {
  let table: string[][];
  try {
    table = parse(text, { bom: true, relax_column_count: true, relax_quotes: true, trim: true });
  } catch (problem) {
    return refused(`the file is no CSV: ${problem instanceof Error ? problem.message : String(problem)}`);
  }
  const header = (table[0] ?? []).map(title => title.toLowerCase());
  const layout = layoutOf(header, unit);
  if (typeof layout === 'string') return refused(layout, 1);

  const faults = new Faults();
  const byDay = new Map<Day, DayRow>();
  for (let index = 1; index < table.length; index += 1) {
    const cells = table[index] as string[];
    const line = index + 1;
    if (cells.length === 1 && cells[0] === '') continue;
    const day = parseDay(cells[layout.date] ?? '');
    if (day === null) {
      faults.add('error', `"${cells[layout.date] ?? ''}" is no day; write days as 2026-01-31`, line);
      continue;
    }
    let tminC = temperature(cells, layout.tmin, faults, line);
    let tmaxC = temperature(cells, layout.tmax, faults, line);
    if (tminC !== null && tmaxC !== null && tminC > tmaxC) {
      faults.add('warning', crossed, line);
      [tminC, tmaxC] = [null, null];
    }
    const before = byDay.get(day);
    if (before === undefined) byDay.set(day, { day, tminC, tmaxC });
    else if (before.tminC === tminC && before.tmaxC === tmaxC) {
      faults.add('warning', 'the day stands in the file twice with the same values', line);
    } else faults.add('error', 'the day stands in the file twice with different values', line);
  }
  const problems = faults.problems();
  if (faults.count(crossed) > CROSSED_SHARE * table.length) {
    problems.push({
      level: 'error',
      line: 1,
      message: 'so many minima above the maximum: are the columns swapped?',
    });
  }
  if (byDay.size === 0) problems.push({ level: 'error', line: 0, message: 'the file has no days' });
  return {
    rows: [...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1)),
    unit: layout.tmin.unit,
    station: stationOf(header, table[1]),
    problems,
  };
}
