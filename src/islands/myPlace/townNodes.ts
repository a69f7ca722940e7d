/** What is said of a town that was chosen: its climate, the place most like it, and when trees are sent there. */

import { href } from '../../href.ts';
import type { TownAnswer } from '../town/answer.ts';
import { type TownFact, townFacts } from '../town/facts.ts';
import type { ChosenTown } from './choice.ts';
import { differInWords } from './differ.ts';

function element<K extends keyof HTMLElementTagNameMap>(
  name: K,
  ...inside: (Node | string)[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  made.append(...inside);
  return made;
}

function factsNode(facts: readonly TownFact[]): Node {
  const listed = element('dl');
  listed.className = 'facts';
  listed.append(
    ...facts.map(({ label, value }) => element('div', element('dt', label), element('dd', value))),
  );
  return listed;
}

/** Guides are written for reference places; the one most like the town, and what to bear in mind. */
function likeNode({ like }: ChosenTown, place: string): Node {
  const link = element('a', `guides and calendars for ${like.name}`);
  link.href = href(`/places/${place}/#guides`);
  return element(
    'p',
    'Care: read the ',
    link,
    `, the place on this site with a climate most like yours: ${differInWords(like.differs)}`,
  );
}

function sendingNodes({ sending }: TownAnswer): Node[] {
  if (!sending.now.route)
    return [element('h3', 'Sending'), element('p', sending.now.because.map(([text]) => text).join(' '))];
  const rows = sending.table.map(({ formName, runs }) =>
    element(
      'div',
      element('dt', formName),
      element(
        'dd',
        runs.length === 0
          ? 'Not in the coming year'
          : runs.map(({ days, words }) => `${days}: ${words}`).join('; '),
      ),
    ),
  );
  const listed = element('dl', ...rows);
  listed.className = 'facts';
  return [element('h3', 'Weeks in which we send there'), listed];
}

/** In the order they are read. */
export function townNodes(town: TownAnswer, chosen: ChosenTown, place: string): Node[] {
  const { facts, sure } = townFacts(town);
  return [
    element('h3', 'Its climate'),
    element(
      'p',
      `Worked out in this browser from the weather stations around, for the years 2003 to 2021. ${sure}`,
    ),
    factsNode(facts),
    likeNode(chosen, place),
    ...sendingNodes(town),
  ];
}
