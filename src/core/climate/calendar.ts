/**
 * The 365-day year of climate normals (February 29 dropped) and the season years the freeze statistics use.
 * A `doy` is 1 to 365; an index into a daily table is `doy - 1`.
 */

export const DAYS_PER_YEAR = 365;
export const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Month 0 to 11 of each day of the year, by `doy - 1`. */
export const monthOfDay: readonly number[] = monthLengths.flatMap((length, month) =>
  new Array<number>(length).fill(month),
);

/**
 * Place of each day in the year in months, by `doy - 1`: 1 is the middle of January, 12 the middle of December,
 * so that 0.5 is the start of the year.
 */
export const monthPosition: readonly number[] = monthLengths.flatMap((length, month) =>
  Array.from({ length }, (_, date) => month + 0.5 + (date + 0.5) / length),
);

/**
 * First day of the season year: July 24 north of the equator, January 24 south of it, so that one season holds a whole
 * winter. Source: the split used by the Utah Climate Center for first and last freezes.
 */
const SEASON_START_DOY_NORTH = 205;
const SEASON_START_DOY_SOUTH = 24;

/** Day of the year on which a season starts at a latitude (the equator counts as north). */
export function seasonStartDoy(lat: number): number {
  return lat < 0 ? SEASON_START_DOY_SOUTH : SEASON_START_DOY_NORTH;
}

/** Brings any whole number of days into 1 to 365. */
export function wrapDoy(doy: number): number {
  return ((((doy - 1) % DAYS_PER_YEAR) + DAYS_PER_YEAR) % DAYS_PER_YEAR) + 1;
}

/** Days from one day of the year forward to another, 0 to 364. */
export function daysForward(fromDoy: number, toDoy: number): number {
  return wrapDoy(toDoy - fromDoy + 1) - 1;
}
