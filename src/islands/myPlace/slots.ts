/** Puts what is said about the visitor's place into the parts of the page that wait for it. */

import { levels } from '../../core/match/answers.ts';
import { href } from '../../href.ts';
import type { FormTravelView } from '../../site/pages/places/sending.ts';
import type { Verdict } from '../../site/words/verdict.ts';
import type { PlaceAnswers } from './answers.ts';

function all<T extends Element = HTMLElement>(selector: string, within: ParentNode = document): T[] {
  return [...within.querySelectorAll<T>(selector)];
}

/** The word of the level beside each row of a list. */
function fillRows(answers: PlaceAnswers | null): void {
  for (const slot of all('[data-mine]')) {
    const said = answers?.on(slot.dataset.mine ?? '') ?? null;
    slot.className = said === null ? 'mine' : `mine level ${said.level}`;
    slot.textContent = said?.words ?? '';
  }
}

const asBuilt = new WeakMap<Element, string>();

/** How each form that is ready leaves for the place chosen; as the page was built for none. */
function fillSent(answers: PlaceAnswers | null): void {
  for (const slot of all('[data-sent]')) {
    const built = asBuilt.get(slot) ?? slot.textContent;
    asBuilt.set(slot, built);
    const travel = answers?.travel;
    const there = travel?.route ? travel.forms.find(({ form }) => form === slot.dataset.sent) : undefined;
    if (travel === undefined) slot.textContent = built;
    else slot.textContent = travel.route ? `Ready, ${there?.short ?? ''}` : 'Ready, not sent to your place';
  }
}

function line(text: string, known: string): HTMLLIElement {
  const item = document.createElement('li');
  const standing = document.createElement('span');
  standing.className = 'standing';
  standing.textContent = `(${known})`;
  item.append(`${text} `, standing);
  return item;
}

function section(heading: string, reasons: readonly (readonly [string, string])[]): Node[] {
  if (reasons.length === 0) return [];
  const title = document.createElement('p');
  title.className = 'subhead';
  title.textContent = heading;
  const list = document.createElement('ul');
  list.className = 'reasons';
  list.append(...reasons.map(([text, known]) => line(text, known)));
  return [title, list];
}

/** The forms that the page is about: a lot names its own, other pages speak of all. */
function askedForms(travel: PlaceAnswers['travel']): readonly FormTravelView[] {
  if (!travel.route) return [];
  const asked = document.querySelector<HTMLElement>('[data-forms]')?.dataset.forms?.split(' ');
  return asked === undefined ? travel.forms : travel.forms.filter(({ form }) => asked.includes(form));
}

/** One line for each form: how it is sent, and what the receiver can do with it. */
function travelNodes(travel: PlaceAnswers['travel']): Node[] {
  if (!travel.route) return [document.createTextNode('We do not send there')];
  return askedForms(travel).map(({ formName, words, more }) => {
    const line = document.createElement('span');
    line.className = 'line';
    const name = document.createElement('strong');
    name.textContent = `${formName}: `;
    line.append(name, `${words.charAt(0).toLowerCase()}${words.slice(1)}. ${more}`);
    return line;
  });
}

function travelReasons(travel: PlaceAnswers['travel']): Node[] {
  if (!travel.route) return section('Sending', travel.because);
  return askedForms(travel).flatMap(({ formName, because }) =>
    section(`Sending: ${formName.charAt(0).toLowerCase()}${formName.slice(1)}`, because),
  );
}

function whyNodes(said: Verdict, { travel, notes }: PlaceAnswers): Node[] {
  return [
    ...section('Verdict', said.because),
    ...section('What would make it better', said.change),
    ...travelReasons(travel),
    ...section(
      'Your own dates',
      notes.map(note => [note, 'our working figure'] as const),
    ),
  ];
}

function fillTrees(answers: PlaceAnswers | null): void {
  for (const part of all('[data-mine-tree]')) {
    const said = answers?.on(part.dataset.mineTree ?? '') ?? null;
    const texts: Record<string, string> = {
      words: said?.words ?? '–',
      ripens: said?.ripens ?? '–',
      forms: said?.forms ?? '–',
    };
    for (const field of all('[data-field]', part)) {
      const name = field.dataset.field ?? '';
      if (name in texts) field.textContent = texts[name] as string;
    }
    const travels = part.querySelector('[data-field="travel"]');
    if (said && answers) travels?.replaceChildren(...travelNodes(answers.travel));
    else travels?.replaceChildren('–');
    const care = part.querySelector<HTMLAnchorElement>('[data-field="care"]');
    if (care) care.href = href(answers === null ? '/guides/' : `${answers.path}#guides`);
    const level = part.querySelector('[data-field="words"]');
    if (level) level.className = said === null ? '' : `level ${said.level}`;
    const why = part.querySelector('[data-field="why"]');
    if (said && answers) why?.replaceChildren(...whyNodes(said, answers));
    else
      why?.replaceChildren(
        Object.assign(document.createElement('p'), { textContent: 'Choose a place first.' }),
      );
  }
}

/** How many alternatives a built page shows; the others stand by. */
const shownAtOnce = 5;
const given = new WeakMap<Element, HTMLElement[]>();

/** Alternatives by verdict, then as near as they were; those that do not do there at all are left out. */
function orderAlternatives(answers: PlaceAnswers | null): void {
  for (const list of all('[data-mine-alternatives]')) {
    const items = given.get(list) ?? all('li', list);
    given.set(list, items);
    const rank = (item: HTMLElement) =>
      levels.indexOf(answers?.on(item.dataset.cultivar ?? '')?.level ?? 'at-home');
    const fitting = items.filter(item => rank(item) < levels.indexOf('not-here'));
    const ordered = [...fitting].sort((a, b) => rank(a) - rank(b));
    const rest = items.filter(item => !fitting.includes(item));
    [...ordered, ...rest].forEach((item, index) => {
      item.hidden = index >= shownAtOnce || rest.includes(item);
    });
    list.replaceChildren(...ordered, ...rest);
  }
}

/** Whether the page has anything that waits for a place; the answers are not asked for where nothing does. */
export function hasSlots(): boolean {
  return document.querySelector('[data-mine],[data-mine-tree],[data-sent],[data-mine-alternatives]') !== null;
}

/** Fills every slot of the page; empties them for null. */
export function fillSlots(answers: PlaceAnswers | null): void {
  orderAlternatives(answers);
  fillRows(answers);
  fillSent(answers);
  fillTrees(answers);
}
