/** The page of a lot: exactly what the buyer gets, and why it stands as it does. Sold lots keep their page. */

import { type Catalogue, type LotEntry, leadingForm } from '../../../core/catalogue.ts';
import { dayInWords } from '../../../core/days.ts';
import { readyForms } from '../../../core/lots/readyOffers.ts';
import { forms } from '../../../core/records/common.ts';
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
import { lotRows } from '../../parts/lotRows.ts';
import { type Example, myTree } from '../../parts/myTree.ts';
import { photoFigure } from '../../parts/photo.ts';
import { reasonList, whyList } from '../../parts/reasons.ts';
import { seenInVideos } from '../../parts/seenIn.ts';
import { sentNow } from '../../parts/sentNow.ts';
import { sizeInWords } from '../../words/measures.ts';
import { leavesWords, reserveWords } from '../../words/sendingWords.ts';
import { openingInWords } from '../../words/state.ts';
import { formWords, lowerFirst } from '../../words/words.ts';
import { growthWhy } from '../cultivars/growth.ts';
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

/** A form with its price, how it stands, and how it leaves where it is ready. */
function offerItem(all: Catalogue, line: StockLine): Html {
  const { form, formName, state, words, price } = line;
  const leaves = html`<span data-sends="${form}">${leavesWords(sentNow(all)[form], all.asOf)}</span>`;
  return html`
    <li class="${state}">
      <h3>${formName}</h3>
      <p class="amount" data-priced>${price ?? 'No price yet'}</p>
      <p><span class="state ${state}">${state === 'ready' ? 'Ready' : words}</span> ${state === 'ready' && leaves}</p>
    </li>
  `;
}

/** What happens when the button is pressed: the form that is ready leaves now or from a day, or the lot is still to come. */
function buyButton(all: Catalogue, entry: LotEntry): Html | null {
  const how = entry.lot.buy ?? all.yard.ordering.link;
  const leading = leadingForm(entry);
  if (!how || leading === null || leading.state === 'blocked') return null;
  if (leading.state === 'ready') {
    const words = reserveWords(sentNow(all)[leading.form], null, all.asOf);
    return html`<a class="button buy" href="${how}" data-buy="${leading.form}">${words}</a>`;
  }
  const words =
    leading.state === 'opens' && leading.range
      ? `Reserve: ready ${lowerFirst(openingInWords(leading.range, all.asOf))}`
      : 'Ask about this lot';
  return html`<a class="button buy" href="${how}">${words}</a>`;
}

function offerSection(all: Catalogue, entry: LotEntry, lines: readonly StockLine[], href: Href): Html {
  const { lot, species } = entry;
  const forms = lines.map(({ form }) => form);
  return html`
    <section aria-labelledby="forms">
      <h2 class="unseen" id="forms">Form, readiness and price</h2>
      <ul class="offers" data-forms="${forms.join(' ')}">${lines.map(line => offerItem(all, line))}</ul>
      ${lot.price && html`<p>Priced by hand: ${lowerFirst(lot.price.why)}</p>`}
      <p class="buttons">
        ${buyButton(all, entry)}
        <a class="button" href="${href(orderingPath)}?lot=${lot.id}#list" data-priced>Put on my list</a>
        <a class="button" href="${href(orderingPath)}">How to order</a>
      </p>
      ${whenItArrives(all, species.id, forms, href)}
      <p class="standing">For one tree, as of ${dayInWords(all.asOf)}.</p>
    </section>
  `;
}

function cartonCard({ formName, cutBack, carton, weight, billable }: CartonView): Html {
  const facts = [
    { label: 'Cut back to', value: cutBack },
    { label: 'Carton', value: carton },
    { label: 'Weight', value: weight },
    { label: 'Billed as', value: billable.join('; ') },
  ];
  return html`<div><h3>${formName}</h3>${factList(facts.filter(({ value }) => value !== ''))}</div>`;
}

function cartonSection(cartons: readonly CartonView[]): Html {
  const reasons = cartons.map(({ formName, because }) => html`<h3>${formName}</h3>${reasonList(because)}`);
  return html`
    <section aria-labelledby="carton">
      <h2 id="carton">How it travels</h2>
      <div class="thirds">${cartons.map(cartonCard)}</div>
      <details>
        <summary>Why this carton</summary>
        <p>Figures for one parcel; carriers bill the larger of weight and volume.</p>
        ${reasons}
      </details>
    </section>
  `;
}

function plantSection(entry: LotEntry, context: PageContext): Html {
  const { lot, soldOut } = entry;
  const seen = signFacts(entry.signs);
  const walks = html`<h3 class="first">Seen on the last walks</h3>${factList(seen)}`;
  // The photograph leads the page; the drawing then stands here.
  const drawing = lot.photo && plateFigure(entry, context.links.href);
  return html`
    <section aria-labelledby="plant">
      <h2 id="plant">${soldOut ? 'What it was' : 'What you get'}</h2>
      ${lot.note !== null && html`<p>${lot.note}</p>`}
      <div class="halves">
        ${factList(lotFacts(entry))}
        <div>${[seen.length > 0 && walks, drawing]}</div>
      </div>
    </section>
  `;
}

function whySection(all: Catalogue, entry: LotEntry): Html {
  const { soldOut } = entry;
  const care = careWhy(all, entry);
  const grown = growthWhy(entry.species, entry.cultivar);
  const later = html`<h3>Once it is planted</h3>${whyList(grown)}`;
  const firstYear = html`<h3>Its first winter and summer</h3>${whyList(care)}`;
  return html`
    <section aria-labelledby="why">
      <h2 id="why">Why</h2>
      <p>Open a line for what it rests on. What was seen in the yard outranks what was computed.</p>
      <div class="halves">
        <div>
          <h3>${soldOut ? 'Count' : 'Count and readiness'}</h3>
          ${whyList(readinessWhy(entry))}
        </div>
        <div>
          <h3>${soldOut ? 'Size and scarcity' : 'Size, scarcity and price'}</h3>
          ${[whyList(gradeWhy(entry)), care.length > 0 && firstYear, grown.length > 0 && later]}
        </div>
      </div>
    </section>
  `;
}

function othersSection({ name }: { name: string }, others: readonly StockRow[], href: Href): Html {
  const table = lotRows(`Other lots of ${name} that are not sold out`, others, { forms, href });
  return html`
    <section aria-labelledby="others">
      <h2 id="others">Other lots of <bdi>${name}</bdi></h2>
      ${table}
    </section>
  `;
}

/** The page of a lot of the catalogue; `examples` are verdicts on its cultivar in a few places. */
export async function lotPage(
  all: Catalogue,
  entry: LotEntry,
  examples: readonly Example[],
  context: PageContext,
): Promise<Page> {
  const { lot, cultivar, species, soldOut } = entry;
  const { href, absolute } = context.links;
  const { lines } = stockRow(all, entry);
  const cartons = soldOut ? [] : cartonViews(entry);
  const others = otherLots(all, entry);
  const instead = soldOut || others.length === 0 ? alternativeRows(all, cultivar) : [];
  const summary = lotSummary(all, entry);
  const mine = { cultivar, examples, ready: readyForms(entry) };
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
      html`
        <div class="answer">
          <div class="picture">${lot.photo ? await photoFigure(lot.photo, context, true) : plateFigure(entry, href)}</div>
          <div>${[!soldOut && offerSection(all, entry, lines, href), myTree(mine, href)]}</div>
        </div>
      `,
      plantSection(entry, context),
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
    card: { name: `cultivar-${cultivar.id}`, alt: `The fruit of ${cultivar.name}, drawn whole and cut` },
    things: product === null ? [] : [product],
    styles: ['lotPrint'],
    main,
  };
}
