/** One level out of winter, crop, wet and chill. */

import type { ChillState } from '../phenology/chill.ts';
import type { Level, WetLevel, WinterCare } from './answers.ts';

export interface LevelParts {
  readonly care: WinterCare;
  /** Best chance of a crop outdoors, and of a stored pot with a head start. */
  readonly outdoors: number;
  readonly headStart: number;
  readonly wet: WetLevel;
  readonly chill: ChillState;
  /** No crop sets fruit here. */
  readonly fruitless: boolean;
}

/** Least share of years with a crop for each level. Standing: ours. */
const AT_HOME_FROM = 0.8;
const WORTH_IT_FROM = 0.5;
const GAMBLE_FROM = 0.2;

const hardy = (care: WinterCare) => care === 'nothing' || care === 'mulch';

export function levelOf({ care, outdoors, headStart, wet, chill, fruitless }: LevelParts): Level {
  if (fruitless) return 'not-here';
  const rested = chill !== 'short';
  const best = Math.max(outdoors, headStart);
  if (hardy(care) && outdoors >= AT_HOME_FROM && wet !== 'heavy-loss' && chill === 'met') return 'at-home';
  if ((hardy(care) || care === 'wrap') && outdoors >= WORTH_IT_FROM && rested) return 'with-care';
  if (best >= WORTH_IT_FROM && rested) return 'in-a-pot';
  return best >= GAMBLE_FROM ? 'a-gamble' : 'not-here';
}
