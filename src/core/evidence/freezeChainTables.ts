/** Evidence for the statistics of freeze dates. */
import { dayOfYear, doyFromMonthDay, monthDay, parseDay } from '../days.ts';
import { bothAbove, freezeChances, normalShareBelow } from './freezeChain.ts';
import type { EvidenceTable } from './table.ts';
import { printed, rowsFrom } from './table.ts';

/** Day of the year and date, as printed. */
const printedDates = [
  ['median first frost', 298, '10-25'],
  ['median last frost', 96, '04-06'],
  ['earliest first frost', 266, '09-23'],
  ['latest last frost', 120, '04-30'],
] as const;

/** h, k, correlation, chance that both are above. */
const bivariate = [
  [-1.25, -1.25, 0.7, 0.83884073],
  [-2, -2, 0.7, 0.96186132],
  [0, 0, 0.5, 1 / 3],
  [1, -0.5, 0.7, 0.15546486],
] as const;

/** Nights of 5 C (10 of them) and 8 C (30), sd 4 C, threshold 0 C: correlation, two nights without, then, none at all. */
const chains = [
  [5, 10, 0.5, 0.82373, 0.92104, 0.4266],
  [5, 10, 0.7, 0.83884, 0.93793, 0.5024],
  [8, 30, 0.5, 0.95855, 0.98087, 0.5581],
  [8, 30, 0.7, 0.96186, 0.98425, 0.6167],
] as const;
const singleNights = [
  [5, 10, 0.10565, 0.3274],
  [8, 30, 0.02275, 0.5014],
] as const;

/** Chances of frost dates and of runs of nights without frost. */
export function freezeChainTables(): EvidenceTable[] {
  const ksu = rowsFrom(
    'A. Patrignani 2024, "First and last frost", Kansas State University (Johnson County, 1980-2020)',
  );
  const again = rowsFrom(
    'bivariate normal distribution and first-order chain, in another program',
    'computed',
  );
  const exact = rowsFrom('exact value', 'computed');
  const chance = (meanC: number, nights: number, lag1: number) =>
    freezeChances({ meanC, sdC: 4, thresholdC: 0, nights, lag1 });
  return [
    {
      id: 'freeze-statistics',
      title: 'Statistics of freeze dates',
      about:
        'Cold nights come in runs. Treating nights as independent puts the first freeze 2 to 10 days too early; a memory of the night before mends most of that.',
      weak: null,
      rows: [
        ...printedDates.flatMap(([what, doy, date]) => [
          ksu.text(`${what}, day ${doy}`, date, monthDay(doy)),
          ksu.number(`${what}, ${date}`, doy, doyFromMonthDay(date) ?? 0, 0, 'day of the year'),
        ]),
        ksu.number(
          'risk-free days',
          146,
          (doyFromMonthDay('09-23') ?? 0) - (doyFromMonthDay('04-30') ?? 0),
          0,
          'days',
        ),
        ksu.number(
          'first frost by day 245',
          0.00010774,
          normalShareBelow((245 - 296.12195) / 13.816206),
          printed(8),
          '',
        ),
        ksu.number(
          'last frost from day 122',
          0.00864856,
          1 - normalShareBelow((122 - 95.390342) / 11.178977),
          printed(8),
          '',
        ),
        ...bivariate.map(([h, k, r, expected]) =>
          again.number(
            `both above ${h} and ${k}, correlation ${r}`,
            expected,
            bothAbove(h, k, r),
            printed(8),
            '',
          ),
        ),
        exact.number(
          'without correlation, the product',
          normalShareBelow(-0.3) * normalShareBelow(1.1),
          bothAbove(0.3, -1.1, 0),
          1e-12,
          '',
        ),
        ...singleNights.flatMap(([meanC, nights, one, none]) => [
          again.number(
            `nights of ${meanC} C, one freezes`,
            one,
            chance(meanC, nights, 0).one,
            printed(5),
            '',
          ),
          again.number(
            `${nights} nights of ${meanC} C, independent`,
            none,
            chance(meanC, nights, 0).none,
            printed(4),
            '',
          ),
        ]),
        ...chains.flatMap(([meanC, nights, lag1, two, after, none]) => {
          const what = `nights of ${meanC} C, correlation ${lag1}`;
          const got = chance(meanC, nights, lag1);
          return [
            again.number(`${what}, two without`, two, got.two, printed(5), ''),
            again.number(`${what}, one without after another`, after, got.after, printed(5), ''),
            again.number(`${nights} ${what}, none`, none, got.none, printed(4), ''),
          ];
        }),
        exact.number(
          'March 1 in a leap year',
          60,
          dayOfYear(parseDay('2028-03-01') ?? ('' as never)),
          0,
          'day of the year',
        ),
      ],
      notChecked: [
        {
          what: 'frost dates of 1980, 1981 and 1982 and the normal curves fitted to 41 years',
          why: 'the daily values are not printed; the fitted means and deviations are used as given',
        },
      ],
    },
  ];
}
