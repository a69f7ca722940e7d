/** Everything said of a point: its figures, what the model makes of them and how far that may be off. */

import { degreesCToF } from '../../units.ts';
import { freezeThresholdsF } from '../figures.ts';
import { type FreezeOdds, findWinters, freezeOdds, seasonDays } from '../freezes.ts';
import { heatOfYear } from '../heat.ts';
import type { MeanAndSd } from '../quantiles.ts';
import { BASE_50F_IN_C, COMPUTED_ZONE, FIG_BASE_C, FIG_CAP_C, type FreezeKey } from '../summary.ts';
import { weatherYears } from '../weatherYears.ts';
import { winterLow, winterZone } from '../winterZone.ts';
import { coldestNightErrorC, dateErrorDays } from './modelErrors.ts';
import { climateFigures, type PointFigures, type PointRefusal } from './pointFigures.ts';

/** Mean absolute errors: two times of three the truth lies nearer than about 1.2 times this. */
interface ReportErrors {
  /** Of a monthly mean, C. */
  readonly tminC: number;
  readonly tmaxC: number;
  /** Of the middle 32 F dates, days; null where there is none. */
  readonly lastFreezeDays: number | null;
  readonly firstFreezeDays: number | null;
  /** Of the mean coldest night, C. */
  readonly annualMinC: number;
}

export interface PointReport {
  readonly id: string;
  /** Years the means are of. */
  readonly period: string;
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  /** By threshold, MM-DD: p10 is always the early date. */
  readonly freeze: Readonly<Record<FreezeKey, FreezeOdds>>;
  /** Mean coldest night of a winter, and the low of one winter in ten, C. */
  readonly annualMinC: { readonly mean: number; readonly p10: number };
  readonly winterZone: { readonly zone: string; readonly basis: string };
  /** Days between last and first 32 F freeze; p10 is the short season. */
  readonly seasonDays: { readonly p10: number; readonly p50: number; readonly p90: number };
  readonly heat: {
    /** C-degree-days a year above 8 C, counted up to 36 C. */
    readonly base8cap36: MeanAndSd;
    /** F-degree-days a year above 50 F. */
    readonly base50F: MeanAndSd;
  };
  readonly errors: ReportErrors;
  readonly nearest: {
    readonly id: string;
    readonly name: string;
    readonly km: number;
    readonly elevationM: number;
  };
}

export type RefusedReport = { readonly id: string } & PointRefusal;

const rounded = (value: number, digits: number) => {
  const unit = 10 ** digits;
  return Math.round(value * unit) / unit || 0;
};

/** The report of a point, with `seasons` weather years drawn of its figures; temperatures rounded to a tenth. */
export function pointReport(
  id: string,
  point: PointFigures | PointRefusal,
  seasons: number,
): PointReport | RefusedReport {
  if (point.refused !== undefined) return { id, refused: point.refused };
  const years = weatherYears(climateFigures(point), seasons);
  const winters = findWinters(years);
  const [nearest] = point.stations;
  if (!nearest) return { id, refused: 'No station is near.' };
  const tenths = (values: readonly number[]) => values.map(value => rounded(value, 1));
  const freeze = Object.fromEntries(
    freezeThresholdsF.map(thresholdF => [`${thresholdF}F`, freezeOdds(winters, thresholdF)]),
  ) as Record<FreezeKey, FreezeOdds>;
  const { meanC, p10C } = winterLow(winters);
  const heat = (baseC: number, capC: number | null, perC: number) => {
    const { mean, sd } = heatOfYear(years, baseC, capC);
    return { mean: Math.round(mean * perC), sd: Math.round(sd * perC) };
  };
  const days = (date: string | null) => {
    const error = dateErrorDays(date, point.tminC, point.errors.tminC);
    return error === null ? null : rounded(error, 1);
  };
  return {
    id,
    period: point.period,
    tminC: tenths(point.tminC),
    tmaxC: tenths(point.tmaxC),
    freeze,
    annualMinC: { mean: rounded(meanC, 1), p10: rounded(p10C, 1) },
    winterZone: { zone: winterZone(meanC), basis: COMPUTED_ZONE },
    seasonDays: seasonDays(winters),
    heat: { base8cap36: heat(FIG_BASE_C, FIG_CAP_C, 1), base50F: heat(BASE_50F_IN_C, null, degreesCToF(1)) },
    errors: {
      tminC: rounded(point.errors.tminC, 2),
      tmaxC: rounded(point.errors.tmaxC, 2),
      lastFreezeDays: days(freeze['32F'].last.p50),
      firstFreezeDays: days(freeze['32F'].first.p50),
      annualMinC: rounded(coldestNightErrorC(point.errors.tminC), 1),
    },
    nearest: {
      id: nearest.station.id,
      name: nearest.station.name,
      km: rounded(nearest.km, 1),
      elevationM: nearest.station.elevationM,
    },
  };
}
