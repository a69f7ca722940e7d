/** Narrows the rows of a search by what is chosen, counts what every other choice would leave, and puts them in order. */

import type { Level } from '../../core/match/answers.ts';
import { ripeningOrder } from '../../core/match/words.ts';
import type { Offer, RowsFile, TreeRow } from '../../site/data/searchRows.ts';
import {
  fits,
  offerGroups,
  type SearchGroup,
  type SearchOrder,
  searchGroups,
} from '../../site/pages/search/searchTerms.ts';
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

type Chosen = Wanted['chosen'];

const traitGroups = ['species', 'flavor', 'ripening', 'scarcity', 'place'] as const;

/** A bit for each group, to tell in one number which groups stand in the way of something. */
const bitOf = Object.fromEntries(searchGroups.map((group, at) => [group, 1 << at])) as Record<
  SearchGroup,
  number
>;

function barred(chosen: Chosen, group: SearchGroup, value: string | null): number {
  const wanted = chosen[group];
  if (wanted.size === 0) return 0;
  if (value === null) return bitOf[group];
  const fitting = group === 'price' ? [...wanted].some(most => fits(group, value, most)) : wanted.has(value);
  return fitting ? 0 : bitOf[group];
}

function least(low: number | null, value: number | null): number | null {
  return value !== null && (low === null || value < low) ? value : low;
}

/** Price of an offer; null: it has none. */
function priceOf({ price }: Offer): number | null {
  return price === '' ? null : Number(price);
}

function perGroup<T>(make: () => T): Record<SearchGroup, T> {
  return Object.fromEntries(searchGroups.map(group => [group, make()])) as Record<SearchGroup, T>;
}

/**
 * Cultivars that fit all that is chosen, in the order of the file, with the counts beside each choice. Few offers stand for many lots, so
 * each offer is judged once and every cultivar asks only for the answers.
 */
export function narrow(
  { trees, offers }: Pick<RowsFile, 'trees' | 'offers'>,
  chosen: Chosen,
  matches: Matches,
  levelOf: LevelOf,
): Narrowed {
  const hits: Hit[] = [];
  const counts = perGroup(() => new Map<string, number>());
  /** The last cultivar counted for a value: each counts once, however many of its offers have the value. */
  const countedLast = perGroup(() => new Map<string, number>());
  const count = (group: SearchGroup, value: string, place: number) => {
    if (countedLast[group].get(value) === place) return;
    countedLast[group].set(value, place);
    counts[group].set(value, (counts[group].get(value) ?? 0) + 1);
  };
  const prices = new Set(offers.map(({ price }) => price));
  const offerBars = offers.map(offer =>
    offerGroups.reduce((bars, group) => bars | barred(chosen, group, offer[group]), 0),
  );
  trees.forEach((row, place) => {
    if (matches !== null && !matches.has(place)) return;
    const level = levelOf(row.id);
    const { species, flavor, ripening, scarcity } = row;
    const traits = { species, flavor, ripening, scarcity, place: level };
    const traitBars = traitGroups.reduce((bars, group) => bars | barred(chosen, group, traits[group]), 0);
    const fitting = row.offers.filter(index => offerBars[index] === 0);
    if (fitting.length > 0) {
      for (const group of traitGroups) {
        const value = traits[group];
        if (value !== null && (traitBars & ~bitOf[group]) === 0) count(group, value, place);
      }
    }
    if (traitBars !== 0) return;
    for (const index of row.offers) {
      for (const group of offerGroups) {
        if ((offerBars[index]! & ~bitOf[group]) !== 0) continue;
        const own = offers[index]![group];
        if (group !== 'price') count(group, own, place);
        else for (const most of prices) if (fits(group, own, most)) count(group, most, place);
      }
    }
    if (fitting.length === 0) return;
    hits.push({
      row,
      place,
      price: fitting.reduce<number | null>((low, index) => least(low, priceOf(offers[index]!)), null),
      days: fitting.reduce<number | null>((low, index) => least(low, offers[index]!.days), null),
    });
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
