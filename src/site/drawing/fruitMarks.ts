/** The small plates of a catalogue: their one scale, their file, and what a row needs to show one. */

import type { Catalogue } from '../../core/catalogue.ts';
import type { Cultivar } from '../../core/records/cultivar.ts';
import type { Species } from '../../core/records/species.ts';
import { roundTo } from '../../core/units.ts';
import { memoize } from '../memo.ts';
import { fruitKind } from './plate/kinds.ts';
import { symbolId, symbolOf } from './plate/small.ts';
import { colorsOf } from './plate.ts';

export const fruitMarksPath = '/plates.svg';

/**
 * One scale for each kind of picture. Where all fruits of a yard are small, they are shown at so many px to the millimeter (`usual`); the
 * largest never takes more than this, px.
 */
const looks = {
  row: { usual: 0.5, largest: 48 },
  block: { usual: 1, largest: 84 },
  shelf: { usual: 1.2, largest: 104 },
} as const;
export type MarkLook = keyof typeof looks;

export interface FruitMark {
  /** Id in the file of small plates. */
  symbol: string;
  colors: string;
  /** Px. */
  width: number;
  height: number;
}

const largestMm = memoize(({ cultivars }: Pick<Catalogue, 'cultivars'>): number => {
  return Math.max(1, ...cultivars.flatMap(({ cultivar: { fruit } }) => [fruit.lengthMm, fruit.widthMm]));
});

/** Px to the millimeter, one for the whole catalogue: fruits of two pages can be compared. */
export function markScale(catalogue: Pick<Catalogue, 'cultivars'>, look: MarkLook): number {
  const { usual, largest } = looks[look];
  return Math.min(usual, largest / largestMm(catalogue));
}

/** The small plate of a cultivar. */
export function fruitMark(
  catalogue: Catalogue,
  { fruit }: Pick<Cultivar, 'fruit'>,
  species: Species,
  look: MarkLook = 'row',
): FruitMark {
  const scale = markScale(catalogue, look);
  return {
    symbol: symbolId(fruitKind(species.botanical, fruit), fruit.shape),
    colors: colorsOf(fruit),
    width: roundTo(fruit.widthMm * scale, 0.5),
    height: roundTo(fruit.lengthMm * scale, 0.5),
  };
}

/** The file of small plates: a symbol for each kind and shape that the yard grows. */
export function fruitMarksFile({ cultivars }: Pick<Catalogue, 'cultivars'>): string {
  const symbols = new Map(
    cultivars.map(({ cultivar: { fruit }, species }) => {
      const kind = fruitKind(species.botanical, fruit);
      return [symbolId(kind, fruit.shape), () => symbolOf(kind, fruit.shape)] as const;
    }),
  );
  const drawn = [...symbols].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, draw]) => draw());
  return `<svg xmlns="http://www.w3.org/2000/svg">${drawn.join('')}</svg>\n`;
}
