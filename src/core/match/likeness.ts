/**
 * How like two climates are, as far as a fruit tree notices: the low of a hard winter, the heat of the year, the drying power of late-summer
 * air. What was seen in one place counts in another by this, and not by the name of its class: two places of one class can be half a summer
 * apart.
 */
import type { ClimateFigures } from '../climate/figures.ts';
import { ripeningAir } from '../climate/placeClass.ts';

export interface ClimateTraits {
  /** Low of one winter in ten, C. */
  readonly winterLowC: number;
  /** C-degree-days a year above 10 C, from the monthly means. */
  readonly heat: number;
  /** Vapor pressure deficit of late summer, kPa. */
  readonly deficitKpa: number;
}

const HEAT_BASE_C = 10;
const DAYS_PER_MONTH = 365 / 12;

/** What counts of a climate; `winterLowC` is the low of one winter in ten. */
export function climateTraits(figures: ClimateFigures, winterLowC: number): ClimateTraits {
  const heat = figures.tminC.reduce((sum, low, month) => {
    const mean = (low + (figures.tmaxC[month] as number)) / 2;
    return sum + DAYS_PER_MONTH * Math.max(0, mean - HEAT_BASE_C);
  }, 0);
  return { winterLowC, heat, deficitKpa: ripeningAir(figures).deficitKpa };
}

/** Differences at which likeness falls to about 0.6; at twice that it is about 0.14. Standing: ours. */
const WINTER_LOW_C = 3;
const HEAT_RATIO = 1.12;
const DEFICIT_KPA = 0.5;

const bell = (inWidths: number) => Math.exp(-(inWidths ** 2) / 2);

/** Likeness of two winters, 0 to 1: what cold did to a tree in one says something of the other. */
export function winterLikeness(one: ClimateTraits, other: ClimateTraits): number {
  return bell((one.winterLowC - other.winterLowC) / WINTER_LOW_C);
}

/** Likeness of two summers, 0 to 1: whether a crop ripened in one says something of the other. */
export function summerLikeness(one: ClimateTraits, other: ClimateTraits): number {
  if (one.heat <= 0 || other.heat <= 0) return one.heat === other.heat ? 1 : 0;
  const heat = Math.log(one.heat / other.heat) / Math.log(HEAT_RATIO);
  return bell(heat) * bell((one.deficitKpa - other.deficitKpa) / DEFICIT_KPA);
}
