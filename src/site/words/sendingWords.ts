/** Where the sending year stands, in the words that stand at the top of lists. The same for the yard's own end and for a visitor's place. */

import type { Day } from '../../core/days.ts';
import type { SendingState } from '../../core/match/answers.ts';
import {
  type FormSending,
  nextSending,
  type SendingGroup,
  sendingGroups,
} from '../../core/match/sendingSeason.ts';
import type { Form } from '../../core/records/common.ts';
import { comingDay } from './state.ts';
import { listInWords, sentence } from './words.ts';

const treeWords: Readonly<Record<Form, string>> = {
  'leafed-pot': 'leafed',
  'dormant-pot': 'dormant',
  'bare-root': 'bare-root',
};

const trees = ({ forms }: SendingGroup) => `${listInWords(forms.map(form => treeWords[form]))} trees`;

function fromWords({ state, monday }: { state: SendingState; monday: Day }, asOf: Day): string {
  return state === 'open'
    ? `from ${comingDay(monday, asOf)}`
    : `in mild spells from ${comingDay(monday, asOf)}`;
}

function groupWords(group: SendingGroup, asOf: Day): string {
  const { state, from } = group;
  if (state === 'open') return `${trees(group)} are sent every week`;
  if (state === 'by-forecast') return `${trees(group)} travel in mild spells`;
  return from === null
    ? `${trees(group)} are not sent in the coming year`
    : `${trees(group)} travel ${fromWords(from, asOf)}`;
}

/** What leads and what follows it: `Dormant and bare-root trees travel in mild spells.` and `Leafed trees travel from April 12, 2027.` */
export interface SeasonWords {
  lead: string;
  rest: string;
}

export function seasonWords(sending: Readonly<Record<Form, FormSending>>, asOf: Day): SeasonWords {
  const told = sendingGroups(sending).map(group => `${sentence(groupWords(group, asOf))}.`);
  const [first = '', ...rest] = told;
  if (sendingGroups(sending)[0]?.state !== 'closed') return { lead: first, rest: rest.join(' ') };
  const next = nextSending(sending);
  const lead =
    next === null
      ? 'Nothing is sent in the coming year.'
      : `Nothing is sent just now; the next trees leave from ${comingDay(next, asOf)}.`;
  return { lead, rest: told.join(' ') };
}

/** What a button that orders a tree of a form does. `wait` is that of the middle year, in days; null where it is not in sight. */
export function reserveWords({ state, from }: FormSending, wait: number | null, asOf: Day): string {
  if (state === 'open') return 'Order: sent this week';
  if (state === 'by-forecast') {
    const usually = wait === null ? '' : `, ${waitInWords(wait)}`;
    return `Reserve: sent in the next mild spell${usually}`;
  }
  return from === null ? 'Ask: no sending week in sight' : `Reserve: sent ${fromWords(from, asOf)}`;
}

/** `usually within two weeks`: the wait of the middle year, rounded up to whole weeks. */
function waitInWords(days: number): string {
  const weeks = Math.max(1, Math.ceil(days / 7));
  const numbers = ['', 'a week', 'two weeks', 'three weeks', 'four weeks', 'five weeks', 'six weeks'];
  return `usually within ${numbers[weeks] ?? `${weeks} weeks`}`;
}

/** How a tree that is ready leaves the yard: `Sent in mild spells, by the forecast.` */
export function leavesWords({ state, from }: FormSending, asOf: Day): string {
  if (state === 'open') return 'Sent every week.';
  if (state === 'by-forecast') return 'Sent in mild spells, by the forecast.';
  return from === null ? 'Not sent in the coming year.' : `Sent ${fromWords(from, asOf)}.`;
}
