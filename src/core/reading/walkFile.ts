/** One walk: a table of what was counted and seen on one day. */

import { type Day, parseDay } from '../days.ts';
import { measureColumns } from '../lots/plausible.ts';
import { caliperMmOf, heightCmOf } from '../records/common.ts';
import {
  type HealthSign,
  type LeafSign,
  type RootSign,
  type Walk,
  type WalkColumn,
  type WalkNote,
  type WalkRow,
  type Where,
  type WoodSign,
  walkColumns,
} from '../records/walk.ts';
import { readCell } from './cells.ts';
import { checkColumns, missingColumn, type Table } from './columns.ts';
import { type RawTable, readCsv } from './csvText.ts';
import { dayWords } from './dates.ts';
import type { TypedMeasure } from './draft.ts';
import { stem } from './layout.ts';
import { atCell, atLine, type Problem, wholeFile } from './problem.ts';
import { walkCells } from './walkCells.ts';

const columns = Object.keys(walkColumns) as WalkColumn[];
const unitPairs = [
  ['height_in', 'height_cm'],
  ['caliper_in', 'caliper_mm'],
] as const;

export interface ReadWalk {
  walk: Walk | null;
  /** Notes of its rows, and of nothing else. */
  notes: WalkNote[];
  /** Heights and stems of its rows as they were typed. */
  measures: TypedMeasure[];
  problems: Problem[];
  table: RawTable | null;
}

/**
 * Reads a walk file, with the columns it may have. Rows with errors are left out; the walk is null when its day or its columns cannot be relied on.
 */
export function readWalk(file: string, text: string, allowed: readonly WalkColumn[] = columns): ReadWalk {
  const day = parseDay(stem(file));
  const nameProblems = day === null ? [badName(file)] : [];
  const raw = readCsv(file, text);
  if ('problem' in raw)
    return { walk: null, notes: [], measures: [], problems: [...nameProblems, raw.problem], table: null };
  const { table, problems } = checkColumns(raw, allowed);
  problems.push(...nameProblems, ...missingColumns(raw, allowed));
  if (!table?.at.has('lot')) return { walk: null, notes: [], measures: [], problems, table: raw };
  const measures: TypedMeasure[] = [];
  const rows = table.rows.flatMap(row => {
    const read = readRow(table, row);
    problems.push(...read.problems);
    measures.push(...read.measures);
    return read.row ? [read.row] : [];
  });
  if (day === null) return { walk: null, notes: [], measures: [], problems, table: raw };
  return { walk: { day, file, rows }, notes: notesOf(day, table, rows), measures, problems, table: raw };
}

function notesOf(
  day: Day,
  { file, at, rows: cellsOf }: Table<WalkColumn>,
  rows: readonly WalkRow[],
): WalkNote[] {
  const column = at.get('note');
  const texts = new Map(
    cellsOf.map(({ cells, line }) => [line, column === undefined ? '' : (cells[column] ?? '')]),
  );
  return rows.flatMap(({ lot, line }) => {
    const text = (texts.get(line) ?? '').trim();
    return text === '' ? [] : [{ day, file, line, lot, text }];
  });
}

function badName(file: string): Problem {
  const { message, remedy } = dayWords('the day in the file name', stem(file));
  return {
    rule: 'file-name',
    file,
    spot: wholeFile,
    got: stem(file),
    expected: 'a day, YYYY-MM-DD',
    message,
    remedy,
  };
}

function missingColumns({ file, header, headerLine }: RawTable, allowed: readonly WalkColumn[]): Problem[] {
  if (!header.includes('lot'))
    return [missingColumn(file, headerLine, 'the column "lot" is missing', walkColumns.lot)];
  if (header.some(name => name !== 'lot' && name !== '')) return [];
  return [
    missingColumn(
      file,
      headerLine,
      'there is no column for anything seen',
      `${allowed.slice(1).join(', ')}.`,
    ),
  ];
}

type Cells = Partial<Record<WalkColumn, string | number>>;

function readRow(
  { file, at }: Table<WalkColumn>,
  { cells, line }: { cells: string[]; line: number },
): { row: WalkRow | null; measures: TypedMeasure[]; problems: Problem[] } {
  const problems: Problem[] = [];
  const values: Cells = {};
  for (const [column, index] of at) {
    const read = readCell(column, cells[index] ?? '', walkCells[column]);
    if ('words' in read) problems.push({ ...read.words, file, spot: atCell(line, column) });
    else if (read.value !== null) values[column] = read.value;
  }
  if (cells[at.get('lot')!] === '') problems.push(noLot(file, line));
  problems.push(...unitPairs.flatMap(pair => twoUnits(file, line, values, pair)));
  if (problems.length > 0) return { row: null, measures: [], problems };
  const measures = measureColumns.flatMap((column): TypedMeasure[] => {
    const value = values[column];
    return typeof value === 'number' ? [{ file, line, column, value }] : [];
  });
  return { row: rowOf(values, line), measures, problems };
}

function noLot(file: string, line: number): Problem {
  return {
    rule: 'empty-value',
    file,
    spot: atLine(line),
    got: 'nothing',
    expected: walkColumns.lot,
    message: 'the row does not say which lot it is about',
    remedy: 'write the id of the lot in the column lot, or delete the row.',
  };
}

function twoUnits(
  file: string,
  line: number,
  values: Cells,
  [first, second]: readonly [WalkColumn, WalkColumn],
): Problem[] {
  if (values[first] === undefined || values[second] === undefined) return [];
  return [
    {
      rule: 'two-units',
      file,
      spot: atCell(line, second),
      got: String(values[second]),
      expected: `${first} or ${second}, not both`,
      message: `"${first}" and "${second}" are both given`,
      remedy: 'keep one of the two.',
    },
  ];
}

function rowOf(values: Cells, line: number): WalkRow {
  const number = (column: WalkColumn) => values[column] as number | undefined;
  return {
    lot: String(values.lot),
    left: number('left') ?? null,
    lost: number('lost') ?? null,
    returned: number('returned') ?? null,
    heightCm: heightCmOf({ height_cm: number('height_cm'), height_in: number('height_in') }),
    caliperMm: caliperMmOf({ caliper_mm: number('caliper_mm'), caliper_in: number('caliper_in') }),
    roots: (values.roots ?? null) as RootSign | null,
    leaves: (values.leaves ?? null) as LeafSign | null,
    wood: (values.wood ?? null) as WoodSign | null,
    health: (values.health ?? null) as HealthSign | null,
    where: (values.where ?? null) as Where | null,
    line,
  };
}
