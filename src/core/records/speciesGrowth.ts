/** What a species record says of a grown tree: when it first fruits, how big it gets, which pot it can stay in. */

import { z } from 'zod';
import { type Figure, figure, normaliseFigure } from './common.ts';

const lengthUnits = ['ft', 'm'] as const;
const volumeUnits = ['gal', 'L'] as const;

export const writtenGrowth = z
  .strictObject({
    first_fruit: figure('Years from planting a tree of the size sold here to its first crop.', [
      'years',
    ]).optional(),
    height: figure('Height of a grown tree in the ground that is left to itself.', lengthUnits).optional(),
    spread: figure('Width of its crown.', lengthUnits).optional(),
    final_pot: figure(
      'Pot in which it can stay and crop for good, by the mix it holds.',
      volumeUnits,
    ).optional(),
  })
  .describe('What becomes of the tree; told on the pages of its cultivars and lots.');

/** Each null where the record says nothing. */
export interface Growth {
  /** From planting. */
  firstFruitYears: Figure | null;
  heightCm: Figure | null;
  spreadCm: Figure | null;
  finalPotLiters: Figure | null;
}

export const noGrowth: Growth = {
  firstFruitYears: null,
  heightCm: null,
  spreadCm: null,
  finalPotLiters: null,
};

export function normaliseGrowth(written: z.infer<typeof writtenGrowth>): Growth {
  const { first_fruit, height, spread, final_pot } = written;
  return {
    firstFruitYears: first_fruit ? normaliseFigure(first_fruit) : null,
    heightCm: height ? normaliseFigure(height) : null,
    spreadCm: spread ? normaliseFigure(spread) : null,
    finalPotLiters: final_pot ? normaliseFigure(final_pot) : null,
  };
}
