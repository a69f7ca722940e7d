/** What a page may load and run (CSP Level 3): its own files, the one script that stands in pages themselves, and the search index, which is WebAssembly. */

import { deferredScriptHash } from './deferredScript.ts';

export const contentPolicy = [
  "default-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "object-src 'none'",
  "base-uri 'self'",
  "form-action 'self'",
  `script-src 'self' 'wasm-unsafe-eval' '${deferredScriptHash}'`,
  "style-src 'self'",
].join('; ');
