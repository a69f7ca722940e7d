/** What rain and damp air at ripening do to a fruit. */
import type { Reason } from '../records/common.ts';
import type { Fruit } from '../records/cultivar.ts';
import { rainLosses } from '../records/rainLoss.ts';
import type { FruitInRain } from '../records/speciesFruit.ts';
import { mmToInches, roundTo } from '../units.ts';
import type { WetLevel, WetVerdict } from './answers.ts';
import { DAMP_AIR_KPA, DRYING_AIR_KPA, type RipeningWindow } from './ripeningWindow.ts';
import { doyInWords, modeled, ours, reasonFrom } from './words.ts';

const rainPoints = { good: 1, fair: 0, poor: -1 } as const;
const splitPoints = { low: 1, some: 0, high: -1 } as const;
/** An open eye lets in beetles and flies that carry yeasts (UC IPM, Fig Sour Rot). */
const eyePoints = { closed: 1, sealed: 1, 'half-open': 0, open: -1, none: 0 } as const;

/** A fruit with two points or more is one step better off than the weather, with two below nothing one step worse. Standing: ours. */
const STEP_POINTS = 2;

/** For a species whose record says nothing of rain: as hard as on any, in general words. Standing: ours. */
const unknownInRain: FruitInRain = {
  worst: 'heavy-loss',
  splittingCounts: true,
  some: 'Some fruit may spoil in wet spells; pick often.',
  much: 'Much of the crop may spoil in a wet month without a cover over the tree.',
  standing: 'ours',
  source: 'The species record says nothing of rain, so it is judged with care.',
};

function outcome(level: WetLevel, inRain: FruitInRain): Reason {
  if (level === 'sound') return ours('Little of the crop should spoil.');
  return reasonFrom(level === 'heavy-loss' ? inRain.much : inRain.some, inRain);
}

const rainWords: Record<Fruit['rain'], string> = {
  good: 'holds up well in rain',
  fair: 'holds up fairly well in rain',
  poor: 'spoils in rain',
};

const eyeWords = {
  closed: 'a closed eye',
  sealed: 'an eye sealed with syrup',
  'half-open': 'a half-open eye',
  open: 'an open eye',
  none: null,
} as const;

/**
 * Points for how a fruit takes the wet, -3 to 3. Splitting counts only where that is how rain spoils the species, and an eye only where the
 * fruit has one.
 */
export function wetTolerance(
  { rain, splits, eye }: Pick<Fruit, 'rain' | 'splits' | 'eye'>,
  splittingCounts = true,
): number {
  return rainPoints[rain] + (splittingCounts ? splitPoints[splits] : 0) + eyePoints[eye];
}

/** Bounds of the words for the air, kPa short of saturated: those the wetness of a month turns on. */
function airWords(deficitKpa: number): string {
  if (deficitKpa < DAMP_AIR_KPA) return 'damp, so fruit dries slowly';
  return deficitKpa > DRYING_AIR_KPA ? 'dry, so fruit dries fast' : 'neither damp nor dry';
}

function airReason({ fromDoy, rainMm, deficitKpa }: RipeningWindow): Reason {
  const when = fromDoy === null ? 'In late summer' : `In the month from ${doyInWords(fromDoy)}`;
  const rain =
    rainMm === null
      ? 'the rain is not known'
      : `about ${roundTo(mmToInches(rainMm), 0.5)} in (${roundTo(rainMm, 5)} mm) of rain falls`;
  return modeled(`${when} ${rain}, and the air is ${airWords(deficitKpa)}.`);
}

function fruitReason({ rain, splits, eye }: Fruit, splittingCounts: boolean): Reason {
  const eyeText = eyeWords[eye] === null ? [] : [`has ${eyeWords[eye]}`];
  const splitText = splittingCounts
    ? [{ low: 'seldom splits', some: 'splits now and then', high: 'splits readily' }[splits]]
    : [];
  const more = [...splitText, ...eyeText];
  const also = more.length === 0 ? '' : `; it ${more.join(' and ')}`;
  return { text: `The grower finds that its fruit ${rainWords[rain]}${also}.`, standing: 'seen' };
}

/** What the wet of a month of picking does to a fruit of a species. */
export function wetVerdict(
  window: RipeningWindow,
  fruit: Fruit,
  rainAtRipening: FruitInRain | null = null,
): WetVerdict {
  const inRain = rainAtRipening ?? unknownInRain;
  const points = wetTolerance(fruit, inRain.splittingCounts);
  const step = points >= STEP_POINTS ? -1 : points <= -STEP_POINTS ? 1 : 0;
  // Dry weather spoils nothing, however tender the fruit.
  const risk = window.wetness === 0 ? 0 : Math.max(0, window.wetness + step);
  const level = rainLosses[Math.min(risk, rainLosses.indexOf(inRain.worst))] as WetLevel;
  return {
    level,
    rainMm: window.rainMm,
    deficitKpa: window.deficitKpa,
    because: [airReason(window), fruitReason(fruit, inRain.splittingCounts), outcome(level, inRain)],
  };
}
