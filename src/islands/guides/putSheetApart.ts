/** The guide for a town as a file of its own. It is bundled the way workers are, which drops exports, so it hands itself over here. */

import { putBack, putTown } from './putSheet.ts';

declare global {
  var leafdropGuide: { putTown: typeof putTown; putBack: typeof putBack };
}

globalThis.leafdropGuide = { putTown, putBack };
