/** The yard's own temperature log: a day, its minimum and its maximum per line. */

import type { Day } from '../days.ts';
import type { DailyReading } from '../records/records.ts';
import { fahrenheitToCelsius } from '../units.ts';
import { type CellKind, readCell } from './cells.ts';
import { checkColumns, missingColumn, type Table } from './columns.ts';
import { type RawTable, readCsv } from './csvText.ts';
import { atCell, type Problem } from './problem.ts';

/** Coldest and hottest air near the ground that a yard may see; the measured extremes of the earth lie just beyond. */
const celsius: CellKind = { kind: 'measure', low: -65, high: 56 };
const fahrenheit: CellKind = { kind: 'measure', low: -85, high: 133 };

const kinds = {
  date: { kind: 'day' },
  tmin_c: celsius,
  tmin_f: fahrenheit,
  tmax_c: celsius,
  tmax_f: fahrenheit,
} as const;
type Column = keyof typeof kinds;
const columns = Object.keys(kinds) as Column[];

export interface ReadTemperatures {
  readings: DailyReading[];
  problems: Problem[];
  table: RawTable | null;
}

/** Reads content/temperatures.csv; days on which a value is missing are left out. */
export function readTemperatures(file: string, text: string): ReadTemperatures {
  const raw = readCsv(file, text);
  if ('problem' in raw) return { readings: [], problems: [raw.problem], table: null };
  const { table, problems } = checkColumns(raw, columns);
  problems.push(...columnProblems(raw));
  if (!table || problems.some(({ rule }) => rule === 'missing-column'))
    return { readings: [], problems, table: raw };
  const lines = new Map<Day, number>();
  const readings = table.rows.flatMap(row => {
    const read = readRow(table, row, lines);
    problems.push(...read.problems);
    return read.reading ? [read.reading] : [];
  });
  readings.sort((a, b) => (a.day < b.day ? -1 : 1));
  return { readings, problems, table: raw };
}

function columnProblems({ file, header, headerLine }: RawTable): Problem[] {
  const missing = (what: string, names: readonly string[]) =>
    names.some(each => header.includes(each))
      ? []
      : [missingColumn(file, headerLine, what, `${names.join(' or ')}.`)];
  const twice = (first: Column, second: Column): Problem[] =>
    header.includes(first) && header.includes(second)
      ? [
          {
            rule: 'two-units',
            file,
            spot: atCell(headerLine, second),
            got: second,
            expected: `${first} or ${second}, not both`,
            message: `the columns "${first}" and "${second}" are both there`,
            remedy: 'keep one of the two.',
          },
        ]
      : [];
  return [
    ...missing('the column "date" is missing', ['date']),
    ...missing('there is no column of minima', ['tmin_c', 'tmin_f']),
    ...missing('there is no column of maxima', ['tmax_c', 'tmax_f']),
    ...twice('tmin_c', 'tmin_f'),
    ...twice('tmax_c', 'tmax_f'),
  ];
}

function readRow(
  { file, at }: Table<Column>,
  { cells, line }: { cells: string[]; line: number },
  lines: Map<Day, number>,
): { reading: DailyReading | null; problems: Problem[] } {
  const problems: Problem[] = [];
  const values: Partial<Record<Column, string | number>> = {};
  for (const [column, index] of at) {
    const read = readCell(column, cells[index] ?? '', kinds[column]);
    if ('words' in read) problems.push({ ...read.words, file, spot: atCell(line, column) });
    else if (read.value !== null) values[column] = read.value;
  }
  const day = values.date as Day | undefined;
  if (day === undefined && problems.length === 0) problems.push(noDate(file, line));
  const earlier = day && lines.get(day);
  if (earlier) problems.push(dayTwice(file, line, day, earlier));
  else if (day) lines.set(day, line);
  const [tminC, tmaxC] = [inC(values.tmin_c, values.tmin_f), inC(values.tmax_c, values.tmax_f)];
  if (tminC === null || tmaxC === null || day === undefined || problems.length > 0)
    return { reading: null, problems };
  if (tminC > tmaxC)
    return { reading: null, problems: [crossed(file, line, at.has('tmin_c') ? 'tmin_c' : 'tmin_f')] };
  return { reading: { day, tminC, tmaxC }, problems };
}

function inC(
  celsiusValue: string | number | undefined,
  fahrenheitValue: string | number | undefined,
): number | null {
  if (celsiusValue !== undefined) return Number(celsiusValue);
  return fahrenheitValue === undefined ? null : fahrenheitToCelsius(Number(fahrenheitValue));
}

function noDate(file: string, line: number): Problem {
  return {
    rule: 'empty-value',
    file,
    spot: atCell(line, 'date'),
    got: 'nothing',
    expected: 'a day, YYYY-MM-DD',
    message: 'the row has no date',
    remedy: 'write the day, or delete the row.',
  };
}

function dayTwice(file: string, line: number, day: Day, earlier: number): Problem {
  return {
    rule: 'day-twice',
    file,
    spot: atCell(line, 'date'),
    got: day,
    expected: 'each day once',
    message: `${day} is there twice, first in line ${earlier}`,
    remedy: 'keep one of the two lines.',
  };
}

function crossed(file: string, line: number, column: Column): Problem {
  return {
    rule: 'log-crossed',
    file,
    spot: atCell(line, column),
    expected: 'a minimum below the maximum',
    message: 'the minimum is above the maximum',
    remedy: 'look the two up again; the columns may be swapped.',
  };
}
