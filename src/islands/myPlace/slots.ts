/** Puts what is said about the visitor's place into the parts of the page that wait for it. */

import { levels } from '../../core/match/answers.ts';
import { href } from '../../href.ts';
import type { FormTravelView } from '../../site/pages/places/sending.ts';
import type { Verdict } from '../../site/words/verdict.ts';
import { lowerFirst } from '../../site/words/words.ts';
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

const asBuilt = new WeakMap<Element, Node[]>();

/** What stands in an element as the page was built. */
function builtIn(slot: Element): Node[] {
  const built = asBuilt.get(slot) ?? [...slot.childNodes];
  asBuilt.set(slot, built);
  return built;
}

/** How each form that is ready leaves for the place chosen; as the page was built for none. */
function fillSent(answers: PlaceAnswers | null): void {
  const travel = answers?.travel;
  const formOf = (form: string | undefined) =>
    travel?.route ? travel.forms.find(each => each.form === form) : undefined;
  for (const slot of all('[data-sent],[data-sends],[data-buy]')) {
    const built = builtIn(slot);
    const { sent, sends, buy } = slot.dataset;
    const there = formOf(sent ?? sends ?? buy);
    if (travel === undefined) slot.replaceChildren(...built);
    else if (there === undefined)
      slot.textContent = sent === undefined ? 'Not sent to your place' : 'ready, not sent there';
    else
      slot.textContent =
        sent !== undefined ? there.brief : sends !== undefined ? `${there.words}.` : there.buy;
  }
}

/** The line at the top: how trees travel to the place chosen. Where the yard does not send, prices and buttons give way. */
function fillSeason(answers: PlaceAnswers | null, place: string): void {
  const travel = answers?.travel;
  document.documentElement.toggleAttribute('data-not-sent', travel?.route === false);
  for (const slot of all('[data-season]')) {
    const built = builtIn(slot);
    if (travel === undefined) {
      slot.replaceChildren(...built);
      continue;
    }
    const lead = document.createElement('strong');
    lead.textContent = travel.route
      ? `To ${place}: ${lowerFirst(travel.season.lead)}`
      : `We do not send to ${place}.`;
    const rest = travel.route
      ? travel.season.rest
      : 'What each tree does there, its dates and the care guides hold all the same.';
    slot.replaceChildren(lead, ` ${rest}`);
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

/** What to buy today: of the forms that are ready the one that suits best there, and how it travels. */
function buyWords({ fits }: Verdict, travel: PlaceAnswers['travel'], ready: readonly string[]): string {
  if (!travel.route) return 'We do not send there';
  if (ready.length === 0) return 'Nothing of it is ready today';
  const best = fits.find(form => ready.includes(form));
  const found = travel.forms.find(({ form }) => form === best);
  if (found === undefined) return 'No form that is ready today suits a buyer there';
  return `${found.formName}, ${found.short}`;
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

/** Which one to take: the best of the yard there, each with its verdict, its dates and what speaks most for it. */
function bestNodes(answers: PlaceAnswers): Node[] {
  return answers.best.map(({ id, name }) => {
    const item = document.createElement('li');
    const link = Object.assign(document.createElement('a'), { href: href(`/cultivars/${id}/`) });
    link.append(name);
    const said = answers.on(id);
    item.append(
      link,
      `: ${said === null ? '' : `${lowerFirst(said.words)}. ${said.ripens}. ${said.because[0]?.[0] ?? ''}`}`,
    );
    return item;
  });
}

function fillTrees(answers: PlaceAnswers | null): void {
  for (const part of all('[data-mine-tree]')) {
    const { mineTree = '', ready = '' } = part.dataset;
    const said = answers?.on(mineTree) ?? null;
    part.toggleAttribute('data-placed', said !== null);
    if (said === null || answers === null) continue;
    const texts: Record<string, string> = {
      words: said.words,
      ripens: said.ripens,
      forms: buyWords(said, answers.travel, ready.split(' ').filter(Boolean)),
    };
    for (const field of all('[data-field]', part)) {
      const text = texts[field.dataset.field ?? ''];
      if (text !== undefined) field.textContent = text;
    }
    const care = part.querySelector<HTMLAnchorElement>('[data-field="care"]');
    if (care) care.href = href(`${answers.path}#guides`);
    const level = part.querySelector('[data-field="words"]');
    if (level) level.className = `level ${said.level}`;
    part.querySelector('[data-field="why"]')?.replaceChildren(...whyNodes(said, answers));
    part.querySelector('[data-field="best"]')?.replaceChildren(...bestNodes(answers));
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
  return (
    document.querySelector(
      '[data-mine],[data-mine-tree],[data-sent],[data-season],[data-mine-alternatives],[data-priced]',
    ) !== null
  );
}

/** Fills every slot of the page; empties them for null. `place` is what the place is called. */
export function fillSlots(answers: PlaceAnswers | null, place = ''): void {
  orderAlternatives(answers);
  fillRows(answers);
  fillSent(answers);
  fillSeason(answers, place);
  fillTrees(answers);
}
