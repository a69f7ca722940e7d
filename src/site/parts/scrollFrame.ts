/** A frame in which a wide table scrolls sideways, so that the page does not. */

import { type Html, html } from '../html.ts';

/** It takes the keyboard, or its hidden part could not be reached. `label` says what is in it, for people who do not see it. */
export function scrollFrame(label: string, table: Html): Html {
  return html`<section class="scroll" aria-label="${label}" tabindex="0">${table}</section>`;
}
