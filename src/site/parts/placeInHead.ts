/**
 * The visitor's place in the head of every page: what it is, and a way to set, change and clear it. The room of its name is fixed, so that
 * nothing moves when a script writes it. Without scripts it leads to the pages of places.
 */

import { myPlacePath, placesPath } from '../addresses/paths.ts';
import { type Html, html } from '../html.ts';
import { memoize } from '../memo.ts';

/** Said while no place is chosen; the script that knows better writes over it. */
const noPlaceYet = 'Set your place';

export const placeInHead = memoize(
  (href: (path: string) => string): Html => html`
    <details class="here" data-here>
      <summary><span class="unseen">Your place: </span><span data-here-name>${noPlaceYet}</span></summary>
      <div class="here-panel">
        <p data-here-words>Name your town or ZIP code, and every page says what ripens there and when a tree can travel.</p>
        <form class="place-field" action="${href(myPlacePath)}" method="get">
          <label for="here-place">Town or ZIP code</label>
          <span><input id="here-place" name="zip" type="text" maxlength="60" autocomplete="postal-code"><button type="submit">Set</button></span>
        </form>
        <p role="status" data-here-status></p>
        <p class="here-ways">
          <a href="${href(placesPath)}" data-here-page>All places</a>
          <a href="${href(myPlacePath)}">Other ways to choose</a>
          <button type="button" data-here-clear hidden>Clear</button>
        </p>
        <p class="soft">Kept on this device only.</p>
      </div>
    </details>
  `,
);
