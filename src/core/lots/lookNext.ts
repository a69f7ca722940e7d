/** What the next walk should look at, in words for the grower. */

import { addDays, type Day, dayInWords } from '../days.ts';
import type { FormAnswer, GateName } from './answers.ts';
import type { YardDay } from './subject.ts';

const tasks: Partial<Record<GateName, string>> = {
  counted: 'count the plants',
  rooted: 'look at the roots',
  sized: 'measure height and stem',
  sound: 'see whether they are sound',
  leafed: 'look at leaves, wood and buds, and note where they stand',
  dormant: 'look at leaves, wood and buds',
};

const sentence = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;

/** Whether looking now can matter: the form waits for a look, or may open before the next walk is due. */
function wantsLook({ state, range }: FormAnswer, soon: Day): boolean {
  return state === 'look' || (state === 'opens' && range !== null && range.from <= soon);
}

/** One sentence, or null when nothing wants looking at: the gates that wait for a look, else roots that may soon hold. */
export function lookNextOf(forms: readonly FormAnswer[], { asOf, yard }: YardDay): string | null {
  const soon = addDays(asOf, yard.walkFreshDays);
  const gates = forms.filter(form => wantsLook(form, soon)).flatMap(form => form.gates);
  const wanted = new Set(
    gates.filter(({ state }) => state === 'look').flatMap(({ name, asks }) => asks ?? tasks[name] ?? []),
  );
  if (wanted.size > 0) {
    const [last, ...others] = [...wanted].reverse();
    return sentence(others.length > 0 ? `${others.reverse().join(', ')} and ${last}` : last!);
  }
  const roots = forms
    .flatMap(form => form.gates)
    .find(({ name, state }) => name === 'rooted' && state === 'opens');
  return roots?.range ? sentence(`from ${dayInWords(roots.range.from)} ${tasks.rooted}`) : null;
}
