/**
 * The newest changes of a yard's list. What was published stays as it was published (content/changes.jsonl); what is new since is
 * found in the records. The history of every lot is followed backwards, and only as far back as the feed reaches, so that a yard of thousands of lots
 * looks at few days of few of them.
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
import { type ChangeLine, type EventLine, eventKinds, isEventLine, namingHost } from '../records/change.ts';
import type { Lot } from '../records/lot.ts';
import type { Place } from '../records/place.ts';
import type { Records } from '../records/records.ts';
import type { Species } from '../records/species.ts';
import { lastAsked, priceNews } from './askedPrices.ts';
import { eventId, type StockEvent } from './event.ts';
import { type History, type LotEvent, lotEvents } from './lotEvents.ts';
import { type LotPast, pastOf } from './past.ts';
import { type DatedEvent, unpublished } from './unpublished.ts';

/** As many changes as a feed lists: a reader that looks in once a month should miss none in a busy season. Standing: ours. */
const FEED_ENTRIES = 60;

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

type Stream = History<LotEvent>;

/** Histories waiting to be asked on, by the day up to which they may still hold something, and by cultivar. */
type Queue = Map<Day, Map<string, Stream[]>>;

function enqueue(queue: Queue, on: Day, cultivar: string, stream: Stream): void {
  const families = queue.get(on) ?? new Map<string, Stream[]>();
  const streams = families.get(cultivar);
  if (streams) streams.push(stream);
  else families.set(cultivar, [stream]);
  queue.set(on, families);
}

/** Every event of a history on one day; the history goes back into the queue for the earlier day it names next. */
function eventsOf(stream: Stream, on: Day, cultivar: string, queue: Queue): LotEvent[] {
  const events: LotEvent[] = [];
  for (let step = stream.next(); !step.done; step = stream.next()) {
    const eventOrDay = step.value;
    if (typeof eventOrDay !== 'string') events.push(eventOrDay);
    else if (eventOrDay < on) {
      enqueue(queue, eventOrDay, cultivar, stream);
      break;
    }
  }
  return events;
}

const byText = (a: string, b: string) => (a < b ? -1 : Number(a > b));

/** Newest first; those of one day by cultivar, lot and kind. */
function byAge(a: StockEvent, b: StockEvent): number {
  return (
    byText(b.day, a.day) ||
    byText(a.cultivar, b.cultivar) ||
    byText(a.lot, b.lot) ||
    eventKinds.indexOf(a.kind) - eventKinds.indexOf(b.kind) ||
    byText(a.id, b.id)
  );
}

/** The newest events of the histories, by day and cultivar; at least `most` where there are so many. */
function newest(queue: Queue, most: number): DatedEvent[] {
  const events: DatedEvent[] = [];
  while (queue.size > 0 && events.length < most) {
    const day = [...queue.keys()].reduce(later);
    const families = queue.get(day)!;
    queue.delete(day);
    for (const cultivar of [...families.keys()].sort(byText)) {
      const ofCultivar = families.get(cultivar)!.flatMap(stream => eventsOf(stream, day, cultivar, queue));
      const inOrder = ofCultivar.sort(
        (a, b) => byText(a.lot, b.lot) || eventKinds.indexOf(a.kind) - eventKinds.indexOf(b.kind),
      );
      events.push(...inOrder.map(event => ({ ...event, day })));
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

/** The list of changes, and what publishing it adds to what was published before. */
export interface ListHistory {
  /** Newest first. */
  events: StockEvent[];
  /** Lines for content/changes.jsonl. */
  lines: ChangeLine[];
}

/** Every event of a lot, newest first. */
function wholeHistory(past: LotPast, asOf: Day): DatedEvent[] {
  const events: DatedEvent[] = [];
  let day = asOf;
  for (const eventOrDay of lotEvents(past, asOf, true)) {
    if (typeof eventOrDay === 'string') day = eventOrDay;
    else events.push({ ...eventOrDay, day });
  }
  return events;
}

/** What the records show and was not published yet: of the newest, what is no older than the oldest that was published. */
function news(
  queue: Queue,
  pasts: ReadonlyMap<string, LotPast>,
  lines: readonly ChangeLine[],
  { asOf, most }: { asOf: Day; most: number },
): DatedEvent[] {
  const found = newest(queue, most);
  const begun = lines.map(({ day }) => day).sort()[0];
  if (begun === undefined) return found;
  const published = Map.groupBy(lines.filter(isEventLine), line => line.lot);
  const nameOf = ({ lot, kind, day }: DatedEvent) => `${lot} ${kind} ${day}`;
  const fresh = new Map<string, DatedEvent>();
  for (const lot of new Set(found.map(event => event.lot))) {
    // A lot of which nothing was published needs no looking back.
    const ofLot = published.get(lot);
    const all = ofLot === undefined ? [] : wholeHistory(pasts.get(lot)!, asOf);
    for (const event of ofLot === undefined
      ? found.filter(each => each.lot === lot)
      : unpublished(all, ofLot)) {
      fresh.set(nameOf(event), event);
    }
  }
  return found.flatMap(event => (event.day < begun ? [] : (fresh.get(nameOf(event)) ?? [])));
}

/**
 * The newest changes of the list, at most `most`, by what was published before and what the records show beyond it. `catalogue` is what `assemble` made of
 * the same records. An event once published stays as it is, whatever is added to the records, mended in them, or asked today.
 */
export function listHistory(
  records: Records,
  catalogue: ListOfTheDay,
  most: number = FEED_ENTRIES,
): ListHistory {
  const { asOf, home, lots } = catalogue;
  const { yard } = records;
  const outlook = homeOutlook({ name: home.name, figures: figuresOfPlace(home) }, records.temperatures, asOf);
  const bench = lotBench({ asOf, yard, outlook });
  const walks = indexWalks(records.walks, asOf);
  const askWaiting = waitingBefore(horizonOf(bench.today));
  const pasts = new Map<string, LotPast>();
  const queue: Queue = new Map();
  for (const entry of lots) {
    const { lot, species } = entry;
    const past = pastOf(lot, species, walks.get(lot.id) ?? [], bench.today, entry, askWaiting);
    pasts.set(lot.id, past);
    enqueue(queue, asOf, lot.cultivar, lotEvents(past, asOf, mayHaveOpened(entry)));
  }
  const lines = records.changes.filter(({ day }) => day <= asOf);
  const fresh = news(queue, pasts, lines, { asOf, most });

  const asked = lastAsked(lines);
  const notedOn = lastNoted(lots, pasts);
  const prices = lots.map(entry =>
    priceNews(entry, asked.get(entry.lot.id), {
      asOf,
      notedOn: notedOn.get(entry.lot.cultivar)!,
      currency: yard.currency,
    }),
  );

  const cultivars = new Map(lots.map(({ lot }) => [lot.id, lot.cultivar]));
  const published = lines.filter(isEventLine);
  const host = namingHost(records.changes, yard.address);
  const used = new Set(published.map(({ id }) => id));
  const added = [...fresh, ...prices.flatMap(({ event }) => event ?? [])].map((event): StockEvent => {
    const id = eventId(host, event, used);
    used.add(id);
    return { forms: [], moves: [], ...event, id, cultivar: cultivars.get(event.lot)! };
  });
  const before = published.flatMap((line): StockEvent[] => {
    const cultivar = cultivars.get(line.lot);
    return cultivar === undefined ? [] : [eventOf(line, cultivar)];
  });
  return {
    events: [...before, ...added].sort(byAge).slice(0, most),
    lines: [
      ...added
        .sort(byAge)
        .reverse()
        .map(event => lineOf(event, yard.currency)),
      ...prices.flatMap(({ line }) => line ?? []),
    ],
  };
}

/** The last day on which something was noted of a lot of each cultivar. */
function lastNoted(lots: readonly ListedLot[], pasts: ReadonlyMap<string, LotPast>): Map<string, Day> {
  const noted = new Map<string, Day>();
  for (const { lot } of lots) {
    const own = pasts.get(lot.id)!.noted.at(-1) ?? lot.started;
    const other = noted.get(lot.cultivar);
    noted.set(lot.cultivar, other === undefined ? own : later(own, other));
  }
  return noted;
}

function eventOf({ currency, moves, ...line }: EventLine, cultivar: string): StockEvent {
  const money = (minor: number) => ({ minor, currency });
  return {
    ...line,
    cultivar,
    moves: moves.map(({ form, from, to }) => ({ form, from: money(from), to: money(to) })),
  };
}

function lineOf(
  { id, kind, day, lot, forms, moves, left, because }: StockEvent,
  currency: string,
): EventLine {
  const minors = moves.map(({ form, from, to }) => ({ form, from: from.minor, to: to.minor }));
  return { id, kind, day, lot, forms, moves: minors, currency, left, because };
}
