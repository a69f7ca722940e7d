import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Offer, RowsFile, TreeRow } from '../../site/data/searchRows.ts';
import {
  offerGroups,
  type SearchGroup,
  searchGroups,
  searchOrders,
} from '../../site/pages/search/searchTerms.ts';
import { inOrder, type LevelOf, narrow, wouldHelp } from './narrow.ts';
import { namesBeginning, nearNames, understand } from './understood.ts';
import { orderOf, readWanted, type Wanted, writeWanted } from './wanted.ts';
import { inAll } from './wordIndex.ts';

const noMatches = null;
const unplaced = () => null;

function chosenOf(some: Partial<Record<SearchGroup, string[]>>): Wanted['chosen'] {
  return Object.fromEntries(
    searchGroups.map(group => [group, new Set(some[group] ?? [])]),
  ) as unknown as Wanted['chosen'];
}

function tree(id: string, offers: number[], traits: Partial<TreeRow> = {}): TreeRow {
  return {
    id,
    name: id,
    also: [],
    species: 'fig',
    mark: { symbol: '', colors: '', width: 1, height: 1 },
    flavor: 'toffee',
    ripening: 'mid',
    scarcity: null,
    lots: [],
    fruit: '',
    size: '',
    stock: { state: 'ready', words: '' },
    offers,
    ...traits,
  };
}

const offers: Offer[] = [
  { form: 'bare-root', readiness: 'ready', price: '2500', size: '#1', days: 0 },
  { form: 'leafed-pot', readiness: 'opens', price: '4000', size: '#1', days: 120 },
  { form: 'bare-root', readiness: 'opens', price: '6300', size: '#3', days: 30 },
  { form: '', readiness: 'sold', price: '', size: '', days: null },
];
const file: Pick<RowsFile, 'trees' | 'offers'> = {
  offers,
  trees: [
    tree('alder', [0, 1]),
    tree('birch', [1, 2], { ripening: 'early', flavor: 'blossom' }),
    tree('cedar', [3], { ripening: 'late' }),
  ],
};
const idsOf = (some: Partial<Record<SearchGroup, string[]>>) =>
  narrow(file, chosenOf(some), noMatches, unplaced).hits.map(({ row }) => row.id);

describe('narrowing', () => {
  it('takes any value of a group and all groups together', () => {
    expect(idsOf({})).toEqual(['alder', 'birch', 'cedar']);
    expect(idsOf({ flavor: ['blossom', 'toffee'], ripening: ['early', 'late'] })).toEqual(['birch', 'cedar']);
    expect(idsOf({ readiness: ['sold'] })).toEqual(['cedar']);
  });

  it('asks form, readiness, price and size of one and the same tree', () => {
    expect(idsOf({ form: ['leafed-pot'] })).toEqual(['alder', 'birch']);
    expect(idsOf({ form: ['leafed-pot'], readiness: ['ready'] })).toEqual([]);
    expect(idsOf({ size: ['#3'], price: ['4000'] })).toEqual([]);
  });

  it('takes a price as the most to pay, and a tree without one as none', () => {
    expect(idsOf({ price: ['2499'] })).toEqual([]);
    expect(idsOf({ price: ['2500'] })).toEqual(['alder']);
    expect(idsOf({ price: ['5000'] })).toEqual(['alder', 'birch']);
  });

  it('takes how seldom others offer a cultivar', () => {
    const trees = [
      tree('common', [0], { scarcity: '0' }),
      tree('rare', [0], { scarcity: '4' }),
      tree('unknown', [0]),
    ];
    const { hits } = narrow({ offers, trees }, chosenOf({ scarcity: ['4', '3'] }), noMatches, unplaced);
    expect(hits.map(({ row }) => row.id)).toEqual(['rare']);
  });

  it('takes the verdict at the place from whoever knows it', () => {
    const levelOf: LevelOf = id => (id === 'birch' ? 'at-home' : 'a-gamble');
    const { hits, counts } = narrow(file, chosenOf({ place: ['at-home'] }), noMatches, levelOf);
    expect(hits.map(({ row }) => row.id)).toEqual(['birch']);
    expect([...counts.place]).toEqual([
      ['a-gamble', 2],
      ['at-home', 1],
    ]);
    expect(narrow(file, chosenOf({ place: ['at-home'] }), noMatches, unplaced).hits).toEqual([]);
  });

  it('gives the price and the day of what fits, not of everything the cultivar has', () => {
    const [hit] = narrow(file, chosenOf({ form: ['leafed-pot'] }), noMatches, unplaced).hits;
    expect(hit).toMatchObject({ price: 4000, days: 120 });
    const [open] = narrow(file, chosenOf({}), noMatches, unplaced).hits;
    expect(open).toMatchObject({ price: 2500, days: 0 });
  });

  it('says which choice stands in the way', () => {
    const chosen = chosenOf({ form: ['leafed-pot'], readiness: ['ready'], species: ['fig'] });
    expect(wouldHelp(file, chosen, noMatches, unplaced)).toEqual([
      { group: 'readiness', count: 2 },
      { group: 'form', count: 1 },
    ]);
  });
});

const flavors = ['toffee', 'blossom'];
const randomFile = fc
  .array(
    fc.record({ flavor: fc.constantFrom(...flavors), offers: fc.uniqueArray(fc.nat(3), { minLength: 1 }) }),
    {
      maxLength: 12,
    },
  )
  .map(rows => ({
    offers,
    trees: rows.map((row, at) => tree(`t${at}`, row.offers, { flavor: row.flavor })),
  }));
const randomChosen = fc
  .record({
    flavor: fc.subarray(flavors),
    form: fc.subarray(['bare-root', 'leafed-pot']),
    readiness: fc.subarray(['ready', 'opens', 'sold']),
    size: fc.subarray(['#1', '#3']),
  })
  .map(chosenOf);

describe('counts', () => {
  it('beside a choice are what choosing it alone in its group would leave', () => {
    fc.assert(
      fc.property(randomFile, randomChosen, (rows, chosen) => {
        const { counts } = narrow(rows, chosen, noMatches, unplaced);
        for (const group of ['flavor', ...offerGroups] as const) {
          const values = group === 'flavor' ? flavors : [...new Set(offers.map(offer => offer[group]))];
          for (const value of values) {
            const alone = narrow(rows, { ...chosen, [group]: new Set([value]) }, noMatches, unplaced);
            expect(counts[group].get(value) ?? 0).toBe(alone.hits.length);
          }
        }
      }),
      { seed: 6, numRuns: 150 },
    );
  });
});

describe('order', () => {
  const { hits } = narrow(file, chosenOf({}), noMatches, unplaced);
  const matches = new Map([
    [2, 0],
    [0, 1],
    [1, 2],
  ]);
  it.each([
    ['name', 'alder birch cedar'],
    ['price', 'alder birch cedar'],
    ['readiness', 'alder birch cedar'],
    ['ripening', 'birch alder cedar'],
    ['match', 'cedar alder birch'],
  ] as const)('by %s', (order, names) => {
    expect(
      inOrder(hits.toReversed(), order, matches)
        .map(({ row }) => row.id)
        .join(' '),
    ).toBe(names);
  });
});

describe('the address', () => {
  it('gives back what was written', () => {
    const value = fc.string({ minLength: 1, maxLength: 8 }).filter(text => !text.includes(','));
    const wanted = fc.record({
      text: fc.string({ maxLength: 12 }).map(text => text.trim()),
      chosen: fc
        .record(
          Object.fromEntries(searchGroups.map(group => [group, fc.uniqueArray(value, { maxLength: 3 })])),
        )
        .map(some => chosenOf(some)),
      order: fc.option(fc.constantFrom(...searchOrders)),
    });
    fc.assert(
      fc.property(wanted, wish => {
        const read = readWanted(writeWanted(wish));
        expect(read.text).toBe(wish.text);
        expect(read.order).toBe(wish.order);
        for (const group of searchGroups)
          expect([...read.chosen[group]].sort()).toEqual([...wish.chosen[group]].sort());
      }),
      { seed: 6, numRuns: 200 },
    );
  });

  it('is empty when nothing is asked, and reads lists written either way', () => {
    expect(writeWanted(readWanted(''))).toBe('');
    expect(writeWanted(readWanted('?form=b&form=a&sort=nonsense&q=+'))).toBe('?form=a,b');
  });

  it('orders by name without words and by match with them, unless told otherwise', () => {
    expect(orderOf({ text: '', order: null })).toBe('name');
    expect(orderOf({ text: 'jam', order: null })).toBe('match');
    expect(orderOf({ text: '', order: 'match' })).toBe('name');
    expect(orderOf({ text: 'jam', order: 'price' })).toBe('price');
  });
});

const whole: RowsFile = {
  offers,
  trees: [
    tree('bellrope', [], { name: 'Bellrope', lots: ['26-layer-01'] }),
    tree('other', [], { name: 'Étoile du Soir', also: ['Evening'], species: 'asian-persimmon' }),
  ],
  pages: [{ path: '/guides/wintering/', title: 'Winter for a tree in a pot', summary: '' }],
  places: [
    { path: '/places/munich-de/', title: 'Munich', summary: 'Bavaria, Germany' },
    { path: '/places/houston-tx/', title: 'Houston', summary: 'Texas, United States' },
  ],
  choices: {
    ...(Object.fromEntries(searchGroups.map(group => [group, []])) as unknown as RowsFile['choices']),
    species: [
      ['fig', 'Fig'],
      ['asian-persimmon', 'Asian persimmon'],
    ],
    flavor: [['toffee', 'Toffee']],
  },
};

describe('near names', () => {
  it.each([
    ['belrope', ['Bellrope']],
    ['Belrlope', ['Bellrope']],
    ['etoile', ['Étoile du Soir']],
    ['evenning', ['Étoile du Soir']],
    ['persimon', ['Asian persimmon']],
    ['wintr', ['Winter for a tree in a pot']],
    ['tofee', ['Toffee']],
    ['huston', ['Houston']],
    ['xq', []],
    ['zzzzzzzzz', []],
  ])('of “%s”', (typed, titles) => {
    expect(nearNames(typed, whole).map(({ title }) => title)).toEqual(titles);
  });
});

describe('what is meant', () => {
  const meant = (text: string) => {
    const { words, chosen, named, zip } = understand(text, whole);
    const sets = Object.entries(chosen).map(([group, values]) => `${group} ${[...values].join(',')}`);
    return [
      words,
      ...sets,
      ...named.map(({ kind, path }) => `${kind} ${path}`),
      ...(zip === null ? [] : [`zip ${zip}`]),
    ];
  };
  it.each([
    ['under $50', ['', 'price 5000']],
    ['fig below 32.50', ['fig', 'price 3250']],
    ['rare', ['', 'scarcity 4,3']],
    ['something rare under $50', ['', 'price 5000', 'scarcity 4,3']],
    ['offered nowhere else', ['', 'scarcity 4']],
    ['26-layer-01', ['', 'Lot /lots/26-layer-01/']],
    ['Lot 26-LAYER-01', ['', 'Lot /lots/26-layer-01/']],
    ['Munich', ['munich', 'Place /places/munich-de/']],
    ['02139', ['', 'zip 02139']],
    ['rarely', ['rarely']],
    ['red jam', ['red jam']],
  ])('by “%s”', (text, expected) => expect(meant(text)).toEqual(expected));
});

describe('words', () => {
  it('find a name by the beginning of one of its words, and nothing by letters within', () => {
    expect([...namesBeginning(whole, 'bellr').keys()]).toEqual([0]);
    expect([...namesBeginning(whole, 'persim').keys()]).toEqual([1]);
    expect([...namesBeginning(whole, 'rope').keys()]).toEqual([]);
    expect([...namesBeginning(whole, 'inter').keys()]).toEqual([]);
  });

  it('have to be there all together', () => {
    const found = inAll([
      new Map([
        [1, 0],
        [2, 1],
      ]),
      new Map([
        [2, 0],
        [3, 1],
      ]),
    ]);
    expect([...found]).toEqual([[2, 1]]);
    expect(inAll([]).size).toBe(0);
  });
});
