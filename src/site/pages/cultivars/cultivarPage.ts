/** The page of a cultivar: traits, the grower's words, trials, photographs, its lots and what to take care of. */

import type { Catalogue, CultivarEntry, LotEntry } from '../../../core/catalogue.ts';
import { cultivarParts } from '../../../core/markdown/parts.ts';
import { forms } from '../../../core/records/common.ts';
import { proseHtml } from '../../../markdown/prose.ts';
import type { Outlooks } from '../../../outlooks.ts';
import { cultivarProduct } from '../../../outputs/structuredData.ts';
import { cultivarPath, lotPath } from '../../addresses/paths.ts';
import { plateFigure } from '../../drawing/plateFigure.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { alternatives } from '../../parts/alternativeList.ts';
import { type AlternativeRow, alternativeRows } from '../../parts/alternatives.ts';
import { whenItArrives } from '../../parts/arrival.ts';
import { cautions } from '../../parts/cautions.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { factList } from '../../parts/facts.ts';
import { myTree } from '../../parts/myTree.ts';
import { photoFigure } from '../../parts/photo.ts';
import { retiredInWords } from '../../parts/raised.ts';
import { seenInVideos } from '../../parts/seenIn.ts';
import { stockTable } from '../../parts/stockTable.ts';
import { type StockRow, speciesName, stockRow } from '../stock/stock.ts';
import { seenIn } from '../videos/seenIn.ts';
import { cultivarFacts, cultivarSummary, suitsFacts, type TrialView, trialView } from './cultivar.ts';
import { cultivarPlaces } from './cultivarPlaces.ts';
import { cultivarPlacesHtml } from './placesSection.ts';
import { ripeSeenFacts } from './ripeSeen.ts';

type Href = (path: string) => string;

async function wordsAndPictures(entry: CultivarEntry, tools: PageContext): Promise<Html> {
  const { id, body, photos } = entry.cultivar;
  const page = { path: cultivarPath(id), parts: cultivarParts, link: tools.links.href };
  const words = body.trim() !== '' && html`<div class="prose">${{ html: proseHtml(body, page) }}</div>`;
  const pictures = await Promise.all(photos.map((photo, index) => photoFigure(photo, tools, index === 0)));
  return html`<div class="halves">${words}<div class="photos">${plateFigure(entry, tools.links.href)}${pictures}</div></div>`;
}

function traitsAndPlace(all: Catalogue, entry: CultivarEntry): Html {
  const traits = [...cultivarFacts(entry), ...ripeSeenFacts(all, entry.cultivar)];
  return html`<div class="halves"><section aria-labelledby="traits"><h2 id="traits">Traits</h2>${factList(traits)}</section><section aria-labelledby="suits"><h2 id="suits">Where it belongs</h2><p>The kinds of place it is meant for, as we know it.</p>${factList(suitsFacts(entry.cultivar))}</section></div>`;
}

function soldLots(gone: readonly LotEntry[], href: Href): Html {
  const items = gone.map(({ lot }) => html`<li><a href="${href(lotPath(lot.id))}">Lot ${lot.id}</a></li>`);
  return html`<h3>Sold</h3><ul class="columns">${items}</ul>`;
}

function lotsSection(all: Catalogue, entry: CultivarEntry, rows: readonly StockRow[], href: Href): Html {
  const { cultivar, species, lots } = entry;
  const table =
    rows.length > 0
      ? stockTable(`Lots of ${cultivar.name} that are not sold out`, rows, {
          under: 'cultivar',
          own: true,
          href,
        })
      : html`<p>No lot is on the list today.</p>`;
  const gone = lots.filter(({ soldOut }) => soldOut);
  return html`<section aria-labelledby="lots"><h2 id="lots">Lots</h2>${table}${whenItArrives(all, species.id, forms, href)}${gone.length > 0 && soldLots(gone, href)}</section>`;
}

function trialsSection(trials: readonly TrialView[]): Html {
  const rows = trials.map(
    ({ where, kind, years, winter, ripened, note }) =>
      html`<tr><th scope="row">${where} <span class="soft meaning">${kind}</span></th><td>${years}</td><td>${winter}</td><td>${ripened}</td><td>${note ?? '–'}</td></tr>`,
  );
  return html`<section aria-labelledby="trials"><h2 id="trials">Trials</h2><section class="scroll" aria-label="Table of trials" tabindex="0"><table class="ruled"><caption>What was seen of it, and where</caption><thead><tr><th scope="col">Where</th><th scope="col">Years</th><th scope="col">Winters</th><th scope="col">Ripened</th><th scope="col">What happened</th></tr></thead><tbody>${rows}</tbody></table></section></section>`;
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
  tools: PageContext,
): Promise<Page> {
  const { cultivar, species, lots } = entry;
  const { href, absolute } = tools.links;
  const summary = cultivarSummary(entry, all);
  const rows = lots.filter(({ soldOut }) => !soldOut).map(lot => stockRow(all, lot));
  const trials = cultivar.trials.map(trialView);
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
      image: picture ? absolute((await tools.photo(picture.file)).fallback) : null,
    },
    absolute,
  );
  const trail = crumbs([{ path: '/cultivars/', name: 'Cultivars' }], cultivar.name, tools.links);
  const main = html`${trail}<h1><bdi>${cultivar.name}</bdi> <span class="kind">${speciesName(species)}</span></h1><p class="standfirst"><span class="botanical">${species.botanical}</span>. ${summary}</p>${retired !== null && retiredLine(retired, others)}${await wordsAndPictures(entry, tools)}${traitsAndPlace(all, entry)}${myTree(cultivar, href)}${lotsSection(all, entry, rows, href)}${cultivarPlacesHtml(cultivar.name, where, href)}${trials.length > 0 && trialsSection(trials)}${alternatives(others, rows.length > 0 ? 'Much like it' : 'In its place', href)}${seenInVideos(seenIn(all, 'cultivar', cultivar.id), href)}${cautions(species)}`;
  const description = `${cultivar.name} (${species.botanical}). ${summary}`;
  return { title, description, path, things: [product], scripts: ['speakAndFollow'], main };
}
