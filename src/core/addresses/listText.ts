/** The text of the address list: read in the way it is written, and added to at its end. What is there is kept byte for byte. */

import { parseDay } from '../days.ts';
import type { AddressRow } from '../records/address.ts';

/** A line to be added. */
export type NewRow = Omit<AddressRow, 'line'>;

const columns = ['address', 'since', 'leads_to'] as const;

/** A list without lines. */
export const emptyList = `${columns.join(',')}\n`;

/** How a list is written: spreadsheet programs exchange separators, columns and line ends. */
interface Manner {
  separator: string;
  order: string[];
  lineEnd: string;
}

const lineEnds = /\r\n|\n|\r/;

/** No address holds a separator or a quote, so a line can be cut at them. */
function cellsOf(line: string, separator: string): string[] {
  return line.split(separator).map(cell => cell.trim().replace(/^"(.*)"$/, '$1'));
}

function mannerOf(text: string): Manner {
  const header = (text.split(lineEnds, 1)[0] ?? '').replace(/^\ufeff/, '');
  const separator = [',', ';', '\t'].find(sign => header.includes(sign)) ?? ',';
  return { separator, order: cellsOf(header, separator), lineEnd: lineEnds.exec(text)?.[0] ?? '\n' };
}

function rowIn(line: string, { separator, order }: Manner) {
  const cells = cellsOf(line, separator);
  const [address = '', since = '', leadsTo = ''] = columns.map(name => cells[order.indexOf(name)]);
  return { address, since, leadsTo };
}

/** All lines of a list that the build or `npm run rename` wrote; a sentence where it is no such list, or was cut off. */
export function listRows(text: string): NewRow[] | { problem: string } {
  const manner = mannerOf(text);
  const missing = columns.find(name => !manner.order.includes(name));
  if (missing !== undefined) return { problem: `line 1 has no column "${missing}"` };
  const rows: NewRow[] = [];
  for (const [index, line] of text.split(lineEnds).entries()) {
    if (index === 0 || line.trim() === '') continue;
    const { address, since, leadsTo } = rowIn(line, manner);
    const day = parseDay(since);
    const isCut = cellsOf(line, manner.separator).length < columns.length;
    if (!/^(?:\/|https?:\/\/)/.test(address) || day === null || isCut)
      return { problem: `line ${index + 1} is no line of an address list` };
    rows.push({ address, since: day, leadsTo: leadsTo === '' ? null : leadsTo });
  }
  return rows;
}

/**
 * Adds lines in the way the list is written: its separator, its order of columns, its line ends. Lines that the list
 * holds already as the last word on their address are left out.
 */
export function withRows(text: string, rows: readonly NewRow[]): string {
  const start = text.trim() === '' ? emptyList : text;
  const manner = mannerOf(start);
  const last = new Map<string, string>();
  for (const line of start.split(lineEnds).slice(1)) {
    const { address, leadsTo } = rowIn(line, manner);
    last.set(address, leadsTo);
  }
  const added: string[] = [];
  for (const row of rows) {
    const { address, since, leadsTo } = { ...row, leadsTo: row.leadsTo ?? '' };
    if (last.get(address) === leadsTo) continue;
    last.set(address, leadsTo);
    const values: Record<string, string> = { address, since, leads_to: leadsTo };
    added.push(`${manner.order.map(name => values[name] ?? '').join(manner.separator)}${manner.lineEnd}`);
  }
  const closed = /[\r\n]$/.test(start) ? start : `${start}${manner.lineEnd}`;
  return added.length === 0 ? text : `${closed}${added.join('')}`;
}
