/** Makes every link to a guide lead to its version for the visitor's place, and says so on the pages of guides. */

import { href } from '../../href.ts';
import { type ChosenTown, currentChoice, onChange } from '../myPlace/choice.ts';
import { differInWords } from '../myPlace/differ.ts';
import { guideAt } from './guideAt.ts';

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

/** The line for a town, which has no guide of its own: the one for the place most like it, and what to bear in mind. */
function sayTown(there: string, isHere: boolean, name: string, { like }: ChosenTown): void {
  const differ = differInWords(like.differs);
  if (isHere) {
    line?.replaceChildren(`The climate most like that of ${name}: ${differ}`);
    return;
  }
  const link = document.createElement('a');
  link.href = there;
  link.textContent = `open this guide with the dates of ${like.name}`;
  line?.replaceChildren(`For ${name}: `, link, `, the climate most like yours: ${differ}`);
}

/** The line at the top: a way to the version of the chosen place, or that this is it. */
function sayLine(place: string | null, name: string, town: ChosenTown | null): void {
  // A chapter that was asked for, as by the link of a video, is kept on the way to the dates.
  const there =
    place === null ? null : guideAt(href(guide) + (location.hash === '#places' ? '' : location.hash), place);
  if (there === null) line?.replaceChildren(...asks);
  else if (town !== null) sayTown(there, own === place, name, town);
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
  followLinks(choice?.place ?? (own === '' ? null : own));
  answerAsks(choice?.place ?? null, choice?.name ?? '');
  sayLine(choice?.place ?? null, choice?.name ?? '', choice?.town ?? null);
}

onChange(follow);
follow();
