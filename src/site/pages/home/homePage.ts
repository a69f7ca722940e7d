/** The first page: what the yard is, what is ready, what comes next. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { readyOffers } from '../../../core/lots/readyOffers.ts';
import { priceInWords } from '../../../core/money.ts';
import type { PlaceAnswers } from '../../../outlooks.ts';
import { yardAndSite } from '../../../outputs/structuredData.ts';
import { guidesPath } from '../../addresses/guidePaths.ts';
import {
  changesPath,
  formPath,
  lotPath,
  myPlacePath,
  orderingPath,
  placePath,
  stockPath,
} from '../../addresses/paths.ts';
import { videosPath } from '../../addresses/videoPaths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { seasonNotice } from '../../parts/seasonNotice.ts';
import {
  countInWords,
  formWords,
  listInWords,
  lowerFirst,
  sentence,
  weekdaysInWords,
} from '../../words/words.ts';
import { changesTitle } from '../changes/changes.ts';
import { offered, speciesName } from '../stock/stock.ts';
import {
  type ComingRow,
  comingNext,
  type FormSummary,
  freezeSentence,
  readyByForm,
  stockSentence,
} from './home.ts';
import { fruitShelves } from './shelves.ts';
import { shelvesSection } from './shelvesSection.ts';

type Href = (path: string) => string;

/** Wider than a word space, so that name and species stay apart. */
const enSpace = '\u2002';

/** What the yard is and has, in one line: trees, not pictures of fruit. */
function standfirst(all: Catalogue): Html {
  const { lots, lowest, pricesDiffer } = readyOffers(offered(all));
  const cultivars = listedCultivars(all);
  const species = new Set(cultivars.map(entry => speciesName(entry.species)));
  const raised = html`Trees of ${countInWords(cultivars.length, 'cultivar')} of ${listInWords([...species])}, raised here and sent to you.`;
  if (lots === 0) return html`<p class="standfirst">${raised} ${stockSentence(all)}</p>`;
  const price = lowest === null ? '' : `, ${pricesDiffer ? 'from ' : ''}${priceInWords(lowest)}`;
  return html`<p class="standfirst">${raised} ${sentence(countInWords(lots, 'lot'))} ready today<span data-priced>${price}</span>.</p>`;
}

function askPlace(href: Href): Html {
  return html`
    <section class="ask-place" aria-labelledby="ask">
      <h2 id="ask">What ripens where you live?</h2>
      <form class="place-field" action="${href(myPlacePath)}" method="get" data-then="/places/{place}/">
        <label class="unseen" for="home-place">Town or ZIP code</label>
        <span><input id="home-place" name="zip" type="text" maxlength="60" autocomplete="postal-code" placeholder="Town or ZIP code"><button type="submit">Show</button></span>
      </form>
      <p role="status"></p>
    </section>
  `;
}

function doors(all: Catalogue, href: Href): Html {
  const door = (path: string, heading: string, words: string, link: string) => html`
    <section>
      <h2>${heading}</h2>
      <p>${words}</p>
      <p><a class="onward" href="${href(path)}">${link}</a></p>
    </section>
  `;
  return html`
    <div class="thirds doors">
      ${door(stockPath, 'Buy a tree', 'Pot, height, roots and price of every tree, whether it is ready and when it can travel.', 'Stock list')}
      ${door(guidesPath, 'Care for a tree', 'Arrival, winter, waking and planting, with the dates of your town and a calendar to take along.', 'Guides')}
      ${
        all.videos.length > 0
          ? door(
              videosPath,
              'Saw it in a video?',
              'Every tree and guide that a chapter speaks of, as it stands today.',
              'Videos',
            )
          : door(
              orderingPath,
              'How to order',
              'How we sell, how a tree is sent, and where we send what.',
              'How to order',
            )
      }
    </div>
  `;
}

function yardSection(all: Catalogue, href: Href): Html {
  const { yard, home } = all;
  const freeze = freezeSentence(all);
  return html`
    <section aria-labelledby="yard">
      <h2 id="yard">The yard</h2>
      ${yard.about && html`<p>${yard.about}</p>`}
      <p>
        We send on ${weekdaysInWords(yard.sending.weekdays)}. From fall to spring the forecast of both ends decides: we wait for a mild
        spell. <a href="${href(orderingPath)}">How to order</a>
      </p>
      ${freeze && html`<p>${freeze} <a href="${href(placePath(home.id))}">The climate of ${home.name}</a></p>`}
    </section>
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
        <span data-priced>${row.price}</span>
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

function comingItem({ lot, name, species, forms, words }: ComingRow, href: Href): Html {
  return html`
    <li>
      <span><a href="${href(lotPath(lot))}"><bdi>${name}</bdi></a> <span class="soft">${species}, lot ${lot}</span></span>
      <span>${forms}</span>
      <span class="state opens">${words}</span>
    </li>
  `;
}

function comingSection(all: Catalogue, href: Href): Html | null {
  const coming = comingNext(all);
  if (coming.length === 0) return null;
  return html`
    <section aria-labelledby="coming">
      <h2 id="coming">Coming next</h2>
      <p>A forecast is a span of days: 1 lot in 10 is ready before it, 1 in 10 after it.</p>
      <ul class="coming">${coming.map(row => comingItem(row, href))}</ul>
      <p><a class="onward" href="${href(changesPath)}">${changesTitle}</a></p>
    </section>
  `;
}

export function homePage(
  all: Catalogue,
  here: PlaceAnswers,
  { links: { href, absolute } }: PageContext,
): Page {
  const { yard } = all;
  return {
    title: null,
    description: `${yard.tagline}. ${stockSentence(all)}`,
    path: '/',
    feeds: true,
    styles: ['home'],
    things: yardAndSite(yard, absolute),
    main: html`
      <h1>${yard.tagline}</h1>
      ${standfirst(all)}
      ${seasonNotice(all)}
      ${shelvesSection(all, fruitShelves(all, here), href)}
      ${askPlace(href)}
      ${doors(all, href)}
      <section aria-labelledby="ready">
        <h2 id="ready">Ready today</h2>
        <div class="thirds">${readyByForm(all).map(summary => formSection(summary, href))}</div>
      </section>
      ${comingSection(all, href)}
      ${yardSection(all, href)}
    `,
  };
}
