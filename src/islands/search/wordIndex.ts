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

interface PagefindScript {
  createInstance(options: { noWorker: boolean }): Pagefind;
}

/** Words that every page has. */
const fillers = new Set([
  'a',
  'an',
  'and',
  'for',
  'in',
  'my',
  'of',
  'or',
  'the',
  'to',
  'tree',
  'trees',
  'with',
]);

/** Records with a name of which one word begins with what was typed, the best rank for each. */
export type NamesWith = (word: string) => ReadonlyMap<number, number>;

/** Records that all words found, by the sum of their ranks. */
export function inAll(found: readonly ReadonlyMap<number, number>[]): Map<number, number> {
  const [first, ...others] = found;
  const both = new Map<number, number>();
  for (const [place, rank] of first ?? []) {
    const ranks = others.map(other => other.get(place));
    if (ranks.every(each => each !== undefined))
      both.set(
        place,
        ranks.reduce((sum, each) => sum + each, rank),
      );
  }
  return both;
}

/** Tells which records have the words, best first. */
export type WordIndex = (words: string) => Promise<NonNullable<Matches>>;

/**
 * Loads the index. The list of everything in the order of the records tells which result is which record, so no result need be fetched.
 * The index answers sooner here than in a worker, from where every result of thousands has to be copied over.
 */
export async function loadWordIndex(namesWith: NamesWith): Promise<WordIndex> {
  const script = new URL(href('/pagefind/pagefind.js'), location.href);
  const { createInstance }: PagefindScript = await import(/* @vite-ignore */ script.href);
  const index = createInstance({ noWorker: true });
  await index.init();
  const all = await index.search(null, { sort: { place: 'asc' } });
  const places = new Map(all.results.map(({ id }, place) => [id, place]));
  /** Quoted, a word finds itself and its other endings; else the index takes shorter and shorter beginnings of it and finds anything. */
  const withWord = async (word: string) => {
    const { results } = await index.search(`"${word.replaceAll('"', '')}"`);
    return new Map(results.map(({ id }, rank) => [places.get(id)!, rank]));
  };
  const look = async (words: string) => {
    const asked = words.split(/\s+/).filter(word => !fillers.has(word));
    const found = await Promise.all(
      asked.map(async word => new Map([...(await withWord(word)), ...namesWith(word)])),
    );
    return inAll(found);
  };
  /** The words last looked for: what is chosen beside them changes more often than they do. */
  let last: { words: string; found: ReturnType<typeof look> } | null = null;
  return words => {
    if (last?.words === words) return last.found;
    const found = look(words);
    last = { words, found };
    found.catch(() => {
      last = null;
    });
    return found;
  };
}
