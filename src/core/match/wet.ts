/** What rain and damp air at ripening do to a fruit. */
import type { Reason } from '../records/common.ts';
import type { Fruit } from '../records/cultivar.ts';
import { roundTo } from '../units.ts';
import type { WetLevel, WetVerdict } from './answers.ts';
import type { RipeningWindow } from './ripeningWindow.ts';
import { doyInWords, modelled, ours } from './words.ts';

const rainPoints = { good: 1, fair: 0, poor: -1 } as const;
const splitPoints = { low: 1, some: 0, high: -1 } as const;
/** An open eye lets in beetles and flies that carry yeasts (UC IPM, Fig Sour Rot). */
const eyePoints = { closed: 1, sealed: 1, 'half-open': 0, open: -1, none: 0 } as const;

/** A fruit with two points or more is one step better off than the weather, with two below nothing one step worse. Standing: ours. */
const STEP_POINTS = 2;

const levelByRisk: readonly WetLevel[] = ['sound', 'some-loss', 'heavy-loss'];

const levelWords: Readonly<Record<WetLevel, string>> = {
  sound: 'Little of the crop should spoil.',
  'some-loss': 'Some fruit will split or sour: pick every day in wet spells.',
  'heavy-loss': 'Much of the crop will split or sour without a cover over the tree.',
};

const eyeWords = {
  closed: 'closed eye',
  sealed: 'eye sealed with syrup',
  'half-open': 'half-open eye',
  open: 'open eye',
  none: null,
} as const;

/** Points for how a fruit takes the wet, -3 to 3. */
export function wetTolerance({ rain, splits, eye }: Pick<Fruit, 'rain' | 'splits' | 'eye'>): number {
  return rainPoints[rain] + splitPoints[splits] + eyePoints[eye];
}

function airReason({ fromDoy, rainMm, deficitKpa }: RipeningWindow): Reason {
  const when = fromDoy === null ? 'In late summer' : `In the month from ${doyInWords(fromDoy)}`;
  const rain = rainMm === null ? 'rain is not known' : `about ${roundTo(rainMm, 5)} mm of rain fall`;
  return modelled(`${when} ${rain}, and the air is ${roundTo(deficitKpa, 0.1)} kPa short of saturated.`);
}

function fruitReason({ rain, splits, eye }: Fruit): Reason {
  const eyeText = eyeWords[eye] === null ? '' : `, ${eyeWords[eye]}`;
  const splitText = { low: 'seldom splits', some: 'splits now and then', high: 'splits readily' }[splits];
  return { text: `The grower finds its fruit ${rain} in rain; it ${splitText}${eyeText}.`, standing: 'seen' };
}

export function wetVerdict(window: RipeningWindow, fruit: Fruit): WetVerdict {
  const points = wetTolerance(fruit);
  const step = points >= STEP_POINTS ? -1 : points <= -STEP_POINTS ? 1 : 0;
  // Dry weather spoils nothing, however tender the fruit.
  const risk = window.wetness === 0 ? 0 : Math.min(2, Math.max(0, window.wetness + step));
  const level = levelByRisk[risk] as WetLevel;
  return {
    level,
    rainMm: window.rainMm,
    deficitKpa: window.deficitKpa,
    because: [airReason(window), fruitReason(fruit), ours(levelWords[level])],
  };
}
