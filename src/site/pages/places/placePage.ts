/** A place: what its climate is, the year as a picture, what does well there, and where every figure comes from. */

import type { CareYear } from '../../../core/care/careYear.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { climateKindId } from '../../../core/climate/placeClass.ts';
import type { ClimateSummary } from '../../../core/climate/summary.ts';
import type { Place } from '../../../core/records/place.ts';
import type { Outlooks } from '../../../outlooks.ts';
import { climatePath, howWeKnowPath, myPlacePath, placePath, placesPath } from '../../addresses/paths.ts';
import { ribbonDrawing } from '../../drawing/ribbon.ts';
import { yearRibbon } from '../../drawing/ribbonFigure.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { crumbs } from '../../parts/crumbs.ts';
import { factList } from '../../parts/facts.ts';
import { placeButton } from '../../parts/placeButton.ts';
import { climateSentences } from '../../words/climateWords.ts';
import { unbroken } from '../../words/measures.ts';
import { classInWords, classMeanings, otherSummer } from '../../words/placeClasses.ts';
import { unitsIn } from '../../words/units.ts';
import { sentence } from '../../words/words.ts';
import { placeGuideLines } from '../guides/guideList.ts';
import { freezesSection } from './freezesSection.ts';
import { monthsTable } from './monthsTable.ts';
import { nameAndWhereabouts, placeFigures, placeSources, whereabouts } from './place.ts';
import { rankedCultivars } from './placeTrees.ts';
import { rankedTrees } from './rankedTrees.ts';
import { sendingView, type TravelView } from './sending.ts';
import { sendingSection } from './sendingSection.ts';
import { speciesDatesSection } from './speciesDatesSection.ts';

type Href = (path: string) => string;

/** What a visitor asks first: the winter, the season, the summer, and how trees travel there. */
function summaryCard(
  all: Catalogue,
  place: Place,
  climate: ClimateSummary,
  travel: TravelView,
  sentences: readonly string[],
  href: Href,
): Html {
  const sent = travel.route
    ? html`<strong>${travel.season.lead}</strong> ${travel.season.rest}`
    : html`<strong>We do not send there.</strong> What each tree does there, and the guides, hold all the same.`;
  return html`
    <div class="place-card">
      <p>${unbroken(sentences.join(' '))} <a href="${href(climatePath(climateKindId(climate.class.answer)))}">${sentence(classInWords(climate.class.answer))}</a>.</p>
      <p>Trees from ${all.home.name}: ${sent}</p>
      <div class="mine-set">${placeButton(place)} <a href="${href(myPlacePath)}">What that does</a></div>
    </div>
  `;
}

function figuresSection(climate: ClimateSummary, lat: number, href: Href): Html {
  const figures = placeFigures(climate, lat).map(
    ({ label, value, known }) => html`
      <div>
        <dt>${label}</dt>
        <dd>${unbroken(value)} <span class="standing">(${known})</span></dd>
      </div>
    `,
  );
  return html`
    <section class="stacked" aria-labelledby="figures">
      <h2 id="figures">Season, winter, heat and chill</h2>
      <dl class="facts">${figures}</dl>
      <p>
        Modeled figures are drawn from a thousand simulated years made of the place's monthly figures.
        <a href="${href(howWeKnowPath)}">How far they can be trusted</a> has been measured.
      </p>
    </section>
  `;
}

function classSection(climate: ClimateSummary, href: Href): Html {
  const { answer, standing } = climate.class;
  const summer = otherSummer(climate);
  const kind = html`<a href="${href(climatePath(climateKindId(answer)))}">${sentence(classInWords(answer))}</a>`;
  const meanings = classMeanings(answer).map(({ axis, word, bounds }) => ({
    label: axis,
    value: unbroken(`${sentence(word)}: ${bounds}`),
  }));
  return html`
    <section class="stacked" aria-labelledby="class">
      <h2 id="class">Its class</h2>
      <p>
        ${kind}. A guide or a cultivar speaks to places of a class; <a href="${href(`${placesPath}#classes`)}">all classes</a>.
      </p>
      ${factList(meanings)}
      ${summer && html`<p>${summer}</p>`}
      <p class="standing">
        The bounds of the summers are published, the others our working figures; the figures they are put to are ${standing}.
      </p>
    </section>
  `;
}

function guidesSection(all: Catalogue, { id, name }: Place, href: Href): Html | null {
  const lines = placeGuideLines(all, id, null);
  if (lines.length === 0) return null;
  return html`
    <section aria-labelledby="guides">
      <h2 id="guides">Care guides for ${name}</h2>
      <ul class="columns">${lines.map(({ path, title }) => html`<li><a href="${href(path)}">${title}</a></li>`)}</ul>
    </section>
  `;
}

function sourcesSection(place: Place): Html {
  return html`
    <section class="stacked" aria-labelledby="sources">
      <h2 id="sources">Where the figures come from</h2>
      ${factList(placeSources(place))}
    </section>
  `;
}

/** What is known of a place besides the catalogue. */
export interface PlaceKnown {
  outlooks: Outlooks;
  /** Of each species that the yard grows, at the place. */
  careYears: readonly CareYear[];
}

/** The page of a place whose climate is known. */
export function placePage(
  all: Catalogue,
  place: Place,
  { outlooks, careYears }: PlaceKnown,
  { links }: PageContext,
): Page {
  const { href } = links;
  const { id, name, lat } = place;
  const climate = all.climates.get(id)!;
  const answers = outlooks.get(id)!;
  const sending = sendingView(all, outlooks, answers);
  const sentences = climateSentences(climate);
  const isHome = id === all.home.id;
  return {
    title: `The climate of ${name}`,
    description: `${nameAndWhereabouts(place)}. ${sentence(classInWords(climate.class.answer))}. ${sentences.slice(0, 2).join(' ')}`,
    path: placePath(id),
    styles: ['place'],
    units: unitsIn(place.country),
    main: html`
      ${crumbs([{ path: placesPath, name: 'Places' }], name, links)}
      <h1>${name} <span class="kind">${whereabouts(place)}</span></h1>
      ${summaryCard(all, place, climate, sending.now, sentences, href)}
      ${isHome && html`<p>This is the climate ${all.yard.name} is worked by: the forecasts of every lot are drawn from it.</p>`}
      ${[
        guidesSection(all, place, href),
        rankedTrees(rankedCultivars(all, answers, sending.now), place, climate, href),
        sendingSection(sending, name, href),
        html`
          <section aria-labelledby="year">
            <h2 id="year">The year at ${name}</h2>
            ${yearRibbon(ribbonDrawing(climate.ribbon, lat), name)}
            ${monthsTable(place, climate)}
          </section>
        `,
        html`
          <details class="station">
            <summary>Figures of the station: freezes, winter, heat, chill, dates by species, sources</summary>
            ${[
              freezesSection(climate),
              figuresSection(climate, lat, href),
              classSection(climate, href),
              speciesDatesSection(all, careYears, name),
              sourcesSection(place),
            ]}
          </details>
        `,
      ]}
    `,
  };
}
