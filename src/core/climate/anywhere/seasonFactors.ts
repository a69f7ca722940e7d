/**
 * How much wider or narrower the spread of nights must be taken in spring, fall and winter for the model to meet what a station has
 * observed: its official freeze dates, its coldest nights. The model lets nights lean alike everywhere; real ones lean more on some coasts
 * and less on others. The factors vary smoothly from place to place, so they can be carried to points between stations.
 */

import { doyFromMonthDay } from '../../days.ts';
import { DAYS_PER_YEAR, monthLengths, wrapDoy } from '../calendar.ts';
import { dailyCurve, linearCurve } from '../dailyCurve.ts';
import type { ClimateFigures } from '../figures.ts';
import { findWinters, freezeOdds } from '../freezes.ts';
import { weatherYears } from '../weatherYears.ts';
import { winterLow } from '../winterZone.ts';
import type { ObservedFactors } from './station.ts';

export interface SeasonFactors {
  readonly spring: number;
  readonly fall: number;
  readonly winter: number;
}

/** What was observed; null where it was not. */
export interface Witness {
  /** Middle dates of the last and first 32 F freeze, days of the year. */
  readonly lastDoy: number | null;
  readonly firstDoy: number | null;
  /** Mean coldest night of the winter, C. */
  readonly coldestNightC: number | null;
}

const noFactors: SeasonFactors = { spring: 1, fall: 1, winter: 1 };
const unknownFactors: ObservedFactors = { spring: null, fall: null, winter: null };

/** Seasons drawn to try a factor, and how often it is mended. */
const TRIAL_SEASONS = 160;
const TURNS = 3;
/** Share of a miss that is mended at each turn. */
const DAMPING = 0.85;
/** Bounds of a factor: beyond them the observation and the figures do not belong together. Standing: ours. */
const LEAST = 0.7;
const GREATEST = 1.45;
/** Anchors nearer to each other than this are one. */
const CLOSE_DAYS = 40;

const held = (factor: number) => Math.min(GREATEST, Math.max(LEAST, factor));
const daysApart = (from: number, to: number) => wrapDoy(to - from + 1) - 1;

function midMonthDoy(month: number): number {
  let before = 0;
  for (let i = 0; i < month; i += 1) before += monthLengths[i] as number;
  return before + 15;
}

/** Days of the year the factors belong to. */
export interface SeasonAnchors {
  readonly spring: number | null;
  readonly fall: number | null;
  readonly winter: number;
}

/** Spread below the mean at which the middle last and first freeze usually fall. Standing: ours. */
const FREEZE_DEPTH = 1.3;

/**
 * Spring and fall belong to the days on which the mean night less 1.3 spreads crosses freezing; null where that never happens or comes too
 * near midwinter to be told from it.
 */
export function anchorsOf(tminC: readonly number[], sdTminC: readonly number[]): SeasonAnchors {
  const winter = midMonthDoy(tminC.indexOf(Math.min(...tminC)));
  const [mean, sd] = [dailyCurve(tminC), linearCurve(sdTminC)];
  const freezes = (doy: number) => {
    const at = wrapDoy(doy) - 1;
    return (mean[at] as number) - FREEZE_DEPTH * (sd[at] as number) <= 0;
  };
  const half = Math.floor(DAYS_PER_YEAR / 2);
  const days = Array.from({ length: half }, (_, day) => day);
  const last = days.findLast(day => freezes(winter + day)) ?? -1;
  const first = days.findLast(day => freezes(winter - day)) ?? -1;
  // Freezes up to midsummer leave no season to stretch.
  const usable = (day: number) => day >= CLOSE_DAYS && day < half - 1;
  return {
    winter,
    spring: usable(last) ? wrapDoy(winter + last) : null,
    fall: usable(first) ? wrapDoy(winter - first) : null,
  };
}

/** The twelve standard deviations with the factors of their season; 1 at midsummer, straight lines in between. */
export function withFactors(
  sdC: readonly number[],
  factors: SeasonFactors,
  anchors: SeasonAnchors,
): number[] {
  const summer = wrapDoy(anchors.winter + Math.round(DAYS_PER_YEAR / 2));
  const points = [
    { doy: anchors.winter, factor: factors.winter },
    ...(anchors.spring === null ? [] : [{ doy: anchors.spring, factor: factors.spring }]),
    { doy: summer, factor: 1 },
    ...(anchors.fall === null ? [] : [{ doy: anchors.fall, factor: factors.fall }]),
  ].map(({ doy, factor }) => ({ day: daysApart(anchors.winter, doy), factor }));
  points.sort((a, b) => a.day - b.day);
  const round = [...points, { day: DAYS_PER_YEAR, factor: factors.winter }];
  return sdC.map((sd, month) => {
    const day = daysApart(anchors.winter, midMonthDoy(month));
    const after = round.findIndex(point => point.day > day);
    const [from, to] = [round[after - 1], round[after]] as [(typeof round)[0], (typeof round)[0]];
    const share = (day - from.day) / (to.day - from.day);
    return sd * (from.factor + share * (to.factor - from.factor));
  });
}

/** Days a modeled date must move to meet the observed one, -182 to 182. */
function daysOff(observed: number, modeled: string): number {
  const doy = doyFromMonthDay(modeled) as number;
  return wrapDoy(observed - doy + 182 + 1) - 1 - 182;
}

/** Least height of the mean night above freezing at a freeze date, C, and least daily change: below them the date says little of the spread. */
const LEAST_MEAN_C = 1.5;
const LEAST_SLOPE = 0.03;

/** Change of the logarithm of the spread that moves a freeze date by so many days toward summer. */
function stretchFor(daysTowardSummer: number, curve: Float64Array, doy: number): number {
  const at = (day: number) => curve[wrapDoy(day) - 1] as number;
  const slope = Math.abs(at(doy + 10) - at(doy - 10)) / 20;
  return (daysTowardSummer * Math.max(LEAST_SLOPE, slope)) / Math.max(LEAST_MEAN_C, at(doy));
}

/** How far the spread must be stretched for the modeled date to be the observed one; null when the model has no such date. */
function stretchOf(
  observed: number,
  modeled: string | null,
  curve: Float64Array,
  spring: boolean,
): number | null {
  if (modeled === null) return null;
  const later = daysOff(observed, modeled);
  return stretchFor(spring ? later : -later, curve, observed);
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const known = <T>(values: readonly (T | null)[]) => values.filter(value => value !== null) as T[];

/**
 * The factors with which the model meets what was observed. `figures` must give the spread of Tmin and be of the period of the
 * observations. Where winters are so mild that freezes come near midwinter only, their dates tell the factor of winter, unless the coldest
 * night does. Costs about four times drawing a few hundred weather years.
 */
export function seasonFactors(figures: ClimateFigures, witness: Witness): ObservedFactors {
  const { sdTminC, tminC } = figures;
  if (sdTminC === null) return unknownFactors;
  const { lastDoy, firstDoy, coldestNightC } = witness;
  const curve = dailyCurve(tminC);
  const anchors = anchorsOf(tminC, sdTminC);
  let factors = noFactors;
  let told: ObservedFactors = unknownFactors;
  for (let turn = 0; turn < TURNS; turn += 1) {
    const tried = { ...figures, sdTminC: withFactors(sdTminC, factors, anchors) };
    const winters = findWinters(weatherYears(tried, TRIAL_SEASONS));
    const { first, last } = freezeOdds(winters, 32);
    const spring = lastDoy === null ? null : stretchOf(lastDoy, last.p50, curve, true);
    const fall = firstDoy === null ? null : stretchOf(firstDoy, first.p50, curve, false);
    const low = winterLow(winters).meanC;
    const depth = Math.max(2, Math.min(...tminC) - low);
    const byDates = known([anchors.spring === null ? spring : null, anchors.fall === null ? fall : null]);
    const stretch = {
      spring: anchors.spring === null ? null : spring,
      fall: anchors.fall === null ? null : fall,
      winter:
        coldestNightC !== null ? (low - coldestNightC) / depth : byDates.length > 0 ? mean(byDates) : null,
    };
    const stretched = (season: keyof SeasonFactors) => {
      const by = stretch[season];
      return by === null ? null : held(factors[season] * Math.exp(DAMPING * by));
    };
    told = { spring: stretched('spring'), fall: stretched('fall'), winter: stretched('winter') };
    factors = { spring: told.spring ?? 1, fall: told.fall ?? 1, winter: told.winter ?? 1 };
  }
  return told;
}
