/** The first page: what the yard is, what is ready, what comes next. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { dayInWords } from '../../../core/days.ts';
import { yardAndSite } from '../../../outputs/structuredData.ts';
import {
  changesPath,
  formPath,
  lotPath,
  myPlacePath,
  orderingPath,
  placePath,
  stockPath,
} from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { pagePath } from '../../parts/paging.ts';
import { countInWords, formWords, lowerFirst, weekdaysInWords } from '../../words/words.ts';
import { changesTitle } from '../changes/changes.ts';
import { stockList } from '../stock/stock.ts';
import {
  type ComingRow,
  comingNext,
  type FormSummary,
  freezeSentence,
  readyByForm,
  stockSentence,
} from './home.ts';

type Href = (path: string) => string;

/** Wider than a word space, so that name and species stay apart. */
const enSpace = '\u2002';

function opening(all: Catalogue, href: Href): Html {
  const { yard, asOf, home } = all;
  const freeze = freezeSentence(all);
  const climate = html`<a href="${href(placePath(home.id))}">The climate of ${home.name}</a>`;
  return html`
    <div class="opening">
      <div>
        <h1>${yard.tagline}</h1>
        ${yard.about && html`<p class="standfirst">${yard.about}</p>`}
      </div>
      <section aria-labelledby="today">
        <h2 id="today">${dayInWords(asOf)}</h2>
        <p>${stockSentence(all)}</p>
        ${freeze && html`<p>${freeze} ${climate}</p>`}
        <p>
          We send on ${weekdaysInWords(yard.sending.weekdays)}. From fall to spring the forecast of both ends decides: we wait for a mild
          spell.
        </p>
        <p class="buttons">
          <a class="button" href="${href(stockPath)}">Stock list</a>
          <a class="button" href="${href(orderingPath)}">How to order</a>
          <a class="button" href="${href(myPlacePath)}">Your place</a>
        </p>
        <p><a class="onward" href="${href(changesPath)}">${changesTitle}</a></p>
      </section>
    </div>
  `;
}

function noneReady(next: string | null): Html {
  return next === null
    ? html`<p>None ready, and no day in sight.</p>`
    : html`<p>None ready today. The next: ${lowerFirst(next)}.</p>`;
}

function formSection({ form, ready, rows, next, sent }: FormSummary, href: Href): Html {
  const items = rows.map(
    row => html`
      <li>
        <span><a href="${href(row.path)}"><bdi>${row.name}</bdi></a>${enSpace}<span class="soft">${row.species}</span></span>
        <span>${row.price}</span>
      </li>
    `,
  );
  const some = html`
    <p class="standing">${sent}</p>
    <ul class="leaders">${items}</ul>
  `;
  return html`
    <section aria-labelledby="${form}">
      <h3 class="counted" id="${form}">${formWords[form]} <span class="count">${countInWords(ready, 'lot')}</span></h3>
      ${items.length > 0 ? some : noneReady(next)}
      <p><a class="onward" href="${href(formPath(form))}">All lots offered ${lowerFirst(formWords[form])}</a></p>
    </section>
  `;
}

function comingRow({ lot, name, species, forms, words }: ComingRow, href: Href): Html {
  return html`
    <tr>
      <th class="name" scope="row">
        <a href="${href(lotPath(lot))}"><bdi>${name}</bdi></a>
        <span>${species}, lot ${lot}</span>
      </th>
      <td>${forms}</td>
      <td><span class="state opens">${words}</span></td>
    </tr>
  `;
}

function comingSection(all: Catalogue, href: Href): Html | null {
  const coming = comingNext(all);
  if (coming.length === 0) return null;
  return html`
    <section aria-labelledby="coming">
      <h2 id="coming">Coming next</h2>
      <table class="ruled">
        <caption>A forecast is a span of days: one lot in ten opens before it, one in ten after it</caption>
        <thead>
          <tr>
            <th scope="col">Lot</th>
            <th scope="col">Form</th>
            <th scope="col">Ready</th>
          </tr>
        </thead>
        <tbody>${coming.map(row => comingRow(row, href))}</tbody>
      </table>
    </section>
  `;
}

function contentsSection(all: Catalogue, href: Href): Html | null {
  const { contents } = stockList(all);
  if (contents.length === 0) return null;
  const items = contents.map(
    ({ id, heading, count, page }) => html`
      <li>
        <a href="${href(pagePath(stockPath, page))}#${id}">${heading}</a>
        <span>${countInWords(count, 'lot')}</span>
      </li>
    `,
  );
  return html`
    <section aria-labelledby="list">
      <h2 id="list">The whole list</h2>
      <ul class="leaders thirds">${items}</ul>
    </section>
  `;
}

export function homePage(all: Catalogue, { links: { href, absolute } }: PageContext): Page {
  const { yard } = all;
  return {
    title: null,
    description: `${yard.tagline}. ${stockSentence(all)}`,
    path: '/',
    feeds: true,
    things: yardAndSite(yard, absolute),
    main: html`
      ${opening(all, href)}
      <section aria-labelledby="ready">
        <h2 id="ready">Ready</h2>
        <div class="thirds">${readyByForm(all).map(summary => formSection(summary, href))}</div>
      </section>
      ${comingSection(all, href)}
      ${contentsSection(all, href)}
    `,
  };
}
