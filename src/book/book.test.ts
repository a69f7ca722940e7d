/** The private book against figures worked out by hand from the base yard and three small tables. */

import { expect, test } from 'vitest';
import { loadYard } from '../../tests/yards/loadYard.ts';
import { assemble } from '../core/catalogue.ts';
import { readRecords } from '../core/reading/read.ts';
import { sellingSeason, yardBook } from './book.ts';
import { BOOK_MARK, bookPages } from './bookPages.ts';

const tables = {
  'private/sales.csv': `day,lot,plants,form,price,to
2026-06-30,bellwether-2601,1,leafed-pot,40,Marked Buyer One
2026-10-01,bellwether-2601,2,leafed-pot,45.50,Marked Buyer Two
2026-10-15,bellwether-2601,1,leafed-pot,,Marked Buyer One
`,
  'private/reservations.csv':
    'since,lot,plants,until,to\n2026-11-01,inkpot-2501,2,2026-11-20,Marked <b>Buyer</b>\n2026-11-20,inkpot-2501,1,2026-12-05,Marked Buyer One\n',
  'private/waiting.csv': 'since,cultivar,plants,to\n2026-09-01,inkpot,1,Marked Buyer One\n',
};

const { files, photos, asOf } = loadYard('base');
const encoder = new TextEncoder();
const { records, orders, diagnostics } = readRecords(
  [...files, ...Object.entries(tables).map(([path, text]) => ({ path, bytes: encoder.encode(text) }))],
  { asOf, photos },
);
if (records === null) throw new Error(JSON.stringify(diagnostics));
const all = assemble(records, asOf, new Map());
const book = yardBook(all, orders, records.yard.costs, 2);

test('what was sold: by the counts, as written down, at what price, how fast', () => {
  const row = book.sold.find(({ entry }) => entry.lot.id === 'bellwether-2601')!;
  // 20 raised, 3 lost, 12 left: 5 sold. Mean of the priced ones: (40 + 2 x 45.50) / 3 = 43.67. Four plants in 108 days, both ends counted.
  expect(row).toMatchObject({
    sold: 5,
    writtenDown: 4,
    meanMinor: 4367,
    first: '2026-06-30',
    last: '2026-10-15',
  });
  expect(row.perWeek).toBeCloseTo((4 * 7) / 108, 10);
});

test('seasons run from July to June', () => {
  expect(
    ['2026-06-30', '2026-07-01', '2027-06-30', '1999-12-31'].map(each => sellingSeason(each as never)),
  ).toEqual(['2025-26', '2026-27', '2026-27', '1999-00']);
  expect(
    book.seasons.map(({ season, plants, minor, unpriced }) => [season, plants, minor, unpriced]),
  ).toEqual([
    ['2026-27', 3, 9100, 1],
    ['2025-26', 1, 4000, 0],
  ]);
});

test('people: what is kept for them, what is past its day, what they wait for', () => {
  expect(book.people.map(({ name }) => name)).toEqual(['Marked <b>Buyer</b>', 'Marked Buyer One']);
  expect(book.people[0]!.reserved).toEqual([
    { lot: 'inkpot-2501', plants: 2, until: '2026-11-20', overdue: true },
  ]);
  expect(book.people[1]!.reserved[0]!.overdue).toBe(false);
  expect(book.people[1]!.waiting).toMatchObject([{ cultivar: 'inkpot', plants: 1, since: '2026-09-01' }]);
});

test('prices are those of the catalogue, never below the floor beside them', () => {
  expect(book.prices.length).toBeGreaterThan(3);
  for (const { entry, form, priceMinor, floorMinor, overFloor } of book.prices) {
    expect(priceMinor).toBe(entry.tiers[form]!.answer.price.minor);
    expect(floorMinor).toBeLessThanOrEqual(priceMinor);
    expect(overFloor).toBeCloseTo(1 - floorMinor! / priceMinor, 10);
  }
  expect(book.prices.find(({ entry }) => entry.lot.id === 'bellwether-2602')?.overrideRungs).not.toBeNull();
});

test('what has not been looked at for longer than the yard allows is named, the longest first', () => {
  const ids = book.stale.map(({ entry }) => entry.lot.id);
  // All three were counted last on October 17, 39 days before; the base yard allows fewer.
  expect(all.yard.walkFreshDays).toBeLessThan(39);
  expect(ids).toEqual(['bellwether-2601', 'bellwether-2602', 'inkpot-2501']);
  expect(book.stale.every(({ countedDaysAgo }) => countedDaysAgo === 39)).toBe(true);
});

test('every lot with plants left waits for something, what is ready first', () => {
  expect(book.waits.map(({ entry }) => entry.lot.id).sort()).toEqual(
    all.lots.filter(({ soldOut }) => !soldOut).map(({ lot }) => lot.id),
  );
  const order = book.waits.map(({ answer }) => ['ready', 'look', 'opens', 'blocked'].indexOf(answer.state));
  expect(order).toEqual([...order].sort((a, b) => a - b));
});

test('the pages are marked, hidden from search engines, and take no markup from records', () => {
  const pages = bookPages(all, book);
  expect([...pages.keys()]).toEqual([
    'index.html',
    'prices.html',
    'orders.html',
    'sold.html',
    'stale.html',
    'cartons.html',
  ]);
  for (const text of pages.values()) {
    expect(text).toContain(BOOK_MARK);
    expect(text).toContain('noindex');
    expect(text).not.toContain('<b>');
    expect(text).not.toContain('<script');
  }
  expect(pages.get('orders.html')).toContain('Marked &lt;b&gt;Buyer');
});
