/** Evidence for prices: the ladder, and the arithmetic of cost, loss and margin. */

import { markupFromMargin, priceForMargin, spaceWeekRate, startsPerPlant } from '../lots/cost.ts';
import { nearestRung, rungValue, type Series } from '../lots/ladder.ts';
import type { EvidenceTable } from './table.ts';
import { printed, rowsFrom } from './table.ts';

/** One decade of each series as the standard prints it, with the first number of the next. */
const iso3: readonly [Series, string][] = [
  ['R5', '1.00 1.60 2.50 4.00 6.30 10.0'],
  ['R10', '1.00 1.25 1.60 2.00 2.50 3.15 4.00 5.00 6.30 8.00 10.0'],
  [
    'R20',
    '1.00 1.12 1.25 1.40 1.60 1.80 2.00 2.24 2.50 2.80 3.15 3.55 4.00 4.50 5.00 5.60 6.30 7.10 8.00 9.00 10.0',
  ],
];

/** How far a preferred number lies from its exact place in the geometric series, %. */
function rounding(series: Series, rung: number): number {
  const perDecade = { R5: 5, R10: 10, R20: 20 }[series];
  return (rungValue(series, rung) / 10 ** (rung / perDecade) - 1) * 100;
}

function ladder(): EvidenceTable {
  const from = rowsFrom('ISO 3:1973, Preferred numbers, series R5, R10 and R20');
  const bound = rowsFrom(
    'ISO 3:1973: preferred numbers lie within -1.01 % and +1.26 % of the exact series',
    'memory',
  );
  const tens = rowsFrom('ISO 3:1973, R10 between 10 and 100');
  return {
    id: 'price-ladder',
    title: 'Rungs of the price ladder',
    about:
      'Prices climb in preferred numbers: ten rungs of about a quarter each make the price ten times as high.',
    weak: null,
    rows: [
      ...iso3.flatMap(([series, printedRow]) =>
        printedRow
          .split(' ')
          .map((value, rung) =>
            from.number(`${series}, number ${rung}`, Number(value), rungValue(series, rung), 0, ''),
          ),
      ),
      ...[10, 12.5, 16, 20, 25, 31.5, 40, 50, 63, 80, 100].map((value, step) =>
        tens.number(
          `R10, ${step} rungs above 10`,
          value,
          rungValue('R10', nearestRung('R10', 10) + step),
          0,
          '',
        ),
      ),
      ...iso3.flatMap(([series, printedRow]) => {
        const off = printedRow.split(' ').map((_, rung) => rounding(series, rung));
        return [
          bound.number(`${series}, most above the exact series`, 0, Math.max(...off), 1.26, '%'),
          bound.number(`${series}, most below the exact series`, 0, Math.min(...off), 1.01, '%'),
        ];
      }),
    ],
    notChecked: [],
  };
}

function costs(): EvidenceTable {
  const space = rowsFrom('Cost per square foot and week, worked by hand from its definition', 'computed');
  const chain = rowsFrom('Loss chain, worked by hand from its definition', 'computed');
  const margin = rowsFrom('Margin on price and markup on cost, from their definitions', 'computed');
  return {
    id: 'costs',
    title: 'Space, losses and margins',
    about:
      'What a tree costs to raise: its share of the space, of the trees that did not live, and of what is needed to go on. Your own figures stay private.',
    weak: null,
    rows: [
      space.number(
        '40,000 sq ft, three quarters in use, 52 weeks, $1,000,000',
        0.64,
        spaceWeekRate(1_000_000, 40_000, 0.75, 52),
        printed(2),
        '$ per sq ft and week',
      ),
      space.number(
        'a pot of 0.5 sq ft for 8 weeks',
        2.56,
        spaceWeekRate(1_000_000, 40_000, 0.75, 52) * 0.5 * 8,
        0.01,
        '$',
      ),
      chain.number(
        'stages that keep 80, 90 and 95 %',
        1.462,
        startsPerPlant([0.8, 0.9, 0.95]),
        printed(3),
        'starts per plant',
      ),
      chain.number('at $3 a start', 4.39, 3 * startsPerPlant([0.8, 0.9, 0.95]), printed(2), '$'),
      margin.number('margin 40 %', 66.7, 100 * markupFromMargin(0.4), printed(1), '% markup'),
      margin.number('margin 50 %', 100, 100 * markupFromMargin(0.5), 1e-9, '% markup'),
      margin.number('margin 60 %', 150, 100 * markupFromMargin(0.6), 1e-9, '% markup'),
      margin.number('cost 9.00, margin 55 %', 20, priceForMargin(9, 0.55), printed(2), '$'),
    ],
    notChecked: [],
  };
}

export const lotsPriceTables: readonly EvidenceTable[] = [ladder(), costs()];
