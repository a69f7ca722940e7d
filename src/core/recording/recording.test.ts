/** Records written by commands, against the check of the whole yard. Expected counts are worked out by hand from the walks of the base yard. */

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { loadYard } from '../../../tests/yards/loadYard.ts';
import { day } from '../days.ts';
import { stockOf } from '../lots/stock.ts';
import { indexWalks } from '../lots/walkIndex.ts';
import { type Reading, readRecords } from '../reading/read.ts';
import { planHold, planPrice } from './lotKeys.ts';
import { planCultivar } from './newCultivar.ts';
import { nextLotId, planLot } from './newLot.ts';
import { planSpecies } from './newSpecies.ts';
import type { FileChange, OpenYard, Planned } from './openYard.ts';
import { planRelease, planReserve, planWait, planWaitOver } from './reservation.ts';
import { planSale } from './sale.ts';

const base = loadYard('base');
const today = base.asOf;

function read(texts: ReadonlyMap<string, string>): Reading {
  const encoder = new TextEncoder();
  const files = [...texts].map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  return readRecords(files, { asOf: today, photos: base.photos });
}

function opened(texts: ReadonlyMap<string, string>): OpenYard {
  const { records, orders, diagnostics } = read(texts);
  if (records === null) throw new Error(JSON.stringify(diagnostics, null, 1));
  return { texts, records, orders, today };
}

const decoder = new TextDecoder('utf-8', { ignoreBOM: true });
const texts = new Map(base.files.map(({ path, bytes }) => [path, decoder.decode(bytes)]));
const yard = opened(texts);

function changesOf(planned: Planned): FileChange[] {
  if ('refused' in planned) throw new Error(planned.refused);
  return planned.changes;
}

function applied(from: OpenYard, planned: Planned): OpenYard {
  return opened(
    new Map([...from.texts, ...changesOf(planned).map(({ path, text }) => [path, text] as const)]),
  );
}

const refusal = (planned: Planned) => ('refused' in planned ? planned.refused : null);

function left({ records }: OpenYard, id: string): number {
  const lot = records.lots.find(each => each.id === id)!;
  return stockOf(lot, indexWalks(records.walks, today).get(id) ?? [], today).left;
}

describe('a sale', () => {
  test('begins the walk of the day, and buyer and price go to the private folder alone', () => {
    const planned = planSale(yard, {
      lot: 'bellwether-2601',
      plants: 2,
      on: today,
      to: 'Marked Buyer, "two"',
      price: '45.50',
    });
    expect(changesOf(planned)).toEqual([
      { path: 'walks/2026-11-25.csv', text: 'lot,left\nbellwether-2601,10\n' },
      {
        path: 'private/sales.csv',
        text: 'day,lot,plants,form,price,to,note\n2026-11-25,bellwether-2601,2,,45.50,"Marked Buyer, ""two""",\n',
      },
    ]);
    const sold = applied(yard, planned);
    expect(left(sold, 'bellwether-2601')).toBe(10);
    expect(sold.orders.sales).toMatchObject([{ plants: 2, priceMinor: 4550, to: 'Marked Buyer, "two"' }]);
  });

  test('on the day of a walk changes the count of its row, whatever the columns, their case and order and with semicolons', () => {
    const walk =
      '\ufeffNote;LOT;Left;Height in\r\n"so; ""so""";bellwether-2601;11;\r\n;inkpot-2501;5;30.5\r\n';
    const path = 'walks/2026-11-25.csv';
    const open = opened(new Map([...texts, [path, walk]]));
    const [change] = changesOf(planSale(open, { lot: 'bellwether-2601', plants: 3, on: today }));
    expect(change).toEqual({ path, text: walk.replace(';11;', ';8;') });
    const [other] = changesOf(planSale(open, { lot: 'bellwether-2602', plants: 1, on: today }));
    expect(other?.text).toBe(`${walk.trimEnd()}\r\n;bellwether-2602;11;\r\n`);
  });

  test('adds the column left to a walk that has none, and counts what was lost that day', () => {
    const path = 'walks/2026-11-25.csv';
    const open = opened(new Map([...texts, [path, 'lot,lost\nbellwether-2601,1\n']]));
    const [change] = changesOf(planSale(open, { lot: 'bellwether-2601', plants: 1, on: today }));
    // 12 counted in October, 1 lost, 1 sold.
    expect(change?.text).toBe('lot,lost,left\nbellwether-2601,1,10\n');
  });

  test('of more than are left is refused, and so are strange lots, days and prices', () => {
    expect(refusal(planSale(yard, { lot: 'inkpot-2501', plants: 6, on: today }))).toMatch(
      /^6 plants of inkpot-2501 cannot be sold: only 5 are left by the count of October 17, 2026/,
    );
    expect(refusal(planSale(yard, { lot: 'inkpot-2510', plants: 1, on: today }))).toBe(
      'there is no lot "inkpot-2510". Did you mean "inkpot-2501"?',
    );
    expect(refusal(planSale(yard, { lot: 'inkpot-2501', plants: 1, on: day('2027-01-01') }))).toMatch(
      /not come/,
    );
    expect(refusal(planSale(yard, { lot: 'inkpot-2501', plants: 1, on: day('2025-01-01') }))).toMatch(
      /was started/,
    );
    expect(refusal(planSale(yard, { lot: 'inkpot-2501', plants: 0, on: today }))).toMatch(/how many/);
    expect(refusal(planSale(yard, { lot: 'inkpot-2501', plants: 1, on: today, price: '45,50' }))).toMatch(
      /45\.50/,
    );
  });

  test('one after the other, in any order, nothing is sold twice and the check stays quiet', () => {
    const sales = fc.array(
      fc.record({
        lot: fc.constantFrom('bellwether-2601', 'inkpot-2501', 'bellwether-2602'),
        plants: fc.integer({ min: 1, max: 6 }),
      }),
      { maxLength: 8 },
    );
    fc.assert(
      fc.property(sales, list => {
        const expected = new Map([
          ['bellwether-2601', 12],
          ['inkpot-2501', 5],
          ['bellwether-2602', 12],
        ]);
        let now = yard;
        for (const { lot, plants } of list) {
          const planned = planSale(now, { lot, plants, on: today, to: 'x' });
          const had = expected.get(lot)!;
          expect(refusal(planned) === null).toBe(plants <= had);
          if (plants > had) continue;
          expected.set(lot, had - plants);
          now = applied(now, planned);
        }
        for (const [lot, count] of expected) expect(left(now, lot)).toBe(count);
        const sold = now.orders.sales.reduce((sum, { plants }) => sum + plants, 0);
        expect(sold).toBe(29 - [...expected.values()].reduce((sum, count) => sum + count, 0));
      }),
      { numRuns: 25 },
    );
  });
});

describe('a hold and a price', () => {
  test('are put in and taken out without a trace', () => {
    const path = 'lots/2026-layers.yaml';
    const held = applied(yard, planHold(yard, { lot: 'bellwether-2601', why: 'Mites: a few', since: today }));
    expect(held.records.lots.find(({ id }) => id === 'bellwether-2601')?.hold).toEqual({
      since: today,
      why: 'Mites: a few',
    });
    const free = applied(held, planHold(held, { lot: 'bellwether-2601', why: null, since: today }));
    expect(free.texts.get(path)).toBe(yard.texts.get(path));
    const priced = applied(yard, planPrice(yard, { lot: 'bellwether-2602', price: { amount: '50' } }));
    expect(priced.texts.get(path)).toBe(yard.texts.get(path)!.replace('"45.50"', '"50"'));
    expect(refusal(planPrice(yard, { lot: 'bellwether-2601', price: { amount: '50' } }))).toMatch(/say why/);
    expect(refusal(planPrice(yard, { lot: 'bellwether-2601', price: { amount: '$50', why: 'x' } }))).toMatch(
      /no price/,
    );
    expect(refusal(planHold(yard, { lot: 'bellwether-2601', why: null, since: today }))).toMatch(/not held/);
  });
});

describe('new records', () => {
  test('a lot gets the next id of its kind, the forms of lots like it, and a list where there is none', () => {
    expect(nextLotId(yard, 'air-layer', day('2026-06-01'))).toBe('bellwether-2602'.replace('2602', '2603'));
    const request = {
      cultivar: 'bellwether',
      method: 'cutting',
      started: day('2026-03-09'),
      raised: 9,
      container: '#1',
    } as const;
    const more = applied(yard, planLot(yard, request));
    expect(more.records.lots.find(({ raised }) => raised === 9)).toMatchObject({
      id: 'bellwether-2603',
      forms: ['leafed-pot'],
      pottings: [{ date: '2026-03-09' }],
      file: 'lots/2026-layers.yaml',
    });
    const divided = changesOf(planLot(yard, { ...request, method: 'division' }));
    expect(divided[0]?.path).toBe('lots/2026-divisions.yaml');
    expect(applied(yard, planLot(yard, { ...request, method: 'division' })).records.lots).toHaveLength(4);
    expect(refusal(planLot(yard, { ...request, cultivar: 'bellweather' }))).toMatch(
      /Did you mean "bellwether"/,
    );
    expect(refusal(planLot(yard, { ...request, id: 'inkpot-2501' }))).toMatch(/already/);
  });

  test('a cultivar passes the check as it is written', () => {
    const { flavorClasses } = yard.records.yard;
    const planned = planCultivar(yard, {
      name: 'Éclair d\'août: "le tardif"',
      species: [...yard.records.species.keys()][0]!,
      flavor: flavorClasses[0]!.id,
      ripening: 'early',
      crops: ['main'],
      pollination: 'unaided',
      fruit: {
        skin: 'brown',
        flesh: 'amber',
        shape: 'pear',
        length_mm: 40,
        width_mm: 30,
        eye: 'closed',
        splits: 'low',
        rain: 'good',
      },
      vigour: 'low',
      suits: { winter: ['cool'], season: ['middle', 'long'], air: ['humid'] },
      offered: 'a-few',
      mothers: 2,
    });
    expect(applied(yard, planned).records.cultivars.get('eclair-d-aout-le-tardif')?.name).toBe(
      'Éclair d\'août: "le tardif"',
    );
  });

  test('a species says of every figure that it was copied, and copies no caution by itself', () => {
    const [like] = [...yard.records.species.keys()];
    const planned = planSpecies(yard, {
      botanical: 'Ficus marki',
      common: ['marked fig'],
      like: like!,
      hazards: [],
      movement: 'Nobody has asked yet.',
      basePrice: 40,
    });
    const more = applied(yard, planned).records;
    const made = more.species.get('marked-fig')!;
    const figures = [
      made.leafDamageC,
      made.chillHours,
      made.heatBaseC,
      made.storageC,
      made.rootInjuryC,
    ].filter(each => each !== null);
    for (const { source, standing } of figures) {
      expect(source).toMatch(/^Copied from /);
      expect(standing).toBe('ours');
    }
    expect(made.hazards).toEqual([]);
    expect(more.yard.prices.base['marked-fig']).toBe(40);
    const file = changesOf(planned)[0]!.text;
    expect(file.match(/source:/g)?.length).toBe(file.match(/source: "?Copied from/g)?.length);
  });
});

describe('plants set aside', () => {
  const lot = 'bellwether-2601';
  const on = day('2026-11-25');
  const reserve = (plants: number, to: string, from = yard) =>
    planReserve(from, { lot, plants, to, until: day('2026-12-15'), on });
  const stockNow = ({ records }: OpenYard, at = on) =>
    stockOf(records.lots.find(({ id }) => id === lot)!, indexWalks(records.walks, at).get(lot) ?? [], at);

  test('are not for sale until their last day, and whose they are is in the private folder only', () => {
    const kept = applied(yard, reserve(3, 'Marked Buyer'));
    expect(stockNow(kept)).toMatchObject({ left: 12, reserved: 3, free: 9 });
    expect(stockNow(kept, day('2026-12-15'))).toMatchObject({ reserved: 3 });
    expect(stockNow(kept, day('2026-12-16'))).toMatchObject({ reserved: 0, free: 12 });
    const named = [...kept.texts].filter(([, text]) => text.includes('Marked Buyer'));
    expect(named.map(([path]) => path)).toEqual(['private/reservations.csv']);
    const twice = applied(kept, reserve(9, 'Second Buyer', kept));
    expect(stockNow(twice)).toMatchObject({ reserved: 12, free: 0 });
    expect(refusal(reserve(1, 'Third', twice))).toMatch(/12 left, and 12 of them are set aside already/);
    expect(refusal(planSale(twice, { lot, plants: 1, on }))).toMatch(/12 are set aside for others/);
  });

  test('go with a sale to their buyer, or are let go, and the files are as before', () => {
    const kept = applied(yard, reserve(3, 'Marked Buyer'));
    const gone = applied(kept, planRelease(kept, { lot }));
    expect(gone.texts.get('lots/2026-layers.yaml')).toBe(yard.texts.get('lots/2026-layers.yaml'));
    expect(gone.orders.reservations).toEqual([]);
    const sold = applied(kept, planSale(kept, { lot, plants: 3, to: 'marked buyer', on }));
    expect(stockNow(sold)).toMatchObject({ left: 9, reserved: 0, free: 9 });
    expect(sold.orders.reservations).toEqual([]);
    expect(refusal(planRelease(yard, { lot }))).toMatch(/nothing of bellwether-2601 is set aside/);
    const part = applied(kept, planSale(kept, { lot, plants: 1, to: 'Marked Buyer', on }));
    expect(stockNow(part)).toMatchObject({ left: 11, reserved: 2, free: 9 });
    expect(part.orders.reservations).toMatchObject([{ plants: 2 }]);
    const two = applied(kept, reserve(2, 'Second', kept));
    expect(refusal(planRelease(two, { lot }))).toMatch(/2 buyers .+ Marked Buyer, Second\. Say whose/);
    expect(stockNow(applied(two, planRelease(two, { lot, to: 'Second' })))).toMatchObject({ reserved: 3 });
  });

  test('people who wait are written down and taken off again', () => {
    const request = { cultivar: 'bellwether', plants: 2, to: 'Patient, A.', on };
    const waiting = applied(yard, planWait(yard, request));
    expect(waiting.orders.waiting).toMatchObject([{ cultivar: 'bellwether', plants: 2, to: 'Patient, A.' }]);
    const over = applied(waiting, planWaitOver(waiting, { cultivar: 'bellwether', to: 'patient, a.' }));
    expect(over.orders.waiting).toEqual([]);
    expect(refusal(planWait(yard, { ...request, cultivar: 'bellwhether' }))).toMatch(
      /Did you mean "bellwether"/,
    );
    expect(refusal(planWaitOver(yard, { cultivar: 'bellwether', to: 'Nobody' }))).toMatch(/does not wait/);
  });

  test('a sale price ends on its day', () => {
    const price = { amount: '25', why: 'Bench sale', until: day('2026-12-01') };
    const sale = applied(yard, planPrice(yard, { lot, price }));
    expect(sale.records.lots.find(({ id }) => id === lot)?.price).toEqual({
      minor: 2500,
      why: 'Bench sale',
      until: '2026-12-01',
    });
    expect(refusal(planPrice(yard, { lot, price: { ...price, until: day('2026-11-01') } }))).toMatch(
      /is over already/,
    );
  });
});
