/** The index of words that the build makes; loaded when the first word is typed. */

import { href } from '../../href.ts';
import type { Matches } from './narrow.ts';

interface Pagefind {
  init(): Promise<void>;
  search(
    term: string | null,
    options?: { sort: Record<string, 'asc'> },
  ): Promise<{ results: { id: string }[] }>;
}

/** Tells which records have the words, best first. */
export type WordIndex = (words: string) => Promise<NonNullable<Matches>>;

/** Loads the index. The list of everything in the order of the records tells which result is which record, so no result need be fetched. */
export async function loadWordIndex(): Promise<WordIndex> {
  const script = new URL(href('/pagefind/pagefind.js'), location.href);
  const index: Pagefind = await import(/* @vite-ignore */ script.href);
  await index.init();
  const all = await index.search(null, { sort: { place: 'asc' } });
  const places = new Map(all.results.map(({ id }, place) => [id, place]));
  return async words => {
    const { results } = await index.search(words);
    return new Map(results.map(({ id }, rank) => [places.get(id)!, rank]));
  };
}
