/** The text of the address list with lines added at its end; what is there is kept byte for byte. */

import type { AddressRow } from '../records/address.ts';

/** A line to be added. */
export type NewRow = Omit<AddressRow, 'line'>;

const columns = ['address', 'since', 'leads_to'] as const;

/** A list without lines. */
export const emptyList = `${columns.join(',')}\n`;

/**
 * Adds lines in the way the list is written: its separator, its order of columns, its line ends. Lines that the list
 * holds already as the last word on their address are left out.
 */
export function withRows(text: string, rows: readonly NewRow[]): string {
  const start = text.trim() === '' ? emptyList : text;
  const lines = start.split(/\r\n|\n|\r/);
  const header = (lines[0] ?? '').replace(/^\ufeff/, '');
  const separator = [',', ';', '\t'].find(sign => header.includes(sign)) ?? ',';
  const order = header.split(separator).map(name => name.trim().replace(/^"(.*)"$/, '$1'));
  const cells = (line: string) => line.split(separator).map(cell => cell.trim().replace(/^"(.*)"$/, '$1'));
  const [address, leadsTo] = [order.indexOf('address'), order.indexOf('leads_to')];
  const last = new Map<string, string>();
  for (const line of lines.slice(1)) {
    const row = cells(line);
    last.set(row[address] ?? '', row[leadsTo] ?? '');
  }
  const lineEnd = /\r\n|\n|\r/.exec(start)?.[0] ?? '\n';
  const closed = /[\r\n]$/.test(start) ? start : `${start}${lineEnd}`;
  const added = rows
    .filter(row => last.get(row.address) !== (row.leadsTo ?? ''))
    .map(row => {
      const values: Record<string, string> = {
        address: row.address,
        since: row.since,
        leads_to: row.leadsTo ?? '',
      };
      return `${order.map(name => values[name] ?? '').join(separator)}${lineEnd}`;
    });
  return added.length === 0 ? text : `${closed}${added.join('')}`;
}
