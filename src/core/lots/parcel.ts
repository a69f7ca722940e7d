/** Carriers' weights: what a parcel is billed as by size. The rules are dated rows of the yard record, never code. */

import type { ParcelRule } from '../records/yard.ts';

type Sides = readonly [number, number, number];

export interface Billing {
  rule: string;
  /** Weight by size, lb; 0 where the row does not apply to so small a parcel. */
  dimensionalLb: number;
  billableLb: number;
  /** Limits of the row that the parcel exceeds, in words. */
  over: string[];
}

/** Guards against a measure such as 12.000000001 being rounded up to 13. */
const DUST = 1e-6;
const up = (value: number) => Math.ceil(value - DUST);

/** Sides in whole inches as the row has it, longest first. */
export function roundedSides(sidesIn: Sides, rounding: ParcelRule['rounding']): [number, number, number] {
  const round = rounding === 'up' ? up : (value: number) => Math.floor(value + 0.5 + DUST);
  return sidesIn.map(round).sort((a, b) => b - a) as [number, number, number];
}

/** Length plus girth in inches: the longest side and twice the sum of the others. */
export function lengthAndGirth([length, width, height]: Sides): number {
  return length + 2 * (width + height);
}

/** Weight by size in whole pounds, rounded up; 0 where the volume is not above the row's threshold. */
export function dimensionalLb(
  sidesIn: Sides,
  rule: Pick<ParcelRule, 'divisor' | 'rounding' | 'overCubicIn'>,
): number {
  const [length, width, height] = roundedSides(sidesIn, rule.rounding);
  const volume = length * width * height;
  return volume > rule.overCubicIn ? up(volume / rule.divisor) : 0;
}

/** What a parcel of these outer sides (in) and weight (lb) is billed as by one row, and which limits it breaks. */
export function billingOf(sidesIn: Sides, weightLb: number, rule: ParcelRule): Billing {
  const sides = roundedSides(sidesIn, rule.rounding);
  const dimensional = dimensionalLb(sidesIn, rule);
  const size = lengthAndGirth(sides);
  const over: string[] = [];
  if (rule.longestIn !== null && sides[0] > rule.longestIn) {
    over.push(`longest side ${sides[0]} in, at most ${rule.longestIn} in`);
  }
  if (rule.lengthAndGirthIn !== null && size > rule.lengthAndGirthIn) {
    over.push(`length plus girth ${size} in, at most ${rule.lengthAndGirthIn} in`);
  }
  if (rule.heaviestLb !== null && weightLb > rule.heaviestLb) {
    over.push(`weight ${up(weightLb)} lb, at most ${rule.heaviestLb} lb`);
  }
  return {
    rule: rule.name,
    dimensionalLb: dimensional,
    billableLb: Math.max(up(weightLb), dimensional),
    over,
  };
}
