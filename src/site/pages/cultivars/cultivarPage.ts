/** The page of a cultivar: traits, the grower's words, trials, photographs, its lots and what to take care of. */

import type { Catalogue, CultivarEntry, LotEntry } from '../../../core/catalogue.ts';
import { readyOffers } from '../../../core/lots/readyOffers.ts';
import { cultivarParts } from '../../../core/markdown/parts.ts';
import { priceInWords } from '../../../core/money.ts';
import { forms } from '../../../core/records/common.ts';
import { proseHtml } from '../../../markdown/prose.ts';
import type { Outlooks } from '../../../outlooks.ts';
import { cultivarProduct } from '../../../outputs/structuredData.ts';
import { cultivarPath, cultivarsPath, lotPath } from '../../addresses/paths.ts';
import { plateFigure } from '../../drawing/plateFigure.ts';
import { type Html, html, safeHtml } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { alternatives } from '../../parts/alternativeList.ts';
import { type AlternativeRow, alternativeRows } from '../../parts/alternatives.ts';
import { whenItArrives } from '../../parts/arrival.ts';
import { cautions } from '../../parts/cautions.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { factList } from '../../parts/facts.ts';
import { isReady, lotRows } from '../../parts/lotRows.ts';
import { myTree } from '../../parts/myTree.ts';
import { photoFigure } from '../../parts/photo.ts';
import { retiredInWords } from '../../parts/raised.ts';
import { whyList } from '../../parts/reasons.ts';
import { scrollFrame } from '../../parts/scrollFrame.ts';
import { seasonNotice } from '../../parts/seasonNotice.ts';
import { seenInVideos } from '../../parts/seenIn.ts';
import { countInWords, formWords, listInWords, lowerFirst } from '../../words/words.ts';
import { type StockRow, speciesName, stockRow } from '../stock/stock.ts';
import { seenIn } from '../videos/seenIn.ts';
import { cultivarFacts, cultivarSummary, suitsFacts, type TrialView, trialView } from './cultivar.ts';
import { cultivarPlaces, exampleVerdicts } from './cultivarPlaces.ts';
import { growthWhy } from './growth.ts';
import { placesSection } from './placesSection.ts';
import { ripeSeenFacts } from './ripeSeen.ts';
import { seasonWhy } from './season.ts';

type Href = (path: string) => string;

/** The first photograph, else the drawing. */
async function leadPicture(entry: CultivarEntry, context: PageContext): Promise<Html> {
  const [first] = entry.cultivar.photos;
  return first ? photoFigure(first, context, true) : plateFigure(entry, context.links.href);
}

/** The grower's words, and the pictures that do not lead the page. */
async function wordsAndPictures(entry: CultivarEntry, context: PageContext): Promise<Html | null> {
  const { id, body, photos } = entry.cultivar;
  const { href } = context.links;
  const page = { path: cultivarPath(id), parts: cultivarParts, link: href };
  const words = body.trim() !== '' && html`<div class="prose">${safeHtml(proseHtml(body, page))}</div>`;
  const pictures = await Promise.all(photos.slice(1).map(photo => photoFigure(photo, context)));
  const drawing = photos.length > 0 && plateFigure(entry, href);
  if (words === false && drawing === false) return null;
  return html`
    <div class="halves">
      ${words}
      ${photos.length > 0 && html`<div class="photos">${[drawing, ...pictures]}</div>`}
    </div>
  `;
}

/** What can be had today, from the price of what is ready. */
function readyLine(entry: CultivarEntry): Html {
  const { lots, trees, lowest, pricesDiffer, forms: ready } = readyOffers(entry.lots);
  if (lots === 0) return html`<p>No lot of it is ready today. <a href="#lots">What is coming</a></p>`;
  const price =
    lowest && html`<strong data-priced>${pricesDiffer && 'from '}${priceInWords(lowest)}</strong>, `;
  const named = listInWords(
    ready.map(form => lowerFirst(formWords[form])),
    'or',
  );
  return html`<p>Ready today: ${price}${countInWords(trees, 'tree')} in ${countInWords(lots, 'lot')}, ${named}. <a href="#lots">See the lots</a></p>`;
}

function traitsAndPlace(all: Catalogue, entry: CultivarEntry): Html {
  const traits = [...cultivarFacts(entry), ...ripeSeenFacts(all, entry.cultivar)];
  return html`
    <div class="halves">
      <section aria-labelledby="traits">
        <h2 id="traits">Traits</h2>
        ${factList(traits)}
      </section>
      <section aria-labelledby="suits">
        <h2 id="suits">Where it belongs</h2>
        <p>The kinds of places we recommend it for.</p>
        ${factList(suitsFacts(entry.cultivar))}
      </section>
    </div>
  `;
}

function soldLots(gone: readonly LotEntry[], href: Href): Html {
  const items = gone.map(({ lot }) => html`<li><a href="${href(lotPath(lot.id))}">Lot ${lot.id}</a></li>`);
  return html`
    <h3>Sold</h3>
    <ul class="columns">${items}</ul>
  `;
}

function lotsSection(all: Catalogue, entry: CultivarEntry, rows: readonly StockRow[], href: Href): Html {
  const { cultivar, species, lots } = entry;
  const ready = rows.filter(isReady);
  const later = rows.filter(row => !isReady(row));
  const shown = ready.length > 0 ? ready : later;
  const look = { forms, href };
  const more = html`
    <details>
      <summary>${countInWords(later.length, 'lot')} more, not ready yet</summary>
      ${lotRows(`Lots of ${cultivar.name} to come`, later, look)}
    </details>
  `;
  const table =
    shown.length > 0
      ? [
          lotRows(`Lots of ${cultivar.name} that are not sold out`, shown, look),
          ready.length > 0 && later.length > 0 && more,
        ]
      : [html`<p>No lot is on the list today.</p>`];
  const gone = lots.filter(({ soldOut }) => soldOut);
  return html`
    <section aria-labelledby="lots">
      <h2 id="lots">Lots</h2>
      ${[...table, whenItArrives(all, species.id, forms, href), gone.length > 0 && soldLots(gone, href)]}
    </section>
  `;
}

/** What buyers ask next: what the season brings, and what becomes of the tree. */
function askedNext(all: Catalogue, entry: CultivarEntry): Html | null {
  const asked = [...seasonWhy(all, entry), ...growthWhy(entry.species, entry.cultivar)];
  if (asked.length === 0) return null;
  return html`
    <section aria-labelledby="asked">
      <h2 id="asked">What you may ask next</h2>
      ${whyList(asked)}
    </section>
  `;
}

function trialRow({ where, kind, years, winter, ripened, note }: TrialView): Html {
  return html`
    <tr>
      <th scope="row">${where} <span class="soft meaning">${kind}</span></th>
      <td>${years}</td>
      <td>${winter}</td>
      <td>${ripened}</td>
      <td>${note ?? '–'}</td>
    </tr>
  `;
}

function trialsSection(trials: readonly TrialView[]): Html {
  const table = html`
    <table class="ruled">
      <caption>What was seen of it, and where</caption>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">Years</th>
          <th scope="col">Winters</th>
          <th scope="col">Ripened</th>
          <th scope="col">What happened</th>
        </tr>
      </thead>
      <tbody>${trials.map(trialRow)}</tbody>
    </table>
  `;
  return html`
    <section aria-labelledby="trials">
      <h2 id="trials">Trials</h2>
      ${scrollFrame('Table of trials', table)}
    </section>
  `;
}

function retiredLine(retired: string, others: readonly AlternativeRow[]): Html {
  const link = others.length > 0 && html`<a href="#instead">What comes nearest to it</a>`;
  return html`<p>${retired} ${link}</p>`;
}

/** The page of a cultivar of the catalogue. */
export async function cultivarPage(
  all: Catalogue,
  entry: CultivarEntry,
  places: Outlooks,
  context: PageContext,
): Promise<Page> {
  const { cultivar, species, lots } = entry;
  const { href, absolute } = context.links;
  const summary = cultivarSummary(entry, all);
  const rows = lots.filter(({ soldOut }) => !soldOut).map(lot => stockRow(all, lot));
  const trials = cultivar.trials.map(trialView);
  const mine = {
    cultivar,
    examples: exampleVerdicts(all, places, cultivar.id),
    ready: readyOffers(lots).forms,
  };
  const where = cultivarPlaces(all, places, cultivar.id);
  const others = alternativeRows(all, cultivar);
  const retired = retiredInWords(all, entry);
  const title = `${cultivar.name} ${speciesName(species)}`;
  const path = cultivarPath(cultivar.id);
  const [picture] = cultivar.photos;
  const product = cultivarProduct(
    entry,
    path,
    {
      seller: all.yard.name,
      name: title,
      description: summary,
      image: picture ? absolute((await context.photo(picture.file)).fallback) : null,
    },
    absolute,
  );
  const trail = crumbs([{ path: cultivarsPath, name: 'Cultivars' }], cultivar.name, context.links);
  const main = html`
    ${trail}
    <h1><bdi>${cultivar.name}</bdi> <span class="kind">${speciesName(species)}</span></h1>
    <p class="standfirst"><span class="botanical">${species.botanical}</span>. ${summary}</p>
    ${[
      retired !== null && retiredLine(retired, others),
      html`
        <div class="answer">
          <div class="picture">${await leadPicture(entry, context)}</div>
          <div>${[readyLine(entry), seasonNotice(all), myTree(mine, href)]}</div>
        </div>
      `,
      lotsSection(all, entry, rows, href),
      await wordsAndPictures(entry, context),
      askedNext(all, entry),
      traitsAndPlace(all, entry),
      placesSection(cultivar.name, where, href),
      trials.length > 0 && trialsSection(trials),
      alternatives(others, rows.length > 0 ? 'Much like it' : 'In its place', href),
      seenInVideos(seenIn(all, 'cultivar', cultivar.id), href),
      cautions(species),
    ]}
  `;
  return {
    title,
    description: `${cultivar.name} (${species.botanical}). ${summary}`,
    path,
    card: { name: `cultivar-${cultivar.id}`, alt: `The fruit of ${cultivar.name}, drawn whole and cut` },
    things: product === null ? [] : [product],
    main,
  };
}
