/** What stands on labels, tags and count sheets, from the catalogue. Nothing private is at hand here: the catalogue holds none of it. */

import { recordAddress, shortAddress } from '../core/addresses/paths.ts';
import type { Catalogue, LotEntry } from '../core/catalogue.ts';
import { type Day, dayInWords } from '../core/days.ts';
import { wheres } from '../core/records/walk.ts';

export interface LabelWords {
  lot: string;
  name: string;
  /** Botanical name, and the rootstock of a grafted tree. */
  botanical: string;
  /** Pot and the day it was potted: `In a #1 pot since July 11, 2026`. */
  standing: string;
  /** Whole short address of the page of the lot. */
  address: string;
}

/** Whole address of a record: the short one where it has a code. `base` starts and ends with a slash. */
export function wholeAddress(all: Catalogue, page: string, base: string): string {
  const code = all.codes.get(page);
  const path = code === undefined ? page : shortAddress(code);
  return `${all.yard.address}${base.replace(/\/$/, '')}${path}`;
}

function standingOf({ lot }: LotEntry, asOf: Day): string {
  const potting = lot.pottings.findLast(({ date }) => date <= asOf);
  return potting
    ? `In a ${potting.container.written} pot since ${dayInWords(potting.date)}`
    : `Started ${dayInWords(lot.started)}`;
}

export function labelWords(all: Catalogue, entry: LotEntry, base: string): LabelWords {
  const { lot, cultivar, species } = entry;
  return {
    lot: lot.id,
    name: cultivar.name,
    botanical:
      lot.rootstock === null
        ? `${species.botanical}, on its own roots`
        : `${species.botanical} on ${lot.rootstock}`,
    standing: standingOf(entry, all.asOf),
    address: wholeAddress(all, recordAddress('lot', lot.id), base),
  };
}

/** Lots in the order in which they are met: by where they were last seen standing, then by id. Lots of which none are left are not there. */
export function benchOrder(lots: readonly LotEntry[]): LotEntry[] {
  const place = ({ signs }: LotEntry) =>
    signs.where === null ? wheres.length : wheres.indexOf(signs.where.value);
  return lots
    .filter(({ stock }) => stock.left > 0)
    .sort((a, b) => place(a) - place(b) || (a.lot.id < b.lot.id ? -1 : 1));
}
