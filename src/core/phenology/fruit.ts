/**
 * Bloom, fruit growth and ripening. Figs and mulberries ripen by heat, figs no sooner than so many days from budbreak. The fruit of persimmons, jujubes and pomegranates takes so many
 * days from bloom however warm they are, as long as a least heat is met; heat alone has them ripe in midsummer where it is hot.
 * Standing: ours, fitted; the tables of `core/evidence` show the errors.
 */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { Crop, Figure, RipeningClass } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import { type GrowingCalendar, reachedOn } from './growingYear.ts';

/**
 * Days by which ripening moves with each day that bloom is late: 0.5 to 0.6 leaves the smallest errors for all four species, places
 * left out in turn. Standing: ours, fitted.
 */
export const BLOOM_SHARE = 0.6;

/** How badly a heat need is known, as a share of it. Standing: ours; two plantings of one fig differed by 12 % (Souza et al. 2009). */
export const NEED_SD_SHARE = 0.08;
/** How badly the days from bloom are known. Standing: ours, from the errors of the fit. */
export const DAYS_SD = 8;

/** What a crop asks for before its first fruit is ripe. */
export type RipeningNeed =
  | {
      readonly by: 'heat';
      /** C-degree-days from spring. */
      readonly heat: number;
      /** C-degree-days from spring to budbreak. */
      readonly budbreakHeat: number;
      /** Least days from budbreak, however hot it is. */
      readonly leastDays: number;
    }
  | {
      readonly by: 'bloom';
      /** C-degree-days from spring to full bloom. */
      readonly bloomHeat: number;
      /** Days from full bloom to ripe, for a bloom on May 25. */
      readonly days: number;
      /** Least C-degree-days between them. */
      readonly leastHeat: number;
    };

/** The figure of the record that a ripening class rests on; null when there is none. */
export function ripeningFigure(species: Species, crop: Crop, name: RipeningClass): Figure | null {
  const { bloom, heatNeed } = species;
  if (bloom === null) return heatNeed[crop][name] ?? null;
  return crop === 'main' ? (bloom.toRipeDays[name] ?? null) : null;
}

/** What a crop of a class asks for; null when the record has no figure for it. */
export function ripeningNeed(species: Species, crop: Crop, name: RipeningClass): RipeningNeed | null {
  const figure = ripeningFigure(species, crop, name);
  if (figure === null) return null;
  const { bloom } = species;
  if (bloom === null) {
    const leastDays = species.leastDays[crop]?.value ?? 0;
    return { by: 'heat', heat: figure.value, budbreakHeat: species.budbreakHeat.value, leastDays };
  }
  const mid = bloom.toRipeDays.mid?.value ?? figure.value;
  return {
    by: 'bloom',
    bloomHeat: bloom.heat.value,
    days: figure.value,
    leastHeat: (bloom.leastHeat.value * figure.value) / mid,
  };
}

/** Where the heat of a year counts from, so that a need is met on the day that completes `heat` above `baseline`. */
export interface GrownFrom {
  readonly heatSum: Float64Array;
  /** Index from which the search starts. */
  readonly from: number;
  /** Heat sum that counts as nothing, C-degree-days; below zero for a tree that starts with heat behind it. */
  readonly baseline: number;
}

/** Full bloom: the day that completes the species' heat. 365 when the year does not give it. */
export function bloomOn({ heatSum, from, baseline }: GrownFrom, bloomHeat: number): number {
  return reachedOn(heatSum, from, baseline + bloomHeat);
}

/**
 * The first day on which a crop timed by heat can be ripe, however hot it is: so many days from budbreak. 0 for a crop that has no such least.
 * A tree with a head start is counted from the day it moves out, which errs late.
 */
export function leastDaysMetOn(
  { heatSum, from, baseline }: GrownFrom,
  { budbreakHeat, leastDays }: Extract<RipeningNeed, { by: 'heat' }>,
): number {
  return leastDays === 0 ? 0 : reachedOn(heatSum, from, baseline + budbreakHeat) + leastDays;
}

/** The day a fruit has had its days, for a bloom on some day: a late bloom is partly made up. */
export function daysFromBloom(bloom: number, days: number, { usualBloom }: GrowingCalendar): number {
  return Math.round(usualBloom + days + BLOOM_SHARE * (bloom - usualBloom));
}

/** The day the least heat since bloom is met. 365 when the year does not give it. */
export function leastHeatMetOn(heatSum: Float64Array, bloom: number, leastHeat: number): number {
  return bloom >= DAYS_PER_YEAR
    ? DAYS_PER_YEAR
    : reachedOn(heatSum, bloom, (heatSum[bloom] as number) + leastHeat);
}
