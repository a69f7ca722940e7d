/** Something that changed on the list of a yard, as feeds and the page of changes list it. */

import type { Day } from '../days.ts';
import type { Money } from '../money.ts';
import type { EventKind } from '../records/change.ts';
import type { Form, Reason } from '../records/common.ts';

export interface PriceMove {
  form: Form;
  from: Money;
  to: Money;
}

export interface StockEvent {
  /** A `tag:` URI (RFC 4151) that names this event for ever. */
  id: string;
  kind: EventKind;
  /**
   * The walk or the date in the records that made it true; where mere time did, the day it came true; of a price, the day from which it was
   * asked. As it was when the event was first published.
   */
  day: Day;
  lot: string;
  cultivar: string;
  /** ready: the forms that became so. back: those that are. Else empty. */
  forms: Form[];
  /** price: what moved. Else empty. */
  moves: PriceMove[];
  /** Plants left on that day. */
  left: number;
  because: Reason[];
}

/**
 * The `tag:` URI of an event, from what it is about and nothing else: `tag:trees.example,2026-11-21:lot/l26-01/ready`.
 * RFC 4151, 2.1: an authority, a comma, a date in ISO 8601, a colon, and what the authority calls it. `host` is the domain of `namingHost`; `used` are those of other events: a lot may
 * have two of a kind on a day when the second is found later.
 */
export function eventId(
  host: string,
  { lot, kind, day }: Pick<StockEvent, 'lot' | 'kind' | 'day'>,
  used: ReadonlySet<string> = new Set(),
): string {
  const id = `tag:${host},${day}:lot/${lot}/${kind}`;
  let free = id;
  for (let count = 2; used.has(free); count += 1) free = `${id}/${count}`;
  return free;
}
