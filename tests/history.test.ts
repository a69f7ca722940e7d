/** The history of a yard beside the same yard built anew on every day, and what must not change it. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LotEntry } from '../src/core/catalogue.ts';
import { figuresOfPlace } from '../src/core/climate/place.ts';
import { weatherYears } from '../src/core/climate/weatherYears.ts';
import { addDays, type Day, day, daysBetween } from '../src/core/days.ts';
import type { StockEvent } from '../src/core/history/event.ts';
import { listHistory } from '../src/core/history/history.ts';
import { READY_AGAIN_DAYS } from '../src/core/history/lotEvents.ts';
import type { ChangeLine } from '../src/core/records/change.ts';
import type { Form } from '../src/core/records/common.ts';
import type { WrittenLot } from '../src/core/records/lot.ts';
import { normalisePlace } from '../src/core/records/place.ts';
import type { DailyReading, Records } from '../src/core/records/records.ts';
import { leafSigns, rootSigns, woodSigns } from '../src/core/records/walk.ts';
import { catalogueOf, hills, type Line, worldRecords } from './world.ts';

const first = day('2026-05-20');
const everything = 10_000;

function historyOf(records: Records, asOf: string, most = everything): StockEvent[] {
  return listHistory(records, catalogueOf(records, asOf), most).events;
}

const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null, freq: 3 });

/** Anything that may be written down. */
const wildLine: fc.Arbitrary<Line> = fc.record({
  left: maybe(fc.constantFrom(0, 1, 4, 9, 12)),
  returned: fc.option(fc.constantFrom(1, 3), { nil: null, freq: 1 }),
  heightCm: maybe(fc.integer({ min: 20, max: 120 })),
  caliperMm: maybe(fc.integer({ min: 4, max: 14 })),
  roots: maybe(fc.constantFrom(...rootSigns)),
  leaves: maybe(fc.constantFrom(...leafSigns)),
  wood: maybe(fc.constantFrom(...woodSigns)),
  health: maybe(fc.constantFrom('sound' as const, 'watch' as const, 'hold' as const)),
  where: maybe(fc.constantFrom('outdoors' as const, 'shade' as const, 'tunnel' as const, 'store' as const)),
});

/** What is seen of a tree that does well, as the year goes on. */
const tidyLine = (on: Day): fc.Arbitrary<Line> =>
  fc.record({
    left: maybe(fc.integer({ min: 1, max: 12 })),
    heightCm: fc.integer({ min: 45, max: 90 }),
    caliperMm: fc.integer({ min: 6, max: 12 }),
    roots: fc.constantFrom('holding' as const, 'full' as const),
    leaves:
      on < '2026-10-25' ? fc.constant('full' as const) : fc.constantFrom('falling' as const, 'bare' as const),
    wood: fc.constant(on < '2026-10-01' ? ('green' as const) : ('brown' as const)),
    health: fc.constant('sound' as const),
    where: fc.constantFrom('outdoors' as const, 'shade' as const),
  });

const line = (lot: string, on: Day): fc.Arbitrary<Line> =>
  fc
    .oneof({ weight: 4, arbitrary: tidyLine(on) }, { weight: 1, arbitrary: wildLine })
    .map(seen => ({ ...seen, lot }));

const lotOf = (index: number): fc.Arbitrary<Partial<WrittenLot>> =>
  fc
    .record({
      start: fc.integer({ min: 0, max: 30 }),
      severed: fc.integer({ min: 25, max: 50 }),
      raised: fc.integer({ min: 3, max: 15 }),
      container: fc.constantFrom('#1', '#2'),
      cultivar: fc.constantFrom('one', 'two'),
      held: fc.option(fc.integer({ min: 60, max: 150 }), { nil: null, freq: 1 }),
    })
    .map(({ start, severed, raised, container, cultivar, held }) => {
      const started = addDays(first, start);
      const cut = addDays(started, severed);
      return {
        lot: `lot-${index}`,
        cultivar,
        started,
        severed: cut,
        pottings: [{ date: cut, container }],
        raised,
        ...(held === null ? {} : { hold: { since: addDays(started, held), why: 'For a test.' } }),
      };
    });

/** A yard of a few lots of two cultivars, walked now and then from July to the next spring. */
const yards: fc.Arbitrary<Records> = fc.integer({ min: 1, max: 4 }).chain(count => {
  const lots = Array.from({ length: count }, (_, index) => lotOf(index));
  const walk = fc.integer({ min: 45, max: 300 }).chain(after => {
    const on = addDays(first, after);
    const lines = lots.map((_, index) => fc.option(line(`lot-${index}`, on), { nil: null, freq: 4 }));
    return fc.tuple(fc.constant(on), fc.tuple(...lines));
  });
  return fc.tuple(fc.tuple(...lots), fc.array(walk, { minLength: 2, maxLength: 9 })).map(([made, walks]) =>
    worldRecords({
      cultivars: { one: { name: 'One' }, two: { name: 'Two', offered: 'common', mothers: 1 } },
      lots: made,
      walks: Object.fromEntries(walks.map(([on, of]) => [on, of.filter(entry => entry !== null)])),
    }),
  );
});

/** Weather as it came: seasons that the forecasts do not know. */
function weather(seed: number, days: number): DailyReading[] {
  const years = weatherYears(figuresOfPlace(normalisePlace('hills', hills)), 2 + seed);
  const start = day('2025-07-24');
  return Array.from({ length: 2 * 365 }, (_, index) => ({
    day: addDays(start, index),
    tminC: years.tminC[seed * 365 + index]!,
    tmaxC: years.tmaxC[seed * 365 + index]!,
  })).filter(({ day: on }) => on >= first && daysBetween(first, on) < days);
}

const logged: fc.Arbitrary<Records> = fc
  .tuple(yards, fc.integer({ min: 0, max: 3 }), fc.integer({ min: 100, max: 320 }))
  .map(([records, seed, days]) => ({ ...records, temperatures: weather(seed, days) }));

const days = (records: Records, lot: string): Day[] => {
  const record = records.lots.find(({ id }) => id === lot)!;
  const seen = records.walks.filter(({ rows }) => rows.some(row => row.lot === lot)).map(walk => walk.day);
  const own = [record.started, record.severed!, ...(record.hold ? [record.hold.since] : [])];
  return [...new Set([...own, ...seen])].filter(on => on >= record.started).sort();
};

/** The same questions put to a catalogue made from scratch for each day, with only what was known on it. */
function slowHistory(records: Records, last: Day): string[] {
  const lotsOn = new Map<Day, Map<string, LotEntry>>();
  for (let on: Day = first; on <= last; on = addDays(on, 1)) {
    const known = {
      ...records,
      walks: records.walks.filter(walk => walk.day <= on),
      temperatures: records.temperatures.filter(reading => reading.day <= on),
    };
    lotsOn.set(on, new Map(catalogueOf(known, on).lots.map(entry => [entry.lot.id, entry])));
  }
  const entryOn = (lot: string, on: Day) => lotsOn.get(on)!.get(lot)!;
  const stateOn = (lot: string, form: Form, on: Day) =>
    entryOn(lot, on).forms.find(answer => answer.form === form)!.state;
  const told: string[] = [];
  for (const { id, started, forms } of records.lots) {
    if (started > last) continue;
    told.push(`${started} ${id} opened`);
    const noted = days(records, id).filter(on => on <= last);
    const ready = new Map<string, Form[]>();
    for (const form of forms) {
      let wasReady: Day | null = null;
      for (const [index, on] of noted.entries()) {
        const state = stateOn(id, form, on);
        const before = noted[index - 1];
        const back = before && entryOn(id, before).soldOut && !entryOn(id, on).soldOut;
        if (state === 'ready') {
          const news = wasReady === null || daysBetween(wasReady, on) > READY_AGAIN_DAYS;
          if (before && news && !back) ready.set(on, [...(ready.get(on) ?? []), form]);
          wasReady = on;
        } else if (state !== 'look') wasReady = null;
        if (state === 'ready') continue;
        // By time alone: the first day up to the next noted one.
        const next = noted[index + 1] ?? addDays(last, 1);
        for (let at = addDays(on, 1); at < next; at = addDays(at, 1)) {
          if (stateOn(id, form, at) !== 'ready') continue;
          ready.set(at, [...(ready.get(at) ?? []), form]);
          wasReady = at;
          break;
        }
      }
    }
    told.push(...[...ready].map(([on, at]) => `${on} ${id} ready ${at.sort()}`));
    for (const [index, on] of noted.entries()) {
      const before = noted[index - 1];
      if (!before) continue;
      const [was, is] = [entryOn(id, before).soldOut, entryOn(id, on).soldOut];
      if (was !== is) told.push(`${on} ${id} ${is ? 'sold-out' : 'back'}`);
    }
  }
  return told.sort();
}

const inShort = (events: readonly StockEvent[]) =>
  events
    .map(({ day: on, lot, kind, forms }) =>
      kind === 'ready' ? `${on} ${lot} ready ${[...forms].sort()}` : `${on} ${lot} ${kind}`,
    )
    .sort();

describe('the history of a yard', () => {
  it.each([
    ['without a thermometer', yards, 2],
    ['with a thermometer', logged, 2],
  ] as const)(
    'is what catalogues made anew for every day show, %s',
    (_how, arbitrary, numRuns) => {
      const last = day('2026-12-31');
      const kinds: Record<string, number> = {};
      fc.assert(
        fc.property(arbitrary, records => {
          const events = historyOf(records, last);
          expect(inShort(events)).toEqual(slowHistory(records, last));
          for (const { kind } of events) kinds[kind] = (kinds[kind] ?? 0) + 1;
        }),
        { seed: 4287, numRuns },
      );
      expect(kinds.ready).toBeGreaterThan(numRuns);
      expect(kinds['sold-out']).toBeGreaterThan(0);
    },
    400_000,
  );

  it('does not depend on the order of files, lots or lines', () => {
    fc.assert(
      fc.property(logged, fc.infiniteStream(fc.nat()), (records, chance) => {
        const order = [...chance.take(400)];
        let drawn = 0;
        const shuffled = <T>(items: readonly T[]): T[] =>
          items
            .map(item => ({ item, at: order[drawn++ % order.length]! }))
            .sort((a, b) => a.at - b.at)
            .map(({ item }) => item);
        const moved: Records = {
          ...records,
          lots: shuffled(records.lots).map((lot, index) => ({ ...lot, file: `lots/${index}.yaml`, index })),
          walks: shuffled(records.walks).map(walk => ({ ...walk, rows: shuffled(walk.rows) })),
          cultivars: new Map(shuffled([...records.cultivars])),
        };
        expect(historyOf(moved, '2027-02-20', 7)).toEqual(historyOf(records, '2027-02-20', 7));
      }),
      { seed: 4151, numRuns: 15 },
    );
  });

  it('keeps every event as it was when later days add to it', () => {
    fc.assert(
      fc.property(
        logged,
        fc.integer({ min: 60, max: 290 }),
        fc.integer({ min: 1, max: 90 }),
        (records, at, more) => {
          const asOf = addDays(first, at);
          const known = {
            ...records,
            temperatures: records.temperatures.filter(({ day: on }) => on <= asOf),
          };
          const later = historyOf(records, addDays(asOf, more)).filter(({ day: on }) => on <= asOf);
          expect(later).toEqual(historyOf(known, asOf));
        },
      ),
      { seed: 2005, numRuns: 15 },
    );
  });

  it('that was published keeps every id, and tells nothing twice, when the thermometer is typed in days late', () => {
    let later = 0;
    fc.assert(
      fc.property(
        logged,
        fc.integer({ min: 60, max: 290 }),
        fc.integer({ min: 3, max: 30 }),
        (records, at, typed) => {
          let changes: ChangeLine[] = [];
          let shown = new Map<string, StockEvent>();
          // Published daily; the log of the last days is typed in at once, now and then.
          for (let on = addDays(first, at), count = 0; count < 40; on = addDays(on, 4), count += 4) {
            const knownTo = addDays(first, at + count - (count % typed));
            const known = {
              ...records,
              changes,
              temperatures: records.temperatures.filter(({ day: of }) => of <= knownTo),
            };
            const { events, lines } = listHistory(known, catalogueOf(known, on), everything);
            const now = new Map(events.map(event => [event.id, event]));
            for (const [id, event] of shown) expect(now.get(id), id).toEqual(event);
            expect(now.size).toBe(events.length);
            later += shown.size > 0 ? events.length - shown.size : 0;
            shown = now;
            changes = [...changes, ...lines];
            const again = { ...known, changes };
            expect(listHistory(again, catalogueOf(again, on), everything)).toEqual({ events, lines: [] });
          }
        },
      ),
      { seed: 4151, numRuns: 6 },
    );
    expect(later).toBeGreaterThan(6);
  });

  it('of a lot is untouched by what happens to other cultivars', () => {
    fc.assert(
      fc.property(yards, records => {
        const alone = { ...records, lots: records.lots.filter(({ cultivar }) => cultivar === 'one') };
        const of = (events: readonly StockEvent[]) => events.filter(({ cultivar }) => cultivar === 'one');
        expect(historyOf(alone, '2027-02-20')).toEqual(of(historyOf(records, '2027-02-20')));
      }),
      { seed: 1999, numRuns: 15 },
    );
  });

  it('names every event once', () => {
    fc.assert(
      fc.property(yards, records => {
        const ids = historyOf(records, '2027-02-20').map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
      }),
      { seed: 7, numRuns: 15 },
    );
  });
});
