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

/** Tells which records have the words, best first. */
export type WordIndex = (words: string) => Promise<NonNullable<Matches>>;

/**
 * Loads the index. The list of everything in the order of the records tells which result is which record, so no result need be fetched.
 * The index answers sooner here than in a worker, from where every result of thousands has to be copied over.
 */
export async function loadWordIndex(): Promise<WordIndex> {
  const script = new URL(href('/pagefind/pagefind.js'), location.href);
  const { createInstance }: PagefindScript = await import(/* @vite-ignore */ script.href);
  const index = createInstance({ noWorker: true });
  await index.init();
  const all = await index.search(null, { sort: { place: 'asc' } });
  const places = new Map(all.results.map(({ id }, place) => [id, place]));
  const look = async (words: string) => {
    const { results } = await index.search(words);
    return new Map(results.map(({ id }, rank) => [places.get(id)!, rank]));
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
