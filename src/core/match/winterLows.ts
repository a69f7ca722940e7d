/** The coldest of each winter, in the air and in the mix of a potted tree left outside. */
import { DAYS_PER_YEAR } from '../climate/calendar.ts';
import { sortedQuantile } from '../climate/quantiles.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { classLiters, containerClasses } from '../records/container.ts';

/**
 * How long it takes a wet, uninsulated pot to freeze through: 24 hours at a steady -5 C for a #1 pot, growing with about
 * the cube root of the volume (36 h for #3, 42 h for #5, 62 h for #15). Standing: ours, an estimate from the heat held by
 * moist mix (3 MJ per cubic meter and degree) and its loss through the wall.
 */
const FREEZE_THROUGH_DEGREE_HOURS = 120;
const FREEZE_THROUGH_LITERS = 3.3;
const FREEZE_THROUGH_EXPONENT = 0.34;

/** Frozen mix follows the mean of the last day in pots up to #3, of the last two days in larger ones. Standing: ours. */
const TWO_DAY_FROM_LITERS = 12.5;

/** Winters looked at: the low of one in ten is then good to about 0.3 C. Standing: ours. */
const WINTERS = 300;

/** Only October to April is looked through (April to October south): days of a season that starts in midsummer. */
const COLD_FROM = 69;
const COLD_TO = 281;

/** Container classes looked at; a pot in between is taken as the next smaller one. */
const potNames = ['#1', '#3', '#5', '#15'] as const;

export interface PotLow {
  readonly container: string;
  readonly liters: number;
  /** Lowest mix temperature of one winter in ten, C. */
  readonly lowC: number;
  /** The same with the wall insulated, which doubles the time to freeze through. */
  readonly insulatedLowC: number;
}

export interface WinterLows {
  /** Lowest Tmin of each winter, C, coldest first. */
  readonly sortedC: Float64Array;
  /** Smallest pot first. */
  readonly pots: readonly PotLow[];
}

/** Freezing degree-days that freeze a pot through. */
export function freezeThroughDays(liters: number): number {
  const degreeHours =
    FREEZE_THROUGH_DEGREE_HOURS * (liters / FREEZE_THROUGH_LITERS) ** FREEZE_THROUGH_EXPONENT;
  return degreeHours / 24;
}

interface PotModel {
  readonly frozenFrom: number;
  readonly twoDays: boolean;
  readonly lowsC: Float64Array;
}

function potModels(count: number): { name: string; liters: number; plain: PotModel; insulated: PotModel }[] {
  return potNames.map(name => {
    const found = containerClasses.find(each => each.name === name);
    if (!found) throw new RangeError(`not a container class: ${name}`);
    const liters = classLiters(found);
    const model = (times: number): PotModel => ({
      frozenFrom: freezeThroughDays(liters) * times,
      twoDays: liters >= TWO_DAY_FROM_LITERS,
      lowsC: new Float64Array(count),
    });
    return { name, liters, plain: model(1), insulated: model(2) };
  });
}

/** Goes once through the first `WINTERS` winters. */
export function winterLows(years: WeatherYears): WinterLows {
  const { tminC, tmaxC } = years;
  const count = Math.min(WINTERS, years.count);
  const sortedC = new Float64Array(count);
  const pots = potModels(count);
  // Those that freeze through soonest first, so that a day's search ends at the first that has not.
  const models = pots
    .flatMap(({ plain, insulated }) => [plain, insulated])
    .sort((a, b) => a.frozenFrom - b.frozenFrom);
  const frozenFrom = Float64Array.from(models, model => model.frozenFrom);
  const twoDays = Uint8Array.from(models, model => Number(model.twoDays));
  const lows = new Float64Array(models.length);
  const soonest = frozenFrom[0] as number;
  for (let season = 0; season < count; season += 1) {
    const from = season * DAYS_PER_YEAR + COLD_FROM;
    const to = season * DAYS_PER_YEAR + COLD_TO;
    let lowest = Number.POSITIVE_INFINITY;
    let lowestMean = Number.POSITIVE_INFINITY;
    let frozen = 0;
    let before = 0;
    lows.fill(0);
    for (let day = from; day < to; day += 1) {
      const low = tminC[day] as number;
      if (low < lowest) lowest = low;
      const mean = (low + (tmaxC[day] as number)) / 2;
      if (mean < lowestMean) lowestMean = mean;
      frozen = frozen > mean ? frozen - mean : 0;
      if (frozen >= soonest && mean < 0) {
        const meanOfTwo = (mean + before) / 2;
        for (let i = 0; i < lows.length && frozen >= (frozenFrom[i] as number); i += 1) {
          const mix = twoDays[i] === 1 ? meanOfTwo : mean;
          if (mix < (lows[i] as number)) lows[i] = mix;
        }
      }
      before = mean;
    }
    sortedC[season] = lowest;
    for (let i = 0; i < models.length; i += 1) {
      (models[i] as PotModel).lowsC[season] = lowestMean > 0 ? lowestMean : (lows[i] as number);
    }
  }
  sortedC.sort();
  return {
    sortedC,
    pots: pots.map(({ name, liters, plain, insulated }) => ({
      container: name,
      liters,
      lowC: sortedQuantile(plain.lowsC.sort(), 0.1),
      insulatedLowC: sortedQuantile(insulated.lowsC.sort(), 0.1),
    })),
  };
}

/** Share of winters whose low stays above a limit, 0 to 1. */
export function shareOfWintersAbove(sortedC: Float64Array, limitC: number): number {
  let [low, high] = [0, sortedC.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sortedC[middle] as number) > limitC) high = middle;
    else low = middle + 1;
  }
  return 1 - low / sortedC.length;
}
