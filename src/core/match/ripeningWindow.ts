/** Rain and drying power of the air while a crop ripens. */
import { monthOfDay, wrapDoy } from '../climate/calendar.ts';
import type { RipeningAir } from '../climate/placeClass.ts';
import type { DoySpread } from './answers.ts';

/** Fruit is picked for about a month from the first ripe one. Standing: ours. */
const PICKING_DAYS = 30;

/** Rain a month: below the first little, from the second on much. Standing: ours; no published limits were found. */
const LITTLE_RAIN_MM = 25;
const MUCH_RAIN_MM = 75;
/** Air that dries less than the first makes rain worse by a step, air that dries more than the second better. Standing: ours. */
export const DAMP_AIR_KPA = 0.6;
export const DRYING_AIR_KPA = 1.3;

/** 0 little, 1 some, 2 much. */
type Wetness = 0 | 1 | 2;

export interface RipeningWindow {
  /** First day of the month of picking in a middle year; null when the crop hardly ever ripens and late summer stands in. */
  readonly fromDoy: number | null;
  /** Rain a month, mm; null when unknown. */
  readonly rainMm: number | null;
  readonly deficitKpa: number;
  readonly wetness: Wetness;
}

/** Without a measured dew point the deficit comes out too small, so it may only speak for the dry side. */
function wetnessOf(rainMm: number | null, deficitKpa: number, dewPointKnown: boolean): Wetness {
  const byRain =
    rainMm === null || (rainMm >= LITTLE_RAIN_MM && rainMm <= MUCH_RAIN_MM)
      ? 1
      : rainMm > MUCH_RAIN_MM
        ? 2
        : 0;
  const byAir = dewPointKnown && deficitKpa < DAMP_AIR_KPA ? 1 : deficitKpa > DRYING_AIR_KPA ? -1 : 0;
  return Math.min(2, Math.max(0, byRain + byAir)) as Wetness;
}

/** Mean of monthly values over the days of a window. */
function meanOver(monthly: readonly number[], fromDoy: number): number {
  let sum = 0;
  for (let day = 0; day < PICKING_DAYS; day += 1) {
    sum += monthly[monthOfDay[wrapDoy(fromDoy + day) - 1] as number] as number;
  }
  return sum / PICKING_DAYS;
}

/** The month of picking, or the place's late summer (`usual`) for a crop without a date. Monthly rain in mm, deficits in kPa. */
export function ripeningWindow(
  dates: DoySpread | null,
  rainMm: readonly number[] | null,
  deficitKpa: readonly number[],
  usual: RipeningAir,
): RipeningWindow {
  const fromDoy = dates === null ? null : dates.p50;
  const rain = fromDoy === null ? usual.rainMm : rainMm && meanOver(rainMm, fromDoy);
  const deficit = fromDoy === null ? usual.deficitKpa : meanOver(deficitKpa, fromDoy);
  return {
    fromDoy,
    rainMm: rain,
    deficitKpa: deficit,
    wetness: wetnessOf(rain, deficit, usual.dewPointKnown),
  };
}
