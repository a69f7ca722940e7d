/** The visitor's place in the head of the page: its name, and the panel in which it is set, changed and cleared. */

import { href } from '../../href.ts';
import { choose, currentChoice, forgetful, onChange, referenceChoice } from './choice.ts';
import { chooseWhere } from './find.ts';

const here = document.querySelector<HTMLDetailsElement>('[data-here]');
const part = <T extends HTMLElement>(name: string) => here?.querySelector<T>(`[data-here-${name}]`) ?? null;
const [name, words, status] = [part('name'), part('words'), part('status')];
const page = part<HTMLAnchorElement>('page');
const clear = part<HTMLButtonElement>('clear');
const [unset, asks, places] = [name?.textContent ?? '', words?.textContent ?? '', page?.textContent ?? ''];
const placesLink = page?.href ?? '';

function show(): void {
  const choice = currentChoice();
  if (!name || !words || !page || !clear) return;
  name.textContent = choice?.name.split(',')[0] ?? unset;
  clear.hidden = choice === null;
  if (choice === null) {
    words.textContent = asks;
    page.textContent = places;
    page.href = placesLink;
    return;
  }
  const found = choice.found === '' ? '' : `, ${choice.found}`;
  const dates = choice.own ? ', with your own freeze dates' : '';
  words.textContent = [`${choice.name}${found}${dates}.`, ...choice.warnings, forgetful() ?? '']
    .join(' ')
    .trim();
  page.textContent = `What does well at ${choice.name.split(',')[0]}`;
  page.href = href(`/places/${choice.place}/`);
}

/** Any form with one field for a town or ZIP code; what is wrong is said beside it. */
async function answerForm(form: HTMLFormElement, written: string): Promise<void> {
  const known = currentChoice();
  // An empty field asks for what is chosen once more.
  if (written.trim() === '' && known !== null) {
    choose(known);
    return;
  }
  const says = form.parentElement?.querySelector('[role="status"]') ?? status;
  if (says) says.textContent = 'Looking\u2026';
  const answer = await chooseWhere(written);
  if (says) says.textContent = 'problem' in answer ? answer.problem : '';
  const to = form.dataset.then;
  if ('choice' in answer && to !== undefined)
    location.assign(href(to.replace('{place}', answer.choice.place)));
}

document.addEventListener('submit', event => {
  const form =
    event.target instanceof HTMLFormElement ? event.target.closest<HTMLFormElement>('.place-field') : null;
  if (form === null) return;
  event.preventDefault();
  void answerForm(form, form.querySelector('input')?.value ?? '');
});

document.addEventListener('click', event => {
  const target = event.target instanceof Element ? event.target : null;
  const {
    mineSet: place,
    name: called,
    units,
  } = target?.closest<HTMLElement>('[data-mine-set]')?.dataset ?? {};
  if (place && called) {
    const measures = units === 'metric' ? 'metric' : 'us';
    choose(referenceChoice(place, called, measures));
  }
  if (target?.closest('[data-here-clear]')) {
    choose(null);
    if (status) status.textContent = 'Cleared.';
    here?.querySelector('input')?.focus();
  }
  // The panel lies over the page: it goes when something else is wanted.
  if (here?.open && target && !here.contains(target)) here.open = false;
});

here?.addEventListener('keydown', event => {
  if (event.key !== 'Escape' || !here.open) return;
  here.open = false;
  here.querySelector('summary')?.focus();
});

onChange(show);
show();
