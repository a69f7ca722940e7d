/** The turns in a tree's year, each as a span of days over the home weather years and the share of years that have it. */

import type { DayRule, Forecast } from '../climate/forecast.ts';
import { addDays, type Day, type DayRange, daysBetween, later } from '../days.ts';
import { budbreak, budbreakNeed } from '../phenology/budbreak.ts';
import { type RestUse, restMet } from '../phenology/dormancy.ts';
import { leafFall, leafFallFigures } from '../phenology/leafFall.ts';
import type { Figure } from '../records/common.ts';
import type { Species } from '../records/species.ts';
import type { Span } from './answers.ts';
import type { Outlook } from './outlook.ts';
import { midsummerBefore } from './seasons.ts';
import { COLD_SOIL_DAYS, coldSoil, inTurn, rooting, WEANING_COLD_SHARE, weaning } from './weatherRules.ts';

/** A thing that happens in fewer years than this is not promised. Standing: ours. */
const LIKELY_SHARE = 0.5;

/** A span of days in which something is expected, or the share of years that makes it unlikely. */
export interface Expected {
  /** Day from which the weather is watched. */
  since: Day;
  /** Null when it happens in fewer than half the years. */
  range: Span | null;
  share: number;
}

function expected(since: Day, { range, median, share }: Forecast): Expected {
  const told = range && median && share >= LIKELY_SHARE;
  return { since, range: told ? { ...range, likely: median } : null, share };
}

/** Early day with the low end of a figure, late day with its high end. */
function spanned(
  outlook: Outlook,
  name: string,
  { low, high }: Figure,
  start: DayRange,
  rule: (need: number) => () => DayRule,
): Expected {
  const early = outlook.when(`${name} ${low}`, start.from, rule(low));
  const late = outlook.when(`${name} ${high}`, start.to, rule(high));
  const share = Math.min(early.share, late.share);
  if (!early.range || !early.median || !late.range || !late.median || share < LIKELY_SHARE) {
    return { since: start.from, range: null, share };
  }
  const likely = addDays(early.median, daysBetween(early.median, late.median) / 2);
  return { since: start.from, range: { from: early.range.from, likely, to: late.range.to }, share };
}

/** Roots hold the ball: warm days counted from a day, or from a span of days when the start itself is expected. */
export function rootsHold(outlook: Outlook, warmDays: Figure, start: DayRange): Expected {
  return spanned(outlook, 'rooting', warmDays, start, rooting);
}

/** The plant stands without shelter. */
export function weaned(outlook: Outlook, days: Figure, start: DayRange): Expected {
  return spanned(outlook, 'weaning', days, start, weaning);
}

/** Days after which a plant is weaned whatever the weather was: no forecast is needed for old lots. */
export function longestWeaning({ high }: Figure): number {
  return high / WEANING_COLD_SHARE;
}

function leafFallOf(species: Species) {
  const figures = leafFallFigures(species);
  return { name: `leaf fall ${Object.values(figures).join(' ')}`, rule: leafFall(figures) };
}

/** Leaves come down, for a tree in leaf on `start`. */
export function leavesDown(outlook: Outlook, species: Species, start: Day): Expected {
  const fall = leafFallOf(species);
  return expected(start, outlook.when(fall.name, start, fall.rule));
}

/** Leaves come down and the rest after that is met, deep enough for what is asked of the tree. */
export function asleep(outlook: Outlook, species: Species, start: Day, use: RestUse): Expected {
  const fall = leafFallOf(species);
  return expected(start, outlook.when(`${fall.name}, rest ${use}`, start, inTurn(fall.rule, restMet(use))));
}

/** The rest is met by a tree whose leaves are down since `start`. */
export function restMetSince(outlook: Outlook, start: Day, use: RestUse): Expected {
  return expected(start, outlook.when(`rest ${use}`, start, restMet(use)));
}

/** Freezes of 32 F at home are over, in the spring that ends the rest season a day lies in; null where it hardly freezes. */
export function freezesOver(outlook: Outlook, inSeasonOf: Day): Span | null {
  const lastFreeze = outlook.lastFreeze();
  if (lastFreeze === null) return null;
  const start = midsummerBefore(inSeasonOf, outlook.south);
  const on = (seasonDay: number) => addDays(start, seasonDay);
  return { from: on(lastFreeze.p10), likely: on(lastFreeze.p50), to: on(lastFreeze.p90) };
}

/** The soil is cold, for a tree whose leaves are down since a day; the two weeks that end on it count already. */
export function soilCold(outlook: Outlook, leavesDownSince: Day): Expected {
  const start = addDays(leavesDownSince, 1 - COLD_SOIL_DAYS);
  return expected(start, outlook.when('soil', start, coldSoil));
}

/** Leaves come down, then the soil turns cold. */
export function soilColdAfterLeafFall(outlook: Outlook, species: Species, start: Day): Expected {
  const fall = leafFallOf(species);
  return expected(start, outlook.when(`${fall.name}, soil`, start, inTurn(fall.rule, coldSoil)));
}

/** Buds break outdoors in the spring that ends the rest season a day lies in. */
export function budsBreak(outlook: Outlook, species: Species, inSeasonOf: Day): Expected {
  const need = budbreakNeed(species);
  const start = outlook.heatCountsFrom(species, inSeasonOf);
  const name = `budbreak ${need.heat} ${need.baseC} ${need.capC}`;
  return expected(start, outlook.when(name, start, budbreak(need)));
}

/** A span that has begun but not ended is told from tomorrow on: nothing is promised for a day that has passed. */
export function stillToCome({ from, likely, to }: Span, asOf: Day): Span {
  const tomorrow = addDays(asOf, 1);
  return { from: later(from, tomorrow), likely: later(likely, tomorrow), to: later(to, tomorrow) };
}

export function shifted({ from, likely, to }: Span, days: number): Span {
  return { from: addDays(from, days), likely: addDays(likely, days), to: addDays(to, days) };
}
