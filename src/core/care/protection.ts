/** How a tree in the ground is brought through winter: the margin between the coldest night and what it stands, and what each cover is worth. */

import type { Reason } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import { temperatureInWords } from '../units.ts';

const protectionMethods = ['none', 'mulch', 'wrap', 'bury', 'pot-only'] as const;
type ProtectionMethod = (typeof protectionMethods)[number];

export interface ProtectionFigure {
  method: ProtectionMethod;
  /** What it is, for a list. */
  name: string;
  how: string;
  /** Degrees C by which the tree inside stays warmer on the coldest night; null where that is not its use. */
  gainC: { low: number; high: number } | null;
  /** From this margin in C upwards the method is enough. */
  fromMarginC: number;
}

/** Gains and margins are our working figures: no trial that measured them for these species was found. */
export const protectionFigures: readonly ProtectionFigure[] = [
  {
    method: 'none',
    name: 'no cover',
    how: 'Nothing beyond mulch on the roots.',
    gainC: null,
    fromMarginC: 3,
  },
  {
    method: 'mulch',
    name: 'mulched crown and wind shelter',
    how: 'Heap loose mulch over the crown and break the wind with a screen.',
    gainC: { low: 0, high: 3 },
    fromMarginC: 0,
  },
  {
    method: 'wrap',
    name: 'cage of dry leaves or straw',
    how: 'Tie the branches in, stand a wire cage round them, fill it with dry leaves or straw and roof it against rain.',
    gainC: { low: 3, high: 5 },
    fromMarginC: -6,
  },
  {
    method: 'bury',
    name: 'bent down and buried',
    how: 'Bend the tree to the ground in a trench, cover it with boards and then with soil and leaves.',
    gainC: { low: 8, high: 12 },
    fromMarginC: -12,
  },
  {
    method: 'pot-only',
    name: 'kept in a pot and stored',
    how: 'Keep the tree in a pot and store it through the winter.',
    gainC: null,
    fromMarginC: Number.NEGATIVE_INFINITY,
  },
];

export interface WinterProtection {
  method: ProtectionMethod;
  /** Low of one winter in ten minus what the tree stands, C: below 0 it is hurt without cover. */
  marginC: number;
  because: Reason[];
}

/** Winters a tree has stood in the ground, the coming one included; 3 stands for all later ones. */
export type WinterNumber = 1 | 2 | 3;

/** A tree in its second winter in the ground is taken for this much more tender than an established one, C. Standing: ours. */
const SECOND_WINTER_ALLOWANCE_C = 3;

/** The cold a dormant tree stands in the ground, C. */
export function limitC(species: Species, winter: WinterNumber): number {
  if (winter === 1) return species.dormantFirstWinterC.value;
  const established = species.dormantEstablishedC.value;
  if (winter === 3) return established;
  return Math.min(
    established + SECOND_WINTER_ALLOWANCE_C,
    Math.max(established, species.dormantFirstWinterC.value),
  );
}

const ageInWords = { 1: 'in its first winter', 2: 'in its second winter', 3: 'once established' } as const;

/** The least protection that brings a tree through nine winters in ten. `lowC` is the low of one winter in ten. */
export function winterProtection(species: Species, winter: WinterNumber, lowC: number): WinterProtection {
  const figure = winter === 1 ? species.dormantFirstWinterC : species.dormantEstablishedC;
  const limit = limitC(species, winter);
  const marginC = lowC - limit;
  const chosen = protectionFigures.find(({ fromMarginC }) => marginC >= fromMarginC)!;
  return {
    method: chosen.method,
    marginC,
    because: [
      { text: `One winter in ten here reaches ${temperatureInWords(lowC)}.`, standing: 'modeled' },
      {
        text: `Dormant ${species.common[0] ?? species.botanical} wood is hardy to ${temperatureInWords(limit)} ${ageInWords[winter]}.`,
        standing: winter === 2 ? 'ours' : figure.standing,
        source: figure.source,
      },
    ],
  };
}
