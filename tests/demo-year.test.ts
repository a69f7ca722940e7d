/** The demonstration yard on other days than the one it was made for: a catalogue is built on each, and what always holds, holds. */

import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { assembled, loadContent } from '../src/content.ts';
import { day } from '../src/core/days.ts';

const folder = join(import.meta.dirname, '..', 'content');

/** From the yard's own day through a year: the turns of year and season, and a leap day. No walk follows, so knowing runs out. */
const days = [
  '2026-11-25',
  '2026-12-31',
  '2027-01-01',
  '2027-02-15',
  '2027-03-01',
  '2027-04-20',
  '2027-05-31',
  '2027-06-21',
  '2027-07-24',
  '2027-08-31',
  '2027-09-22',
  '2027-10-31',
  '2028-02-29',
] as const;

describe.each(days)('on %s', asOf => {
  it('builds, and what it says of each lot fits together', async () => {
    const content = await loadContent({ dir: folder, asOf });
    expect(content.reading.diagnostics.filter(({ level }) => level === 'error')).toEqual([]);
    const { catalogue } = await assembled(content);
    const today = day(asOf);
    expect(catalogue.asOf).toBe(today);
    expect(catalogue.lots.length).toBeGreaterThan(0);
    for (const { lot, stock, forms, soldOut, signs, size, cartons } of catalogue.lots) {
      const said = `${lot.id} on ${asOf}`;
      expect(JSON.stringify({ stock, forms, signs, size, cartons }), said).not.toMatch(
        /NaN|Infinity|Invalid|undefined/,
      );
      // A number that was none would have become null.
      expect(stock.left, said).toBeGreaterThanOrEqual(0);
      for (const { state, range, gates, because } of forms) {
        expect(state === 'opens', said).toBe(range !== null);
        if (range !== null) {
          expect(range.from <= range.to, said).toBe(true);
          expect(range.to >= today, said).toBe(true);
        }
        if (state === 'ready') {
          expect(soldOut, said).toBe(false);
          expect(
            gates.every(gate => gate.state === 'passed'),
            said,
          ).toBe(true);
        } else expect(because.length, said).toBeGreaterThan(0);
        for (const { text } of because) expect(text, said).toMatch(/^\S.*[.!?)]$/);
      }
    }
    const order = (entries: readonly { lot: { id: string } }[]) => entries.map(({ lot }) => lot.id);
    expect(order(catalogue.lots)).toEqual([...order(catalogue.lots)].sort());
  });
});
