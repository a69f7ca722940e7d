/** How often a trip in winter keeps to simple limits at both ends, beside the same count by a separate program. */

import type { ClimateFigures } from '../climate/figures.ts';
import { nothingPublished } from '../climate/figures.ts';
import { weatherYears } from '../climate/weatherYears.ts';
import { day, dayOfYear } from '../days.ts';
import { type TripRisks, tripRisks } from '../match/trips.ts';
import { fahrenheitToCelsius } from '../units.ts';
import { type TripStation, tripStations } from './data/tripStations.ts';
import { type EvidenceTable, rowsFrom } from './table.ts';

const TRANSIT_DAYS = 3;
const dates = [
  '11-15',
  '12-01',
  '12-15',
  '01-01',
  '01-15',
  '02-01',
  '02-15',
  '03-01',
  '03-15',
  '04-01',
  '04-15',
];

interface Count {
  what: string;
  coldestF: number;
  hottestF: number;
  to: Exclude<TripStation, 'asheville'>;
  /** Share of 600 simulated years by a separate program, %, on the dates above. */
  expected: readonly number[];
}

const counts: readonly Count[] = [
  {
    what: 'dormant',
    coldestF: 20,
    hottestF: 80,
    to: 'boston',
    expected: [76, 53, 41, 20, 14, 17, 25, 45, 71, 80, 74],
  },
  {
    what: 'dormant',
    coldestF: 20,
    hottestF: 80,
    to: 'houston',
    expected: [47, 53, 54, 45, 39, 40, 49, 54, 49, 31, 22],
  },
  {
    what: 'dormant',
    coldestF: 20,
    hottestF: 80,
    to: 'phoenix',
    expected: [33, 54, 59, 51, 39, 34, 39, 38, 23, 9, 4],
  },
  {
    what: 'dormant',
    coldestF: 20,
    hottestF: 80,
    to: 'minneapolis',
    expected: [42, 15, 8, 2, 3, 1, 4, 11, 35, 60, 68],
  },
  {
    what: 'dormant',
    coldestF: 20,
    hottestF: 80,
    to: 'stLouis',
    expected: [64, 47, 36, 26, 16, 13, 25, 51, 64, 63, 51],
  },
  {
    what: 'dormant',
    coldestF: 20,
    hottestF: 80,
    to: 'seattle',
    expected: [78, 67, 64, 55, 45, 49, 61, 75, 84, 81, 74],
  },
  {
    what: 'leafed',
    coldestF: 35,
    hottestF: 95,
    to: 'seattle',
    expected: [10, 4, 2, 2, 1, 1, 3, 5, 12, 31, 53],
  },
  { what: 'leafed', coldestF: 35, hottestF: 95, to: 'boston', expected: [5, 2, 1, 0, 0, 0, 0, 0, 3, 10, 33] },
  {
    what: 'leafed',
    coldestF: 35,
    hottestF: 95,
    to: 'houston',
    expected: [16, 8, 6, 2, 2, 3, 6, 14, 21, 45, 60],
  },
];

function figuresOf(station: TripStation): ClimateFigures {
  const { name: _name, wmo: _wmo, ...figures } = tripStations[station];
  return {
    ...figures,
    rainMm: null,
    dewPointC: null,
    sdAbout: 'curve',
    lag1: null,
    published: nothingPublished,
  };
}

/** Chances at each station for limits, each drawn once. */
function risksAt(): (station: TripStation, coldestF: number, hottestF: number) => TripRisks {
  const years = new Map<TripStation, ReturnType<typeof weatherYears>>();
  return (station, coldestF, hottestF) => {
    const drawn = years.get(station) ?? weatherYears(figuresOf(station), 600);
    years.set(station, drawn);
    const limits = { coldestC: fahrenheitToCelsius(coldestF), hottestC: fahrenheitToCelsius(hottestF) };
    return tripRisks(drawn, limits, TRANSIT_DAYS);
  };
}

function winterTrips(): EvidenceTable {
  const from = rowsFrom(
    'Own separate count, 600 years of a plain Gaussian model of the same monthly figures (CLIMAT reports 2003-2021); the limits are ours',
    'computed',
  );
  const risks = risksAt();
  const shares = counts.map(({ coldestF, hottestF, to }) => {
    const [here, there] = [risks('asheville', coldestF, hottestF), risks(to, coldestF, hottestF)];
    return dates.map(date => {
      const at = dayOfYear(day(`2027-${date}`)) - 1;
      return 100 * (1 - (here.either[at] as number)) * (1 - (there.either[at] as number));
    });
  });
  const rows = counts.flatMap(({ what, coldestF, hottestF, to, expected }, i) => {
    const got = shares[i] as number[];
    const title = `${what}, ${coldestF} F and ${hottestF} F, Asheville to ${tripStations[to].name}`;
    return dates.map((date, at) =>
      from.number(
        `${title}, leaving ${date}`,
        expected[at] as number,
        Math.round(got[at] as number),
        16,
        '% of years',
      ),
    );
  });
  const errors = counts.flatMap(({ expected }, i) =>
    expected.map((share, at) => (shares[i] as number[])[at]! - share),
  );
  const meanError = errors.reduce((sum, error) => sum + Math.abs(error), 0) / errors.length;
  return {
    id: 'winter-trips',
    title: 'Trips in winter that keep to the limits',
    about:
      'Share of years in which a trip of three days keeps to simple limits at both ends, on single days of the winter, beside the same count by a separate program on another model of the weather. It shows that the counting is right, not that the limits are: those are our own, and no trial stands behind them.',
    weak: 'The two ends are drawn independently of each other; cold spells that reach both at once make the true share a little higher.',
    rows: [
      from.number(
        `mean error over ${errors.length} trips`,
        0,
        Math.round(meanError * 10) / 10,
        4.5,
        '% of years',
      ),
      ...rows,
    ],
    notChecked: [
      {
        what: 'what a tree stands in its carton',
        why: 'no carrier publishes a limit of temperature, and no trial with cartons of young fruit trees was found',
      },
    ],
  };
}

export const winterTripTables = (): readonly EvidenceTable[] => [winterTrips()];
