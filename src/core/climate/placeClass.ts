/**
 * Class of a place on four axes, so that a guide or a cultivar can speak to places like it. Every place has exactly one
 * class on each axis. The bounds of the summers are published; the others are our working figures.
 */
import {
  type AirClass,
  airClasses,
  type SeasonClass,
  type SummerClass,
  summerClasses,
  type WinterClass,
  winterClasses,
} from '../records/placeClassNames.ts';
import { monthLengths } from './calendar.ts';
import { meanSaturationKpa, saturationKpa } from './humidity.ts';

export type { PlaceClass } from '../records/cultivar.ts';
export { airClasses, seasonClasses, summerClasses, winterClasses } from '../records/placeClassNames.ts';
export type { AirClass, SeasonClass, SummerClass, WinterClass };

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

/** Days between the 32 F freezes in the median year, from which a season is medium or long. It says nothing of heat. */
export const MIDDLE_SEASON_DAYS = 150;
export const LONG_SEASON_DAYS = 210;

/** Season class of the median number of days between last and first freeze at 32 F. */
export function seasonClass(medianDays: number): SeasonClass {
  if (medianDays >= LONG_SEASON_DAYS) return 'long';
  return medianDays >= MIDDLE_SEASON_DAYS ? 'middle' : 'short';
}

/**
 * Degree days from which a summer is of each class after `cool`: Winkler degree days above 10 C (50 F), April to October, October to April
 * south of the equator. The bounds are those between the regions I to V of Jones, Duff, Hall and Myers 2010, American Journal of Enology and
 * Viticulture 61(3):313-326; the names are ours: moderate is their Ib and II, warm III and IV, hot V, very hot what lies above V.
 */
const summerFromDegreeDays: readonly (readonly [SummerClass, number])[] = [
  ['very-hot', 2700],
  ['hot', 2222],
  ['warm', 1667],
  ['moderate', 1111],
];

/** Summer class of Winkler degree days, C. */
export function summerClass(winklerC: number): SummerClass {
  return summerFromDegreeDays.find(([, from]) => winklerC >= from)?.[0] ?? 'cool';
}

/** Degree days C in which a class begins and ends; null where it is open. */
export function summerBounds(summer: SummerClass): { from: number | null; to: number | null } {
  const at = summerFromDegreeDays.findIndex(([name]) => name === summer);
  if (at < 0) return { from: null, to: summerFromDegreeDays.at(-1)![1] };
  return { from: summerFromDegreeDays[at]![1], to: summerFromDegreeDays[at - 1]?.[1] ?? null };
}

/** Months of the Winkler sum, January 0: April to October, October to April south of the equator. */
const winklerMonths = (lat: number) => (lat < 0 ? [9, 10, 11, 0, 1, 2, 3] : [3, 4, 5, 6, 7, 8, 9]);
/** Months of the Huglin sum: April to September, October to March south of the equator. */
const huglinMonths = (lat: number) => winklerMonths(lat).slice(0, 6);

type MonthlyTemperatures = Pick<MonthlyAir, 'lat' | 'tminC' | 'tmaxC'>;

const HEAT_BASE_C = 10;

/** Winkler degree days C from monthly means, as Jones et al. 2010 add them up: what each month's mean has over 10 C times its days. */
export function winklerDegreeDaysC({ lat, tminC, tmaxC }: MonthlyTemperatures): number {
  return winklerMonths(lat).reduce((sum, month) => {
    const meanC = ((tminC[month] as number) + (tmaxC[month] as number)) / 2;
    return sum + Math.max(0, meanC - HEAT_BASE_C) * (monthLengths[month] as number);
  }, 0);
}

/** Longer days count a little more: 1.02 from 40 to 42 degrees of latitude, 0.01 more for every two degrees up to 50. */
function dayLengthFactor(lat: number): number {
  const away = Math.abs(lat);
  return away <= 40 ? 1 : 1.02 + 0.01 * Math.min(4, Math.ceil((away - 42) / 2));
}

/**
 * Huglin index, C: like degree days, but the high of the day counts as much as its mean, so that a coast of warm nights and mild days does not
 * pass for a summer of warm afternoons. Huglin 1978, C. R. Acad. Agric. 64:1117-1126; sum, months and the factor by latitude as in the list of climate
 * indices of the Copernicus Climate Change Service (read), which gives none beyond 50 degrees: ours stays at its last.
 */
export function huglinIndexC({ lat, tminC, tmaxC }: MonthlyTemperatures): number {
  const sum = huglinMonths(lat).reduce((total, month) => {
    const highC = tmaxC[month] as number;
    const meanC = ((tminC[month] as number) + highC) / 2;
    const warmth = (meanC - HEAT_BASE_C + (highC - HEAT_BASE_C)) / 2;
    return total + Math.max(0, warmth) * (monthLengths[month] as number);
  }, 0);
  return dayLengthFactor(lat) * sum;
}

/** Huglin's own bounds for the same five words, C: his very cool and cool; temperate; warm temperate; warm; very warm. As in Tonietto and Carbonneau 2004, from memory. */
const summerFromHuglin: readonly (readonly [SummerClass, number])[] = [
  ['very-hot', 3000],
  ['hot', 2400],
  ['warm', 2100],
  ['moderate', 1800],
];

/** What the Huglin index would call the summer: shown where it differs from the class by degree days. */
export function summerByHuglin(huglinC: number): SummerClass {
  return summerFromHuglin.find(([, from]) => huglinC >= from)?.[0] ?? 'cool';
}

/**
 * Whether a tree in leaf that comes late in the year still has a use for its leaves: a long season alone will not do, as a cool summer has
 * no heat to spare. Common practice, no source: late buyers in short seasons need no leaves, those in long seasons prefer them.
 */
export function growsOnLate({ season, summer }: { season: SeasonClass; summer: SummerClass }): boolean {
  return season === 'long' && summer !== 'cool' && summer !== 'moderate';
}

/** Months in which most fruit ripens, January 0: August to October, February to April south of the equator. */
const ripeningMonthsNorth = [7, 8, 9] as const;
const ripeningMonthsSouth = [1, 2, 3] as const;

/** Rain a month over those months, mm: below the first dry, from the second on humid. */
export const DRY_BELOW_MM = 30;
export const HUMID_FROM_MM = 75;
/**
 * Drying power of the air over those months: deficit as a share of the saturation vapor pressure. From the first on a
 * place is one step drier than its rain says, below the second one step damper (coasts with fog and hardly any rain).
 */
export const THIRSTY_FROM = 0.5;
export const DAMP_BELOW = 0.25;

export interface RipeningAir {
  /** Mean rain of a ripening month, mm; null when unknown. */
  readonly rainMm: number | null;
  /** Mean vapor pressure deficit, kPa. */
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
 * Vapor pressure deficit of each month, kPa. Without dew points the minimum temperature stands in (FAO-56, annex 6);
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

/** What a kind of climate is told by. The length of the season is told of each place: with winter and summer given it adds little. */
export interface ClimateKind {
  winter: WinterClass;
  summer: SummerClass;
  air: AirClass;
}

/** The name of a kind in its address: `cool-moderate-humid`. Once published it stays. */
export function climateKindId({ winter, summer, air }: ClimateKind): string {
  return `${winter}-${summer}-${air}`;
}

const kindsById: ReadonlyMap<string, ClimateKind> = new Map(
  winterClasses.flatMap(winter =>
    summerClasses.flatMap(summer =>
      airClasses.map(air => [climateKindId({ winter, summer, air }), { winter, summer, air }] as const),
    ),
  ),
);

/** The kind of a name; null where there is no such kind. */
export function climateKindOf(id: string): ClimateKind | null {
  return kindsById.get(id) ?? null;
}
