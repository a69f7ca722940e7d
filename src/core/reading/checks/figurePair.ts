import type { Figure } from '../../records/common.ts';
import { type RipeningClass, ripeningClasses } from '../../records/common.ts';
import type { Species } from '../../records/species.ts';
import { roundTo } from '../../units.ts';
import { atValue, type KeyPath, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

interface Pair {
  lower: { path: KeyPath; figure: Figure };
  upper: { path: KeyPath; figure: Figure };
}

/** Figures of one species agree with one another: the lower of each pair is not above the upper one. */
export const figurePair: Check = ({ species }) =>
  species.flatMap(({ file, value }) => pairsOf(value).flatMap(pair => pairProblem(file, pair)));

function pairsOf(species: Species): Pair[] {
  const pair = (lower: KeyPath, low: Figure, upper: KeyPath, high: Figure): Pair => ({
    lower: { path: lower, figure: low },
    upper: { path: upper, figure: high },
  });
  return [
    pair(['heat', 'base'], species.heatBaseC, ['heat', 'cap'], species.heatCapC),
    pair(
      ['hardiness', 'dormant_established'],
      species.dormantEstablishedC,
      ['hardiness', 'dormant_first_winter'],
      species.dormantFirstWinterC,
    ),
    pair(
      ['hardiness', 'root_severe'],
      species.rootSevereC,
      ['hardiness', 'root_injury'],
      species.rootInjuryC,
    ),
    ...classPairs(species.heatNeed.main, ['heat', 'need', 'main']),
    ...classPairs(species.heatNeed.breba, ['heat', 'need', 'breba']),
    ...classPairs(species.bloom?.toRipeDays ?? {}, ['bloom', 'to_ripe']),
  ];
}

/** A later class is not ripe sooner than an earlier one. */
function classPairs(figures: Partial<Record<RipeningClass, Figure>>, under: KeyPath): Pair[] {
  const given = ripeningClasses.flatMap(name => {
    const figure = figures[name];
    return figure ? [{ path: [...under, name], figure }] : [];
  });
  return given.slice(1).map((upper, index) => ({ lower: given[index]!, upper }));
}

function pairProblem(file: string, { lower, upper }: Pair): Problem[] {
  const [low, high] = [lower.figure.value, upper.figure.value].map(value => roundTo(value, 0.1));
  if (lower.figure.value <= upper.figure.value) return [];
  const [first, second] = [lower.path.at(-1), upper.path.at(-1)];
  return [
    {
      rule: 'figure-pair',
      file,
      spot: atValue(...upper.path, 'value'),
      got: String(high),
      expected: `at least ${low}`,
      message: `"${second}" (${high}) is below "${first}" (${low})`,
      remedy: 'look both up again; they may be swapped, or a minus sign is missing.',
    },
  ];
}
