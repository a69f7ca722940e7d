/**
 * Changes cells and adds rows and columns in a CSV text. Separator, line ends, byte order mark, quotes and the order of the columns stay as
 * they are (RFC 4180, with semicolons and tabs as spreadsheets write them).
 */

import { columnName } from '../reading/csvText.ts';
import { type Cell, cellWords, rowsOf, separatorOf } from './tableText.ts';
import { withEdits } from './textEdit.ts';
import { lineEndOf } from './yamlPlaces.ts';

export interface OpenTable {
  text: string;
  separator: string;
  /** Names of the columns as the check reads them: `Height in` is height_in. */
  columns: string[];
  header: Cell[];
  /** Rows below the header that hold anything. */
  rows: Cell[][];
}

/** Takes a table apart. A text without any row has no columns. */
export function openTable(text: string): OpenTable {
  const separator = separatorOf(text);
  const [header = [], ...rows] = rowsOf(text, separator).filter(cells =>
    cells.some(cell => cellWords(text, cell) !== ''),
  );
  return { text, separator, columns: header.map(cell => columnName(cellWords(text, cell))), header, rows };
}

/** A value as it stands in a cell: in double quotes where it must be, or where the one before it was. */
function cellText(value: string, separator: string, quoted = false): string {
  const needed = quoted || value.includes(separator) || /["\r\n]|^\s|\s$/.test(value);
  return needed ? `"${value.replaceAll('"', '""')}"` : value;
}

/** What a row says in a column; '' where the column or the cell is not there. */
export function wordsAt({ text, columns }: OpenTable, row: readonly Cell[], column: string): string {
  const cell = row[columns.indexOf(column)];
  return cell ? cellWords(text, cell) : '';
}

/** The text with another value in one cell. Throws a RangeError when there is no such column. */
export function withCell(table: OpenTable, row: readonly Cell[], column: string, value: string): string {
  const { text, separator, columns } = table;
  const index = columns.indexOf(column);
  if (index < 0) throw new RangeError(`no column ${column}`);
  const cell = row[index];
  if (!cell) {
    // A row that ends early.
    const { end } = row.at(-1)!;
    const put = separator.repeat(index - row.length + 1) + cellText(value, separator);
    return withEdits(text, [{ start: end, end, put }]);
  }
  const raw = text.slice(cell.start, cell.end);
  const put = cellText(value, separator, raw.trim().startsWith('"'));
  const start = cell.start + raw.length - raw.trimStart().length;
  // Spaces that somebody lined the columns up with stay.
  const end = raw.trim() === '' ? cell.end : start + raw.trim().length;
  return withEdits(text, [{ start: raw.trim() === '' ? cell.start : start, end, put }]);
}

/** The text with a row more below the last one. Values of columns that are not there are an error of the caller. */
export function withRow(table: OpenTable, values: Readonly<Record<string, string>>): string {
  const { text, separator, columns, header, rows } = table;
  const missing = Object.keys(values).find(name => !columns.includes(name));
  if (missing !== undefined) throw new RangeError(`no column ${missing}`);
  const line = columns.map(name => cellText(values[name] ?? '', separator)).join(separator);
  const { end } = (rows.at(-1) ?? header).at(-1)!;
  return withEdits(text, [{ start: end, end, put: lineEndOf(text) + line }]);
}

/** The text with a column more on the right, empty in every row. */
export function withColumn({ text, separator, header, rows }: OpenTable, name: string): string {
  const width = header.length;
  const edits = [header, ...rows].map((row, index) => {
    const { end } = row.at(-1)!;
    const padding = separator.repeat(Math.max(width - row.length, 0) + 1);
    return { start: end, end, put: index === 0 ? padding + name : padding };
  });
  return withEdits(text, edits);
}

/** The text without one of the rows, its line end included. */
export function withoutRow({ text }: Pick<OpenTable, 'text'>, row: readonly Cell[]): string {
  const start = Math.max(...['\n', '\r'].map(end => text.lastIndexOf(end, row[0]!.start - 1))) + 1;
  const { end } = row.at(-1)!;
  const [ending = ''] = /^\r\n|^\n|^\r/.exec(text.slice(end)) ?? [];
  // Of a last row without a line end, the one before it goes.
  if (ending === '') {
    const before = /(?:\r\n|\n|\r)$/.exec(text.slice(0, start))?.[0].length ?? 0;
    return text.slice(0, start - before) + text.slice(end);
  }
  return text.slice(0, start) + text.slice(end + ending.length);
}
