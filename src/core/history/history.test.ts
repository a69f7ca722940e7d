import { describe, expect, it } from 'vitest';
import { baseYard, catalogueOf, lateSummer, type World, worldRecords } from '../../../tests/world.ts';
import { day } from '../days.ts';
import { type ChangeLine, changeLineText, isEventLine, parseChangeLine } from '../records/change.ts';
import { eventId, type StockEvent } from './event.ts';
import { listHistory } from './history.ts';

function eventsOf(world: World, asOf: string, most?: number): StockEvent[] {
  const records = worldRecords(world);
  return listHistory(records, catalogueOf(records, asOf), most).events;
}

const told = (events: readonly StockEvent[]) =>
  events.map(({ day: on, lot, kind }) => `${on} ${lot} ${kind}`);
const wordsOf = ({ because }: StockEvent) => because.map(({ text }) => text).join(' ');

const sale: World['walks'] = {
  ...lateSummer,
  '2026-09-19': [{ left: 12, leaves: 'full', health: 'sound', where: 'outdoors' }],
  '2026-10-03': [{ left: 0 }],
};

describe('what happened to a lot', () => {
  it('is told from its start to its end, newest first', () => {
    expect(told(eventsOf({ walks: sale }, '2026-11-25'))).toEqual([
      '2026-10-03 a-1 sold-out',
      '2026-09-08 a-1 ready',
      '2026-06-06 a-1 opened',
    ]);
  });

  it('becomes ready on the computed day where only time was missing, with that as the reason', () => {
    // Ten days outdoors harden leaves (our working figure): seen outdoors on August 29.
    const ready = eventsOf({ walks: sale }, '2026-09-10')[0]!;
    expect(ready).toMatchObject({ kind: 'ready', day: '2026-09-08', forms: ['leafed-pot'], left: 19 });
    expect(wordsOf(ready)).toContain('Outdoors since August 29, 2026.');
  });

  it('becomes ready on the walk that saw what was missing', () => {
    const walks = {
      '2026-08-29': [{ ...sale['2026-08-29']![0]!, roots: null }],
      '2026-09-12': [{ left: 19 }],
      '2026-09-19': [{ roots: 'full' as const }],
    };
    const ready = eventsOf({ walks }, '2026-09-20').find(({ kind }) => kind === 'ready')!;
    expect(ready.day).toBe('2026-09-19');
    expect(wordsOf(ready)).toContain('Roots full on the walk of September 19, 2026.');
    expect(wordsOf(ready)).not.toContain('Outdoors');
  });

  it('is no news again when a form went stale and was looked at', () => {
    const again = { ...sale, '2026-10-03': [], '2026-10-31': [{ ...sale['2026-08-29']![0]!, left: 5 }] };
    const log = eventsOf({ walks: again }, '2026-11-01').filter(({ kind }) => kind === 'ready');
    expect(told(log)).toEqual(['2026-09-08 a-1 ready']);
  });

  it('is news again after a hold', () => {
    const held = {
      ...sale,
      '2026-09-19': [{ health: 'hold' as const }],
      '2026-10-03': [{ ...sale['2026-08-29']![0]!, left: 5 }],
    };
    const log = eventsOf({ walks: held }, '2026-10-04').filter(({ kind }) => kind === 'ready');
    expect(told(log)).toEqual(['2026-10-03 a-1 ready', '2026-09-08 a-1 ready']);
  });

  it('comes back when plants return, and is sold out again', () => {
    const walks = { ...sale, '2026-10-10': [{ left: 2, returned: 2 }], '2026-10-17': [{ left: 0 }] };
    expect(told(eventsOf({ walks }, '2026-10-20')).slice(0, 3)).toEqual([
      '2026-10-17 a-1 sold-out',
      '2026-10-10 a-1 back',
      '2026-10-03 a-1 sold-out',
    ]);
  });

  it('says when a lot was lost, not sold', () => {
    const [gone] = eventsOf({ walks: { '2026-08-01': [{ left: 0, lost: 20 }] } }, '2026-08-02');
    expect(gone!.kind).toBe('sold-out');
    expect(wordsOf(gone!)).toContain('the lot was lost');
  });

  it('knows nothing of what was noted after the day', () => {
    expect(told(eventsOf({ walks: sale }, '2026-09-07'))).toEqual(['2026-06-06 a-1 opened']);
  });

  it('stops when the feed is full, with the newest', () => {
    const all = eventsOf({ walks: sale }, '2026-11-25');
    expect(eventsOf({ walks: sale }, '2026-11-25', 2)).toEqual(all.slice(0, 2));
  });
});

/** A yard published on some days in turn: what its feed said on each, and the log that came of it. */
function published(days: readonly (readonly [asOf: string, world: World])[]) {
  let changes: ChangeLine[] = [];
  const feeds = days.map(([asOf, world]) => {
    const records = { ...worldRecords(world), changes };
    const { events, lines } = listHistory(records, catalogueOf(records, asOf));
    // As it is written and read again.
    changes = [...changes, ...lines.map(line => parseChangeLine(changeLineText(line))!)];
    return events;
  });
  return { feeds, changes };
}

describe('what was told', () => {
  const walked = (until: string) =>
    Object.fromEntries(Object.entries({ ...sale }).filter(([on]) => on <= until));

  it('is told once, and stays', () => {
    const { feeds, changes } = published([
      ['2026-09-10', { walks: walked('2026-09-10') }],
      ['2026-09-10', { walks: walked('2026-09-10') }],
      ['2026-10-04', { walks: walked('2026-10-04') }],
    ]);
    expect(feeds[1]).toEqual(feeds[0]);
    expect(told(feeds[2]!)).toEqual([
      '2026-10-03 a-1 sold-out',
      '2026-09-08 a-1 ready',
      '2026-06-06 a-1 opened',
    ]);
    expect(feeds[2]!.slice(1)).toEqual(feeds[0]);
    expect(changes.filter(isEventLine)).toHaveLength(3);
  });

  it('is told under the same id when a day is put right, and not again', () => {
    const early = { walks: { '2026-08-29': sale['2026-08-29']! } };
    const late = { walks: { '2026-09-01': sale['2026-08-29']! } };
    const { feeds } = published([
      ['2026-09-09', early],
      ['2026-09-12', late],
    ]);
    expect(feeds[1]).toEqual(feeds[0]);
    // Seen from the records alone the lot became ready three days later.
    expect(told(eventsOf(late, '2026-09-12'))[0]).toBe('2026-09-11 a-1 ready');
  });

  it('is news again after a hold, when the first time is in no feed any more', () => {
    const held = {
      ...walked('2026-08-29'),
      '2026-09-19': [{ health: 'hold' as const }],
      '2026-10-03': [{ ...sale['2026-08-29']![0]!, left: 5 }],
    };
    const before = published([['2026-09-20', { walks: held }]]).changes;
    const records = { ...worldRecords({ walks: held }), changes: before };
    const { lines } = listHistory(records, catalogueOf(records, '2026-10-04'), 1);
    expect(lines.filter(isEventLine).map(({ day: on, kind }) => `${on} ${kind}`)).toEqual([
      '2026-10-03 ready',
    ]);
  });

  it('tells nothing that is older than the log', () => {
    const walks = walked('2026-09-20');
    const asked = published([['2026-09-20', { walks }]]).changes.filter(line => !isEventLine(line));
    const records = { ...worldRecords({ walks }), changes: asked };
    expect(listHistory(records, catalogueOf(records, '2026-09-21'))).toEqual({ events: [], lines: [] });
  });

  it('gives a second event of a day an id of its own', () => {
    const used = new Set(['tag:trees.example,2026-11-21:lot/a/ready']);
    expect(eventId('trees.example', { lot: 'a', kind: 'ready', day: day('2026-11-21') }, used)).toBe(
      'tag:trees.example,2026-11-21:lot/a/ready/2',
    );
  });
});

it('names what is told after a move as before it, and calendars too', () => {
  const { changes } = published([['2026-08-30', { walks: sale }]]);
  const moved: World = { walks: sale, yard: { address: 'https://elsewhere.example' } };
  const records = { ...worldRecords(moved), changes };
  const catalogue = catalogueOf(records, '2026-10-04');
  const ids = listHistory(records, catalogue).events.map(({ id }) => id);
  expect(ids).toHaveLength(3);
  expect(ids.filter(id => !id.startsWith('tag:bench.example,'))).toEqual([]);
  expect(catalogue.namingHost).toBe('bench.example');
});

describe('a price', () => {
  const onSale: World = { lots: [{ forms: ['leafed-pot'] }], walks: lateSummer };
  const bigger: World = { ...onSale, walks: { '2026-08-29': [{ heightCm: 80, caliperMm: 11 }] } };
  const dearer: World = { ...bigger, yard: { prices: { ...baseYard.prices, base: { fig: 50 } } } };

  it('is told from what was asked, with the reasons of the new one', () => {
    const { feeds } = published([
      ['2026-08-28', { ...onSale, walks: {} }],
      ['2026-08-30', bigger],
    ]);
    // Series R10 (ISO 3): 40 50 63 80; one rung for the scarcity, two for the size above #1.
    const price = feeds[1]!.find(({ kind }) => kind === 'price')!;
    expect(price).toMatchObject({
      day: '2026-08-30',
      id: expect.stringMatching(/^tag:[^,]+,2026-08-30:lot\/a-1\/price$/),
    });
    expect(price.moves.map(({ from, to }) => [from.minor, to.minor])).toEqual([[5000, 8000]]);
    expect(wordsOf(price)).toContain('Size #2');
  });

  it('is told when the grower asks another, and older ones stay what was asked', () => {
    const { feeds } = published([
      ['2026-08-28', { ...onSale, walks: {} }],
      ['2026-08-30', bigger],
      ['2026-09-05', dearer],
      ['2026-09-06', dearer],
    ]);
    const prices = (at: number) => feeds[at]!.filter(({ kind }) => kind === 'price');
    expect(prices(2).slice(1)).toEqual(prices(1));
    expect(prices(2)[0]!.moves[0]!.from).toEqual(prices(1)[0]!.moves[0]!.to);
    expect(feeds[3]).toEqual(feeds[2]);
  });

  it('is told of no day before the first publication, and of no lot that is sold', () => {
    expect(eventsOf(bigger, '2026-09-30').filter(({ kind }) => kind === 'price')).toEqual([]);
    const sold = { ...dearer, walks: { ...lateSummer, '2026-09-03': [{ left: 0 }] } };
    const { feeds, changes } = published([
      ['2026-08-30', onSale],
      ['2026-09-05', sold],
    ]);
    expect(feeds[1]!.filter(({ kind }) => kind === 'price')).toEqual([]);
    expect(changes.filter(line => !isEventLine(line))).toHaveLength(1);
  });

  it('never tells the day on which the private floor lifts it', () => {
    // A dollar a week for a square foot: the floor climbs with every week and passes the price in the winter.
    const costs = { ...baseYard.costs!, space_week: '1.00', area_sqft: { '#1': 1 } };
    const days = ['2026-08-02', '2026-12-01', '2027-02-01', '2027-02-27'] as const;
    const before: World = { yard: { costs }, walks: { '2026-08-01': [{ left: 20 }] } };
    const after: World = { yard: { costs }, walks: { ...before.walks, '2027-03-01': [{ left: 20 }] } };
    const { feeds } = published([
      ...days.map(on => [on, before] as const),
      ['2027-03-01', after],
      ['2027-03-02', after],
    ]);
    const prices = (at: number) => feeds[at]!.filter(({ kind }) => kind === 'price').map(event => event.day);
    expect(prices(3)).toEqual([]);
    expect(prices(4)).toEqual(['2027-03-01']);
    expect(prices(5)).toEqual(['2027-03-01']);
    expect(wordsOf(feeds[4]!.find(({ kind }) => kind === 'price')!)).toContain(
      'The yard sells no such tree for less.',
    );
  });
});

describe('the id of an event', () => {
  it('is a tag URI by the grammar of RFC 4151, 2.1', () => {
    // taggingEntity = authorityName "," date; date = year ["-" month ["-" day]]; specific = *( pchar / "/" / "?" ).
    const dnsComp = '[A-Za-z0-9](?:[A-Za-z0-9-]*[A-Za-z0-9])?';
    const pchar = "(?:[A-Za-z0-9._~!$&'()*+,;=:@/?-]|%[0-9A-Fa-f]{2})";
    const tag = new RegExp(`^tag:${dnsComp}(?:\\.${dnsComp})*,\\d{4}(?:-\\d{2}(?:-\\d{2})?)?:${pchar}*$`);
    for (const address of ['https://trees.example', 'http://LOCALHOST:8080', 'https://bäume.example']) {
      expect(
        eventId(new URL(address).hostname, { lot: 'l26-01', kind: 'sold-out', day: day('2026-11-21') }),
      ).toMatch(tag);
    }
    expect(eventId('trees.example', { lot: 'l26-01', kind: 'ready', day: day('2026-11-21') })).toBe(
      'tag:trees.example,2026-11-21:lot/l26-01/ready',
    );
  });
});
