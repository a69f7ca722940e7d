/** A yard walk: what was counted and seen on one day. Files: content/walks/YYYY-MM-DD.csv. */

import type { Day } from '../days.ts';

export const rootSigns = ['none', 'showing', 'holding', 'full'] as const;
export type RootSign = (typeof rootSigns)[number];
export const leafSigns = ['full', 'turning', 'falling', 'bare'] as const;
export type LeafSign = (typeof leafSigns)[number];
export const woodSigns = ['green', 'part', 'brown'] as const;
export type WoodSign = (typeof woodSigns)[number];
export const healthSigns = ['sound', 'watch', 'hold'] as const;
export type HealthSign = (typeof healthSigns)[number];

/** The columns a walk may have, with what to write in them. `lot` is required; the others in any order. */
export const walkColumns = {
  lot: 'Id of the lot.',
  left: 'How many plants are left, counted. Not a change.',
  lost: 'How many were lost since the walk before.',
  returned: 'How many came back since the walk before.',
  height_cm: 'Typical height above the pot rim, cm.',
  height_in: 'Typical height above the pot rim, in.',
  caliper_mm: 'Stem thickness, mm.',
  caliper_in: 'Stem thickness, in.',
  roots: 'none, showing, holding or full.',
  leaves: 'full, turning, falling or bare.',
  wood: 'green, part or brown.',
  health: 'sound, watch or hold.',
  where: 'Where it stands: outdoors, tunnel, store, shade.',
  note: 'For the yard; not published. May stand in private/walks/ instead.',
} as const;
export type WalkColumn = keyof typeof walkColumns;

export const wheres = ['outdoors', 'shade', 'tunnel', 'store'] as const;
export type Where = (typeof wheres)[number];

/** One line of a walk. Null: not looked at. */
export interface WalkRow {
  lot: string;
  left: number | null;
  lost: number | null;
  returned: number | null;
  heightCm: number | null;
  caliperMm: number | null;
  roots: RootSign | null;
  leaves: LeafSign | null;
  wood: WoodSign | null;
  health: HealthSign | null;
  where: Where | null;
  /** 1-based line in the file. */
  line: number;
}

/** What only the yard may know of a row: kept apart from the walk, so that nothing that shows a walk can show it. */
export interface WalkNote {
  day: Day;
  file: string;
  /** 1-based line in the file. */
  line: number;
  lot: string;
  text: string;
}

/** The columns of a walk in the private folder, where the notes of a day may stand instead. */
export const privateWalkColumns = ['lot', 'note'] as const satisfies readonly WalkColumn[];

export interface Walk {
  day: Day;
  file: string;
  rows: WalkRow[];
}
