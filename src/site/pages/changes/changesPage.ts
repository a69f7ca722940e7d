/** What changed on the list, day by day, with what it rests on. */

import type { Catalogue } from '../../../core/catalogue.ts';
import type { StockEvent } from '../../../core/history/event.ts';
import { changesPath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { reasonList } from '../../parts/reasons.ts';
import { listInWords, lowerFirst } from '../../words/words.ts';
import {
  atomPath,
  type Change,
  changesByDay,
  changesTitle,
  type DayOfChanges,
  jsonFeedPath,
} from './changes.ts';

type Href = (path: string) => string;

/** A price moves by a sentence; everything else is a word or two beside the name. */
function lotLines({ kind, lots }: Change, href: Href): Html {
  if (kind === 'price') {
    return html`${lots.map(
      ({ path, name, detail }) => html`<p><a href="${href(path)}">${name}</a>. ${detail}.</p>`,
    )}`;
  }
  const items = lots.map(
    ({ path, name, detail }) => html`
      <li>
        <a href="${href(path)}">${name}</a>
        <span>${detail}</span>
      </li>
    `,
  );
  return html`<ul class="leaders">${items}</ul>`;
}

/** Days that stand open; those before are one line each until they are opened. */
const openDays = 3;

function daySection({ day, words, changes }: DayOfChanges, open: boolean, href: Href): Html {
  const parts = changes.map(
    change => html`
      <section>
        <h3>${change.heading}</h3>
        ${lotLines(change, href)}
        ${reasonList(change.because)}
      </section>
    `,
  );
  const heading = html`<h2 id="day-${day}"><time datetime="${day}">${words}</time></h2>`;
  const brief = listInWords(changes.map(change => `${lowerFirst(change.heading)} (${change.lots.length})`));
  return open
    ? html`<section aria-labelledby="day-${day}">${heading}${parts}</section>`
    : html`
        <details class="day">
          <summary>${heading} <span>${brief}</span></summary>
          ${parts}
        </details>
      `;
}

/** `events` are the newest changes, newest first. */
export function changesPage(
  all: Catalogue,
  events: readonly StockEvent[],
  { links: { href } }: PageContext,
): Page {
  const days = changesByDay(all, events);
  return {
    title: changesTitle,
    description: `What has opened, become ready, moved in price, sold out or come back at ${all.yard.name}, by day, with the reasons.`,
    path: changesPath,
    feeds: true,
    main: html`
      <h1>${changesTitle}</h1>
      <p class="standfirst">
        The newest changes, by the day on which they came true: the walk that saw it, or the day that had to pass. To be told of them, give
        your feed reader <a href="${href(atomPath)}">the Atom feed</a> or <a href="${href(jsonFeedPath)}">the JSON feed</a>.
      </p>
      ${days.length === 0 && html`<p>Nothing has changed yet.</p>`}
      ${days.map((day, at) => daySection(day, at < openDays, href))}
    `,
  };
}
