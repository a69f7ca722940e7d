/**
 * The one script that stands in pages themselves: it asks for the script of a page two frames after the page has all that it asks for itself,
 * so that nothing stands in the way of styles and glyphs. The content policy of the site names its hash.
 */

import { createHash } from 'node:crypto';

/** The file to ask for is in `data-src` of the element. */
export const deferredScript =
  "const { src } = document.querySelector('script[data-src]').dataset; addEventListener('load', () => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => import(src)))));";

/** As content policies name it. */
export const deferredScriptHash: `sha256-${string}` = `sha256-${createHash('sha256').update(deferredScript).digest('base64')}`;
