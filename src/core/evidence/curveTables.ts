/** Evidence for the daily curve through monthly means. */
import { dailyCurve, linearCurve, monthlyMeans } from '../climate/dailyCurve.ts';
import type { EvidenceTable } from './table.ts';
import { printed, rowsFrom } from './table.ts';

/** Madison, Wisconsin, mean temperatures; the demonstration file has December above zero, the table below it. */
const madison = [-6.77, -4.33, 1.52, 8.35, 14.74, 20.29, 23.22, 22.17, 16.94, 10.35, 3.08, -4.29] as const;
const demonstration = [...madison.slice(0, 11), 4.29];
const demonstrationJanuary = [
  -0.92, -1.46, -2, -2.54, -3.07, -3.6, -4.12, -4.63, -5.11, -5.59, -6.04, -6.47, -6.87, -7.25, -7.6,
] as const;
const madisonDays = [
  [1, -6.58],
  [15, -6.98],
  [46, -4.41],
  [75, 1.49],
  [105, 8.27],
  [135, 14.56],
  [166, 20.33],
  [196, 23.35],
  [227, 22.48],
  [258, 17.09],
  [288, 10.57],
  [319, 3.27],
  [349, -4.36],
  [365, -6.51],
] as const;
/** Monthly means of straight lines between mid-months, and how far they are off, as printed. */
const madisonLinear = [
  -6.147, -3.855, 1.725, 8.404, 14.731, 20.037, 22.732, 21.585, 16.676, 10.15, 2.948, -3.743,
];
const australia = [25.32, 24.93, 22.63, 19.73, 16.17, 13, 12.38, 14.04, 17.36, 19.78, 22.52, 24.04] as const;
const australiaLinearErrors = [
  -0.2, -0.249, -0.11, -0.134, -0.006, 0.282, 0.295, 0.255, -0.064, 0.083, -0.115, -0.01,
];

/** The printed linear lines join month values on a daily calendar a little unlike ours. */
const LINEAR_TOLERANCE = 0.15;

/** The daily curve against published interpolations. */
export function curveTables(): EvidenceTable[] {
  const interp = rowsFrom(
    'P. J. Bartlein, mp-interp, demo_1yr_epstein (method of Epstein 1991, J. Climate 4:365-368)',
  );
  const adjust = rowsFrom('P. J. Bartlein and S. L. Shafer, PaleoCalAdjust, figure 15 table');
  const again = rowsFrom('Epstein 1991, J. Climate 4:365-368, in another program', 'computed');
  const [demo, curve] = [dailyCurve(demonstration), dailyCurve(madison)];
  const [means, southMeans] = [monthlyMeans(curve), monthlyMeans(dailyCurve(australia))];
  const [linear, southLinear] = [monthlyMeans(linearCurve(madison)), monthlyMeans(linearCurve(australia))];
  const at = (values: ArrayLike<number>, i: number) => values[i] as number;
  const largest = curve.reduce((best, value, day) => (value > at(curve, best) ? day : best), 0);
  const smallest = curve.reduce((best, value, day) => (value < at(curve, best) ? day : best), 0);
  return [
    {
      id: 'daily-curve',
      title: 'A curve for every day from twelve monthly means',
      about:
        'The curve keeps every monthly mean. Straight lines from month to month lose up to 0.6 C in the hottest and coldest months, which is why they are not used for temperatures.',
      weak: null,
      rows: [
        ...demonstrationJanuary.map((expected, day) =>
          interp.number(
            `Madison demonstration, ${day + 1} January`,
            expected,
            at(demo, day),
            printed(2),
            'C',
          ),
        ),
        interp.number('Madison demonstration, January 31', -8.78, at(demo, 30), printed(2), 'C'),
        interp.number('Madison demonstration, December 31', -0.38, at(demo, 364), printed(2), 'C'),
        ...madison.map((expected, month) =>
          adjust.number(`Madison, mean of month ${month + 1}`, expected, at(means, month), printed(3), 'C'),
        ),
        ...australia.map((expected, month) =>
          adjust.number(
            `Australia, mean of month ${month + 1}`,
            expected,
            at(southMeans, month),
            printed(3),
            'C',
          ),
        ),
        ...madisonDays.map(([doy, expected]) =>
          again.number(`Madison, day ${doy}`, expected, at(curve, doy - 1), printed(2), 'C'),
        ),
        again.number('Madison, coldest value', -6.99, at(curve, smallest), printed(3), 'C'),
        again.number('Madison, coldest day', 13, smallest + 1, 0, 'day of the year'),
        again.number('Madison, warmest value', 23.556, at(curve, largest), printed(3), 'C'),
        again.number('Madison, warmest day', 206, largest + 1, 0, 'day of the year'),
        ...madisonLinear.map((expected, month) =>
          adjust.number(
            `Madison, straight lines, month ${month + 1}`,
            expected,
            at(linear, month),
            LINEAR_TOLERANCE,
            'C',
          ),
        ),
        ...australiaLinearErrors.map((expected, month) =>
          adjust.number(
            `Australia, straight lines, error of month ${month + 1}`,
            expected,
            at(southLinear, month) - at(australia, month),
            LINEAR_TOLERANCE,
            'C',
          ),
        ),
      ],
      notChecked: [],
    },
  ];
}
