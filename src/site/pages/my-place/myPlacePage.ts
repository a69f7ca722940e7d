/** Choosing a place: by ZIP code, from the list, on the map, or by one's own freeze dates. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { climatesPath, myPlacePath, placePath, placesPath } from '../../addresses/paths.ts';
import { MAP_HEIGHT, MAP_WIDTH, onMap } from '../../drawing/usMap.ts';
import { attribute, type Html, html } from '../../html.ts';
import type { Page, PageContext } from '../../page.ts';
import { placeSections, US_SECTION } from '../places/places.ts';
import { ownDatesSection } from './ownDatesSection.ts';

type Href = (path: string) => string;

/** Options of a list of all places, the one of this id chosen. */
function placeOptions(all: Catalogue, chosen: string | null): Html[] {
  return placeSections(all).flatMap(section =>
    section.groups.map(group => {
      const inUs = section.id === US_SECTION;
      const heading = inUs ? `US, ${group.heading}` : group.heading;
      const options = group.rows.map(
        ({ id, name, region }) => html`
          <option value="${id}"${attribute('data-units', !inUs && 'metric')}${attribute('selected', id === chosen)}>${region === null ? name : `${name}, ${region}`}</option>
        `,
      );
      return html`<optgroup label="${heading}">${options}</optgroup>`;
    }),
  );
}

function withoutScripts(href: Href): Html {
  return html`
    <noscript>
      <div class="notice">
        <p>
          Choosing a place needs scripts, and they are off in this browser. The pages of the <a href="${href(placesPath)}">places</a> and of
          the <a href="${href(climatesPath)}">kinds of climate</a> say the same: find the one most like yours, near you and of your height
          above the sea.
        </p>
      </div>
    </noscript>
  `;
}

function chosenSection(href: Href): Html {
  return html`
    <section class="stacked chosen" aria-labelledby="chosen" data-chosen>
      <h2 id="chosen">Chosen</h2>
      <div role="status" data-chosen-status><p>None yet.</p></div>
      <p class="buttons" data-chosen-buttons hidden>
        <a class="button" href="${href(placesPath)}" data-chosen-page>Its page</a>
        <button type="button" data-forget>Clear my place</button>
      </p>
      <div data-chosen-trees></div>
    </section>
  `;
}

/** Asks for a town where the site has files of them, and else for a ZIP code that leads to the nearest reference place. */
function searchSection(inFahrenheit: boolean, towns: boolean): Html {
  const title = towns ? 'By town or US ZIP code' : 'By US ZIP code';
  const label = towns ? 'Town, or ZIP code' : 'First three digits, or all five';
  const typed = towns
    ? html`<input id="zip" name="zip" data-zip type="text" maxlength="80" size="24" autocomplete="address-level2" spellcheck="false">`
    : html`<input id="zip" name="zip" data-zip type="text" inputmode="numeric" maxlength="5" size="6" autocomplete="postal-code">`;
  return html`
    <section aria-labelledby="by-zip">
      <h2 id="by-zip">${title}</h2>
      ${
        towns &&
        html`
          <p>
            Every town has figures of its own, worked out from the weather stations around it. A state or country helps where several share a
            name: Springfield, Illinois.
          </p>
        `
      }
      <form class="ask" method="get" data-by-zip="${towns ? 'towns' : 'places'}">
        <p>
          <label for="zip">${label}</label>
          ${typed}
        </p>
        ${
          towns &&
          html`
            <p>
              <label for="height">Your elevation, if you know it</label>
              <span class="pair">
                <input id="height" type="text" inputmode="decimal" size="6" data-height>
                <label class="unseen" for="height-unit">Unit of the elevation</label>
                <select id="height-unit" data-height-unit>
                  <option value="ft"${attribute('selected', inFahrenheit)}>feet</option>
                  <option value="m"${attribute('selected', !inFahrenheit)}>meters</option>
                </select>
              </span>
            </p>
            <p>
              <label for="spot">Your garden is</label>
              <select id="spot" data-spot>
                <option value="open">on open ground</option>
                <option value="hollow">in a cold hollow</option>
                <option value="wall">by a warm wall</option>
                <option value="city">within a city</option>
              </select>
            </p>
          `
        }
        <p><button type="submit">${towns ? 'Find it' : 'Find the nearest place'}</button></p>
      </form>
      <p class="problem" role="alert" data-zip-problem></p>
      <div role="status" data-town-found></div>
    </section>
  `;
}

function listSection(all: Catalogue): Html {
  return html`
    <section aria-labelledby="by-list">
      <h2 id="by-list">From the list</h2>
      <form class="ask" data-by-list>
        <p>
          <label for="place">Place</label>
          <select id="place" data-place-list>${placeOptions(all, null)}</select>
        </p>
        <p><button type="submit">Use this place</button></p>
      </form>
    </section>
  `;
}

function mapSection({ places }: Catalogue, href: Href): Html | null {
  const marks = places.flatMap(place => {
    const at = onMap(place);
    if (at === null) return [];
    const mark = html`
      <a href="${href(placePath(place.id))}" aria-label="${place.name}, ${place.region}">
        <title>${place.name}</title>
        <circle class="touch" cx="${at.x}" cy="${at.y}" r="24"/>
        <circle class="spot" cx="${at.x}" cy="${at.y}" r="9"/>
      </a>
    `;
    return [mark];
  });
  if (marks.length === 0) return null;
  return html`
    <section aria-labelledby="by-map">
      <h2 id="by-map">From the map</h2>
      <p>Each mark leads to the page of the place, where it can be chosen. Elsewhere in the world: from the list.</p>
      <figure class="us-map wide">
        <svg viewBox="0 0 ${MAP_WIDTH} ${MAP_HEIGHT}">
          <title>Places on a map of the United States</title>
          <use href="${href('/map/states.svg')}#states"/>
          ${marks}
        </svg>
      </figure>
    </section>
  `;
}

export function myPlacePage(all: Catalogue, { links: { href } }: PageContext): Page {
  const inFahrenheit = all.home.country === 'US';
  return {
    title: 'Your place',
    description: `Choose a place, and ${all.yard.name} says of every tree whether it lives and ripens there, and when it can travel to you.`,
    path: myPlacePath,
    scripts: ['choosePlace'],
    styles: ['choosePlace'],
    main: html`
      <h1>Your place</h1>
      <p class="standfirst">
        Choose a place, and every list, lot and cultivar says how it does there. The choice is kept on this device only; nothing is sent to
        us.
      </p>
      ${withoutScripts(href)}
      ${chosenSection(href)}
      ${searchSection(inFahrenheit, all.yard.towns !== null)}
      ${listSection(all)}
      ${mapSection(all, href)}
      ${ownDatesSection(placeOptions(all, all.home.id), inFahrenheit)}
    `,
  };
}
