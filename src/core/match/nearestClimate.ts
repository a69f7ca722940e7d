/** The reference place whose climate is most like another, and how the two differ. */
import { daysForward } from '../climate/calendar.ts';
import type { ComparedClimate } from './comparedClimate.ts';

/**
 * Differences that weigh alike: five days of the last freeze, ten of the first, a half zone, a tenth of the heat, a kilopascal. Chosen so that the
 * most people of US towns are led to a place within five days of last freeze, a half zone and a tenth of the heat. Standing: ours.
 */
const LAST_DAYS = 5;
const FIRST_DAYS = 10;
const COLD_C = 2.8;
const HEAT_RATIO = 1.1;
const DEFICIT_KPA = 1;
/** Weight of a freeze that one climate has and the other has not, in the same measure. Standing: ours. */
const ONE_HARDLY_FREEZES = 4;
/** A place with the seasons turned round is like no other. */
const OTHER_HALF = 100;

/** Days from one day of the year to another, -182 to 182. */
function daysLater(from: number, to: number): number {
  const forward = daysForward(from, to);
  return forward > 182 ? forward - 365 : forward;
}

function dateApart(one: number | null, other: number | null, alike: number): number {
  if (one === null && other === null) return 0;
  if (one === null || other === null) return ONE_HARDLY_FREEZES;
  return daysLater(one, other) / alike;
}

/** How unlike two climates are: 1 is a difference that a grower would notice. */
function unlikeness(one: ComparedClimate, other: ComparedClimate): number {
  return Math.hypot(
    dateApart(one.lastDoy, other.lastDoy, LAST_DAYS),
    dateApart(one.firstDoy, other.firstDoy, FIRST_DAYS),
    (one.coldestC - other.coldestC) / COLD_C,
    Math.log((one.heat + 100) / (other.heat + 100)) / Math.log(HEAT_RATIO),
    (one.deficitKpa - other.deficitKpa) / DEFICIT_KPA,
    one.south === other.south ? 0 : OTHER_HALF,
  );
}

/** The most like of some places; null where there is none. */
export function nearestClimate<T extends { readonly climate: ComparedClimate }>(
  of: ComparedClimate,
  places: readonly T[],
): T | null {
  let best: { place: T; apart: number } | null = null;
  for (const place of places) {
    const apart = unlikeness(of, place.climate);
    if (best === null || apart < best.apart) best = { place, apart };
  }
  return best?.place ?? null;
}

/** Differences too small to be told. Standing: ours. */
const TOLD_DAYS = 3;
const TOLD_HALF_ZONES = 0.5;
const TOLD_HEAT = 0.05;

const HALF_ZONE_C = 25 / 9;

const dayWords = (days: number) => `about ${Math.abs(days)} ${Math.abs(days) === 1 ? 'day' : 'days'}`;

function coldWords(warmerC: number): string | null {
  const halves = Math.round(Math.abs(warmerC) / HALF_ZONE_C);
  if (Math.abs(warmerC) / HALF_ZONE_C < TOLD_HALF_ZONES) return null;
  const zones = halves / 2;
  const size =
    halves <= 1
      ? 'half a zone'
      : zones === 1
        ? 'a zone'
        : `${Number.isInteger(zones) ? zones : zones.toFixed(1)} zones`;
  return `your winters are ${size} ${warmerC > 0 ? 'milder' : 'colder'}`;
}

/** How one climate differs from that of a place, in parts of a sentence; none where they are alike. */
export function differences(own: ComparedClimate, place: ComparedClimate): string[] {
  const told: string[] = [];
  for (const [name, mine, its] of [
    ['your last freeze', own.lastDoy, place.lastDoy],
    ['your first freeze', own.firstDoy, place.firstDoy],
  ] as const) {
    if (mine === null && its === null) continue;
    if (mine === null) told.push(`${name} comes in few years only`);
    else if (its !== null) {
      const later = daysLater(its, mine);
      if (Math.abs(later) >= TOLD_DAYS)
        told.push(`${name} is ${dayWords(later)} ${later > 0 ? 'later' : 'earlier'}`);
    }
  }
  const cold = coldWords(own.coldestC - place.coldestC);
  if (cold !== null) told.push(cold);
  const warmer = (own.heat + 1) / (place.heat + 1) - 1;
  if (Math.abs(warmer) >= TOLD_HEAT) {
    told.push(
      `your year has about ${Math.round(Math.abs(warmer) * 100)} % ${warmer > 0 ? 'more' : 'less'} heat`,
    );
  }
  return told;
}
