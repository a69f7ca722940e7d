/** A climate as it is compared with others. */
import type { ClimateFigures } from '../climate/figures.ts';
import { ripeningAir } from '../climate/placeClass.ts';
import { doyFromMonthDay } from '../days.ts';
import { climateTraits } from './likeness.ts';
import type { PlaceClimate } from './placeOutlook.ts';

/** What guides and trees notice of a climate. */
export interface ComparedClimate {
  /** Middle dates of the last and first freeze at 32 F, days of the year; null where it hardly freezes. */
  readonly lastDoy: number | null;
  readonly firstDoy: number | null;
  /** Usual coldest night of a winter, C. */
  readonly coldestC: number;
  /** C-degree-days a year above 10 C, from the monthly means. */
  readonly heat: number;
  /** Vapor pressure deficit of late summer, kPa. */
  readonly deficitKpa: number;
  /** South of the equator. */
  readonly south: boolean;
}

export function comparedClimate(
  figures: ClimateFigures,
  climate: Pick<PlaceClimate, 'freeze' | 'annualMinC'>,
): ComparedClimate {
  const { first, last } = climate.freeze['32F'].answer;
  const doy = (date: string | null) => (date === null ? null : doyFromMonthDay(date));
  const { mean, p10 } = climate.annualMinC.answer;
  return {
    lastDoy: doy(last.p50),
    firstDoy: doy(first.p50),
    coldestC: mean,
    heat: climateTraits(figures, p10).heat,
    deficitKpa: ripeningAir(figures).deficitKpa,
    south: figures.lat < 0,
  };
}
