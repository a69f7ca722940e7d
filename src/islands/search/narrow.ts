/** Narrows the rows of a search by what is chosen, counts what every other choice would leave, and puts them in order. */

import type { Level } from '../../core/match/answers.ts';
import { ripeningOrder } from '../../core/match/words.ts';
import type { Offer, RowsFile, TreeRow } from '../../views/searchRows.ts';
import { offerGroups, type SearchGroup, type SearchOrder, searchGroups } from '../../views/searchTerms.ts';
import type { Wanted } from './wanted.ts';

/** Verdict on a cultivar at the visitor's place; null: none known. */
export type LevelOf = (cultivar: string) => Level | null;

/** Place of each record that has the words, best match first; null when no words are asked for. */
export type Matches = ReadonlyMap<number, number> | null;

export interface Hit {
  row: TreeRow;
  /** Of the records of the index. */
  place: number;
  /** Lowest price of the trees on offer that fit, minor units; null: none has a price. */
  price: number | null;
  /** Fewest days until one of them may be had; null: no day known. */
  days: number | null;
}

export interface Narrowed {
  hits: Hit[];
  /** Cultivars left for each value of a group, the other groups as they are chosen. */
  counts: Record<SearchGroup, ReadonlyMap<string, number>>;
}

type Traits = Record<Exclude<SearchGroup, (typeof offerGroups)[number]>, string | null>;

const traitGroups = ['species', 'flavour', 'ripening', 'place'] as const;

function traitsOf({ id, species, flavour, ripening }: TreeRow, levelOf: LevelOf): Traits {
  return { species, flavour, ripening, place: levelOf(id) };
}

type Chosen = Wanted['chosen'];

function open(chosen: Chosen, group: SearchGroup, value: string | null): boolean {
  return chosen[group].size === 0 || (value !== null && chosen[group].has(value));
}

function offersThatFit(offers: readonly Offer[], chosen: Chosen, leftOut: SearchGroup | null): Offer[] {
  return offers.filter(offer =>
    offerGroups.every(group => group === leftOut || open(chosen, group, offer[group])),
  );
}

function traitsFit(traits: Traits, chosen: Chosen, leftOut: SearchGroup | null): boolean {
  return traitGroups.every(group => group === leftOut || open(chosen, group, traits[group]));
}

function least(values: readonly (number | null)[]): number | null {
  return values.reduce((low, value) => (value !== null && (low === null || value < low) ? value : low), null);
}

function pricesOf(offers: readonly Offer[]): (number | null)[] {
  return offers.map(({ price }) => (price === '' ? null : Number(price)));
}

/** Cultivars that fit all that is chosen, in the order of the file, with the counts beside each choice. */
export function narrow(
  { trees, offers }: Pick<RowsFile, 'trees' | 'offers'>,
  chosen: Chosen,
  matches: Matches,
  levelOf: LevelOf,
): Narrowed {
  const hits: Hit[] = [];
  const counts = Object.fromEntries(searchGroups.map(group => [group, new Map<string, number>()])) as Record<
    SearchGroup,
    Map<string, number>
  >;
  const count = (group: SearchGroup, values: Iterable<string>) => {
    for (const value of values) counts[group].set(value, (counts[group].get(value) ?? 0) + 1);
  };
  trees.forEach((row, place) => {
    if (matches !== null && !matches.has(place)) return;
    const traits = traitsOf(row, levelOf);
    const own = row.offers.map(index => offers[index]!);
    const fitting = offersThatFit(own, chosen, null);
    if (fitting.length > 0) {
      for (const group of traitGroups) {
        const value = traits[group];
        if (value !== null && traitsFit(traits, chosen, group)) count(group, [value]);
      }
    }
    if (!traitsFit(traits, chosen, null)) return;
    for (const group of offerGroups) {
      const values = offersThatFit(own, chosen, group).map(offer => offer[group]);
      count(group, new Set(values));
    }
    if (fitting.length === 0) return;
    const days = least(fitting.map(offer => offer.days));
    hits.push({ row, place, price: least(pricesOf(fitting)), days });
  });
  return { hits, counts };
}

/** Nothing known comes last. */
const byNumber = (a: number | null, b: number | null) =>
  a === b ? 0 : (a ?? Number.POSITIVE_INFINITY) - (b ?? Number.POSITIVE_INFINITY);

/** Puts hits in order; those that are equal stand by name. */
export function inOrder(hits: readonly Hit[], order: SearchOrder, matches: Matches): Hit[] {
  const compare: Record<SearchOrder, (a: Hit, b: Hit) => number> = {
    match: (a, b) => (matches?.get(a.place) ?? 0) - (matches?.get(b.place) ?? 0),
    name: () => 0,
    price: (a, b) => byNumber(a.price, b.price),
    readiness: (a, b) => byNumber(a.days, b.days),
    ripening: (a, b) => ripeningOrder[a.row.ripening] - ripeningOrder[b.row.ripening],
  };
  return [...hits].sort((a, b) => compare[order](a, b) || a.place - b.place);
}

/** Groups whose choice alone stands in the way, with what dropping it would leave; most first. */
export function wouldHelp(
  file: Pick<RowsFile, 'trees' | 'offers'>,
  chosen: Chosen,
  matches: Matches,
  levelOf: LevelOf,
): { group: SearchGroup; count: number }[] {
  return searchGroups
    .filter(group => chosen[group].size > 0)
    .map(group => {
      const without = { ...chosen, [group]: new Set<string>() };
      return { group, count: narrow(file, without, matches, levelOf).hits.length };
    })
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count);
}
