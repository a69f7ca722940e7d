/** What may stand in the cells of a walk: the same for its files and for the page it is typed on. */

import { healthSigns, leafSigns, rootSigns, type WalkColumn, wheres, woodSigns } from '../records/walk.ts';
import type { CellKind } from './cells.ts';

const mostPlants = 100_000;

/** Bounds of what a tree in a pot can measure. Wide: beyond them is a slip of unit or keyboard. Our working figures. */
export const walkCells: Record<WalkColumn, CellKind> = {
  lot: { kind: 'id' },
  left: { kind: 'count', most: mostPlants },
  lost: { kind: 'count', most: mostPlants },
  returned: { kind: 'count', most: mostPlants },
  height_cm: { kind: 'measure', low: 1, high: 1000 },
  height_in: { kind: 'measure', low: 0.4, high: 400 },
  caliper_mm: { kind: 'measure', low: 0.5, high: 300 },
  caliper_in: { kind: 'measure', low: 0.02, high: 12 },
  roots: { kind: 'word', words: rootSigns },
  leaves: { kind: 'word', words: leafSigns },
  wood: { kind: 'word', words: woodSigns },
  health: { kind: 'word', words: healthSigns },
  where: { kind: 'word', words: wheres },
  note: { kind: 'text' },
};
