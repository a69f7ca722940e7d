/** The cultivars that do best somewhere, for a visitor who asks which one to take: the same at build and in the browser. */

import type { Match } from '../../core/match/answers.ts';
import { bestOf } from '../../core/match/ranking.ts';
import type { TreesFile } from './trees.ts';

/** A cultivar among the best of a place. */
export interface BestTree {
  id: string;
  name: string;
}

/** So many are named. */
export const bestNamed = 3;

/** The cultivars that do best by their matches, of those that are raised. */
export function bestTrees(
  matches: readonly Match[],
  { cultivars, past }: Pick<TreesFile, 'cultivars' | 'past'>,
): BestTree[] {
  const names = new Map(cultivars.map(({ id, name }) => [id, name]));
  return bestOf(matches, id => !past.includes(id), bestNamed).map(({ cultivar }) => ({
    id: cultivar,
    name: names.get(cultivar) ?? cultivar,
  }));
}
