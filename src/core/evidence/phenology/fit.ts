/**
 * The figures of a species as they come out of dated observations: of each class the mean of what its rows ask for. Used to find the
 * figures of the species records, and to tell the error at places that had no say (each place left out in turn).
 */
import type { WeatherYears } from '../../climate/weatherYears.ts';
import { daysSeen, heatSeen, meanYear } from '../../phenology/seenDate.ts';
import type { Crop, Figure, RipeningClass } from '../../records/common.ts';
import type { Species } from '../../records/species.ts';
import type { Observation } from './observation.ts';

export interface ObservedAt {
  readonly row: Observation;
  readonly years: WeatherYears;
}

const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

function fitted(value: number): Figure {
  return { low: value, value, high: value, standing: 'fitted', source: 'fitted here', note: null };
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
  const heat = ({ row, years }: ObservedAt) => heatSeen(meanYear(years, species), row);
  if (species.bloom === null) {
    const { main, breba } = species.heatNeed;
    return {
      ...species,
      heatNeed: { main: byClass(main, ripe('main'), heat), breba: byClass(breba, ripe('breba'), heat) },
    };
  }
  const blooms = rows.filter(({ row }) => row.event === 'full-bloom').map(heat);
  const bloomHeat = blooms.length === 0 ? species.bloom.heat : fitted(meanOf(blooms));
  const days = ({ row, years }: ObservedAt) => daysSeen(meanYear(years, species), row, bloomHeat.value);
  return {
    ...species,
    bloom: {
      ...species.bloom,
      heat: bloomHeat,
      toRipeDays: byClass(species.bloom.toRipeDays, ripe('main'), days),
    },
  };
}
