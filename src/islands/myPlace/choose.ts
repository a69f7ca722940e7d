/** The page on which a visitor chooses a place. */

import { levels } from '../../core/match/answers.ts';
import type { OwnDates } from '../../core/match/ownFigures.ts';
import { href } from '../../href.ts';
import type { TreesFile } from '../../site/data/trees.ts';
import { answersFor, DatesProblem, fetchJson, type PlaceAnswers, rehearse, workOutAhead } from './answers.ts';
import { type Choice, choose, currentChoice, forgetful, onChange, referenceChoice } from './choice.ts';
import { chooseWhere } from './find.ts';
import { townLook } from './look.ts';
import { numberIn } from './typedNumber.ts';

function part<T extends Element = HTMLElement>(name: string): T {
  const found = document.querySelector<T>(`[data-${name}]`);
  if (!found) throw new Error(`no [data-${name}] on the page`);
  return found;
}

const status = part('chosen-status');
const buttons = part('chosen-buttons');
const pageLink = part<HTMLAnchorElement>('chosen-page');
const trees = part('chosen-trees');
const zipProblem = part('zip-problem');
const datesProblem = part('dates-problem');
const zipForm = part<HTMLFormElement>('by-zip');
/** Whether this site has files of towns: the form then asks for one. */
const hasTowns = zipForm.dataset.byZip === 'towns';
const list = part<HTMLSelectElement>('place-list');
const base = part<HTMLSelectElement>('base-place');

function element<K extends keyof HTMLElementTagNameMap>(name: K, text: string): HTMLElementTagNameMap[K] {
  return Object.assign(document.createElement(name), { textContent: text });
}

/** Trees named for the visitor's own dates, which have no page of their own. */
const namedTrees = 12;

async function ownTrees(answers: PlaceAnswers): Promise<Node[]> {
  const { cultivars, past } = await fetchJson<TreesFile>('/my-place/trees.json');
  const ranked = cultivars
    .filter(({ id }) => !past.includes(id))
    .flatMap(({ id, name }) => {
      const said = answers.on(id);
      return said === null ? [] : [{ id, name, said }];
    })
    .sort((a, b) => levels.indexOf(a.said.level) - levels.indexOf(b.said.level))
    .slice(0, namedTrees);
  const rows = ranked.map(({ id, name, said }) => {
    const row = document.createElement('li');
    const link = element('a', name);
    link.href = href(`/cultivars/${id}/`);
    const level = element('span', said.words);
    level.className = `level ${said.level}`;
    row.append(link, ' ', level, element('p', said.ripens));
    return row;
  });
  const listed = document.createElement('ol');
  listed.className = 'own-trees';
  listed.append(...rows);
  return [element('h3', 'What does best there'), listed];
}

/** The town chosen can have own dates laid over it, like a reference place. */
const TOWN_BASE = 'town';

function offerAsBase({ town, name, place }: Choice): void {
  base.querySelector(`option[value="${TOWN_BASE}"]`)?.remove();
  if (town !== null) {
    const option = element('option', name);
    option.value = TOWN_BASE;
    base.prepend(option);
  }
  base.value = town === null ? place : TOWN_BASE;
}

let latest = 0;

async function show(): Promise<void> {
  latest += 1;
  const mine = latest;
  const choice = currentChoice();
  buttons.hidden = choice === null;
  trees.replaceChildren();
  if (choice === null) {
    status.replaceChildren(element('p', 'None yet.'));
    return;
  }
  const foundBy = choice.found === '' ? '' : `, ${choice.found}`;
  const dates = choice.own ? ' Your own freeze dates and coldest night are combined with its climate.' : '';
  const told = [`${choice.name}${foundBy}.${dates}`, ...choice.warnings, ...choice.notes, forgetful() ?? ''];
  status.replaceChildren(...told.filter(text => text !== '').map(text => element('p', text)));
  pageLink.href = href(`/places/${choice.place}/`);
  pageLink.textContent = choice.town === null ? 'Its page' : 'The place most like it';
  list.value = choice.place;
  offerAsBase(choice);
  if (choice.own === null && choice.town === null) return;
  try {
    const answers = await answersFor(choice);
    const nodes = await ownTrees(answers);
    const notes = answers.notes.map(note => element('p', note));
    const said =
      answers.town === null || choice.town === null
        ? []
        : (await townLook()).townNodes(answers.town, choice.town, choice.place);
    if (mine === latest) trees.replaceChildren(...notes, ...said, ...nodes);
  } catch (problem) {
    if (mine !== latest) return;
    const text =
      problem instanceof DatesProblem
        ? problem.message
        : 'The trees could not be worked out: a file of this site did not load. Load the page again to try once more.';
    trees.replaceChildren(element('p', text));
  }
}

/** A field of this page asks for towns where the site has them; else a ZIP code leads to the nearest reference place, and a name to its own. */
async function search(written: string): Promise<void> {
  if (hasTowns) {
    try {
      const { searchTowns } = await townLook();
      await searchTowns(written);
    } catch {
      zipProblem.textContent = 'The search for towns did not load. Try again, or choose from the list below.';
    }
    return;
  }
  const answer = await chooseWhere(written);
  if ('problem' in answer) zipProblem.textContent = answer.problem;
}

zipForm.addEventListener('submit', event => {
  event.preventDefault();
  void search(part<HTMLInputElement>('zip').value);
});

function nameIn(select: HTMLSelectElement): string {
  return select.selectedOptions[0]?.textContent ?? select.value;
}

function unitsOf(select: HTMLSelectElement): Choice['units'] {
  return select.selectedOptions[0]?.dataset.units === 'metric' ? 'metric' : 'us';
}

part<HTMLFormElement>('by-list').addEventListener('submit', event => {
  event.preventDefault();
  choose(referenceChoice(list.value, nameIn(list), unitsOf(list)));
});

part('forget').addEventListener('click', () => {
  choose(null);
});

function ownDates(): OwnDates {
  const date = (field: 'last' | 'first') => {
    const number = part<HTMLInputElement>(`day="${field}"`).value.trim();
    return `${part<HTMLSelectElement>(`month="${field}"`).value}-${number.padStart(2, '0')}`;
  };
  const night = numberIn(part<HTMLInputElement>('coldest')) ?? Number.NaN;
  const inF = part<HTMLSelectElement>('coldest-unit').value === 'F';
  return { last: date('last'), first: date('first'), coldestC: inF ? (night - 32) / 1.8 : night };
}

const datesForm = part<HTMLFormElement>('by-dates');

// A file that does not load now is asked for again with the dates, and told of then.
datesForm.addEventListener(
  'focusin',
  () => {
    if (base.value !== TOWN_BASE) void rehearse(base.value).catch(() => {});
  },
  { once: true },
);

function choiceOfDates(): Choice {
  const chosen = currentChoice();
  if (base.value === TOWN_BASE && chosen?.town) return { ...chosen, own: ownDates() };
  return { ...referenceChoice(base.value, nameIn(base), unitsOf(base)), own: ownDates() };
}

// What does not fit yet is told when the form is sent.
datesForm.addEventListener('input', () => workOutAhead(choiceOfDates));

datesForm.addEventListener('submit', async event => {
  event.preventDefault();
  datesProblem.replaceChildren();
  const choice = choiceOfDates();
  try {
    // Asked before it is chosen, so that dates that do not fit never replace a choice that does.
    await answersFor(choice);
    choose(choice);
  } catch (problem) {
    const texts =
      problem instanceof DatesProblem
        ? problem.problems.map(({ text }) => text)
        : [
            'A file of this site did not load, so the dates could not be used. Try again, or choose a place from the list.',
          ];
    datesProblem.replaceChildren(...texts.map(text => element('li', text)));
  }
});

onChange(() => void show());
void show();

const asked = new URLSearchParams(location.search).get('zip');
if (asked) {
  part<HTMLInputElement>('zip').value = asked;
  void search(asked);
}
