/**
 * The one script that stands in pages themselves. It writes the name of the visitor's place into the head as soon as the page is read, from
 * what is kept on the device, and asks for the script of the place two frames after the page has all that it asks for itself, so that nothing
 * stands in the way of styles and glyphs. The content policy of the site names its hash.
 */

import { createHash } from 'node:crypto';

/** The file to ask for is in `data-src` of the element, the key of the place in the storage in `data-key`. */
export const deferredScript =
  "const { src, key } = document.querySelector('script[data-src]').dataset; try { document.querySelector('[data-here-name]').textContent = JSON.parse(localStorage.getItem(key)).name.split(',')[0]; } catch {} addEventListener('load', () => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => import(src)))));";

/** As content policies name it. */
export const deferredScriptHash: `sha256-${string}` = `sha256-${createHash('sha256').update(deferredScript).digest('base64')}`;
