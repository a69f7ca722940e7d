/** Rows and cells of a table with their places in its text, for edits that leave the rest of the file alone. */

export interface Cell {
  /** Offsets in the text, quotes included; `end` is the first behind the cell. */
  start: number;
  end: number;
}

/** Rows of cells, empty lines among them. Separators and line ends inside double quotes belong to the cell (RFC 4180, 2). */
export function rowsOf(text: string, separator: string): Cell[][] {
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

/** The separator of a table: the one its header has. */
export function separatorOf(text: string): string {
  const header = text.trimStart().split(/[\r\n]/, 1)[0] ?? '';
  return [',', ';', '\t'].find(sign => header.includes(sign)) ?? ',';
}

/** What a cell says. */
export function cellWords(text: string, { start, end }: Cell): string {
  const raw = text.slice(start, end).trim();
  return raw.length > 1 && raw.startsWith('"') && raw.endsWith('"')
    ? raw.slice(1, -1).replaceAll('""', '"')
    : raw;
}
