/** Evidence for freeze dates: modeled against observed and published ones. */
import { daysForward, seasonStartDoy } from '../climate/calendar.ts';
import type { FreezeThresholdF } from '../climate/figures.ts';
import { freezeThresholdsF } from '../climate/figures.ts';
import { doyFromMonthDay } from '../days.ts';
import type { Compared } from './comparedPlaces.ts';
import { mean, meanError } from './comparedPlaces.ts';
import type { EvidenceRow, EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

type Quantile = 'p10' | 'p50' | 'p90';
const quantileAt: Readonly<Record<Quantile, 0 | 1 | 2>> = { p10: 0, p50: 1, p90: 2 };

interface DateError {
  readonly place: Compared;
  readonly expected: string;
  readonly got: string;
  /** Modeled less observed, days. */
  readonly days: number;
}

/**
 * Date errors at one threshold and quantile. Places where more than one season in ten has no such freeze are left out:
 * their dates rest on a handful of years; they are judged by the share of years without.
 */
const MOST_WITHOUT = 0.1;

function dateErrors(
  places: readonly Compared[],
  threshold: FreezeThresholdF,
  end: 'first' | 'last',
  quantile: Quantile,
): DateError[] {
  return places.flatMap(place => {
    const observed = place.observed.find(({ thresholdF }) => thresholdF === threshold);
    const expected = observed?.[end][quantileAt[quantile]] ?? null;
    const got = place.odds.get(threshold)?.[end][quantile] ?? null;
    if (observed === undefined || expected === null || got === null || (observed.none ?? 0) > MOST_WITHOUT)
      return [];
    const season = (date: string) => daysForward(seasonStartDoy(place.lat), doyFromMonthDay(date) ?? 1);
    // Where it freezes all year, both dates huddle about the season's start; take the short way round the year.
    const days = ((season(got) - season(expected) + 547) % 365) - 182;
    return [{ place, expected, got, days }];
  });
}

/**
 * Largest mean error, bias and single error allowed, in days. 32 F: what the site promises of the middle dates. The
 * others hold the model to what it reached when it was chosen, so that a change cannot quietly make it worse.
 */
const freezeLimits: readonly (readonly [
  FreezeThresholdF,
  'first' | 'last',
  Quantile,
  number,
  number,
  number,
])[] = [
  [36, 'first', 'p50', 3, 1, 10],
  [32, 'first', 'p50', 3, 1, 10],
  [28, 'first', 'p50', 4.4, 2.5, 19],
  [24, 'first', 'p50', 5.2, 1.5, 14],
  [36, 'last', 'p50', 4, 2.5, 12],
  [32, 'last', 'p50', 4, 1, 20],
  [28, 'last', 'p50', 3.3, 1, 14],
  [24, 'last', 'p50', 4.2, 3.2, 12],
  [32, 'first', 'p10', 3.5, 1, 10],
  [32, 'last', 'p90', 5, 1.5, 18],
];

function freezeErrorTable(places: readonly Compared[]): EvidenceTable {
  const from = rowsFrom('stations of the table "Freeze dates, station by station"', 'measured');
  const names = { p10: '10 %', p50: 'middle', p90: '90 %' } as const;
  return {
    id: 'freeze-errors',
    title: 'How far modeled freeze dates are off',
    about:
      'Freeze dates drawn from monthly figures alone, against dates counted in daily records or published by NOAA. Mean error takes every miss as positive; bias says whether the model is late (+) or early (-).',
    weak: 'Where it freezes in few winters, and at 24 F and below, single places can be off by two weeks. A published date always wins.',
    rows: freezeLimits.flatMap(([threshold, end, quantile, error, bias, largest]) => {
      const days = dateErrors(places, threshold, end, quantile).map(entry => entry.days);
      const what = `${end} freeze at ${threshold} F, ${names[quantile]} date, ${days.length} places`;
      return [
        from.number(`${what}: mean error`, 0, meanError(days), error, 'days'),
        from.number(`${what}: bias`, 0, mean(days), bias, 'days'),
        from.number(`${what}: largest`, 0, Math.max(...days.map(Math.abs)), largest, 'days'),
      ];
    }),
    notChecked: [],
  };
}

/** Largest miss allowed for one place's middle date, days; twice what the largest of the error table is about. */
const SINGLE_PLACE_DAYS = 20;

function stationTable(places: readonly Compared[]): EvidenceTable {
  return {
    id: 'freeze-stations',
    title: 'Freeze dates, station by station',
    about:
      'Middle dates of the first and last freeze. Expected is what was observed or published, got is the model.',
    weak: null,
    rows: freezeThresholdsF.flatMap(threshold =>
      (['first', 'last'] as const).flatMap(end =>
        dateErrors(places, threshold, end, 'p50').map(({ place, expected, got, days }): EvidenceRow => {
          const what = `${place.name}, ${end} freeze at ${threshold} F`;
          const ok = Math.abs(days) <= SINGLE_PLACE_DAYS;
          return {
            what,
            source: place.source,
            standing: 'measured',
            expected,
            got,
            tolerance: SINGLE_PLACE_DAYS,
            unit: 'days',
            ok,
          };
        }),
      ),
    ),
    notChecked: [],
  };
}

function withoutTable(places: readonly Compared[]): EvidenceTable {
  const shares = places.flatMap(place =>
    place.observed.flatMap(({ thresholdF, none }) =>
      none === null ? [] : [(place.odds.get(thresholdF)?.none ?? 0) - none],
    ),
  );
  const from = rowsFrom('stations of the table "Freeze dates, station by station"', 'measured');
  return {
    id: 'freeze-none',
    title: 'Years without a freeze',
    about:
      'The share of years in which it does not freeze at all, at every threshold of every station that counts them.',
    weak: 'On the Gulf coast the model still freezes in too many winters.',
    rows: [
      from.number(`mean error over ${shares.length} shares`, 0, meanError(shares), 0.04, 'of all years'),
      from.number('bias', 0, mean(shares), 0.03, 'of all years'),
      from.number('largest', 0, Math.max(...shares.map(Math.abs)), 0.45, 'of all years'),
    ],
    notChecked: [],
  };
}

/** Freeze dates against records. */
export function freezeTables(places: readonly Compared[]): EvidenceTable[] {
  return [freezeErrorTable(places), stationTable(places), withoutTable(places)];
}
