/**
 * The newest changes of a yard's list, from the records alone. Every lot and every cultivar tells its history backwards and is asked
 * only as far back as the feed reaches, so that a yard of thousands of lots looks at few days of few of them.
 */

import { DEFAULT_HORIZON_DAYS } from '../climate/forecast.ts';
import { figuresOfPlace } from '../climate/place.ts';
import { addDays, type Day, later } from '../days.ts';
import { lotBench } from '../lots/answerLot.ts';
import type { LotAnswers } from '../lots/answers.ts';
import { homeOutlook } from '../lots/outlook.ts';
import type { YardDay } from '../lots/subject.ts';
import { waitingBefore } from '../lots/waiting.ts';
import { indexWalks } from '../lots/walkIndex.ts';
import type { Lot } from '../records/lot.ts';
import type { Place } from '../records/place.ts';
import type { Records } from '../records/records.ts';
import type { Species } from '../records/species.ts';
import { eventId, eventKinds, type StockEvent } from './event.ts';
import { type History, type LotEvent, lotEvents } from './lotEvents.ts';
import { pastOf } from './past.ts';
import { type Family, familyPrices, type PlainPrices } from './pastPrices.ts';
import { type PriceEvent, priceEvents } from './priceEvents.ts';

/** As many changes as a feed tells: a reader that looks in once a month should miss none in a busy season. Standing: ours. */
export const FEED_ENTRIES = 60;

/** What is needed of the catalogue that was made of the same records. */
export interface ListOfTheDay {
  asOf: Day;
  home: Place;
  lots: readonly ListedLot[];
}

interface ListedLot extends LotAnswers {
  lot: Lot;
  species: Species;
  soldOut: boolean;
}

type Told = LotEvent | PriceEvent;
type Stream = History<Told>;

/** Histories waiting to be asked on, by the day up to which they may still tell something, and by cultivar. */
type Queue = Map<Day, Map<string, Stream[]>>;

function enqueue(queue: Queue, on: Day, cultivar: string, stream: Stream): void {
  const families = queue.get(on) ?? new Map<string, Stream[]>();
  const streams = families.get(cultivar);
  if (streams) streams.push(stream);
  else families.set(cultivar, [stream]);
  queue.set(on, families);
}

/** Everything a history tells of one day; the history goes back into the queue for the earlier day it names next. */
function eventsOf(stream: Stream, on: Day, cultivar: string, queue: Queue): Told[] {
  const events: Told[] = [];
  for (let step = stream.next(); !step.done; step = stream.next()) {
    const told = step.value;
    if (typeof told !== 'string') events.push(told);
    else if (told < on) {
      enqueue(queue, told, cultivar, stream);
      break;
    }
  }
  return events;
}

const byText = (a: string, b: string) => (a < b ? -1 : Number(a > b));

function byLotAndKind(a: Told, b: Told): number {
  return byText(a.lot, b.lot) || eventKinds.indexOf(a.kind) - eventKinds.indexOf(b.kind);
}

/** The newest of what the histories tell: by day, newest first, then by cultivar, lot and kind. */
function newest(queue: Queue, most: number, named: (told: Told, on: Day, cultivar: string) => StockEvent) {
  const events: StockEvent[] = [];
  while (queue.size > 0 && events.length < most) {
    const on = [...queue.keys()].reduce(later);
    const families = queue.get(on)!;
    queue.delete(on);
    for (const cultivar of [...families.keys()].sort(byText)) {
      const told = families.get(cultivar)!.flatMap(stream => eventsOf(stream, on, cultivar, queue));
      events.push(...told.sort(byLotAndKind).map(event => named(event, on, cultivar)));
      if (events.length >= most) return events.slice(0, most);
    }
  }
  return events;
}

/** Gates that stay passed until something is done to the lot. */
const lastingGates: readonly string[] = ['rooted', 'weaned', 'sized'];

/** Whether a form may have opened by time alone since the lot was last noted. What has not passed by now had not passed then. */
function mayHaveOpened({ soldOut, forms }: ListedLot): boolean {
  return (
    !soldOut &&
    forms.some(({ gates }) =>
      gates.every(({ name, state }) => state === 'passed' || !lastingGates.includes(name)),
    )
  );
}

/** A yard that logs its temperatures may see a day come sooner than was to be expected, so no wait is too long to be followed. */
function horizonOf({ asOf, outlook }: YardDay): Day {
  return outlook.log.length > 0 ? addDays(asOf, DEFAULT_HORIZON_DAYS) : asOf;
}

/**
 * The newest changes of the list, newest first, at most `most`. `catalogue` is what `assemble` made of the same records. An event once
 * told stays as it is while records are only added for later days.
 */
export function stockEvents(
  records: Records,
  catalogue: ListOfTheDay,
  most: number = FEED_ENTRIES,
): StockEvent[] {
  const { asOf, home, lots } = catalogue;
  const { yard } = records;
  const outlook = homeOutlook({ name: home.name, figures: figuresOfPlace(home) }, records.temperatures, asOf);
  const bench = lotBench({ asOf, yard, outlook });
  const walks = indexWalks(records.walks, asOf);
  const askWaiting = waitingBefore(horizonOf(bench.today));
  const plainPrices: PlainPrices = new Map();
  const families = new Map<string, Family & { pasts: Family['pasts'][number][] }>();
  const queue: Queue = new Map();
  for (const entry of lots) {
    const { lot, species } = entry;
    const past = pastOf(lot, species, walks.get(lot.id) ?? [], bench.today, entry, askWaiting);
    enqueue(queue, asOf, lot.cultivar, lotEvents(past, asOf, mayHaveOpened(entry)));
    const family = families.get(lot.cultivar);
    if (family) family.pasts.push(past);
    else
      families.set(lot.cultivar, {
        cultivar: records.cultivars.get(lot.cultivar)!,
        species,
        pasts: [past],
      });
  }
  for (const [cultivar, family] of families) {
    const prices = familyPrices(family, bench, plainPrices);
    enqueue(queue, asOf, cultivar, priceEvents(family, prices, asOf));
  }
  return newest(queue, most, (told, day, cultivar) => ({
    id: eventId(yard.address, told.lot, told.kind, day),
    forms: [],
    moves: [],
    ...told,
    day,
    cultivar,
  }));
}
