/** Cells of a table that hold an id, for edits that must leave the rest of the file alone. */

import { cellWords, rowsOf, separatorOf } from '../editing/tableText.ts';
import type { TextEdit } from '../editing/textEdit.ts';

/** Edits that put another word in every cell of a column that holds exactly the old one, quoted or not. */
export function cellEdits(text: string, column: string, from: string, to: string): TextEdit[] {
  const rows = rowsOf(text, separatorOf(text)).filter(cells => cells.some(({ start, end }) => end > start));
  const index = (rows[0] ?? []).findIndex(cell => cellWords(text, cell) === column);
  return rows.slice(1).flatMap(cells => {
    const cell = cells[index];
    if (!cell || cellWords(text, cell) !== from) return [];
    const start = cell.start + text.slice(cell.start, cell.end).indexOf(from);
    return [{ start, end: start + from.length, put: to }];
  });
}
