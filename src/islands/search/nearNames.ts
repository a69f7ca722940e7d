/** Names that a visitor may have meant. */

import { editDistance } from '../../core/reading/nearest.ts';
import type { TreeRow } from '../../site/data/searchRows.ts';

/** One slip in three letters. Standing: ours. */
const LETTERS_PER_SLIP = 3;
const MOST_NAMES = 3;

function plain(words: string): string {
  return words
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '');
}

/** Slips between what was typed and a name or one word of it; null when they are too many. */
function slips(typed: string, name: string): number | null {
  const whole = plain(name);
  const most = Math.floor(typed.length / LETTERS_PER_SLIP);
  const near = Math.min(...[whole, ...whole.split(/\s+/)].map(part => editDistance(typed, part, most)));
  return near <= most ? near : null;
}

/** Cultivars by the nearest of their names, three at most; those with fewest slips first. */
export function nearNames(typed: string, trees: readonly TreeRow[]): TreeRow[] {
  const wanted = plain(typed.trim());
  return trees
    .flatMap(tree => {
      const found = [tree.name, ...tree.also].flatMap(name => slips(wanted, name) ?? []);
      return found.length === 0 ? [] : [{ tree, slips: Math.min(...found) }];
    })
    .sort((a, b) => a.slips - b.slips)
    .slice(0, MOST_NAMES)
    .map(({ tree }) => tree);
}
