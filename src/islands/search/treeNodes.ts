/** Cultivars that were found, drawn a few at a time. */

import type { Hit } from './narrow.ts';
import { addTrees, make, type Said, treeTable, type WordsOf } from './results.ts';

/** Rows shown at once, and added with each press of the button. */
const shownAtOnce = 20;
/** Of these, as many as fill a telephone; a slow one draws the others when it has shown these. */
const drawnFirst = 6;

/** The table of these cultivars, a few at a time, and the button that shows more of them. */
export function treeNodes(
  hits: readonly Hit[],
  wordsOf: WordsOf,
  saidOf: (cultivar: string) => Said | null,
): Node[] {
  const table = treeTable();
  let done = 0;
  const add = () => {
    const drawn = hits.slice(done, done + shownAtOnce);
    done += drawn.length;
    more.hidden = true;
    table.ariaBusy = 'true';
    const first = addTrees(table, drawn.slice(0, drawnFirst), wordsOf, saidOf);
    const addOthers = () => {
      if (!table.isConnected) return;
      addTrees(table, drawn.slice(drawnFirst), wordsOf, saidOf);
      table.ariaBusy = null;
      more.hidden = done === hits.length;
      more.textContent = `Show ${Math.min(shownAtOnce, hits.length - done)} more of ${hits.length}`;
    };
    requestAnimationFrame(() => setTimeout(addOthers));
    return first;
  };
  const more = make('button', '');
  more.type = 'button';
  more.onclick = () => add()?.focus();
  add();
  return [table, more];
}
