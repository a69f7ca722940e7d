/** Cells of a table with their places in its text, for edits that must leave the rest of the file alone. */

import type { TextEdit } from './textEdit.ts';

interface Cell {
  start: number;
  end: number;
}

/** Rows of cells. Separators and line ends inside double quotes belong to the cell (RFC 4180, 2). */
function rowsOf(text: string, separator: string): Cell[][] {
  const rows: Cell[][] = [];
  let row: Cell[] = [];
  let start = text.startsWith('\ufeff') ? 1 : 0;
  let quoted = false;
  for (let at = start; at <= text.length; at += 1) {
    const sign = text[at];
    if (sign === '"') quoted = !quoted;
    const ends = sign === undefined || (!quoted && (sign === '\n' || sign === '\r'));
    if (!ends && (quoted || sign !== separator)) continue;
    row.push({ start, end: at });
    start = at + 1;
    if (ends) {
      rows.push(row);
      row = [];
    }
  }
  return rows;
}

/** Edits that put another word in every cell of a column that holds exactly the old one, quoted or not. */
export function cellEdits(text: string, column: string, from: string, to: string): TextEdit[] {
  const first = text.trimStart().split(/[\r\n]/, 1)[0] ?? '';
  const separator = [',', ';', '\t'].find(sign => first.includes(sign)) ?? ',';
  const rows = rowsOf(text, separator).filter(cells => cells.some(({ start, end }) => end > start));
  const plain = ({ start, end }: Cell) =>
    text
      .slice(start, end)
      .trim()
      .replace(/^"(.*)"$/, '$1');
  const index = (rows[0] ?? []).findIndex(cell => plain(cell) === column);
  return rows.slice(1).flatMap(cells => {
    const cell = cells[index];
    if (!cell || plain(cell) !== from) return [];
    const start = cell.start + text.slice(cell.start, cell.end).indexOf(from);
    return [{ start, end: start + from.length, put: to }];
  });
}
