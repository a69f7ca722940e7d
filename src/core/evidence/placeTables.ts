/** Evidence for what is said about places: modelled freezes, winter lows, zones and heat against observed ones. */
import { daysForward, seasonStartDoy } from '../climate/calendar.ts';
import { chillOfYears } from '../climate/chillYears.ts';
import type { ClimateFigures, FreezeThresholdF } from '../climate/figures.ts';
import { freezeThresholdsF } from '../climate/figures.ts';
import type { FreezeOdds } from '../climate/freezes.ts';
import { findWinters, freezeOdds } from '../climate/freezes.ts';
import { heatOfYear, hotDays } from '../climate/heat.ts';
import { weatherYears } from '../climate/weatherYears.ts';
import { halfZoneIndex, parseZone, winterLow, winterZone } from '../climate/winterZone.ts';
import { doyFromMonthDay, monthDay } from '../days.ts';
import type { ObservedFreeze } from './stationFigures.ts';
import { freezeStations, longRecordFigures, placesWithZone } from './stationFigures.ts';
import type { EvidenceRow, EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

/** One place of the comparison, modelled once. */
interface Compared {
  readonly name: string;
  readonly source: string;
  readonly lat: number;
  readonly observed: readonly ObservedFreeze[];
  readonly odds: ReadonlyMap<FreezeThresholdF, FreezeOdds>;
  readonly observedMinC: number | null;
  readonly meanMinC: number;
}

function compared(
  name: string,
  source: string,
  figures: ClimateFigures,
  observed: readonly ObservedFreeze[],
  observedMinC: number | null,
): Compared {
  const winters = findWinters(weatherYears(figures));
  const odds = new Map(freezeThresholdsF.map(threshold => [threshold, freezeOdds(winters, threshold)]));
  return { name, source, lat: figures.lat, observed, odds, observedMinC, meanMinC: winterLow(winters).meanC };
}

function allCompared(): Compared[] {
  const stations = freezeStations().map(({ name, source, figures, freezes, annualMinC }) =>
    compared(name, source, figures, freezes, annualMinC),
  );
  const dates = (doys: readonly (number | null)[]) => doys.map(doy => (doy === null ? null : monthDay(doy)));
  const records = longRecordFigures().map(({ record, figures }) =>
    compared(
      record.name,
      'long daily record, quantiles of the daily values',
      figures,
      record.freezes.map(([thresholdF, first, last]) => ({
        thresholdF,
        first: dates(first),
        last: dates(last),
        none: null,
      })),
      record.annualMinC,
    ),
  );
  return [...stations, ...records];
}

type Quantile = 'p10' | 'p50' | 'p90';
const quantileAt: Readonly<Record<Quantile, 0 | 1 | 2>> = { p10: 0, p50: 1, p90: 2 };

interface DateError {
  readonly place: Compared;
  readonly expected: string;
  readonly got: string;
  /** Modelled less observed, days. */
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

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const meanError = (values: readonly number[]) => mean(values.map(Math.abs));

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
    title: 'How far modelled freeze dates are off',
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

function winterLowTable(places: readonly Compared[]): EvidenceTable {
  const known = places.flatMap(({ name, source, observedMinC, meanMinC }) =>
    observedMinC === null ? [] : [{ name, source, observedMinC, error: meanMinC - observedMinC, meanMinC }],
  );
  const errors = known.map(({ error }) => error);
  const from = rowsFrom('places listed below', 'measured');
  return {
    id: 'winter-lows',
    title: 'The coldest night of a winter',
    about:
      'Mean of the lowest temperature of each winter, modelled from monthly figures, against long records.',
    weak: 'Skewed winters are not in the model: it errs warm in the high interior west and cold on the Gulf coast, by up to 5 C.',
    rows: [
      from.number(`mean error over ${errors.length} places`, 0, meanError(errors), 1.65, 'C'),
      from.number('bias', 0, mean(errors), 0.85, 'C'),
      ...known.map(({ name, source, observedMinC, meanMinC }) =>
        rowsFrom(source, 'measured').number(name, observedMinC, meanMinC, 5.5, 'C'),
      ),
    ],
    notChecked: [],
  };
}

function zoneErrorTable(): EvidenceTable {
  const usda = rowsFrom(
    '2023 USDA Plant Hardiness Zone Map (USDA-ARS and Oregon State University), nearest ZIP code',
  );
  const places = placesWithZone().map(({ name, zone, figures }) => {
    const { meanC } = winterLow(findWinters(weatherYears(figures)));
    return { name, zone, modelled: winterZone(meanC), off: halfZoneIndex(meanC) - (parseZone(zone) ?? 0) };
  });
  const off = places.map(place => place.off);
  const within = off.filter(half => Math.abs(half) <= 1).length / off.length;
  return {
    id: 'winter-zone-errors',
    title: 'Modelled winter zones',
    about:
      'Winter zones worked out from monthly normals alone, against the map. The map uses warmer years (1991-2020) than most of the normals (1981-2010).',
    weak: 'One place in twenty is more than half a zone off. A published zone always wins.',
    rows: [
      usda.number(`mean error over ${off.length} places`, 0, meanError(off), 0.7, 'half zones'),
      usda.number('share within one half zone', 1, within, 0.1, ''),
      ...places.map(
        ({ name, zone, modelled, off: half }): EvidenceRow => ({
          ...usda.text(name, zone, modelled),
          tolerance: 2,
          unit: 'half zones',
          ok: Math.abs(half) <= 2,
        }),
      ),
    ],
    notChecked: [],
  };
}

/** Season heat of Johnson County at other thresholds: base, cap, mean of 41 years. C-degree-days. */
const johnsonHeat = [
  [10, null, 2410],
  [10, 30, 2352],
  [7, null, 3111],
  [15, null, 1432],
] as const;

function heatTable(): EvidenceTable {
  const rows = longRecordFigures().flatMap(({ record, figures }) => {
    const from = rowsFrom(`daily record, ${record.name}`, 'measured');
    const years = weatherYears(figures);
    const { mean: heat, sd } = heatOfYear(years, 8, 36);
    const chill = chillOfYears(years).portions.p50;
    const others = record.name.startsWith('Johnson') ? johnsonHeat : [];
    return [
      from.number(`${record.name}, 8 to 36 C`, record.heat8, heat, record.heat8 * 0.01, 'C-degree-days'),
      from.number(
        `${record.name}, year-to-year deviation`,
        record.heat8Sd,
        sd,
        record.heat8Sd * 0.3,
        'C-degree-days',
      ),
      ...others.map(([base, cap, expected]) =>
        from.number(
          `${record.name}, ${base} C ${cap === null ? 'without a cap' : `to ${cap} C`}`,
          expected,
          heatOfYear(years, base, cap).mean,
          expected * 0.01,
          'C-degree-days',
        ),
      ),
      from.number(`${record.name}, days above 30 C`, record.hotDays, hotDays(years), 5, 'days'),
      from.number(`${record.name}, chill portions`, record.portions, chill, 8, 'portions'),
    ];
  });
  return {
    id: 'season-heat',
    title: 'Heat and chill of the year',
    about:
      'Yearly sums over the weather years against sums over real years. One year made of monthly means alone would be up to 9 % too cool and up to 15 % too chilly.',
    weak: 'Good and poor summers differ a little less in the model than in records, which also hold a warming trend.',
    rows,
    notChecked: [],
  };
}

/** Modelled places against records, published dates and the zone map. Takes a second or two. */
export function placeTables(): EvidenceTable[] {
  const places = allCompared();
  return [
    freezeErrorTable(places),
    stationTable(places),
    withoutTable(places),
    winterLowTable(places),
    zoneErrorTable(),
    heatTable(),
  ];
}
