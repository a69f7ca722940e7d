/** The answers for a town as a file of its own. It is bundled the way workers are, which drops exports, so it hands itself over here. */

import { answerTown, townWeather } from './answer.ts';

declare global {
  var leafdropTown: { answerTown: typeof answerTown; townWeather: typeof townWeather };
}

globalThis.leafdropTown = { answerTown, townWeather };
