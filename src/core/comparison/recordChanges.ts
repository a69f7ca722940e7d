/** Records that are on both sides of a comparison and say something else now, with the fields that differ. Private fields are in neither. */

import type { Catalogue, LotEntry } from '../catalogue.ts';
import { type FieldChange, fieldChanges } from './fieldChanges.ts';
import { pairsOf } from './pairs.ts';

export type RecordKind = 'yard' | 'species' | 'cultivar' | 'lot' | 'guide' | 'video' | 'place';

export interface RecordChange {
  kind: RecordKind;
  id: string;
  /** As customers know it. */
  name: string;
  fields: FieldChange[];
}

interface Shown {
  id: string;
  name: string;
  /** What of it the site shows, or computes from. */
  content: object;
}

const without = <T extends object>(record: T, ...keys: string[]): object =>
  Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key)));

/** Where a record stands in its file matters to messages only. */
const position = ['file', 'index', 'bodyLine'];

function shownOf(all: Catalogue): Record<Exclude<RecordKind, 'lot'>, Shown[]> {
  const shown = <T extends { id: string }>(records: readonly T[], nameOf: (record: T) => string) =>
    records.map(record => ({ id: record.id, name: nameOf(record), content: without(record, ...position) }));
  return {
    yard: [{ id: 'yard', name: all.yard.name, content: all.yard }],
    species: shown(all.species, ({ common, botanical }) => common[0] ?? botanical),
    cultivar: shown(
      all.cultivars.map(({ cultivar }) => cultivar),
      ({ name }) => name,
    ),
    guide: shown(all.guides, ({ title }) => title),
    video: shown(all.videos, ({ title }) => title),
    place: shown(all.places, ({ name }) => name),
  };
}

/** What a lot's record says, and what its page shows of the lot as it was last seen; counts, forms and prices are compared elsewhere. */
function lotContent({ lot, signs, size, scarcity, cartons }: LotEntry): object {
  const seen = Object.fromEntries(
    Object.entries(signs).map(([sign, value]) => [
      sign,
      typeof value === 'object' && value !== null && 'value' in value ? value.value : value,
    ]),
  );
  const { lastLooked: _lastLooked, lastOutside: _lastOutside, ...signsShown } = seen;
  return {
    ...without(lot, ...position),
    seen: signsShown,
    size: size.answer.name,
    scarcity: scarcity.answer,
    carton: Object.fromEntries(
      Object.entries(cartons).map(([form, { answer }]) => [
        form,
        { carton: answer.carton, plants: answer.plants, cutBackToCm: answer.cutBackToCm },
      ]),
    ),
  };
}

/** Records on both sides that differ: yard, species, cultivars, lots, guides, videos, places, each in the order of the later catalogue. */
export function recordChanges(before: Catalogue, after: Catalogue): RecordChange[] {
  const [then, now] = [shownOf(before), shownOf(after)];
  const changed = (kind: RecordKind, earlier: readonly Shown[], later: readonly Shown[]): RecordChange[] => {
    const known = new Map(earlier.map(record => [record.id, record]));
    return later.flatMap(({ id, name, content }) => {
      const past = known.get(id);
      const fields = past ? fieldChanges(past.content, content) : [];
      return fields.length > 0 ? [{ kind, id, name, fields }] : [];
    });
  };
  const pairs = pairsOf(before, after);
  const lots = (side: 'then' | 'now'): Shown[] =>
    pairs.map(pair => ({
      id: pair[side].lot.id,
      name: pair[side].cultivar.name,
      content: lotContent(pair[side]),
    }));
  return [
    ...changed('yard', then.yard, now.yard),
    ...changed('species', then.species, now.species),
    ...changed('cultivar', then.cultivar, now.cultivar),
    ...changed('lot', lots('then'), lots('now')),
    ...changed('guide', then.guide, now.guide),
    ...changed('video', then.video, now.video),
    ...changed('place', then.place, now.place),
  ];
}

/** Species have no page of their own, so no address tells that one came or went. */
export interface SpeciesList {
  added: string[];
  removed: string[];
}

export function speciesList(before: Catalogue, after: Catalogue): SpeciesList {
  const [then, now] = [before, after].map(({ species }) => new Set(species.map(({ id }) => id)));
  return {
    added: after.species.map(({ id }) => id).filter(id => !then!.has(id)),
    removed: before.species.map(({ id }) => id).filter(id => !now!.has(id)),
  };
}

/** Lots of which nothing else is told and whose reasons read otherwise. */
export function rereasonedLots(before: Catalogue, after: Catalogue, told: ReadonlySet<string>): LotEntry[] {
  const reasons = ({ forms, size, scarcity, tiers, cartons, lookNext, stock }: LotEntry) =>
    JSON.stringify([forms, size, scarcity, tiers, cartons, lookNext, stock]);
  return pairsOf(before, after)
    .filter(({ then, now }) => !told.has(now.lot.id) && reasons(then) !== reasons(now))
    .map(({ now }) => now);
}
