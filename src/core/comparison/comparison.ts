/** What one state of the records changes on the public site against another: nothing of what is private to the yard. */

import type { Catalogue } from '../catalogue.ts';
import type { AddressRow } from '../records/address.ts';
import { type AddressChanges, addressChanges } from './addressChanges.ts';
import { type LotChanges, lotChanges, type NamedLot } from './lotChanges.ts';
import { type PriceChange, priceChanges } from './priceChanges.ts';
import {
  type RecordChange,
  recordChanges,
  rereasonedLots,
  type SpeciesList,
  speciesList,
} from './recordChanges.ts';

/** The site as one state of the content makes it. */
export interface Side {
  catalogue: Catalogue;
  /** The lines of the list of published addresses. */
  addresses: readonly AddressRow[];
}

/** How much there is on the list. */
interface ListSize {
  /** Lots that are not sold out. */
  lots: number;
  plants: number;
  /** Lots with a form that is ready. */
  ready: number;
}

export interface Comparison extends LotChanges {
  prices: PriceChange[];
  /** What records say otherwise, field by field. */
  records: RecordChange[];
  species: SpeciesList;
  /** Lots of which nothing else is told, and whose page gives other reasons. */
  reasons: NamedLot[];
  addresses: AddressChanges;
  sizes: { before: ListSize; after: ListSize };
}

function sizeOfList({ lots }: Catalogue): ListSize {
  const listed = lots.filter(({ soldOut }) => !soldOut);
  return {
    lots: listed.length,
    plants: listed.reduce((sum, { stock }) => sum + stock.free, 0),
    ready: listed.filter(({ forms }) => forms.some(({ state }) => state === 'ready')).length,
  };
}

/** Compares two states. Both should be of one day, or the passing of time counts as a change. `before` null: nothing was there. */
export function compare(before: Side | null, after: Side): Comparison {
  const was: Side = before ?? { catalogue: emptied(after.catalogue), addresses: [] };
  const lots = lotChanges(was.catalogue, after.catalogue);
  const prices = priceChanges(was.catalogue, after.catalogue);
  const records = recordChanges(was.catalogue, after.catalogue);
  const told = new Set([
    ...[...Object.values(lots), prices].flat().map(({ lot }: NamedLot) => lot),
    ...records.filter(({ kind }) => kind === 'lot').map(({ id }) => id),
  ]);
  return {
    ...lots,
    prices,
    records,
    species: before ? speciesList(before.catalogue, after.catalogue) : { added: [], removed: [] },
    reasons: rereasonedLots(was.catalogue, after.catalogue, told).map(({ lot, cultivar }) => ({
      lot: lot.id,
      cultivar: cultivar.name,
    })),
    addresses: addressChanges(was, after),
    sizes: { before: sizeOfList(was.catalogue), after: sizeOfList(after.catalogue) },
  };
}

function emptied(catalogue: Catalogue): Catalogue {
  return {
    ...catalogue,
    lots: [],
    cultivars: [],
    guides: [],
    videos: [],
    places: [],
    species: [],
    codes: new Map(),
  };
}
