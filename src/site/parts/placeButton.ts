/** The button by which the place that a page is about becomes the visitor's. Hidden where scripts are off. */

import type { Place } from '../../core/records/place.ts';
import { attribute, type Html, html } from '../html.ts';
import { nameAndWhereabouts } from '../pages/places/place.ts';
import { unitsIn } from '../words/units.ts';

export function placeButton(place: Pick<Place, 'id' | 'name' | 'region' | 'country'>): Html {
  const metric = unitsIn(place.country) === 'metric' && 'metric';
  return html`
    <button class="place-button" type="button" data-mine-set="${place.id}" data-name="${nameAndWhereabouts(place)}"${attribute('data-units', metric)} aria-pressed="false">
      Make this my place
    </button>
  `;
}
