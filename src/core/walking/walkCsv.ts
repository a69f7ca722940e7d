/** A walk as the file that goes into content/walks: CSV (RFC 4180), a row to each lot that was looked at, columns that nobody used left out. */

import { type Entry, type TypedColumn, typedColumns } from './entry.ts';

function cell(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

const isTyped = (entry: Entry, column: TypedColumn) => (entry[column] ?? '') !== '';

/** How many lots of a walk were looked at. */
export function lotsSeen(entries: ReadonlyMap<string, Entry>): number {
  return [...entries.values()].filter(entry => typedColumns.some(column => isTyped(entry, column))).length;
}

/** The file of a walk, in the order in which the lots stand. */
export function walkCsv(entries: ReadonlyMap<string, Entry>): string {
  const used = typedColumns.filter(column => [...entries.values()].some(entry => isTyped(entry, column)));
  const rows = [...entries].flatMap(([lot, entry]) =>
    used.some(column => isTyped(entry, column))
      ? [[lot, ...used.map(column => cell((entry[column] ?? '').trim()))]]
      : [],
  );
  return [['lot', ...used], ...rows].map(row => `${row.join(',')}\n`).join('');
}

/** Longest address that hosts of repositories take: most servers refuse more than 8,000 signs. RFC 9110, 4.1, asks for that many at least. */
const LONGEST_ADDRESS = 8000;

/**
 * Address of the host's form for a new file with name and text filled in. `pattern` has `{name}` and `{text}` where they go. Null for a walk
 * too long for an address.
 */
export function newFileAddress(pattern: string, name: string, text: string): string | null {
  const address = pattern
    .replaceAll('{name}', () => encodeURIComponent(name))
    .replaceAll('{text}', () => encodeURIComponent(text));
  return address.length <= LONGEST_ADDRESS ? address : null;
}
