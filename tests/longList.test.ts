/** A yard of 5,000 lots: its lists are cut into pages, and every lot stands on them once. */

import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readContentFiles } from '../src/content.ts';
import { assemble, type Catalogue } from '../src/core/catalogue.ts';
import { day } from '../src/core/days.ts';
import { readRecords } from '../src/core/reading/read.ts';
import { formLists, soldList, stockList } from '../src/site/pages/stock/stock.ts';
import type { PagedList } from '../src/site/parts/paging.ts';
import { makeYard } from './bench/makeYard.ts';

const lots = 5000;
/** The most rows of a page: what can still be read through. Our working figure. */
const mostRows = 100;

let all: Catalogue;
beforeAll(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'leafdrop-long-'));
  mkdirSync(join(folder, 'content'));
  makeYard(join(folder, 'content'), 'content', { lots, cultivars: 50 }, 1);
  const { files, photos } = await readContentFiles(join(folder, 'content'));
  rmSync(folder, { recursive: true, force: true });
  const asOf = day('2026-11-25');
  const { records, diagnostics } = readRecords(files, { asOf, photos });
  if (records === null) throw new Error(JSON.stringify(diagnostics.slice(0, 3)));
  all = assemble(records, asOf, new Map());
});

const rowsOf = <T>({ pages }: PagedList<T>) => pages.map(({ groups }) => groups.flatMap(({ rows }) => rows));

describe('5,000 lots', () => {
  it('stand once each, on the list or among the sold', () => {
    const pages = [...rowsOf(stockList(all)), ...rowsOf(soldList(all))];
    const ids = pages.flat().map(({ lot }) => lot);
    expect(ids).toHaveLength(lots);
    expect(new Set(ids)).toEqual(new Set(all.lots.map(({ lot }) => lot.id)));
  });

  it('are cut into pages of a length that can be read, on every list', () => {
    for (const list of [stockList(all), ...Object.values(formLists(all))]) {
      const lengths = rowsOf(list).map(({ length }) => length);
      expect(lengths.length).toBeGreaterThan(10);
      expect(Math.max(...lengths)).toBeLessThanOrEqual(mostRows);
      expect(Math.min(...lengths)).toBeGreaterThan(0);
    }
  });

  it('are on the list of a form when they are offered in it, and on no other', () => {
    for (const [form, list] of Object.entries(formLists(all))) {
      const due = all.lots.filter(({ soldOut, forms }) => !soldOut && forms.some(each => each.form === form));
      const ids = rowsOf(list)
        .flat()
        .map(({ lot }) => lot);
      expect(ids).toHaveLength(due.length);
      expect(new Set(ids)).toEqual(new Set(due.map(({ lot }) => lot.id)));
    }
  });
});
