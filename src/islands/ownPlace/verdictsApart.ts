/** The verdicts for own freeze dates as a file of its own. It is bundled the way workers are, which drops exports, so it hands itself over here. */

import { ownSheetWeather, ownVerdicts, rehearsal } from './verdicts.ts';

declare global {
  var leafdropVerdicts: {
    ownVerdicts: typeof ownVerdicts;
    ownSheetWeather: typeof ownSheetWeather;
    rehearsal: typeof rehearsal;
  };
}

globalThis.leafdropVerdicts = { ownVerdicts, ownSheetWeather, rehearsal };
