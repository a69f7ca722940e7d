/** What a page may load and run (CSP Level 3): files of the site, the one script that stands in pages themselves, and the search index, which is WebAssembly. */

import { deferredScriptHash } from './deferredScript.ts';

/** What holds for every page, whoever makes it. */
export const directives = [
  "default-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'self'",
] as const;

/** The policy of the pages of this program. Pages that a yard adds get theirs from the site generator, with the hashes of what they hold. */
export const contentPolicy = [
  ...directives,
  `script-src 'self' 'wasm-unsafe-eval' '${deferredScriptHash}'`,
  "style-src 'self'",
].join('; ');
