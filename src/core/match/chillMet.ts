/** Why the chill of a place is enough or not, in words. */
import type { ClimateAnswer } from '../climate/summary.ts';
import { type ChillOfPlace, type ChillState, chillNeed } from '../phenology/chill.ts';
import type { Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import { modeled, reasonFrom } from './words.ts';

const chillWords: Readonly<Record<ChillState, string>> = {
  met: 'Winters give it the chill it needs to wake well.',
  doubtful: 'Some winters are too warm for it to wake well.',
  short: 'Winters are too warm for it: it wakes late and thinly and may not flower.',
};

/** Why the chill is enough or not; nothing for a species without a figure. */
export function chillReasons(
  species: Species,
  state: ChillState,
  chill: ClimateAnswer<ChillOfPlace>,
): Reason[] {
  const need = chillNeed(species);
  const figure = need?.unit === 'portions' ? species.chillPortions : species.chillHours;
  if (!need || !figure) return [];
  const unit = need.unit === 'portions' ? 'chill portions' : 'hours of chill';
  const { p10, p90 } = chill.answer[need.unit];
  return [
    { text: chillWords[state], standing: 'modeled' },
    reasonFrom(`It needs about ${Math.round(need.value)} ${unit}.`, figure),
    modeled(
      `Nine winters in ten give more than ${Math.round(p10)} here; one in ten gives more than ${Math.round(p90)}.`,
    ),
  ];
}
