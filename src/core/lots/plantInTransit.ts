/** How much room a plant takes in a carton and what it weighs, by form of sale. All figures here are our working figures. */

import type { Form } from '../records/common.ts';

/** Share of a cube of the pot's width that its mix fills: pots taper. */
const POT_FILL = 0.7;
/** Weight of moist potting mix, kg per liter. */
const MIX_KG_PER_LITER = 0.9;
/** Room that folded leaves take across, cm. */
const LEAVES_ACROSS_CM = 18;
/** Bared roots in their wrap: length below the collar and room across, cm, and weight of the damp wrap, kg. */
const BARE_ROOTS_LONG_CM = 25;
const BARE_ROOTS_ACROSS_CM = 12;
const WRAP_KG = 0.5;
/** A tree without its mix: least and most, kg, and what each class above the smallest adds. */
const LEAST_TREE_KG = 0.2;
const MOST_TREE_KG = 1;
const TREE_KG_PER_CLASS = 0.04;

/** Width (and, nearly, depth) of a pot of a volume, cm. */
export function potWidthCm(liters: number): number {
  return ((liters * 1000) / POT_FILL) ** (1 / 3);
}

export interface TransitPlant {
  lengthCm: number;
  acrossCm: number;
  weightKg: number;
}

/** A plant packed for the road. `heightCm` is above the rim or the collar, after cutting back; `liters` null: never potted. */
export function packedPlant(
  form: Form,
  heightCm: number,
  liters: number | null,
  classIndex: number,
): TransitPlant {
  const treeKg = Math.min(LEAST_TREE_KG + TREE_KG_PER_CLASS * classIndex, MOST_TREE_KG);
  if (form === 'bare-root' || liters === null) {
    return {
      lengthCm: heightCm + BARE_ROOTS_LONG_CM,
      acrossCm: BARE_ROOTS_ACROSS_CM,
      weightKg: treeKg + WRAP_KG,
    };
  }
  const potCm = potWidthCm(liters);
  return {
    lengthCm: heightCm + potCm,
    acrossCm: form === 'leafed-pot' ? Math.max(potCm, LEAVES_ACROSS_CM) : potCm,
    weightKg: treeKg + liters * MIX_KG_PER_LITER,
  };
}
