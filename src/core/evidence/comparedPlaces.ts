/** Places with observed freezes and winter lows, each modeled once for the tables. */
import type { ClimateFigures, FreezeThresholdF } from '../climate/figures.ts';
import { freezeThresholdsF } from '../climate/figures.ts';
import type { FreezeOdds } from '../climate/freezes.ts';
import { findWinters, freezeOdds } from '../climate/freezes.ts';
import { weatherYears } from '../climate/weatherYears.ts';
import { winterLow } from '../climate/winterZone.ts';
import { monthDay } from '../days.ts';
import type { ObservedFreeze } from './stationFigures.ts';
import { freezeStations, longRecordFigures } from './stationFigures.ts';

/** One place of the comparison. */
export interface Compared {
  readonly name: string;
  readonly source: string;
  readonly lat: number;
  readonly observed: readonly ObservedFreeze[];
  readonly odds: ReadonlyMap<FreezeThresholdF, FreezeOdds>;
  readonly observedMinC: number | null;
  readonly meanMinC: number;
}

function compared(
  name: string,
  source: string,
  figures: ClimateFigures,
  observed: readonly ObservedFreeze[],
  observedMinC: number | null,
): Compared {
  const winters = findWinters(weatherYears(figures));
  const odds = new Map(freezeThresholdsF.map(threshold => [threshold, freezeOdds(winters, threshold)]));
  return { name, source, lat: figures.lat, observed, odds, observedMinC, meanMinC: winterLow(winters).meanC };
}

/** All stations, grid cells and long records. */
export function comparedPlaces(): Compared[] {
  const stations = freezeStations().map(({ name, source, figures, freezes, annualMinC }) =>
    compared(name, source, figures, freezes, annualMinC),
  );
  const dates = (doys: readonly (number | null)[]) => doys.map(doy => (doy === null ? null : monthDay(doy)));
  const records = longRecordFigures().map(({ record, figures }) =>
    compared(
      record.name,
      'long daily record, quantiles of the daily values',
      figures,
      record.freezes.map(([thresholdF, first, last]) => ({
        thresholdF,
        first: dates(first),
        last: dates(last),
        none: null,
      })),
      record.annualMinC,
    ),
  );
  return [...stations, ...records];
}

/** Mean of some values. */
export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Mean of errors, each taken as positive. */
export function meanError(values: readonly number[]): number {
  return mean(values.map(Math.abs));
}
