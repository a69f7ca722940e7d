/** The answers for a town as a file of its own. It is bundled the way workers are, which drops exports, so it hands itself over here. */

import { answerTown } from './answer.ts';

declare global {
  var leafdropTown: { answerTown: typeof answerTown };
}

globalThis.leafdropTown = { answerTown };
