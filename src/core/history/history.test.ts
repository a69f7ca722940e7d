import { describe, expect, it } from 'vitest';
import { baseYard, catalogueOf, lateSummer, type World, worldRecords } from '../../../tests/world.ts';
import { day } from '../days.ts';
import { eventId, type StockEvent } from './event.ts';
import { stockEvents } from './history.ts';

function eventsOf(world: World, asOf: string, most?: number): StockEvent[] {
  const records = worldRecords(world);
  return stockEvents(records, catalogueOf(records, asOf), most);
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
    // Ten days outdoors harden leaves (our working figure): seen outdoors on 29 August.
    const ready = eventsOf({ walks: sale }, '2026-09-10')[0]!;
    expect(ready).toMatchObject({ kind: 'ready', day: '2026-09-08', forms: ['leafed-pot'], left: 19 });
    expect(wordsOf(ready)).toContain('Outdoors since 29 August 2026.');
  });

  it('becomes ready on the walk that saw what was missing', () => {
    const walks = {
      '2026-08-29': [{ ...sale['2026-08-29']![0]!, roots: null }],
      '2026-09-12': [{ left: 19 }],
      '2026-09-19': [{ roots: 'full' as const }],
    };
    const ready = eventsOf({ walks }, '2026-09-20').find(({ kind }) => kind === 'ready')!;
    expect(ready.day).toBe('2026-09-19');
    expect(wordsOf(ready)).toContain('Roots full on the walk of 19 September 2026.');
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

  it('tells a price with what moved it', () => {
    const walks = { '2026-08-29': [{ heightCm: 80, caliperMm: 11 }] };
    const [price] = eventsOf({ walks, lots: [{ forms: ['leafed-pot'] }] }, '2026-08-30');
    // Rows of R10 (ISO 3): two rungs for each class above #1 from 40, so 63 for #2, which the yard rounds to fives.
    expect(price).toMatchObject({ kind: 'price', day: '2026-08-29' });
    expect(price!.moves.map(({ from, to }) => to.minor > from.minor)).toEqual([true]);
    expect(wordsOf(price!)).toContain('graded one step up');
  });

  it('moves the price of a lot when another of its cultivar sells out', () => {
    const lots = [
      { lot: 'a-1', raised: 3 },
      { lot: 'a-2', raised: 20 },
    ];
    const walks = { '2026-09-01': [{ lot: 'a-2', left: 0 }] };
    const price = eventsOf({ lots, walks }, '2026-09-02').find(({ kind }) => kind === 'price')!;
    expect(price).toMatchObject({ lot: 'a-1', day: '2026-09-01' });
    expect(wordsOf(price)).toContain('20 of the 23 raised in the last two seasons are sold');
  });

  it('never tells the day on which the private floor lifts a price', () => {
    // A dollar a week for a square foot: the floor climbs with every week and passes the price in the winter.
    const costs = { ...baseYard.costs!, space_week: '1.00', area_sqft: { '#1': 1 } };
    const walks = { '2026-08-01': [{ left: 20 }], '2027-03-01': [{ left: 20 }] };
    const moves = eventsOf({ yard: { costs }, walks }, '2027-06-01').filter(({ kind }) => kind === 'price');
    expect(told(moves)).toEqual(['2027-03-01 a-1 price']);
    expect(wordsOf(moves[0]!)).toContain('The yard sells no such tree for less.');
  });

  it('knows nothing of what was noted after the day', () => {
    expect(told(eventsOf({ walks: sale }, '2026-09-07'))).toEqual(['2026-06-06 a-1 opened']);
  });

  it('stops when the feed is full, with the newest', () => {
    const all = eventsOf({ walks: sale }, '2026-11-25');
    expect(eventsOf({ walks: sale }, '2026-11-25', 2)).toEqual(all.slice(0, 2));
  });
});

describe('the id of an event', () => {
  it('is a tag URI by the grammar of RFC 4151, 2.1', () => {
    // taggingEntity = authorityName "," date; date = year ["-" month ["-" day]]; specific = *( pchar / "/" / "?" ).
    const dnsComp = '[A-Za-z0-9](?:[A-Za-z0-9-]*[A-Za-z0-9])?';
    const pchar = "(?:[A-Za-z0-9._~!$&'()*+,;=:@/?-]|%[0-9A-Fa-f]{2})";
    const tag = new RegExp(`^tag:${dnsComp}(?:\\.${dnsComp})*,\\d{4}(?:-\\d{2}(?:-\\d{2})?)?:${pchar}*$`);
    for (const address of ['https://trees.example', 'http://LOCALHOST:8080', 'https://bäume.example']) {
      expect(eventId(address, 'l26-01', 'sold-out', day('2026-11-21'))).toMatch(tag);
    }
    expect(eventId('https://trees.example', 'l26-01', 'ready', day('2026-11-21'))).toBe(
      'tag:trees.example,2026-11-21:lot/l26-01/ready',
    );
  });
});
