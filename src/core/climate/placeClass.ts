/**
 * Class of a place on three axes, so that a guide or a cultivar can speak to places like it. Every place has exactly one
 * class on each axis. The bounds are our working figures.
 */
import { type AirClass, airClasses, type SeasonClass, type WinterClass } from '../records/placeClassNames.ts';
import { meanSaturationKpa, saturationKpa } from './humidity.ts';

export type { PlaceClass } from '../records/cultivar.ts';
export { airClasses, seasonClasses, winterClasses } from '../records/placeClassNames.ts';
export type { AirClass, SeasonClass, WinterClass };

/**
 * First half zone (0 is 1a) of each class after `frozen`, whole half zones so that a published zone decides alone:
 * cold from 6a (-10 F), cool from 7b (5 F), mild from 9a (20 F), frost-free from 10a (30 F: freezes are light and rare).
 */
const winterFromHalfZone: readonly (readonly [WinterClass, number])[] = [
  ['frost-free', 18],
  ['mild', 16],
  ['cool', 13],
  ['cold', 10],
];

/** Winter class of a half zone index (`parseZone`). */
export function winterClass(halfZone: number): WinterClass {
  return winterFromHalfZone.find(([, from]) => halfZone >= from)?.[0] ?? 'frozen';
}

/** Days between the 32 F freezes in the middle year, from which a season is middling or long. */
export const MIDDLE_SEASON_DAYS = 150;
export const LONG_SEASON_DAYS = 210;

/** Season class of the median number of days between last and first freeze at 32 F. */
export function seasonClass(medianDays: number): SeasonClass {
  if (medianDays >= LONG_SEASON_DAYS) return 'long';
  return medianDays >= MIDDLE_SEASON_DAYS ? 'middle' : 'short';
}

/** Months in which most fruit ripens, January 0: August to October, February to April south of the equator. */
const ripeningMonthsNorth = [7, 8, 9] as const;
const ripeningMonthsSouth = [1, 2, 3] as const;

/** Rain a month over those months, mm: below the first dry, from the second on humid. */
export const DRY_BELOW_MM = 30;
export const HUMID_FROM_MM = 75;
/**
 * Drying power of the air over those months: deficit as a share of the saturation vapour pressure. From the first on a
 * place is one step drier than its rain says, below the second one step damper (coasts with fog and hardly any rain).
 */
export const THIRSTY_FROM = 0.5;
export const DAMP_BELOW = 0.25;

export interface RipeningAir {
  /** Mean rain of a ripening month, mm; null when unknown. */
  readonly rainMm: number | null;
  /** Mean vapour pressure deficit, kPa. */
  readonly deficitKpa: number;
  /** The same as a share of the saturation pressure, 0 to 1. */
  readonly deficitShare: number;
  /** False when the dew point was not known and taken as the minimum temperature. */
  readonly dewPointKnown: boolean;
}

interface MonthlyAir {
  readonly lat: number;
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  readonly rainMm: readonly number[] | null;
  readonly dewPointC: readonly number[] | null;
}

/**
 * Vapour pressure deficit of each month, kPa. Without dew points the minimum temperature stands in (FAO-56, annex 6);
 * that is right where nights are humid and up to a half too low in deserts.
 */
export function monthlyDeficitKpa({ tminC, tmaxC, dewPointC }: MonthlyAir): number[] {
  return tminC.map((low, month) => {
    const dew = (dewPointC ?? tminC)[month] as number;
    return Math.max(0, meanSaturationKpa(low, tmaxC[month] as number) - saturationKpa(dew));
  });
}

/** Rain and drying power of the months in which fruit ripens. */
export function ripeningAir(figures: MonthlyAir): RipeningAir {
  const months = figures.lat < 0 ? ripeningMonthsSouth : ripeningMonthsNorth;
  const mean = (values: readonly number[]) =>
    months.reduce((sum, month) => sum + (values[month] as number), 0) / months.length;
  const saturation = figures.tminC.map((low, month) =>
    meanSaturationKpa(low, figures.tmaxC[month] as number),
  );
  const deficitKpa = mean(monthlyDeficitKpa(figures));
  return {
    rainMm: figures.rainMm === null ? null : mean(figures.rainMm),
    deficitKpa,
    deficitShare: deficitKpa / mean(saturation),
    dewPointKnown: figures.dewPointC !== null,
  };
}

/** Air class of the ripening months. Without rain figures the drying power alone decides. */
export function airClass({ rainMm, deficitShare, dewPointKnown }: RipeningAir): AirClass {
  const middle = airClasses.indexOf('fair');
  const byRain =
    rainMm === null || (rainMm >= DRY_BELOW_MM && rainMm < HUMID_FROM_MM)
      ? 0
      : rainMm < DRY_BELOW_MM
        ? -1
        : 1;
  const known = dewPointKnown || rainMm === null;
  const byDryness = !known ? 0 : deficitShare >= THIRSTY_FROM ? -1 : deficitShare < DAMP_BELOW ? 1 : 0;
  const step = Math.min(1, Math.max(-1, byRain + byDryness));
  return airClasses[middle + step] as AirClass;
}
