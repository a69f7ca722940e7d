/** The page of a lot: exactly what the buyer gets, and why it stands as it does. Sold lots keep their page. */

import type { Catalogue, LotEntry } from '../../../core/catalogue.ts';
import { dayInWords } from '../../../core/days.ts';
import { lotProduct } from '../../../outputs/structuredData.ts';
import { cultivarPath, lotPath, orderingPath, stockPath } from '../../addresses/paths.ts';
import { plateFigure } from '../../drawing/plateFigure.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { alternatives } from '../../parts/alternativeList.ts';
import { alternativeRows } from '../../parts/alternatives.ts';
import { whenItArrives } from '../../parts/arrival.ts';
import { cautions } from '../../parts/cautions.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { factList } from '../../parts/facts.ts';
import { myTree } from '../../parts/myTree.ts';
import { photoFigure } from '../../parts/photo.ts';
import { reasonList, whyList } from '../../parts/reasons.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import { seenInVideos } from '../../parts/seenIn.ts';
import { stockTable } from '../../parts/stockTable.ts';
import { sizeInWords } from '../../words/measures.ts';
import { formMeanings, formWords, lowerFirst } from '../../words/words.ts';
import {
  lotSize,
  lotSummary,
  otherLots,
  type StockLine,
  type StockRow,
  speciesName,
  stockRow,
} from '../stock/stock.ts';
import { seenIn } from '../videos/seenIn.ts';
import { type CartonView, cartonViews, gradeWhy, lotFacts, readinessWhy, signFacts } from './lot.ts';
import { careWhy } from './lotCare.ts';

type Href = (path: string) => string;

function soldNotice({ cultivar }: LotEntry, others: readonly StockRow[], href: Href): Html {
  const where =
    others.length > 0
      ? 'Other lots of the cultivar are below.'
      : 'No other lot of the cultivar is on the list today.';
  return html`
    <div class="notice">
      <p>
        <strong>This lot is sold.</strong> The page stays so that you can read what it was. ${where}
        <a href="${href(cultivarPath(cultivar.id))}">About <bdi>${cultivar.name}</bdi></a>
      </p>
    </div>
  `;
}

function holdNotice({ since, why }: NonNullable<LotEntry['lot']['hold']>): Html {
  return html`
    <div class="notice">
      <p><strong>Held back since ${dayInWords(since)}.</strong> ${why}</p>
    </div>
  `;
}

function conditionNotice(condition: string): Html {
  return html`
    <div class="notice">
      <p><strong>Know before you buy.</strong> ${condition}</p>
    </div>
  `;
}

function formRow({ form, formName, state, words, price }: StockLine): Html {
  return html`
    <tr>
      <th scope="row">${formName} <span class="soft meaning">${formMeanings[form]}</span></th>
      <td><span class="state ${state}">${words}</span></td>
      <td class="price">${price ?? '–'}</td>
    </tr>
  `;
}

function formsSection(all: Catalogue, entry: LotEntry, lines: readonly StockLine[], href: Href): Html {
  const { lot, species } = entry;
  const how = lot.buy ?? all.yard.ordering.link;
  const buy = how && html`<a class="button" href="${how}">${lot.buy ? 'Buy from this lot' : 'Order'}</a>`;
  const forms = lines.map(({ form }) => form);
  return html`
    <section aria-labelledby="forms">
      <h2 id="forms">Form, readiness and price</h2>
      <table class="ruled forms" data-forms="${forms.join(' ')}">
        <caption>As of ${dayInWords(all.asOf)}; the price is for one tree</caption>
        <thead>
          <tr>
            <th scope="col">Form</th>
            <th scope="col">Ready</th>
            <th scope="col" class="price">Price</th>
          </tr>
        </thead>
        <tbody>${lines.map(formRow)}</tbody>
      </table>
      ${lot.price && html`<p>Priced by hand: ${lowerFirst(lot.price.why)}</p>`}
      <p class="buttons">
        ${buy || null}
        <a class="button" href="${href(orderingPath)}">How to order</a>
      </p>
      ${whenItArrives(all, species.id, forms, href)}
    </section>
  `;
}

function cartonRow({ formName, cutBack, carton, weight, billable }: CartonView): Html {
  const billed = billable.map(line => html`<span class="line">${line}</span>`);
  return html`
    <tr>
      <th scope="row">${formName}</th>
      <td>${cutBack}</td>
      <td>${carton}</td>
      <td>${weight}</td>
      <td>${billed}</td>
    </tr>
  `;
}

function cartonSection(cartons: readonly CartonView[]): Html {
  const reasons = cartons.map(({ formName, because }) => html`<h3>${formName}</h3>${reasonList(because)}`);
  const table = html`
    <table class="ruled measures">
      <caption>One parcel; carriers bill the larger of weight and volume</caption>
      <thead>
        <tr>
          <th scope="col">Form</th>
          <th scope="col">Cut back to</th>
          <th scope="col">Carton</th>
          <th scope="col">Weight</th>
          <th scope="col">Billed as</th>
        </tr>
      </thead>
      <tbody>${cartons.map(cartonRow)}</tbody>
    </table>
  `;
  return html`
    <section aria-labelledby="carton">
      <h2 id="carton">How it travels</h2>
      ${scrollFrame('Table of cartons', table)}
      <details>
        <summary>Why this carton</summary>
        ${reasons}
      </details>
    </section>
  `;
}

async function plantSection(entry: LotEntry, context: PageContext): Promise<Html> {
  const { lot, soldOut } = entry;
  const seen = signFacts(entry.signs);
  const picture = lot.photo && html`<div class="photos">${await photoFigure(lot.photo, context)}</div>`;
  const walks = html`<h3 class="first">Seen on the last walks</h3>${factList(seen)}`;
  return html`
    <section aria-labelledby="plant">
      <h2 id="plant">${soldOut ? 'What it was' : 'What you get'}</h2>
      ${lot.note !== null && html`<p>${lot.note}</p>`}
      <div class="halves">
        ${factList(lotFacts(entry))}
        <div>${[picture, seen.length > 0 && walks, plateFigure(entry, context.links.href)]}</div>
      </div>
    </section>
  `;
}

function whySection(all: Catalogue, entry: LotEntry): Html {
  const { soldOut } = entry;
  const care = careWhy(all, entry);
  const firstYear = html`<h3>Its first winter and summer</h3>${whyList(care)}`;
  return html`
    <section aria-labelledby="why">
      <h2 id="why">Why</h2>
      <p>Everything above rests on the following. What was seen in the yard outranks what was computed.</p>
      <div class="halves">
        <div>
          <h3>${soldOut ? 'Count' : 'Count and readiness'}</h3>
          ${whyList(readinessWhy(entry))}
        </div>
        <div>
          <h3>${soldOut ? 'Size and scarcity' : 'Size, scarcity and price'}</h3>
          ${[whyList(gradeWhy(entry)), care.length > 0 && firstYear]}
        </div>
      </div>
    </section>
  `;
}

function othersSection({ name }: { name: string }, others: readonly StockRow[], href: Href): Html {
  const table = stockTable(`Other lots of ${name} that are not sold out`, others, {
    under: 'cultivar',
    own: true,
    href,
  });
  return html`
    <section aria-labelledby="others">
      <h2 id="others">Other lots of <bdi>${name}</bdi></h2>
      ${table}
    </section>
  `;
}

/** The page of a lot of the catalogue. */
export async function lotPage(all: Catalogue, entry: LotEntry, context: PageContext): Promise<Page> {
  const { lot, cultivar, species, soldOut } = entry;
  const { href, absolute } = context.links;
  const { lines } = stockRow(all, entry);
  const cartons = soldOut ? [] : cartonViews(entry);
  const others = otherLots(all, entry);
  const instead = soldOut || others.length === 0 ? alternativeRows(all, cultivar) : [];
  const summary = lotSummary(all, entry);
  const title = `${cultivar.name} ${speciesName(species)}, lot ${lot.id}`;
  const path = lotPath(lot.id);
  const product = lotProduct(
    entry,
    path,
    {
      seller: all.yard.name,
      name: title,
      description: summary,
      size: sizeInWords(entry),
      image: lot.photo && absolute((await context.photo(lot.photo.file)).fallback),
      formWords,
    },
    absolute,
  );
  const above = [
    { path: stockPath, name: 'Stock list' },
    { path: cultivarPath(cultivar.id), name: cultivar.name },
  ];
  const main = html`
    ${crumbs(above, `Lot ${lot.id}`, context.links)}
    <h1><bdi>${cultivar.name}</bdi> <span class="kind">${speciesName(species)}</span></h1>
    <p class="standfirst">Lot ${lot.id}: ${lotSize(entry)}</p>
    ${[
      soldOut && soldNotice(entry, others, href),
      !soldOut && lot.hold !== null && holdNotice(lot.hold),
      !soldOut && lot.condition !== null && conditionNotice(lot.condition),
      !soldOut && formsSection(all, entry, lines, href),
      myTree(cultivar, href),
      await plantSection(entry, context),
      cartons.length > 0 && cartonSection(cartons),
      whySection(all, entry),
      others.length > 0 && othersSection(cultivar, others, href),
      alternatives(instead, soldOut ? 'In its place' : 'Much like it', href),
      seenInVideos(seenIn(all, 'lot', lot.id), href),
      cautions(species),
    ]}
  `;
  return {
    title,
    description: `${cultivar.name} (${species.botanical}). ${summary}`,
    path,
    things: product === null ? [] : [product],
    styles: ['lotPrint'],
    main,
  };
}
