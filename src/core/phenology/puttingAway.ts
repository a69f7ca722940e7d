/**
 * How much cold a potted tree should meet before it is put away for the winter, and by which night it must be in: one rule for guides,
 * calendars, lots and verdicts. Growers wait for nights of about 25 to 20 F (common practice, no source), which is right for wood that is
 * lignified and has hardened through frosts. Soft wood and small pots are hurt there: young figs were damaged at 25 to 27 F in early fall
 * (Frecon and Ward 2012, Rutgers fact sheet FS1198), and roots do not harden as shoots do (Rutgers fact sheet FS528).
 */

import type { Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import type { WoodSign } from '../records/walk.ts';
import { fahrenheitToCelsius } from '../units.ts';

export const ripenesses = ['soft', 'half-ripe', 'ripe', 'hardy'] as const;
/**
 * `soft`: first-year or green wood, or a pot up to #1; `half-ripe`: two to three years in a #2 to #5; `ripe`: older lignified wood in a #7 and
 * up; `hardy`: a species whose roots stand far more cold than those of a fig, whatever its age.
 */
export type Ripeness = (typeof ripenesses)[number];

export interface PuttingAway {
  /** The night that it should meet first: it goes in after the first such night, or after leaf fall where that comes later or is enough, F. */
  meetsF: number;
  /** Whether it waits for its leaves to fall as well as for that night. */
  waitsForLeaves: boolean;
  /** It goes in before the first night at or below this, F. */
  beforeF: number;
  /** For people: when it goes in. */
  when: string;
}

export const puttingAway: Readonly<Record<Ripeness, PuttingAway>> = {
  soft: {
    meetsF: 30,
    waitsForLeaves: false,
    beforeF: 27,
    when: 'Leaves down or a first light frost of 28 to 30 F (-2 to -1 C), and before any night of 27 F (-3 C)',
  },
  'half-ripe': {
    meetsF: 28,
    waitsForLeaves: true,
    beforeF: 25,
    when: 'Leaves down and one or two light frosts behind it, and before a night of 25 F (-4 C)',
  },
  ripe: {
    meetsF: 24,
    waitsForLeaves: true,
    beforeF: 20,
    when: 'Leaves down and a few nights of about 25 to 20 F (-4 to -6.5 C) behind it, and before colder ones',
  },
  hardy: {
    meetsF: 28,
    waitsForLeaves: true,
    beforeF: 15,
    when: 'Leaves down, where light frosts do no harm, and before a night of 15 F (-9.5 C)',
  },
};

/** The limits of the rule: a pot up to #1, and from #7. Liters; container classes of the trade. Standing: ours. */
const SMALL_POT_LITERS = 4;
const LARGE_POT_LITERS = 19;
/** Roots that stand this in the mix belong to a hardy species, C. Standing: ours. */
const HARDY_ROOTS_C = -8;

export interface PottedTree {
  species: Pick<Species, 'rootInjuryC'>;
  potLiters: number;
  /** Whether the coming winter is the first since it was rooted or bought. */
  firstWinter: boolean;
  /** The wood as it was seen on the last walk; null where nobody looked. */
  wood: WoodSign | null;
}

/** How ripe a tree is for the cold of fall; the careful answer where it is not known. Green wood is soft, whatever its age. */
export function ripenessOf({ species, potLiters, firstWinter, wood }: PottedTree): Ripeness {
  if (species.rootInjuryC.value <= HARDY_ROOTS_C) return 'hardy';
  if (wood === 'green' || firstWinter || potLiters <= SMALL_POT_LITERS) return 'soft';
  const lignified = wood === 'brown' || wood === null;
  return potLiters >= LARGE_POT_LITERS && lignified ? 'ripe' : 'half-ripe';
}

/** Nights the rule turns on, C. */
export const puttingAwayNightsC = (ripeness: Ripeness) => ({
  meetsC: fahrenheitToCelsius(puttingAway[ripeness].meetsF),
  beforeC: fahrenheitToCelsius(puttingAway[ripeness].beforeF),
});

/** Why, with the standing of each reason. */
export function puttingAwayReasons(ripeness: Ripeness): Reason[] {
  const hardens: Reason = {
    text: 'Roots do not harden as shoots do, so the mix decides.',
    standing: 'published',
    source: 'Rutgers Cooperative Extension, fact sheet FS528.',
  };
  const young: Reason = {
    text: 'Young figs have been damaged at 25 to 27 F (-4 to -3 C) in early fall.',
    standing: 'published',
    source: 'Frecon and Ward 2012, Rutgers Cooperative Extension, fact sheet FS1198.',
  };
  const ours: Reason = {
    text: 'The limits by age and pot are set on the careful side.',
    standing: 'ours',
    source: 'Our working figure, from the damage to young figs and common practice.',
  };
  const practice: Reason = {
    text: 'Lignified wood that has hardened through frosts is put away only after nights of about 25 to 20 F (-4 to -6.5 C).',
    standing: 'practice',
    source: 'Common practice, no source.',
  };
  if (ripeness === 'ripe') return [practice, hardens];
  return ripeness === 'hardy' ? [ours, hardens] : [young, ours, hardens];
}
