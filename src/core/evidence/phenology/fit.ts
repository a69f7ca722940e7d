/**
 * The figures of a species as they come out of dated observations: of each class the mean of what its rows ask for. Used to find the
 * figures of the species records, and to tell the error at places that had no say (each place left out in turn).
 */
import { DAYS_PER_YEAR, daysForward } from '../../climate/calendar.ts';
import type { WeatherYears } from '../../climate/weatherYears.ts';
import { BLOOM_SHARE } from '../../phenology/fruit.ts';
import { growingCalendar, growingYearStarts, reachedOn, sumHeat } from '../../phenology/growingYear.ts';
import type { Crop, Figure, RipeningClass } from '../../records/common.ts';
import type { Species } from '../../records/species.ts';
import { middleOf } from './computedDay.ts';
import type { Observation } from './observation.ts';

export interface ObservedAt {
  readonly row: Observation;
  readonly years: WeatherYears;
}

const sums = new WeakMap<WeatherYears, Map<string, Float64Array>>();

/** Heat sums of the mean year, counted from 1 March (1 September south), 366 places. */
function meanHeatSum(years: WeatherYears, baseC: number, capC: number): Float64Array {
  const byHeat = sums.get(years) ?? new Map<string, Float64Array>();
  sums.set(years, byHeat);
  const key = `${baseC} ${capC}`;
  const known = byHeat.get(key);
  if (known) return known;
  const { heatFrom } = growingCalendar(years.lat);
  const starts = growingYearStarts(years, years.count);
  const one = new Float64Array(DAYS_PER_YEAR + 1);
  const mean = new Float64Array(DAYS_PER_YEAR + 1);
  for (const from of starts) {
    sumHeat(one, years, from, heatFrom, baseC, capC);
    one.forEach((sum, i) => {
      mean[i] = (mean[i] as number) + sum / starts.length;
    });
  }
  byHeat.set(key, mean);
  return mean;
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function fitted(value: number): Figure {
  return { low: value, value, high: value, standing: 'fitted', source: 'fitted here', note: null };
}

/** Index of the middle of the observed range in the growing year, with a half where it falls between two days. */
function middleIndex({ row, years }: ObservedAt): number {
  const { doy, half } = middleOf(row);
  return daysForward(growingCalendar(years.lat).firstDoy, doy) + half;
}

/** Heat of the mean year by the end of the middle observed day. */
function heatSeen(at: ObservedAt, species: Species): number {
  const heatSum = meanHeatSum(at.years, species.heatBaseC.value, species.heatCapC.value);
  const index = middleIndex(at) + 1;
  const whole = Math.floor(index);
  const [low, high] = [heatSum[whole] as number, heatSum[Math.min(DAYS_PER_YEAR, whole + 1)] as number];
  return low + (index - whole) * (high - low);
}

/** Days from bloom, for a bloom on 25 May, that a row asks for when bloom takes so much heat. */
function daysSeen(at: ObservedAt, species: Species, bloomHeat: number): number {
  const heatSum = meanHeatSum(at.years, species.heatBaseC.value, species.heatCapC.value);
  const { heatFrom, usualBloom } = growingCalendar(at.years.lat);
  const bloom = reachedOn(heatSum, heatFrom, bloomHeat);
  return middleIndex(at) - usualBloom - BLOOM_SHARE * (bloom - usualBloom);
}

type ByClass = Partial<Record<RipeningClass, Figure>>;

/** The mean of what the rows of a fitted class ask for; any other class keeps its proportion to the middle class. */
function byClass(now: ByClass, rows: readonly ObservedAt[], seen: (at: ObservedAt) => number): ByClass {
  const groups = Map.groupBy(rows, ({ row }) => row.class);
  const found: ByClass = {};
  for (const name of Object.keys(now) as RipeningClass[]) {
    const own = groups.get(name);
    if (own && now[name]?.standing === 'fitted') found[name] = fitted(meanOf(own.map(seen)));
  }
  const [known] = (['mid', 'early', 'late'] as const).filter(name => found[name] && now[name]);
  if (known === undefined) return now;
  const scale = (found[known]?.value ?? 1) / (now[known]?.value ?? 1);
  for (const [name, figure] of Object.entries(now))
    found[name as RipeningClass] ??= fitted(figure.value * scale);
  return found;
}

/** The species with the figures that the rows ask for. Figures that no row speaks of stay. */
export function refitted(species: Species, rows: readonly ObservedAt[]): Species {
  const ripe = (crop: Crop) => rows.filter(({ row }) => row.event === 'first-ripe' && row.crop === crop);
  const heat = (at: ObservedAt) => heatSeen(at, species);
  if (species.bloom === null) {
    const { main, breba } = species.heatNeed;
    return {
      ...species,
      heatNeed: { main: byClass(main, ripe('main'), heat), breba: byClass(breba, ripe('breba'), heat) },
    };
  }
  const blooms = rows.filter(({ row }) => row.event === 'full-bloom').map(heat);
  const bloomHeat = blooms.length === 0 ? species.bloom.heat : fitted(meanOf(blooms));
  const days = (at: ObservedAt) => daysSeen(at, species, bloomHeat.value);
  return {
    ...species,
    bloom: {
      ...species.bloom,
      heat: bloomHeat,
      toRipeDays: byClass(species.bloom.toRipeDays, ripe('main'), days),
    },
  };
}
