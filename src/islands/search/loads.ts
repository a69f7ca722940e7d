/** What the search page loads on use. */

import { href } from '../../href.ts';
import type { RowsFile } from '../../site/data/searchRows.ts';
import { answersFor, type PlaceAnswers } from '../myPlace/answers.ts';
import { currentChoice } from '../myPlace/choice.ts';
import { namesBeginning } from './understood.ts';
import { loadWordIndex } from './wordIndex.ts';

/** Loads once; a failure is tried again. */
function once<T>(load: () => Promise<T>): () => Promise<T> {
  let loading: Promise<T> | undefined;
  return () => {
    loading ??= load().catch(problem => {
      loading = undefined;
      throw problem;
    });
    return loading;
  };
}

/** The rows of everything that can be found. */
export const rowsFile = once(async (): Promise<RowsFile> => {
  // Always asked for anew, so that the rows are those of the index.
  const answer = await fetch(href('/search/rows.json'), { cache: 'no-cache' });
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
});
export const wordIndex = once(async () => {
  const file = await rowsFile();
  return loadWordIndex(word => namesBeginning(file, word));
});

/** The verdicts at the place the visitor has chosen; null where there is none. */
export async function placeAnswers(): Promise<PlaceAnswers | null> {
  const choice = currentChoice();
  // What is wrong with the place is told in its own line.
  return choice === null ? null : answersFor(choice).catch(() => null);
}
