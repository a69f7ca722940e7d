import { normaliseFigure, type WrittenFigure } from '../../records/common.ts';
import { celsiusToFahrenheit, cmToInches, LITERS_PER_US_GALLON, roundTo } from '../../units.ts';
import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';
import { writtenFigures } from './writtenFigures.ts';

/** What a figure can be, in C, degree-days C, days, years, hours, portions, cm, liters or shares. Wide bounds: our working figures. */
const bounds: Record<string, readonly [low: number, high: number]> = {
  leaf_damage: [-20, 5],
  dormant_established: [-50, 5],
  dormant_first_winter: [-50, 5],
  root_injury: [-30, 5],
  root_severe: [-40, 5],
  chill_hours: [0, 2500],
  chill_portions: [0, 120],
  leaf_fall_night: [-15, 10],
  leaf_fall_mean: [-5, 18],
  leaf_fall_spell: [1, 90],
  cold_spell: [1, 180],
  base: [-5, 18],
  cap: [15, 45],
  budbreak: [0, 1500],
  ripens_above: [-5, 25],
  heat: [20, 2500],
  to_ripe: [20, 330],
  least_heat: [0, 4000],
  least_days: [0, 330],
  'very-early': [50, 6000],
  early: [50, 6000],
  mid: [50, 6000],
  late: [50, 6000],
  'very-late': [50, 6000],
  rooting_warm_days: [1, 400],
  wean: [0, 730],
  strongly_rooted: [1, 1095],
  success: [0, 1],
  temperature: [-10, 15],
  bare_root: [1, 365],
  first_fruit: [0, 25],
  height: [50, 4000],
  spread: [50, 4000],
  final_pot: [5, 1000],
};

/** Figures in days whose own key is that of a class or a crop. */
const daysPerKey = ['to_ripe', 'least_days'] as const;

/** A figure is within what its unit allows. */
export const figureRange: Check = ({ species }) =>
  species.flatMap(({ file, written }) =>
    writtenFigures(written).flatMap(({ path, figure }) => {
      const name = String(path.at(-1));
      const limits = bounds[daysPerKey.find(key => key === path.at(-2)) ?? name];
      if (!limits || fits(figure, limits)) return [];
      const allowed = limits.map(limit => inUnit(limit, figure.unit)).join(' to ');
      const shown = Array.isArray(figure.value) ? `[${figure.value.join(', ')}]` : String(figure.value);
      return [
        {
          rule: 'figure-range' as const,
          file,
          spot: atValue(...path, 'value'),
          got: `${shown} ${figure.unit}`,
          expected: allowed,
          message: `${quote(name)} is ${shown} ${figure.unit} where ${allowed} is allowed`,
          remedy: unitMeant(figure, limits),
        },
      ];
    }),
  );

function fits(figure: WrittenFigure, [low, high]: readonly [number, number]): boolean {
  const normal = normaliseFigure(figure);
  return Math.min(normal.low, normal.high) >= low && Math.max(normal.low, normal.high) <= high;
}

function inUnit(limit: number, unit: string): number {
  if (unit === 'F') return roundTo(celsiusToFahrenheit(limit), 1);
  if (unit === '%') return limit * 100;
  if (unit === 'ft') return roundTo(cmToInches(limit) / 12, 1);
  if (unit === 'm') return limit / 100;
  if (unit === 'gal') return roundTo(limit / LITERS_PER_US_GALLON, 1);
  return unit === 'degree-days F' ? roundTo(limit * 1.8, 1) : limit;
}

const otherUnits: Record<string, string> = {
  C: 'F',
  F: 'C',
  ft: 'm',
  m: 'ft',
  gal: 'L',
  L: 'gal',
  share: '%',
  '%': 'share',
  'degree-days C': 'degree-days F',
  'degree-days F': 'degree-days C',
};

function unitMeant(figure: WrittenFigure, limits: readonly [number, number]): string {
  const unit = otherUnits[figure.unit];
  if (unit === undefined || !fits({ ...figure, unit }, limits)) return 'look the figure up again.';
  return `is it in another unit? Then write "unit: ${unit.includes('%') ? "'%'" : unit}".`;
}
