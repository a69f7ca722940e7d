/** What the next walk should look at, in words for the grower. */

import { dayInWords } from '../days.ts';
import type { FormAnswer, GateName } from './answers.ts';

const tasks: Partial<Record<GateName, string>> = {
  counted: 'count the plants',
  rooted: 'look at the roots',
  sized: 'measure height and stem',
  sound: 'see whether they are sound',
  leafed: 'look at the leaves and note where they stand',
  dormant: 'look at leaves, wood and buds',
};

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** One sentence, or null when nothing wants looking at: the gates that wait for a look, else roots that may soon hold. */
export function lookNextOf(forms: readonly FormAnswer[]): string | null {
  const gates = forms.flatMap(({ gates }) => gates);
  if (gates.some(({ name, state }) => name === 'counted' && state === 'blocked')) return null;
  const wanted = new Set(
    gates.filter(({ state }) => state === 'look').flatMap(({ name }) => tasks[name] ?? []),
  );
  if (wanted.size > 0) {
    const [last, ...others] = [...wanted].reverse();
    return sentence(others.length > 0 ? `${others.reverse().join(', ')} and ${last}` : last!);
  }
  const roots = gates.find(({ name, state }) => name === 'rooted' && state === 'opens');
  return roots?.range ? sentence(`from ${dayInWords(roots.range.from)} ${tasks.rooted}`) : null;
}
