/** The search page: reads the address, loads on use, shows, and writes the address. */

import { href } from '../../href.ts';
import type { RowsFile } from '../../site/data/searchRows.ts';
import { type SearchGroup, searchGroups, searchOrders } from '../../site/pages/search/searchTerms.ts';
import type { PlaceAnswers } from '../myPlace/answers.ts';
import { currentChoice, onChange } from '../myPlace/choice.ts';
import { placeAnswers, rowsFile, wordIndex } from './loads.ts';
import { matchesOf, namedPages } from './meant.ts';
import { inOrder, type LevelOf, type Matches, type Narrowed, narrow } from './narrow.ts';
import { make, type NamedPage, namedList, pageList } from './results.ts';
import { resultWords } from './resultWords.ts';
import { treeNodes } from './treeNodes.ts';
import { plain, type Understood, understand } from './understood.ts';
import { choicesMade, orderOf, readWanted, type Wanted, writeWanted } from './wanted.ts';

function part<T extends Element = HTMLElement>(selector: string): T {
  const found = document.querySelector<T>(selector);
  if (!found) throw new Error(`no ${selector} on the page`);
  return found;
}

const finder = part('[data-search]');
const form = part<HTMLFormElement>('[data-search] form');
const box = part<HTMLInputElement>('#seek');
const key = part<HTMLDetailsElement>('[data-search-key]');
const order = part<HTMLSelectElement>('#order');
const asked = part('[data-search-asked]');
const status = part('[data-search-status]');
const results = part('[data-search-results]');
const boxes = [...key.querySelectorAll<HTMLInputElement>('[data-group] input')];

function groupOf(each: HTMLInputElement): SearchGroup {
  return each.closest<HTMLElement>('[data-group]')!.dataset.group as SearchGroup;
}

let wanted: Wanted = readWanted(location.search);
/** Counts searches, so that a slow answer never replaces a newer one. */
let latest = 0;

function wordsIn(file: RowsFile, group: SearchGroup, value: string): string {
  return file.choices[group].find(([known]) => known === value)?.[1] ?? value;
}

function legendOf(group: SearchGroup): string {
  return part(`[data-group="${group}"] legend`).textContent ?? '';
}

/** Puts a wish into the controls. */
function showWanted(): void {
  const { text, chosen } = wanted;
  // A space just typed before the next word stays where it is.
  if (box.value.trim() !== text) box.value = text;
  for (const each of boxes) each.checked = chosen[groupOf(each)].has(each.value);
  for (const option of order.options) option.disabled = option.value === 'match' && text === '';
  order.value = orderOf(wanted);
}

/** Takes a wish as the address of the page: as a step of its own, or in place of the one before. */
function want(next: Wanted, step: boolean): Promise<void> {
  wanted = next;
  const address = location.pathname + writeWanted(next);
  if (address !== location.pathname + location.search) {
    if (step) history.pushState(null, '', address);
    else history.replaceState(null, '', address);
  }
  showWanted();
  return show();
}

function button(words: string, name: string, then: () => void): HTMLButtonElement {
  const made = make('button', '', words);
  made.type = 'button';
  made.setAttribute('aria-label', name);
  made.onclick = then;
  return made;
}

function without(group: SearchGroup, values: Iterable<string>): Wanted {
  const left = new Set(wanted.chosen[group]);
  for (const value of values) left.delete(value);
  return { ...wanted, chosen: { ...wanted.chosen, [group]: left } };
}

/** Everything off but the words. */
function withoutChoices(): Wanted {
  return { ...readWanted(''), text: wanted.text, order: wanted.order };
}

/** What is chosen, each to be taken off again. */
function showAsked(file: RowsFile): void {
  const buttons = searchGroups.flatMap(group =>
    [...wanted.chosen[group]].map(value => {
      const words = `${legendOf(group)}: ${wordsIn(file, group, value)}`;
      return button(`${words} ×`, `Leave out ${words}`, () => {
        void want(without(group, [value]), true).then(() => (asked.querySelector('button') ?? box).focus());
      });
    }),
  );
  if (buttons.length > 1) {
    buttons.push(
      button('Leave out all', 'Leave out all choices', () => {
        void want(withoutChoices(), true).then(() => box.focus());
      }),
    );
  }
  asked.replaceChildren(...buttons);
  asked.hidden = buttons.length === 0;
}

function showCounts(counts: Narrowed['counts'], placed: boolean): void {
  for (const each of boxes) {
    const group = groupOf(each);
    const count = counts[group].get(each.value) ?? 0;
    const label = each.parentElement!;
    label.querySelector('[data-count]')!.textContent = group === 'place' && !placed ? '' : String(count);
    label.classList.toggle('none', count === 0);
    if (group === 'place') each.disabled = !placed && !each.checked;
  }
}

function placeMissing(mine: PlaceAnswers | null): boolean {
  return mine === null && wanted.chosen.place.size > 0;
}

/** Takes a way out of an empty result and goes on to what it gives. */
function retry(next: Wanted): void {
  void want(next, true).then(() => results.querySelector('a')?.focus());
}

async function showResults(
  file: RowsFile,
  matches: Matches,
  mine: PlaceAnswers | null,
  meant: Understood,
  named: readonly NamedPage[],
): Promise<void> {
  const search = latest;
  const asked = { ...wanted.chosen, ...meant.chosen };
  const levelOf: LevelOf = id => mine?.on(id)?.level ?? null;
  const { hits, counts } = narrow(file, asked, matches, levelOf);
  showCounts(counts, mine !== null);
  showAsked(file);
  if (writeWanted(wanted) === '') {
    status.textContent = '';
    results.replaceChildren();
    return;
  }
  // What is chosen is about trees, so guides and videos are found by words alone.
  const pages =
    matches === null || choicesMade(wanted) > 0
      ? []
      : file.pages
          .map((page, at) => ({ page, rank: matches.get(file.trees.length + at) }))
          .filter(({ rank }) => rank !== undefined)
          .sort((a, b) => a.rank! - b.rank!);
  status.textContent = placeMissing(mine)
    ? 'Say first where the tree will live: the line “For verdicts” asks for it.'
    : resultWords(wanted, { trees: hits.length, pages: pages.length, named: named.length });
  const shown: Node[] = named.length > 0 ? [namedList(named)] : [];
  if (hits.length > 0)
    shown.push(
      ...treeNodes(
        inOrder(hits, orderOf(wanted), matches),
        (group, value) => wordsIn(file, group, value),
        id => mine?.on(id) ?? null,
      ),
    );
  if (pages.length > 0) {
    const list = pageList(pages.map(({ page }) => page));
    const guidesFirst = orderOf(wanted) === 'match' && pages[0]!.rank === 0;
    if (guidesFirst) shown.splice(named.length > 0 ? 1 : 0, 0, list);
    else shown.push(list);
  }
  if (shown.length === 0) {
    const { nothingFound } = await import('./nothing.ts');
    if (search !== latest) return;
    shown.push(
      nothingFound({ file, wanted, matches, levelOf, legendOf, retry, without, words: meant.words }),
    );
  }
  results.replaceChildren(...shown);
}

async function show(): Promise<void> {
  latest += 1;
  const mine = latest;
  if (writeWanted(wanted) !== '' && results.childElementCount === 0) status.textContent = 'Looking…';
  try {
    const [file, place] = await Promise.all([rowsFile(), placeAnswers()]);
    const meant = understand(wanted.text, file);
    const [matches, named] = await Promise.all([matchesOf(meant, file, wordIndex), namedPages(meant)]);
    if (mine === latest) await showResults(file, matches, place, meant, named);
  } catch {
    if (mine !== latest) return;
    results.replaceChildren();
    status.textContent = 'The search could not be loaded. Everything is in the lists below.';
  }
}

let looking = false;

/** Looks for what is typed at once; letters that come meanwhile are looked for together when it is done. */
async function lookForLetters(): Promise<void> {
  if (looking) return;
  looking = true;
  try {
    for (let text = box.value.trim(); text !== wanted.text; text = box.value.trim()) {
      await want({ ...wanted, text }, false);
    }
  } finally {
    looking = false;
  }
}

/** A lot's number or a ZIP code that is entered whole opens its page. */
async function openNamed(text: string): Promise<void> {
  try {
    const meant = understand(text, await rowsFile());
    const [only, ...others] = await namedPages(meant);
    const whole = meant.zip !== null || only?.kind === 'Lot' || plain(only?.title ?? '') === plain(text);
    if (only && others.length === 0 && whole && text === wanted.text) location.assign(href(only.path));
  } catch {
    // The results of the words stand.
  }
}

/** Touched for the first time: everything is fetched while the visitor thinks. */
function warm(): void {
  void rowsFile().catch(() => undefined);
  void wordIndex().catch(() => undefined);
}

finder.addEventListener('focusin', warm, { once: true });
finder.addEventListener('pointerdown', warm, { once: true });
box.addEventListener('input', () => void lookForLetters());
form.addEventListener('submit', event => {
  event.preventDefault();
  const text = box.value.trim();
  void want({ ...wanted, text }, true).then(() => openNamed(text));
});
key.addEventListener('change', event => {
  const changed = event.target as HTMLInputElement;
  // The key holds the line of the visitor's place too.
  if (!boxes.includes(changed)) return;
  const { value, checked } = changed;
  const group = groupOf(changed);
  // Of prices one is the most to pay.
  const chosen = new Set(group === 'price' ? [] : wanted.chosen[group]);
  if (checked) chosen.add(value);
  else chosen.delete(value);
  void want({ ...wanted, chosen: { ...wanted.chosen, [group]: chosen } }, true);
});
order.addEventListener('change', () => {
  void want({ ...wanted, order: searchOrders.find(each => each === order.value) ?? null }, true);
});
addEventListener('popstate', () => {
  wanted = readWanted(location.search);
  showWanted();
  void show();
});
onChange(() => void show());

showWanted();
// On a narrow screen the open key would push the results away; what is chosen stands above them anyway.
key.open =
  (choicesMade(wanted) > 0 && matchMedia('(min-width: 40rem)').matches) ||
  (wanted.chosen.place.size > 0 && currentChoice() === null);
if (writeWanted(wanted) !== '') void show();
