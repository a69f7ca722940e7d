/** The end of the season: the day from which nothing grows or ripens any more. */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import type { Species } from '../records/species.ts';
import { fahrenheitToCelsius } from '../units.ts';
import type { YearOfDays } from './growingYear.ts';
import { type LeafFallFigures, leafFallFigures, leafFallOn } from './leafFall.ts';

/** A night of 28 F takes leaves and unripe fruit. Source: the threshold agencies call a killing freeze (NOAA). */
const KILLING_FREEZE_C = fahrenheitToCelsius(28);

/** Days over which the cool of fall is told. Standing: ours. */
const COOL_DAYS = 10;

export interface EndOfSeasonFigures {
  /** The first night at or below this after midsummer ends the season, C. */
  readonly killingC: number;
  readonly leafFall: LeafFallFigures;
  /** Nothing ripens once the mean of ten days stays below this, C. */
  readonly tooCoolC: number;
}

/** A season that only a freeze ends: for comparing the weather alone with records of freezes. */
export function killingFreezeAt(killingC: number): EndOfSeasonFigures {
  const never = Number.NEGATIVE_INFINITY;
  return { killingC, leafFall: { nightC: never, meanC: never, spellDays: 1 }, tooCoolC: never };
}

export function endOfSeasonFigures(species: Species): EndOfSeasonFigures {
  return {
    killingC: Math.min(KILLING_FREEZE_C, species.leafDamageC.value),
    leafFall: leafFallFigures(species),
    tooCoolC: species.ripensAboveC.value,
  };
}

/** The day after the last on which the mean of the ten days up to it is not too cool. Counts back from the end of the year. */
function staysCoolFrom({ tminC, tmaxC, from }: YearOfDays, midsummer: number, limitC: number): number {
  const twiceTheLimit = 2 * COOL_DAYS * limitC;
  let sum = 0;
  for (let day = DAYS_PER_YEAR - COOL_DAYS; day < DAYS_PER_YEAR; day += 1) {
    sum += (tminC[from + day] as number) + (tmaxC[from + day] as number);
  }
  let last = DAYS_PER_YEAR - 1;
  while (last >= midsummer && sum < twiceTheLimit) {
    const before = from + last - COOL_DAYS;
    sum += (tminC[before] as number) + (tmaxC[before] as number);
    sum -= (tminC[from + last] as number) + (tmaxC[from + last] as number);
    last -= 1;
  }
  return last + 1;
}

/**
 * Index of the day that ends a species' season: a killing freeze, leaf fall, or ten-day means that stay too cool to ripen anything,
 * whichever comes first after midsummer; 365 where none of them comes before midwinter.
 */
export function endOfSeasonOn(
  year: YearOfDays,
  midsummer: number,
  { killingC, leafFall: fall, tooCoolC }: EndOfSeasonFigures,
): number {
  const coldest = Math.max(killingC, fall.nightC);
  const latest = staysCoolFrom(year, midsummer, tooCoolC);
  return leafFallOn(year, midsummer, latest, { ...fall, nightC: coldest });
}
