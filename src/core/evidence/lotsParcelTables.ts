/** Evidence for parcels: size, girth and dimensional weight. */

import { dimensionalLb, lengthAndGirth, roundedSides } from '../lots/parcel.ts';
import type { EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

type Sides = readonly [number, number, number];
type Rounding = 'nearest' | 'up';

/** Sides in inches, how they are rounded, and the weight by size with divisors 139 and 166 (no threshold), lb. */
const weights: readonly [Sides, Rounding, number, number][] = [
  [[30, 10, 10], 'nearest', 22, 19],
  [[48, 6, 6], 'nearest', 13, 11],
  [[12, 12, 12], 'nearest', 13, 11],
  [[36.2, 8.4, 8.4], 'nearest', 17, 14],
  [[36.2, 8.4, 8.4], 'up', 22, 19],
  [[47.6, 12, 12], 'nearest', 50, 42],
  [[24, 12, 12], 'nearest', 25, 21],
  [[56, 6, 6], 'nearest', 15, 13],
];

/** Sides in inches and length plus girth. */
const sizes: readonly [Sides, number][] = [
  [[30, 10, 10], 70],
  [[48, 6, 6], 72],
  [[48, 12, 12], 96],
  [[56, 6, 6], 80],
];

/** Weight by size with divisor 166 that counts only above a cubic foot (1728 cu in). */
const aboveCubicFoot: readonly [Sides, number][] = [
  [[48, 6, 6], 0],
  [[12, 12, 12], 0],
  [[56, 6, 6], 13],
];

function parcels(): EvidenceTable {
  const formula = rowsFrom('Volume over divisor, rounded up to a whole pound, worked by hand', 'computed');
  const girth = rowsFrom('Length plus twice width and height, worked by hand', 'computed');
  const name = (sides: Sides) => `${sides.join(' x ')} in`;
  return {
    id: 'parcels',
    title: 'Dimensional weight of parcels',
    about:
      "Carriers bill the larger of weight and size. A yard's rule rows carry the divisor, the rounding and the threshold, with the day they were checked.",
    weak: 'Carriers change these rules every year; the rows of a yard are only as good as the day they were checked.',
    rows: [
      ...sizes.map(([sides, size]) =>
        girth.number(`${name(sides)}, length plus girth`, size, lengthAndGirth(sides), 0, 'in'),
      ),
      ...weights.flatMap(([sides, rounding, by139, by166]) => {
        const what = `${name(sides)}, sides ${rounding === 'up' ? 'rounded up' : 'to the nearest inch'}`;
        const got = (divisor: number) => dimensionalLb(sides, { divisor, rounding, overCubicIn: 0 });
        return [
          formula.number(`${what}, divisor 139`, by139, got(139), 0, 'lb'),
          formula.number(`${what}, divisor 166`, by166, got(166), 0, 'lb'),
        ];
      }),
      ...aboveCubicFoot.map(([sides, lb]) =>
        formula.number(
          `${name(sides)}, divisor 166 above a cubic foot`,
          lb,
          dimensionalLb(sides, { divisor: 166, rounding: 'nearest', overCubicIn: 1728 }),
          0,
          'lb',
        ),
      ),
      formula.text(
        '47.6 x 12 x 12 in to the nearest inch',
        '48 x 12 x 12',
        roundedSides([47.6, 12, 12], 'nearest').join(' x '),
      ),
      formula.text(
        '36.2 x 8.4 x 8.4 in rounded up',
        '37 x 9 x 9',
        roundedSides([36.2, 8.4, 8.4], 'up').join(' x '),
      ),
    ],
    notChecked: [],
  };
}

export const lotsParcelTables: readonly EvidenceTable[] = [parcels()];
