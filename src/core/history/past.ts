/** A lot as it stood on any day of its past, by what was known on that day. */

import { addDays, type Day, daysBetween } from '../days.ts';
import type { LotAnswers, LotSigns, StockCount } from '../lots/answers.ts';
import { signsOf } from '../lots/signs.ts';
import { stockOf } from '../lots/stock.ts';
import type { Subject, YardDay } from '../lots/subject.ts';
import type { AskWaiting, Waiting } from '../lots/waiting.ts';
import type { Sighting } from '../lots/walkIndex.ts';
import type { Form } from '../records/common.ts';
import type { Lot } from '../records/lot.ts';
import type { Species } from '../records/species.ts';

export interface LotPast {
  lot: Lot;
  /** Days on which something of the lot was seen or noted, oldest first; the first is the day it was started. */
  noted: readonly Day[];
  subjectOn(on: Day): Subject;
  todayOn(on: Day): YardDay;
  stockOn(on: Day): StockCount;
  waitingOn(on: Day): ReadonlyMap<Form, Waiting>;
}

/** The days of walks and of dates in the lot's own record, from its start up to `asOf`. */
function notedDays(lot: Lot, sightings: readonly Sighting[], asOf: Day): Day[] {
  const days = new Set<Day>();
  const note = (on: Day | null | undefined) => {
    if (on && on >= lot.started && on <= asOf) days.add(on);
  };
  for (const on of [lot.started, lot.severed, lot.lifted, lot.hold?.since]) note(on);
  for (const { since, until } of lot.reserved) {
    note(since);
    if (until) note(addDays(until, 1));
  }
  for (const { date } of lot.pottings) note(date);
  for (const { on } of sightings) note(on);
  return [...days].sort();
}

/** What is known after so many sightings. */
interface Known {
  signs: LotSigns;
  stock: StockCount;
}

/** `today` is the newest day of the past, with an outlook that knows the whole log; `answers` are the lot's of that day. */
export function pastOf(
  lot: Lot,
  species: Species,
  sightings: readonly Sighting[],
  today: YardDay,
  { signs, stock }: Pick<LotAnswers, 'signs' | 'stock'>,
  askWaiting: AskWaiting,
): LotPast {
  // What is set aside for buyers differs by day; of most lots nothing is.
  const keyOf = (count: number, on: Day) => (lot.reserved.length > 0 ? `${count} ${on}` : String(count));
  const known = new Map<string, Known>([[keyOf(sightings.length, today.asOf), { signs, stock }]]);
  const waits = new Map<Day, ReadonlyMap<Form, Waiting>>();
  const knownOn = (on: Day): Known => {
    const count = sightings.findLastIndex(sighting => sighting.on <= on) + 1;
    const key = keyOf(count, on);
    let then = known.get(key);
    if (!then) {
      const seen = sightings.slice(0, count);
      then = { signs: signsOf(seen), stock: stockOf(lot, seen, on) };
      known.set(key, then);
    }
    return then;
  };
  const past: LotPast = {
    lot,
    noted: notedDays(lot, sightings, today.asOf),
    subjectOn(on) {
      const { signs, stock } = knownOn(on);
      return { lot, species, signs, stock };
    },
    todayOn: on => ({ ...today, asOf: on, outlook: today.outlook.until(on) }),
    stockOn: on => knownOn(on).stock,
    waitingOn(on) {
      let waiting = waits.get(on);
      if (!waiting) {
        waiting = askWaiting(past.subjectOn(on), past.todayOn(on));
        waits.set(on, waiting);
      }
      return waiting;
    },
  };
  return past;
}

/** The first day after `from` and up to `to` on which something holds that does not hold on `from`, does on `to`, and stays. */
export function firstDay(from: Day, to: Day, holds: (on: Day) => boolean): Day {
  let [before, at] = [0, daysBetween(from, to)];
  while (at - before > 1) {
    const middle = (before + at) >> 1;
    if (holds(addDays(from, middle))) at = middle;
    else before = middle;
  }
  return addDays(from, at);
}
