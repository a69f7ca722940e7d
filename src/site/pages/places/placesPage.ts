/** Places whose climate is known here: a table to compare them, and what the classes mean. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { climatesPath, howWeKnowPath, placesPath } from '../../addresses/paths.ts';
import { type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { classAxesHtml } from '../../parts/classAxes.ts';
import { factList } from '../../parts/facts.ts';
import { airExceptions, summerExceptions } from '../../words/placeClasses.ts';
import { countInWords } from '../../words/words.ts';
import { type PlaceRow, type PlaceSection, placeSections } from './places.ts';

type Href = (path: string) => string;

const columnMeanings = [
  {
    label: 'Zone',
    value:
      "The USDA scale. Map: read off the 2023 map. Records: computed by the map's definition from observed nights. Modeled: computed from simulated years. Only the first is official.",
  },
  {
    label: 'Chill portions',
    value: 'The range of eight winters in ten, October to March, April to September south of the equator.',
  },
  {
    label: 'Season',
    value:
      'Days between the last and the first freeze in the median year; below it the range of eight years in ten.',
  },
  {
    label: 'Heat',
    value: 'Degree-days F above 50 F; below it degree-days C above 8 C, counted up to 36 C.',
  },
];

function placeLine(row: PlaceRow, href: Href): Html {
  return html`
    <tr>
      <th class="name" scope="row">
        <a href="${href(row.path)}">${row.name}</a>
        ${row.region && html`<span>${row.region}</span>`}
      </th>
      <td class="sort">${row.kind}</td>
      <td data-head="zone">${row.zone} <span class="soft">${row.zoneMark}</span></td>
      <td data-head="chill">${row.chill}</td>
      <td class="wide" data-head="season">
        ${row.season} ${row.seasonRange && html`<span class="soft">${row.seasonRange}</span>`}
      </td>
      <td data-head="last freeze">${row.lastFreeze}</td>
      <td data-head="first freeze">${row.firstFreeze}</td>
      <td class="wide" data-head="heat">${row.heatF} F <span class="soft">${row.heatC} C</span></td>
    </tr>
  `;
}

function sectionHtml({ id, heading, groups }: PlaceSection, href: Href): Html {
  const bodies = groups.map(
    group => html`
      <tbody>
        <tr class="group">
          <th colspan="8" scope="rowgroup">${group.heading}</th>
        </tr>
        ${group.rows.map(row => placeLine(row, href))}
      </tbody>
    `,
  );
  return html`
    <section aria-labelledby="${id}">
      <h2 id="${id}">${heading}</h2>
      <table class="places">
        <caption class="unseen">${heading}: class, winter zone, season, freezes, heat and chill of each place</caption>
        <thead>
          <tr>
            <th scope="col">Place</th>
            <th scope="col">Winter, season, summer, air</th>
            <th scope="col">Zone</th>
            <th scope="col">Chill portions</th>
            <th scope="col">Season</th>
            <th scope="col">Last freeze</th>
            <th scope="col">First freeze</th>
            <th scope="col">Heat</th>
          </tr>
        </thead>
        ${bodies}
      </table>
    </section>
  `;
}

function classesSection(href: Href): Html {
  return html`
    <section aria-labelledby="classes">
      <h2 id="classes">What the classes mean</h2>
      <p>
        Every place has one class on each of four axes, so that a guide or a cultivar can speak to places like it: the
        <a href="${href(climatesPath)}">kinds of climate</a>. The bounds of the summers are published, the others our working
        figures: where places differ little, so do their trees.
      </p>
      ${classAxesHtml}
      <p>${summerExceptions}</p>
      <p>${airExceptions}</p>
    </section>
  `;
}

export function placesPage(all: Catalogue, { links: { href } }: PageContext): Page {
  const sections = placeSections(all);
  const count = countInWords(all.places.length, 'place');
  return {
    title: 'Places',
    description: `The climate of ${count}: winters, freezes, the season between them, heat, chill and summer air, with their sources.`,
    path: placesPath,
    styles: ['placeList'],
    main: html`
      <h1>Places</h1>
      <p class="standfirst">
        The climate of ${count}, to find the one most like yours: near you, and at about your elevation.
      </p>
      <p>
        Freezes are at 32 F (0 C), in the median year; heat is degree-days a year. The page of each place says how every figure is known,
        and <a href="${href(howWeKnowPath)}">how we know</a> how far the modeled ones can be trusted.
      </p>
      <nav class="jumps" aria-labelledby="on-this-page">
        <h2 id="on-this-page">On this page</h2>
        <ul>
          ${sections.map(({ id, heading }) => html`<li><a href="#${id}">${heading}</a></li>`)}
          <li><a href="#columns">What the columns mean</a></li>
          <li><a href="#classes">What the classes mean</a></li>
        </ul>
      </nav>
      ${sections.map(section => sectionHtml(section, href))}
      <section class="stacked" aria-labelledby="columns">
        <h2 id="columns">What the columns mean</h2>
        ${factList(columnMeanings)}
      </section>
      ${classesSection(href)}
    `,
  };
}
