/** Keeps what a guide for a place says of "now" at the day it is read: the built page tells the day it was made. */

import { type Day, dayInWords, daysBetween, parseDay } from '../../core/days.ts';
import { nextTasks } from '../../site/pages/guides/nextTasks.ts';

/** The visitor's own day. */
function todayHere(): Day | null {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return parseDay(`${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`);
}

function tasksNow(list: Element, today: Day): void {
  const items = [...document.querySelectorAll<HTMLElement>('.guide-calendar [data-from]')];
  const dated = items.map(item => ({ item, from: item.dataset.from ?? '', to: item.dataset.to ?? '' }));
  const told = nextTasks(dated, today);
  // A page that nobody has built for a year and a half tells what it knew last.
  if (told.length === 0) return;
  list.replaceChildren(
    ...told.map(({ item }) => {
      const now = document.createElement('li');
      now.append(...[...item.querySelectorAll(':scope > p')].map(line => line.cloneNode(true)));
      return now;
    }),
  );
}

/** By the month the tree arrives in, as the calendar of the page has it. */
function arrivalsNow(card: Element, today: Day): void {
  const month = String(Number(today.slice(5, 7)));
  const spans = [...document.querySelectorAll<HTMLElement>('.guide-calendar [data-months]')].filter(
    ({ dataset }) => dataset.months?.split(' ').includes(month),
  );
  for (const [index, told] of card.querySelectorAll('[data-now-arrival]').entries()) {
    told.textContent = spans[index]?.querySelector('dd')?.textContent ?? told.textContent;
  }
}

/** Writes the day of the visitor and what is asked for on it. Again when another sheet has been put into the page. */
export function keepNow(): void {
  const card = document.querySelector<HTMLElement>('[data-now]');
  const today = todayHere();
  if (!card?.dataset.now || today === null || today <= card.dataset.now) return;
  const day = card.querySelector('[data-now-day]');
  if (day) day.textContent = dayInWords(today);
  const list = card.querySelector('[data-now-tasks]');
  if (list) tasksNow(list, today);
  arrivalsNow(card, today);
  const start = parseDay(card.querySelector<HTMLElement>('[data-start]')?.dataset.start ?? '');
  for (const line of card.querySelectorAll('.today')) {
    if (start) line.setAttribute('x', String(Math.min(363, daysBetween(start, today))));
  }
}

keepNow();
