/** Ripening dates from monthly figures beside the same sums over long daily records. */
import type { ClimateFigures } from '../climate/figures.ts';
import { nothingPublished } from '../climate/figures.ts';
import { type WeatherYears, weatherYears } from '../climate/weatherYears.ts';
import { NEED_FIFTHS, type NeedOdds, ripeningOdds, type SeasonRules } from '../match/ripeningOdds.ts';
import { ripeningWord } from '../match/words.ts';
import { killingFreezeAt } from '../phenology/endOfSeason.ts';
import { fahrenheitToCelsius } from '../units.ts';
import { allNumbersOf, type EvidenceRow, type EvidenceTable, rowsFrom } from './table.ts';

interface Site {
  readonly name: string;
  readonly source: string;
  readonly lat: number;
  readonly tminC: string;
  readonly tmaxC: string;
  readonly sdTminC: string;
  readonly lag1: number;
}

/** Means and standard deviations (about the smooth curve) of the same records the dates below were summed from. */
const sites = {
  johnson: {
    name: 'Johnson County, Kansas',
    source: 'gridMET daily values 1980-2020',
    lat: 38.9,
    tminC: '-6.0 -4.1 1.5 7.1 12.8 18.1 20.6 19.4 14.6 7.9 1.4 -4.3',
    tmaxC: '4.5 6.9 13.6 19.1 24.1 29.3 32.0 31.0 26.6 19.7 12.3 5.6',
    sdTminC: '5.6 5.9 5.3 4.6 4.1 3.2 3.0 3.3 4.3 4.7 5.0 5.7',
    lag1: 0.72,
  },
  bonn: {
    name: 'Bonn, Germany',
    source: 'Deutscher Wetterdienst, daily record 1991-2019',
    lat: 50.8,
    tminC: '0.0 -0.1 2.1 4.6 8.2 11.3 13.6 12.7 9.8 6.9 3.6 1.1',
    tmaxC: '5.7 6.8 11.2 15.8 19.5 22.4 25.0 24.0 20.1 15.1 9.6 6.5',
    sdTminC: '4.8 4.6 4.1 3.8 3.7 3.2 3.0 3.0 3.3 4.1 4.0 4.6',
    lag1: 0.72,
  },
  davis: {
    name: 'Davis, California',
    source: 'daily record of Davis 1978-2007',
    lat: 38.5,
    tminC: '3.1 4.6 6.2 7.6 10.5 12.8 13.7 12.9 12.0 9.1 5.2 2.9',
    tmaxC: '12.3 15.8 18.7 22.5 27.6 31.7 34.2 33.3 31.3 26.1 17.6 12.1',
    sdTminC: '3.6 3.4 2.9 2.8 3.0 2.8 2.7 2.3 2.5 2.7 3.4 3.6',
    lag1: 0.61,
  },
  beijing: {
    name: 'Beijing, China',
    source: 'daily record of Beijing 1978-2007',
    lat: 39.9,
    tminC: '-7.6 -4.9 0.9 8.5 14.4 19.5 22.1 21.2 15.3 8.3 0.3 -5.4',
    tmaxC: '2.2 5.3 12.1 20.5 26.5 30.4 31.0 30.0 26.1 19.4 10.4 3.5',
    sdTminC: '3.1 3.4 3.2 3.3 2.8 2.4 1.9 2.2 2.7 3.2 3.1 3.0',
    lag1: 0.57,
  },
  sfax: {
    name: 'Sfax, Tunisia',
    source: 'daily record of Sfax 1985-2014',
    lat: 34.7,
    tminC: '8.0 8.7 10.6 13.0 16.2 19.4 21.9 22.6 20.7 17.7 12.9 9.1',
    tmaxC: '17.0 17.7 19.8 22.3 25.8 29.4 32.2 32.9 30.5 27.2 22.3 18.1',
    sdTminC: '1.9 2.1 2.3 2.1 2.2 2.1 1.9 1.8 1.9 2.1 2.0 2.2',
    lag1: 0.64,
  },
} as const satisfies Record<string, Site>;

type SiteName = keyof typeof sites;

export function evidenceFigures(name: SiteName): ClimateFigures {
  const { lat, tminC, tmaxC, sdTminC, lag1 } = sites[name];
  return {
    lat,
    tmaxC: allNumbersOf(tmaxC),
    tminC: allNumbersOf(tminC),
    sdTminC: allNumbersOf(sdTminC),
    sdTmaxC: null,
    sdAbout: 'curve',
    lag1,
    rainMm: null,
    dewPointC: null,
    published: nothingPublished,
  };
}

/** Fig: base and cap of Souza et al. 2009, Revista Brasileira de Fruticultura 31(2):314-322, who also found the two needs. */
const BASE_C = 8;
const CAP_C = 36;
const NEED_AUGUST = 1955;
const NEED_JULY = 2200;

const fromNewYear: SeasonRules = { heatFrom: 0, budbreakHeat: 0, leafDamageC: null, end: null };
const fromLastFreeze: SeasonRules = {
  heatFrom: 0,
  budbreakHeat: 0,
  leafDamageC: 0,
  end: killingFreezeAt(fahrenheitToCelsius(28)),
};
/** As the site counts a mid-season fig: 200 to budbreak (ours), the rest of 1955 from there. */
const fromBudbreak: SeasonRules = {
  heatFrom: 0,
  budbreakHeat: 200,
  leafDamageC: fahrenheitToCelsius(30),
  end: killingFreezeAt(fahrenheitToCelsius(28)),
};
const NEED_FROM_BUDBREAK = NEED_AUGUST - 200;

/** The need itself is known where a sum over a daily record stands beside it. */
const AT_ITS_WORD = [0];

function oddsAt(
  years: WeatherYears,
  rules: SeasonRules,
  need: number,
  fifths: readonly number[] = NEED_FIFTHS,
): NeedOdds {
  const needs = [{ by: 'heat' as const, heat: need + rules.budbreakHeat, budbreakHeat: 0, leastDays: 0 }];
  const [found] = ripeningOdds(years, BASE_C, CAP_C, [{ rules, needs, headStart: null }], fifths);
  return found?.outdoors[0] as NeedOdds;
}

function weatherOf(): Record<SiteName, WeatherYears> {
  const entries = (Object.keys(sites) as SiteName[]).map(name => [name, weatherYears(evidenceFigures(name))]);
  return Object.fromEntries(entries) as Record<SiteName, WeatherYears>;
}

/** Days. Within a week is what the model promises; the two anchors of the fig are held tighter. */
const DATE_TOLERANCE = 5;

/** Median day from January 1 on which each need was met: site, 1955, 2200. */
const newYearDates: readonly (readonly [SiteName, number, number])[] = [
  ['johnson', 231, 245],
  ['davis', 221, 238],
  ['beijing', 224, 239],
  ['sfax', 194, 207],
];

export function ripeningDatesTable(): EvidenceTable {
  const weather = weatherOf();
  const source = (name: SiteName) => `${sites[name].name}: ${sites[name].source}`;
  const dates = newYearDates.flatMap(([name, august, july]) => {
    const from = rowsFrom(source(name), 'computed');
    const row = (need: number, expected: number): EvidenceRow => {
      const got = oddsAt(weather[name], fromNewYear, need, AT_ITS_WORD).dates?.p50 ?? 0;
      const what = `${sites[name].name}: ${need} degree days from January 1, middle year`;
      return from.number(what, expected, got, DATE_TOLERANCE, 'day of year');
    };
    return [row(NEED_AUGUST, august), row(NEED_JULY, july)];
  });
  const johnson = rowsFrom(source('johnson'), 'computed');
  const spread = (need: number) => oddsAt(weather.johnson, fromLastFreeze, need, AT_ITS_WORD).dates;
  const freezeRow = (need: number, at: 'p10' | 'p50' | 'p90', expected: number, tolerance: number) =>
    johnson.number(
      `Johnson County: ${need} degree days from the last 0 C freeze, ${at}`,
      expected,
      spread(need)?.[at] ?? 0,
      tolerance,
      'day of year',
    );
  const bonn = oddsAt(weather.bonn, fromNewYear, NEED_AUGUST);
  const practice = rowsFrom('General experience with figs, no source', 'practice');
  const word = (name: SiteName) =>
    ripeningWord(oddsAt(weather[name], fromBudbreak, NEED_FROM_BUDBREAK).share);
  return {
    id: 'ripening-dates',
    title: 'Ripening dates from monthly figures beside daily records',
    about:
      'When a fig that needs 1955 or 2200 degree days (Souza et al. 2009) has had them: summed over long daily records, and by the model from the monthly figures of the same records.',
    weak: 'One cultivar was measured; the needs of other cultivars are our working figures.',
    rows: [
      ...dates,
      freezeRow(NEED_AUGUST, 'p10', 226, 4),
      freezeRow(NEED_AUGUST, 'p50', 238, 3),
      freezeRow(NEED_AUGUST, 'p90', 250, 4),
      freezeRow(NEED_JULY, 'p50', 254, 4),
      rowsFrom(source('bonn'), 'computed').number(
        'Bonn: years in which 1955 degree days are reached at all',
        4,
        bonn.sharpShare * 100,
        6,
        '%',
      ),
      practice.text('Bonn: main crop of a mid-season fig', 'not-outdoors', word('bonn')),
      practice.text('Davis: main crop of a mid-season fig', 'reliable', word('davis')),
      practice.text('Johnson County: main crop of a mid-season fig', 'reliable', word('johnson')),
      practice.text('Sfax: main crop of a mid-season fig', 'reliable', word('sfax')),
    ],
    notChecked: [],
  };
}
