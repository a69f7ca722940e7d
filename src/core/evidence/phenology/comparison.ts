/** Dated observations beside what the core computes for them, row by row, with errors by species and ripening class. */
import type { Species } from '../../records/species.ts';
import { computedDay, errorDays, monthDayOf } from './computedDay.ts';
import type { Observation } from './observation.ts';
import type { ClimateAt } from './pointClimate.ts';

export interface ComparedRow {
  readonly observation: Observation;
  /** `MM-DD`; null where it happens in fewer than one year in ten, or cannot be computed. */
  readonly computed: string | null;
  /**
   * Days from the middle of the observed range to the computed day, positive when computed late; null without a computed day. The
   * middle and not the nearer end, so that a wide range does not hide an error.
   */
  readonly errorDays: number | null;
  /** Why nothing was computed; null for a day, and for "never". */
  readonly reason: string | null;
  /** What makes the comparison weak; null when nothing does. */
  readonly note: string | null;
}

/** The species record that a botanical name means: the same name, or the only record of the genus. */
export function speciesNamed(speciesList: readonly Species[], name: string): Species | null {
  const words = (botanical: string) => botanical.toLowerCase().split(/[\s/]+/);
  const [genus, epithet] = words(name);
  const ofGenus = speciesList.filter(({ botanical }) => words(botanical)[0] === genus);
  const same = ofGenus.find(({ botanical }) => words(botanical)[1] === epithet);
  return same ?? (ofGenus.length === 1 ? (ofGenus[0] as Species) : null);
}

/** One observation beside the computed day. */
export function compareRow(
  observation: Observation,
  speciesList: readonly Species[],
  climateAt: ClimateAt,
): ComparedRow {
  const without = (reason: string): ComparedRow => ({
    observation,
    computed: null,
    errorDays: null,
    reason,
    note: null,
  });
  const species = speciesNamed(speciesList, observation.species);
  if (species === null) return without(`no species record for ${observation.species}`);
  const climate = climateAt(observation);
  if ('refused' in climate) return without(`no climate: ${climate.refused}`);
  const found = computedDay(climate.years, species, observation);
  if ('notComputed' in found) return without(found.notComputed);
  const { doy } = found;
  return {
    observation,
    computed: doy === null ? null : monthDayOf(doy),
    errorDays: doy === null ? null : errorDays(doy, observation),
    reason: null,
    note: climate.poor,
  };
}

export interface Errors {
  /** Rows that were compared: a day was computed, or "never". */
  readonly n: number;
  /** Mean of the absolute errors of rows with a computed day; null without any. */
  readonly meanAbsoluteDays: number | null;
  /** Rows documented, and by the core never happening. */
  readonly never: number;
}

/** Errors over some rows; rows without a reason count. */
export function errorsOf(rows: readonly Pick<ComparedRow, 'errorDays' | 'reason'>[]): Errors {
  const compared = rows.filter(({ reason }) => reason === null);
  const off = compared.flatMap(({ errorDays: days }) => (days === null ? [] : [Math.abs(days)]));
  return {
    n: compared.length,
    meanAbsoluteDays: off.length === 0 ? null : off.reduce((sum, days) => sum + days, 0) / off.length,
    never: compared.length - off.length,
  };
}
