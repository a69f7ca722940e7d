/** How many were found, in words. */

import { choicesMade, type Wanted } from './wanted.ts';

interface Found {
  trees: number;
  pages: number;
  /** Lots and places that the words name. */
  named: number;
}

function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `3 cultivars and 1 guide or video with “honey”, 2 choices made.` */
export function resultWords(wanted: Wanted, { trees, pages, named }: Found): string {
  const { text } = wanted;
  const what = [
    ...(named > 0 ? [counted(named, 'lot or place', 'lots or places')] : []),
    ...(trees > 0 || named + pages === 0 ? [counted(trees, 'cultivar')] : []),
    ...(pages > 0 ? [counted(pages, 'guide or video', 'guides or videos')] : []),
  ];
  const words = text === '' ? '' : ` with “${text}”`;
  const chosen = choicesMade(wanted);
  return `${what.join(' and ')}${words}${chosen === 0 ? '' : `, ${counted(chosen, 'choice')} made`}.`;
}
