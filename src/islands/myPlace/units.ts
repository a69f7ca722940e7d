/** Measures in the order of the visitor's country: the words of the page and those that scripts write into it. */

import { metricFirst } from '../../core/unitOrder.ts';
import { currentChoice, onChange } from './choice.ts';

/** Text as it was written, F first. */
const before = new Map<Text, string>();

function turn(root: Node): void {
  const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
    const text = node as Text;
    const turned = metricFirst(text.data);
    if (turned === text.data) continue;
    before.set(text, text.data);
    text.data = turned;
  }
}

const main = document.querySelector('main');
const watch = new MutationObserver(changes => {
  for (const { addedNodes } of changes) for (const node of addedNodes) turn(node);
});

function follow(): void {
  if (main === null) return;
  watch.disconnect();
  if (currentChoice()?.units === 'metric') {
    turn(main);
    watch.observe(main, { childList: true, subtree: true });
  } else {
    for (const [text, was] of before) text.data = was;
    before.clear();
  }
}

onChange(follow);
follow();
