/**
 * What was published before beside what the records say today. A thermometer that is read in late, a walk put right or a count mended moves days;
 * what was published on another day is the same event still, and is not published twice.
 */

import { type Day, daysBetween } from '../days.ts';
import type { EventLine } from '../records/change.ts';
import type { Form } from '../records/common.ts';
import { type LotEvent, READY_AGAIN_DAYS } from './lotEvents.ts';

/** An event of a lot with its day. */
export type DatedEvent = LotEvent & { day: Day };

/** What distinguishes the events of one lot that may stand for each other: the kind, and of readiness the form. */
function strandsOf({ kind, forms = [] }: Pick<LotEvent, 'kind' | 'forms'>): string[] {
  return kind === 'ready' ? forms.map(form => `ready ${form}`) : [kind];
}

interface Pair {
  event: number;
  line: number;
  apart: number;
}

/** Pairs of an event and a line that say the same, the nearest in time first; each belongs to one pair at most. */
function pairs(events: readonly Day[], lines: readonly Day[], within: number): Pair[] {
  const all = events.flatMap((on, event) =>
    lines.map((day, line) => ({ event, line, apart: Math.abs(daysBetween(on, day)) })),
  );
  const found: Pair[] = [];
  for (const pair of all.sort((a, b) => a.apart - b.apart || a.event - b.event)) {
    if (pair.apart > within) break;
    if (!found.some(({ event, line }) => event === pair.event || line === pair.line)) found.push(pair);
  }
  return found;
}

/** Of all events of a lot those not published yet; of readiness only the forms that were not. A lot opens once. */
export function unpublished(events: readonly DatedEvent[], published: readonly EventLine[]): DatedEvent[] {
  const known = new Set<string>();
  for (const strand of new Set(events.flatMap(strandsOf))) {
    const own = events.flatMap((event, at) => (strandsOf(event).includes(strand) ? at : []));
    const lines = published.filter(line => strandsOf(line).includes(strand)).map(({ day }) => day);
    const within = strand === 'opened' ? Number.POSITIVE_INFINITY : READY_AGAIN_DAYS;
    for (const { event } of pairs(
      own.map(at => events[at]!.day),
      lines,
      within,
    ))
      known.add(`${own[event]} ${strand}`);
  }
  return events.flatMap((event, at) => {
    const isNew = (strand: string) => !known.has(`${at} ${strand}`);
    if (event.kind !== 'ready') return isNew(event.kind) ? event : [];
    const forms = event.forms!.filter((form: Form) => isNew(`ready ${form}`));
    return forms.length === 0 ? [] : { ...event, forms };
  });
}
