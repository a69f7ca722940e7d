/**
 * How often and how much to water: a pot by its size, a tree newly planted by its stem and the weeks since, both by the reference
 * evapotranspiration of the place and season.
 */

import { inchesToCm, LITERS_PER_US_GALLON, roundTo } from '../units.ts';

/**
 * Water a tree in a #3 pot uses, as a share of reference evapotranspiration, liters per mm: fitted to Beeson 2010, HortScience 45:1260 (1.3 liters
 * a day at market size in 11.4 liters). One coefficient from one trial: ours.
 */
const USE_LITERS_PER_MM = 0.19;
/** The pot of that trial, liters. */
const TRIAL_POT_LITERS = 11.4;
/** Use grows with the surface of the tree, so with the two-thirds power of the pot. Standing: ours. */
const USE_POWER = 2 / 3;
/** Share of the volume of a pot that may be used before it is watered again. Standing: ours. */
const SHARE_BETWEEN = 0.14;
const FEWEST_DAYS = 1;
const MOST_POT_DAYS = 10;
/** Water at a time as a share of the volume of the pot. Standing: ours. */
const waterShare = { low: 0.15, high: 0.25 } as const;

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

/** Liters a day that a tree in leaf uses in a pot. */
export function potUseLiters(etoMm: number, liters: number): number {
  return USE_LITERS_PER_MM * etoMm * (liters / TRIAL_POT_LITERS) ** USE_POWER;
}

/** Days between waterings of a tree in leaf in a pot, 1 to 10, not rounded. */
export function potWateringDays(etoMm: number, liters: number): number {
  const use = potUseLiters(etoMm, liters);
  return use <= 0 ? MOST_POT_DAYS : clamp((SHARE_BETWEEN * liters) / use, FEWEST_DAYS, MOST_POT_DAYS);
}

/** Liters to give at a time, in steps of a tenth. */
export function waterLiters(liters: number, share: { low: number; high: number } = waterShare) {
  return { low: roundTo(liters * share.low, 0.1), high: roundTo(liters * share.high, 0.1) };
}

/** How long a tree has been in the ground: weeks 1 and 2, weeks 3 to 12, the rest of its first year. */
export const plantedStages = ['first-weeks', 'rooting', 'first-year'] as const;
export type PlantedStage = (typeof plantedStages)[number];

/**
 * Days between waterings at 5 mm of evapotranspiration a day. From University of Florida IFAS, EP113 and ENH857 (daily for two weeks, every
 * other day for two months, then weekly) and University of Minnesota Extension (daily, every two to three days to week 12, then weekly); that
 * they stretch with the weather is ours.
 */
const daysAtUsualEto: Readonly<Record<PlantedStage, number>> = {
  'first-weeks': 1,
  rooting: 2.5,
  'first-year': 7,
};
const USUAL_ETO_MM = 5;
const MOST_GROUND_DAYS = 14;

/** Days between waterings of a tree in its first year in the ground, 1 to 14, not rounded. */
export function plantedWateringDays(stage: PlantedStage, etoMm: number): number {
  if (etoMm <= 0) return MOST_GROUND_DAYS;
  return clamp((daysAtUsualEto[stage] * USUAL_ETO_MM) / etoMm, FEWEST_DAYS, MOST_GROUND_DAYS);
}

/** Gallons at a time for each inch of the stem: the middle of 2 to 3, University of Florida IFAS, EP113. */
const GALLONS_PER_CALIPER_INCH = 2.5;
/** Share of the pot it came in, at a time: the middle of 25 to 30 %, University of Minnesota Extension. */
const SHARE_OF_POT = 0.275;

/** Stem of a tree whose caliper is not known, by its pot: three quarters of an inch in a #3, mm. Standing: ours. */
export function usualCaliperMm(potLiters: number): number {
  return 10 * inchesToCm(0.75) * (potLiters / TRIAL_POT_LITERS) ** (1 / 3);
}

/** Liters at a time for a tree newly planted, whichever asks for more: its stem or the pot it came in. */
export function plantedWaterLiters(caliperMm: number, potLiters: number): number {
  const inches = caliperMm / (10 * inchesToCm(1));
  return Math.max(GALLONS_PER_CALIPER_INCH * LITERS_PER_US_GALLON * inches, SHARE_OF_POT * potLiters);
}
