/** The columns of a table against those it may have. */

import { type RawTable, showCell } from './csvText.ts';
import { nearest } from './nearest.ts';
import { atCell, atLine, type Problem, plural } from './problem.ts';

/** A table whose columns are known and whose rows are all of one width. */
export interface Table<Column extends string> {
  file: string;
  /** Place of each column that is there. */
  at: ReadonlyMap<Column, number>;
  rows: { cells: string[]; line: number }[];
}

/** Checks header and widths. The table is null when its columns cannot be relied on; ragged rows are left out of it. */
export function checkColumns<Column extends string>(
  raw: RawTable,
  known: readonly Column[],
): { table: Table<Column> | null; problems: Problem[] } {
  const { file, headerLine } = raw;
  const width = widthOf(raw);
  const header = raw.header.slice(0, width);
  const problems: Problem[] = [];
  const at = new Map<Column, number>();
  header.forEach((name, index) => {
    const column = known.find(each => each === name);
    if (column === undefined) problems.push(unknownColumn(raw, name, index, known));
    else if (at.has(column)) problems.push(duplicateColumn(file, headerLine, name));
    else at.set(column, index);
  });
  const rows = raw.rows.filter(row => {
    const cells = trimmed(row.cells, width);
    if (cells.length === width) return true;
    problems.push(raggedRow(file, row.line, cells.length, width));
    return false;
  });
  const sound = problems.every(({ rule }) => rule === 'ragged-row');
  return { table: sound ? { file, at, rows } : null, problems };
}

/** Width of the table without the empty columns that spreadsheets add on the right. */
function widthOf({ header, rows }: RawTable): number {
  let width = header.length;
  while (width > 1 && header[width - 1] === '' && rows.every(({ cells }) => !cells[width - 1])) width -= 1;
  return width;
}

/** A row without empty cells beyond the width. */
function trimmed(cells: readonly string[], width: number): readonly string[] {
  let length = cells.length;
  while (length > width && cells[length - 1] === '') length -= 1;
  return cells.slice(0, length);
}

function unknownColumn(
  { file, headerLine, header }: RawTable,
  name: string,
  index: number,
  known: readonly string[],
): Problem {
  const guess = nearest(name, known);
  const first = header.indexOf(name) === index;
  return {
    rule: 'unknown-column',
    file,
    spot: first && name !== '' ? atCell(headerLine, name) : atLine(headerLine),
    got: name,
    expected: known.join(', '),
    message: name === '' ? `column ${index + 1} has no name` : `unknown column ${showCell(name)}`,
    remedy: guess ? `did you mean "${guess}"?` : `known columns are ${known.join(', ')}.`,
  };
}

function duplicateColumn(file: string, line: number, name: string): Problem {
  return {
    rule: 'duplicate-column',
    file,
    spot: atLine(line),
    got: name,
    expected: 'each column once',
    message: `the column ${showCell(name)} is there twice`,
    remedy: 'take one of the two out.',
  };
}

function raggedRow(file: string, line: number, found: number, width: number): Problem {
  return {
    rule: 'ragged-row',
    file,
    spot: atLine(line),
    got: String(found),
    expected: String(width),
    message: `the row has ${plural(found, 'cell')} where the header has ${width}`,
    remedy:
      found > width
        ? 'put a cell that holds a comma in double quotes, or take the extra cell out.'
        : 'add the missing commas, so that every column has its cell.',
  };
}

/** `what` is the start of the message: `the column "lot" is missing`. */
export function missingColumn(file: string, line: number, what: string, expected: string): Problem {
  return {
    rule: 'missing-column',
    file,
    spot: atLine(line),
    got: '',
    expected,
    message: what,
    remedy: `add it to the header: ${expected}`,
  };
}
