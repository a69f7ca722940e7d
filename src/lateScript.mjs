/**
 * The one script that stands in pages themselves: it asks for the script of a page two frames after the page has all that it asks for itself,
 * so that nothing stands in the way of styles and letters. The content policy of the site, in `astro.config.mjs`, names its hash. JavaScript,
 * since the generator reads that file.
 */

import { createHash } from 'node:crypto';

/** The file to ask for is in `data-src` of the element. */
export const lateScript =
  "const { src } = document.querySelector('script[data-src]').dataset; addEventListener('load', () => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => import(src)))));";

/** As content policies name it. @type {`sha256-${string}`} */
export const lateScriptHash = `sha256-${createHash('sha256').update(lateScript).digest('base64')}`;
