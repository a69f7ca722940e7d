/** A yard that is about to be changed by a command: its texts as they are on the disk beside what they were read as. */

import type { Day } from '../days.ts';
import { nearest } from '../reading/nearest.ts';
import { quote } from '../reading/problem.ts';
import type { Lot } from '../records/lot.ts';
import type { Orders } from '../records/orders.ts';
import type { Records } from '../records/records.ts';

export interface OpenYard {
  /** By path below the content folder; byte order marks and line ends are in them. */
  texts: ReadonlyMap<string, string>;
  records: Records;
  orders: Orders;
  /** The day it is written down for. */
  today: Day;
}

/** As much of a yard as a record can be added to: one that is only begun has no more. */
export interface YardToAddTo {
  texts: OpenYard['texts'];
  records: Pick<Records, 'yard' | 'species' | 'cultivars' | 'lots'>;
}

/** One file as it is to be; a path that is not there yet is a new file. */
export interface FileChange {
  path: string;
  text: string;
}

/** What a command will do, or why not: a sentence that starts in lower case. */
export type Planned =
  | {
      changes: FileChange[];
      /** What it comes to, in a sentence or two. */
      said: string;
    }
  | { refused: string };

/** A refusal where a record is not there, with the nearest one that is. */
export function unknown(kind: string, id: string, known: Iterable<string>): { refused: string } {
  const ids = [...known];
  const guess = nearest(id, ids);
  const near = guess === null ? startingAlike(id, ids) : `Did you mean "${guess}"?`;
  return { refused: `there is no ${kind} ${quote(id)}. ${near}` };
}

const mostNamed = 8;

function startingAlike(id: string, known: readonly string[]): string {
  const alike = known.filter(each => each.includes(id) || each.startsWith(id.slice(0, 4)));
  const named = (alike.length > 0 ? alike : known).slice(0, mostNamed);
  return `There are: ${named.join(', ')}${(alike.length || known.length) > mostNamed ? ' and others' : ''}.`;
}

export function lotOf({ records: { lots } }: OpenYard, id: string): Lot | { refused: string } {
  return (
    lots.find(each => each.id === id) ??
    unknown(
      'lot',
      id,
      lots.map(each => each.id),
    )
  );
}
