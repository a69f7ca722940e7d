/**
 * The least price at which a plant does not lose money. Private: neither the floor nor what it is made of is ever published;
 * a page may only say that a price was raised to it.
 *
 * Space is charged per square foot and week. Source of the method: Fisher, Greenhouse Grower, "square foot week" costing.
 */

import { type Day, daysBetween, earlier } from '../days.ts';
import { containerClasses } from '../records/container.ts';
import type { Lot } from '../records/lot.ts';
import type { Costs } from '../records/yard.ts';

/** Share of starts that become a sellable tree where the species gives none for the method. Standing: ours. */
export const UNKNOWN_SUCCESS = 0.7;

/** A lower success is taken as this: a lot that nearly all died says nothing about the price of the rest. Standing: ours. */
export const LEAST_SUCCESS = 0.05;

/** Overhead and labor of one square foot for one week, from a year's overhead, the area, the share in use and the weeks. */
export function spaceWeekRate(yearly: number, area: number, inUse: number, weeks: number): number {
  return yearly / (area * inUse * weeks);
}

/** Starts needed for one sellable plant when each stage keeps only a share of what enters it. */
export function startsPerPlant(stages: readonly number[]): number {
  return stages.reduce((starts, share) => starts / share, 1);
}

/** Price that leaves a margin (a share of the price, below 1) over a cost. Throws a RangeError for a margin of 1 or more. */
export function priceForMargin(cost: number, margin: number): number {
  if (!(margin >= 0 && margin < 1)) throw new RangeError(`margin ${margin} is outside 0 to 1`);
  return cost / (1 - margin);
}

/** Markup on cost that equals a margin on price. */
export function markupFromMargin(margin: number): number {
  return priceForMargin(1, margin) - 1;
}

/** The dearest row at or below a class, 0 when there is none: a larger pot never costs less, and gaps in the rows are filled. */
function upTo(rows: Record<string, number>, classIndex: number): number {
  return containerClasses
    .slice(0, classIndex + 1)
    .reduce((most, { name }) => Math.max(most, rows[name] ?? 0), 0);
}

/** Pots, and square-foot weeks spent in them up to a day. */
function potsAndSpace(lot: Lot, costs: Costs, asOf: Day): { pots: number; spaceWeeks: number } {
  let [pots, spaceWeeks] = [0, 0];
  const stays = lot.pottings.filter(({ date }) => date <= asOf);
  stays.forEach(({ date, container: { classIndex } }, index) => {
    const until = stays[index + 1]?.date ?? earlier(lot.lifted ?? asOf, asOf);
    pots += upTo(costs.pot, classIndex);
    spaceWeeks += upTo(costs.areaSqft, classIndex) * Math.max(Math.floor(daysBetween(date, until) / 7), 0);
  });
  return { pots, spaceWeeks };
}

/**
 * Floor of the price of one plant on a day, in major units: what went into its start, pots and space, spread over the starts that
 * live; packing; then the unsold, the margin and the fees.
 */
export function costFloor(lot: Lot, costs: Costs, success: number | null, asOf: Day): number {
  const { pots, spaceWeeks } = potsAndSpace(lot, costs, asOf);
  const raising = costs.start[lot.method] + pots + costs.spaceWeek * spaceWeeks;
  const sellable =
    raising * startsPerPlant([Math.max(success ?? UNKNOWN_SUCCESS, LEAST_SUCCESS)]) + costs.packing;
  const sold = sellable / costs.sellThrough;
  return priceForMargin(priceForMargin(sold, costs.margin), costs.feeShare);
}
