/** Something that changed on the list of a yard, as told by feeds and by the page of changes. */

import type { Day } from '../days.ts';
import type { Money } from '../money.ts';
import type { Form, Reason } from '../records/common.ts';

/**
 * opened: the lot came onto the list; ready: a form of it became ready; price: a form went up or down; sold-out: none are left;
 * back: there are some again. One event of a kind for a lot on a day; in this order.
 */
export const eventKinds = ['opened', 'back', 'ready', 'price', 'sold-out'] as const;
export type EventKind = (typeof eventKinds)[number];

export interface PriceMove {
  form: Form;
  from: Money;
  to: Money;
}

export interface StockEvent {
  /** A `tag:` URI (RFC 4151) that names this event for ever. */
  id: string;
  kind: EventKind;
  /** The walk or the date in the records that made it true; where mere time did, the day it came true. */
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
 * RFC 4151, 2.1: an authority, a comma, a date in ISO 8601, a colon, and what the authority calls it.
 */
export function eventId(address: string, lot: string, kind: EventKind, day: Day): string {
  return `tag:${new URL(address).hostname},${day}:lot/${lot}/${kind}`;
}
