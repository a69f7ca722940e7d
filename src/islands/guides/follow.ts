/** Makes every link to a guide lead to its version for the visitor's place, and says so on the pages of guides. */

import { href } from '../../href.ts';
import { type Choice, type ChosenTown, currentChoice, onChange } from '../myPlace/choice.ts';
import { differInWords } from '../myPlace/differ.ts';
import { guideAt } from './guideAt.ts';
import { keepNow } from './now.ts';
import { guideOfTown } from './ofTown.ts';

/** Links as they were built. */
const built = new Map<HTMLAnchorElement, string>();
const asked = new Map<HTMLAnchorElement, string>();

function followLinks(place: string | null): void {
  // The way back up stays what it is.
  for (const link of document.querySelectorAll<HTMLAnchorElement>('main a:not(.crumbs a)')) {
    const was = built.get(link) ?? link.getAttribute('href') ?? '';
    const there = place === null ? null : guideAt(was, place);
    if (there === null && !built.has(link)) continue;
    built.set(link, was);
    link.setAttribute('href', there ?? was);
  }
}

const line = document.querySelector<HTMLElement>('[data-guide-line]');
const button = line?.querySelector('[data-mine-set]') ?? null;
const asks = [...(line?.childNodes ?? [])];
/** The guide this page is about, and the place it is for; empty in general. */
const { guideLine: guide = '', place: own = '' } = line?.dataset ?? {};

/** Links that ask for a place lead to the guide for the one that is chosen. */
function answerAsks(place: string | null, name: string): void {
  for (const link of document.querySelectorAll<HTMLAnchorElement>('[data-guide-dates]')) {
    const there = place === null ? null : guideAt(link.dataset.guideDates ?? '', place);
    const was = built.get(link) ?? link.getAttribute('href') ?? '';
    asked.set(link, asked.get(link) ?? link.textContent);
    built.set(link, was);
    link.setAttribute('href', there ?? was);
    link.textContent = there === null ? (asked.get(link) ?? '') : (name.split(',')[0] ?? '');
  }
}

/** The line for a town away from the page on which its guide is made: that of the place most like it. */
function sayTown(there: string, name: string): void {
  const link = document.createElement('a');
  link.href = there;
  link.textContent = 'open this guide with your dates';
  line?.replaceChildren(`For ${name}: `, link, '.');
}

/** The line where the guide for a town cannot be made, or the built one was asked for: how the place differs. */
function sayLike(name: string, { like }: ChosenTown, ...more: (Node | string)[]): void {
  line?.replaceChildren(`The climate most like that of ${name}: ${differInWords(like.differs)}`, ...more);
}

function lineButton(words: string, then: () => void): HTMLButtonElement {
  const made = document.createElement('button');
  made.type = 'button';
  made.className = 'place-button';
  made.textContent = words;
  made.addEventListener('click', then);
  return made;
}

/** Counts attempts, so that a slow guide never replaces a newer choice. */
let latest = 0;
let isTownShown = false;

/** Puts the guide for a town in the place of the built one for the place most like it. */
async function showTown(choice: Choice, town: ChosenTown): Promise<void> {
  if (line === null) return;
  latest += 1;
  const mine = latest;
  sayLike(choice.name, town);
  try {
    const put = await guideOfTown(guide, choice, town);
    if (mine !== latest) return;
    put(line);
  } catch {
    // A guide that no browser can write, or no connection: the built one stays, with what to bear in mind.
    return;
  }
  isTownShown = true;
  const likeName = town.like.name.split(',')[0] ?? '';
  line.replaceChildren(
    `Worked out on this device for ${choice.name}${choice.own === null ? '' : ', with your own freeze dates'}. `,
    lineButton(`Show ${likeName} instead`, () => {
      showBuilt();
      sayLike(
        choice.name,
        town,
        ' ',
        lineButton(`Show ${town.name} again`, () => void showTown(choice, town)),
      );
    }),
  );
  followLinks(choice.place);
  keepNow();
}

function showBuilt(): void {
  latest += 1;
  if (!isTownShown || line === null) return;
  isTownShown = false;
  globalThis.leafdropGuide.putBack(line);
}

/** The line at the top: a way to the version of the chosen place, or that this is it. */
function sayLine(choice: Choice | null): void {
  const { place, name, town } = choice ?? { place: null, name: '', town: null };
  // A chapter that was asked for, as by the link of a video, is kept on the way to the dates.
  const there =
    place === null ? null : guideAt(href(guide) + (location.hash === '#places' ? '' : location.hash), place);
  if (there === null) line?.replaceChildren(...asks);
  else if (town !== null && own !== place) sayTown(there, name);
  else if (choice !== null && town !== null) void showTown(choice, town);
  else if (own === place)
    line?.replaceChildren('This is your place. ', ...asks.slice(1).filter(node => node !== button));
  else {
    const words = own === '' ? [`For ${name}: `, 'your'] : [`Your place is ${name}: `, 'its'];
    const link = document.createElement('a');
    link.href = there;
    link.textContent = `open this guide with ${words[1]} dates`;
    line?.replaceChildren(words[0] ?? '', link, '.', ...(button ? [' ', button] : []));
  }
}

function follow(): void {
  const choice = currentChoice();
  showBuilt();
  followLinks(choice?.place ?? (own === '' ? null : own));
  answerAsks(choice?.place ?? null, choice?.name ?? '');
  sayLine(choice);
}

onChange(follow);
follow();
