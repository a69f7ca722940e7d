import { describe, expect, it } from 'vitest';
import { baseYard, catalogueOf, type World, worldRecords } from '../../../tests/world.ts';
import { day } from '../days.ts';
import type { AddressRow } from '../records/address.ts';
import { compare } from './comparison.ts';
import { fileChanges } from './fileChanges.ts';
import { problemChanges } from './problemChanges.ts';

const asOf = '2026-09-10';
const sideOf = (world: World, addresses: AddressRow[] = [], on = asOf) => ({
  catalogue: catalogueOf(worldRecords(world), on),
  addresses,
});
const row = (address: string, leadsTo: string | null): AddressRow => ({
  address,
  since: day('2026-01-01'),
  leadsTo,
  line: 2,
});

const seen = { roots: 'full', leaves: 'full', health: 'sound', where: 'outdoors' } as const;
const walks: World['walks'] = { '2026-08-29': [{ ...seen, left: 19, heightCm: 47, caliperMm: 7 }] };
const at = { lot: 'a-1', cultivar: 'Test Fig' };

describe('what a change does to the site', () => {
  it('is nothing when nothing changed', () => {
    const { sizes, ...rest } = compare(sideOf({ walks }), sideOf({ walks }));
    expect(
      Object.values({ ...rest, ...rest.addresses })
        .filter(value => Array.isArray(value))
        .flat(),
    ).toEqual([]);
    expect(sizes.before).toEqual(sizes.after);
    expect(sizes.after).toEqual({ lots: 1, plants: 19, ready: 1 });
  });

  it('is the passing of days where the two sides are of two days', () => {
    // Ten days outdoors harden leaves (our working figure): seen outdoors on August 29.
    const { ready } = compare(sideOf({ walks }, [], '2026-09-07'), sideOf({ walks }, [], '2026-09-08'));
    expect(ready).toEqual([{ ...at, form: 'leafed-pot', from: 'opens', to: 'ready' }]);
  });

  it('tells a sale and the lot that it empties apart', () => {
    const lots = [{ lot: 'a-1' }, { lot: 'a-2' }];
    const sold = { ...walks, '2026-09-09': [{ left: 0 }, { lot: 'a-2', left: 15, lost: 1 }] };
    const { soldOut, counts, sizes, notReady } = compare(
      sideOf({ lots, walks }),
      sideOf({ lots, walks: sold }),
    );
    expect(soldOut).toEqual([{ ...at, from: 19, to: 0, sold: 19, lost: 0, returned: 0 }]);
    expect(counts).toEqual([{ ...at, lot: 'a-2', from: 20, to: 15, sold: 4, lost: 1, returned: 0 }]);
    expect(sizes.after).toEqual({ lots: 1, plants: 15, ready: 0 });
    expect(notReady).toEqual([]);
  });

  it('tells a lot that is back', () => {
    const gone = { ...walks, '2026-09-01': [{ left: 0 }] };
    const back = { ...gone, '2026-09-09': [{ left: 2, returned: 2 }] };
    const changes = compare(sideOf({ walks: gone }), sideOf({ walks: back }));
    expect(changes.back).toEqual([{ ...at, from: 0, to: 2, sold: 0, lost: 0, returned: 2 }]);
  });

  it('tells lots opened and gone, with what becomes of their addresses', () => {
    const two = { lots: [{ lot: 'a-1' }, { lot: 'a-2', raised: 7 }] };
    const opened = compare(sideOf({}), sideOf(two));
    expect(opened.opened).toEqual([{ ...at, lot: 'a-2', left: 7, ready: [] }]);
    expect(opened.addresses.gained.filter(address => !address.startsWith('/go/'))).toEqual(['/lots/a-2/']);
    expect(opened.addresses.gained).toHaveLength(2);
    expect(opened.addresses.lost).toEqual([]);

    const removed = compare(sideOf(two), sideOf({}));
    expect(removed.removed).toEqual([{ ...at, lot: 'a-2' }]);
    expect(removed.addresses.lost).toEqual(opened.addresses.gained);
  });

  it('tells the old address that leads nowhere any more when its line is taken out of the list by hand', () => {
    const rows = [row('/cultivars/old-fig/', null), row('/cultivars/old-fig/', '/cultivars/test-fig/')];
    const cut = compare(sideOf({}, rows), sideOf({}, []));
    expect(cut.addresses.lost).toEqual(['/cultivars/old-fig/']);
    expect(compare(sideOf({}, rows), sideOf({}, rows.slice(1))).addresses.lost).toEqual([]);
  });

  it('tells an address that leads on after a rename', () => {
    const before = sideOf({});
    const cultivars = { 'other-fig': {} };
    const renamed = { cultivars, lots: [{ cultivar: 'other-fig' }] };
    const bare = compare(before, sideOf(renamed));
    expect(bare.addresses.lost).toContain('/cultivars/test-fig/');
    const led = compare(before, sideOf(renamed, [row('/cultivars/test-fig/', '/cultivars/other-fig/')]));
    expect(led.addresses.redirected).toEqual([{ from: '/cultivars/test-fig/', to: '/cultivars/other-fig/' }]);
    expect(led.addresses.gained).toContain('/cultivars/other-fig/');
  });

  it('takes everything for new where nothing was', () => {
    const { opened, addresses, sizes } = compare(null, sideOf({ walks }));
    expect(opened.map(({ lot }) => lot)).toEqual(['a-1']);
    expect(addresses.gained).toContain('/cultivars/test-fig/');
    expect(sizes.before).toEqual({ lots: 0, plants: 0, ready: 0 });
  });
});

describe('a price that moved', () => {
  const prices = baseYard.prices;
  const causes = (before: World, after: World) =>
    compare(sideOf(before), sideOf(after))
      .prices.filter(({ form }) => form === 'leafed-pot')
      .map(change => change.causes);

  it.each<[string, World, World, object[]]>([
    [
      'size',
      {},
      { walks: { '2026-08-29': [{ heightCm: 80, caliperMm: 11 }] } },
      [{ cause: 'size', from: '#1', to: '#2' }],
    ],
    [
      'base price',
      {},
      { yard: { prices: { ...prices, base: { fig: 63 } } } },
      [{ cause: 'base', species: 'fig', from: 40, to: 63 }],
    ],
    [
      'price rules',
      {},
      { yard: { prices: { ...prices, form_steps: { ...prices.form_steps, 'leafed-pot': 2 } } } },
      [{ cause: 'settings' }],
    ],
    [
      'price of its own',
      {},
      { lots: [{ price: { amount: '99', why: 'Show tree.' } }] },
      [{ cause: 'override', from: null, to: { minor: 9900, currency: 'USD' }, why: 'Show tree.' }],
    ],
    [
      'private floor',
      {},
      { yard: { costs: { ...baseYard.costs!, packing: '60.00' } } },
      [{ cause: 'floor' }],
    ],
  ])('says that it was the %s', (_, before, after, expected) => {
    expect(causes(before, after)).toEqual([expected]);
  });

  it('says that it was scarcity', () => {
    const [[cause] = []] = causes({}, { cultivar: { mothers: 0, offered: 'a-few' } });
    expect(cause).toMatchObject({ cause: 'scarcity' });
  });

  it('is not told for other forms or sold-out lots', () => {
    const bareOnly = { ...prices, form_steps: { ...prices.form_steps, 'bare-root': -3 } };
    const moved = compare(sideOf({}), sideOf({ yard: { prices: bareOnly } })).prices;
    expect(moved.map(({ form }) => form)).toEqual(['bare-root']);
    const gone = { walks: { '2026-08-29': [{ left: 0, heightCm: 80, caliperMm: 11 }] } };
    expect(compare(sideOf({}), sideOf(gone)).prices).toEqual([]);
  });
});

describe('problems and files', () => {
  const warning = (line: number, file = 'lots/a.yaml') => ({
    level: 'warning' as const,
    rule: 'lot-dates',
    file,
    line,
    column: 1,
    path: '0.severed',
    got: '',
    expected: '',
    message: 'severed before it was started',
    remedy: 'look again.',
  });

  it('takes a warning that only moved to another line for the same one', () => {
    expect(problemChanges([warning(4)], [warning(9)])).toEqual({ gained: [], gone: [] });
    const twice = problemChanges([warning(4)], [warning(4), warning(9)]);
    expect(twice).toEqual({ gained: [warning(9)], gone: [] });
    expect(problemChanges([warning(4)], [{ ...warning(4), level: 'error' }]).gained).toEqual([]);
  });

  it('compares files by their lines, whatever the line ends', () => {
    const file = (path: string, text: string) => ({ path, bytes: new TextEncoder().encode(text) });
    const before = {
      files: [file('a', 'x\ny\n'), file('b', 'x\n'), file('c', '')],
      photos: [{ name: 'p.jpg', facts: null }],
    };
    const after = {
      files: [file('a', 'x\r\ny\r\n'), file('b', 'x\nz\n'), file('d', '')],
      photos: [{ name: 'q.jpg', facts: null }],
    };
    expect(fileChanges(before, after)).toEqual({
      added: ['d', 'photos/q.jpg'],
      changed: ['b'],
      removed: ['c', 'photos/p.jpg'],
    });
  });
});
