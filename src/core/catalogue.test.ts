import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { baseYard, catalogueOf, type Line, type World, worldRecords } from '../../tests/world.ts';
import { leadingForm } from './catalogue.ts';
import { addDays, day } from './days.ts';
import { seasonGates } from './lots/readiness.ts';
import { healthSigns, leafSigns, rootSigns, wheres, woodSigns } from './records/walk.ts';

const asOf = '2026-11-25';
const ready: Line = {
  left: 9,
  roots: 'full',
  leaves: 'bare',
  wood: 'brown',
  health: 'sound',
  where: 'outdoors',
  heightCm: 60,
  caliperMm: 9,
};
const several: World = {
  cultivars: {
    zebra: { name: 'Amber Zebra' },
    apple: { name: 'Zinc Apple', requests: 73_519 },
    idle: { name: 'Idle' },
  },
  lots: [
    { lot: 'c-3', cultivar: 'zebra' },
    { lot: 'a-1', cultivar: 'zebra', forms: ['bare-root', 'dormant-pot'] },
    { lot: 'b-2', cultivar: 'apple' },
    { lot: 'd-4', cultivar: 'zebra', hold: { since: '2026-08-01', why: 'Waiting.' } },
    { lot: 'e-5', cultivar: 'zebra', started: '2026-12-24', severed: '2027-02-01', pottings: [] },
  ],
  walks: {
    '2026-11-01': [
      { lot: 'a-1', ...ready },
      { lot: 'b-2', ...ready, left: 0 },
      { lot: 'd-4', ...ready },
    ],
    '2026-11-22': [{ lot: 'a-1', left: 8 }],
  },
};

describe('catalogue', () => {
  it('orders lots by id and cultivars by name, and leaves out lots that are not started yet', () => {
    const { lots, cultivars } = catalogueOf(worldRecords(several), asOf);
    expect(lots.map(({ lot }) => lot.id)).toEqual(['a-1', 'b-2', 'c-3', 'd-4']);
    expect(cultivars.map(({ cultivar }) => cultivar.name)).toEqual(['Amber Zebra', 'Idle', 'Zinc Apple']);
    expect(catalogueOf(worldRecords(several), '2026-12-24').lots).toHaveLength(5);
  });

  it('puts ready lots of a cultivar first, then those that open, blocked ones last', () => {
    const zebra = catalogueOf(worldRecords(several), asOf).cultivars[0]!;
    expect(zebra.lots.map(({ lot }) => lot.id)).toEqual(['a-1', 'c-3', 'd-4']);
  });

  it('keeps a sold-out lot', () => {
    const { lots } = catalogueOf(worldRecords(several), asOf);
    expect(lots.map(({ soldOut }) => soldOut)).toEqual([false, true, false, false]);
  });

  it('does not depend on the order of files and lines', () => {
    const sorted = worldRecords(several);
    const expected = JSON.stringify(catalogueOf(sorted, asOf));
    const shuffled = <T>(items: readonly T[]) => fc.shuffledSubarray([...items], { minLength: items.length });
    fc.assert(
      fc.property(
        shuffled(sorted.lots),
        shuffled(sorted.walks),
        shuffled([...sorted.cultivars]),
        (lots, walks, cultivars) => {
          const records = { ...sorted, lots, walks, cultivars: new Map(cultivars) };
          expect(JSON.stringify(catalogueOf(records, asOf))).toBe(expected);
        },
      ),
      { seed: 81, numRuns: 10 },
    );
  });

  it('gives the same bytes twice', () => {
    const [once, twice] = [0, 1].map(() => JSON.stringify(catalogueOf(worldRecords(several), asOf)));
    expect(once).toBe(twice);
  });

  it('holds no cost, no floor and no number of requests', () => {
    const world: World = {
      ...several,
      yard: {
        costs: {
          ...baseYard.costs!,
          start: { 'air-layer': '91.37', cutting: '91.37', division: '91.37', graft: '91.37' },
          packing: '17.77',
          space_week: '0.424',
          sell_through: 0.8642,
        },
        private_note: 'Do not print.',
      },
    };
    // Two of three forms are lifted to the floor here, so the floor has been at work.
    const catalogue = catalogueOf(worldRecords(world), asOf);
    const text = JSON.stringify(catalogue);
    expect(text).toContain('The yard sells no such tree for less.');
    for (const secret of [
      'costs',
      'requests',
      '91.37',
      '17.77',
      '0.4242',
      '0.8642',
      '73519',
      '73_519',
      'Do not print',
    ]) {
      expect(text).not.toContain(secret);
    }
  });

  it('prices no form of a species without a base price', () => {
    const records = worldRecords({ yard: { prices: { ...baseYard.prices, base: { pear: 30 } } } });
    expect(catalogueOf(records, asOf).lots[0]!.tiers).toEqual({});
  });

  it('stops at records that were not checked', () => {
    const records = worldRecords(several);
    records.cultivars.delete('zebra');
    expect(() => catalogueOf(records, asOf)).toThrow('no cultivar "zebra"');
  });
});

describe('leading form', () => {
  it('is the first that is ready, in the order of the forms', () => {
    const [entry] = catalogueOf(worldRecords(several), '2026-12-16').lots;
    expect(entry!.forms.map(({ form, state }) => `${form} ${state}`)).toEqual([
      'bare-root ready',
      'dormant-pot ready',
    ]);
    expect(leadingForm(entry!)!.form).toBe('dormant-pot');
  });

  it('is the one that opens soonest while none is ready', () => {
    const entry = catalogueOf(worldRecords(several), asOf).lots[0]!;
    const opening = entry.forms.filter(({ state }) => state === 'opens');
    const leading = leadingForm(entry)!;
    for (const { range } of opening) expect(leading.range!.from <= range!.from).toBe(true);
    expect(leadingForm({ forms: [] })).toBeNull();
  });
});

describe('whatever is seen', () => {
  const maybe = <T>(values: readonly T[]) => fc.option(fc.constantFrom(...values), { nil: null });
  const line: fc.Arbitrary<Line> = fc.record({
    left: fc.option(fc.nat(25), { nil: null }),
    lost: fc.option(fc.nat(3), { nil: null }),
    heightCm: fc.option(fc.integer({ min: 5, max: 200 }), { nil: null }),
    caliperMm: fc.option(fc.integer({ min: 2, max: 40 }), { nil: null }),
    roots: maybe(rootSigns),
    leaves: maybe(leafSigns),
    wood: maybe(woodSigns),
    health: maybe(healthSigns),
    where: maybe(wheres),
  });
  const offset = fc.integer({ min: 0, max: 700 });

  it('every answer has a state that follows from its gates, days to come, and reasons', () => {
    const start = day('2026-01-05');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(offset, line), { maxLength: 6 }),
        fc.tuple(offset, offset, offset).map(days => days.sort((a, b) => a - b)),
        fc.constantFrom('air-layer' as const, 'cutting' as const, 'graft' as const),
        offset,
        (seen, [began, severed, potted], method, asked) => {
          const world: World = {
            lots: [
              {
                method,
                started: addDays(start, began!),
                severed: addDays(start, severed!),
                pottings: [{ date: addDays(start, potted!), container: '#1' }],
              },
            ],
            walks: Object.fromEntries(seen.map(([on, entry]) => [addDays(start, on), [entry]])),
          };
          const today = addDays(start, Math.max(asked, began!));
          const [entry] = catalogueOf(worldRecords(world), today).lots;
          for (const { form, state, range, gates, because } of entry!.forms) {
            const states = gates.map(gate => gate.state);
            // Nobody promises a day while it is not known in which season the tree is.
            const seasonal = states.slice(-seasonGates[form].length);
            const expected = states.includes('blocked')
              ? 'blocked'
              : seasonal.includes('look')
                ? 'look'
                : states.includes('opens')
                  ? 'opens'
                  : states.includes('look')
                    ? 'look'
                    : 'ready';
            expect(state).toBe(expected);
            expect(range !== null).toBe(state === 'opens');
            if (range) expect(today < range.from && range.from <= range.to).toBe(true);
            expect(because.length).toBeGreaterThan(0);
            for (const gate of gates) {
              expect(gate.range !== null).toBe(gate.state === 'opens');
              expect(gate.because.length).toBeGreaterThan(0);
            }
          }
        },
      ),
      { seed: 91, numRuns: 150 },
    );
  });
});
