/** The climate of any point against weather stations that took no part in it. */

import { type NetworkStation, stationNetwork } from '../climate/anywhere/network.ts';
import { climateFigures, figuresAt, type PointFigures } from '../climate/anywhere/pointFigures.ts';
import type { Station } from '../climate/anywhere/station.ts';
import { daysForward, wrapDoy } from '../climate/calendar.ts';
import { findWinters, freezeOdds } from '../climate/freezes.ts';
import { BASE_50F_IN_C } from '../climate/summary.ts';
import { type WeatherYears, weatherYears } from '../climate/weatherYears.ts';
import { halfZoneIndex, winterLow } from '../climate/winterZone.ts';
import { doyFromMonthDay } from '../days.ts';
import { hashText } from '../random.ts';
import { degreesCToF } from '../units.ts';
import { type EvidenceRow, type EvidenceTable, rowsFrom } from './table.ts';

const normalsSource =
  'NOAA National Centers for Environmental Information, U.S. Climate Normals 1981-2010, monthly means and official freeze dates';
const reportsSource = 'Deutscher Wetterdienst open data, monthly CLIMAT reports 2003-2021, averaged';

/** Share of all stations held out, chosen by their ids; dates and coldest nights are drawn for every third of them. */
const HELD_OUT = 0.15;
const EVERY = 3;
const SEASONS = 300;
const ONE_IN_TEN = 0.1;

const held = ({ id }: Station) => Number(hashText(`held out ${id}`) % 1000n) < HELD_OUT * 1000;

interface Miss {
  readonly station: Station;
  /** Distance of the nearest station that took part, km. */
  readonly km: number;
  readonly by: number;
}

const meanOf = (misses: readonly Miss[]) =>
  misses.reduce((sum, { by }) => sum + Math.abs(by), 0) / misses.length;

/** Days the modeled date comes after the official one, -182 to 182. */
function daysAfter(modeled: string, official: number): number {
  return wrapDoy((doyFromMonthDay(modeled) as number) - official + 183) - 183;
}

function pointsFor(stations: readonly Station[]) {
  const network = stationNetwork(stations.filter(station => !held(station)));
  return (station: Station): PointFigures | null => {
    const { lat, lon, elevationM, period } = station;
    const point = figuresAt(network, { lat, lon, elevationM, period });
    return point.refused === undefined ? point : null;
  };
}

interface Misses {
  readonly tminC: Miss[];
  readonly tmaxC: Miss[];
  readonly last: Miss[];
  readonly first: Miss[];
  readonly coldestC: Miss[];
  readonly halfZones: Miss[];
  /** Degree days a year above 50 F, modeled less official, as a share of the official ones. */
  readonly heat: Miss[];
  /** Share of modeled years with the last freeze by the official early date, and with the first after the official late one, less one in ten. */
  readonly early: Miss[];
  readonly late: Miss[];
  refused: number;
}

function monthlyMisses(station: Station, point: PointFigures, km: number, misses: Misses): void {
  for (const key of ['tminC', 'tmaxC'] as const) {
    point[key].forEach((value, month) => {
      misses[key].push({ station, km, by: value - (station[key][month] as number) });
    });
  }
}

/** As the officials add them up: the mean of the day's highest and lowest above 50 F, a year, C. */
function yearlyMeanDegreeDaysC({ tminC, tmaxC, count }: WeatherYears): number {
  let sum = 0;
  for (let day = 0; day < tminC.length; day += 1) {
    sum += Math.max(0, ((tminC[day] as number) + (tmaxC[day] as number)) / 2 - BASE_50F_IN_C);
  }
  return sum / count;
}

/** An official date of one year in ten is one year in ten of the model's too, where its odds are right. */
function oddsMisses(
  station: Station,
  { freezes, firstDoy }: ReturnType<typeof findWinters>,
  km: number,
  misses: Misses,
): void {
  const { official } = station;
  const days = freezes.get(32);
  if (official === null || days === undefined) return;
  const shareOf = (list: Int16Array, isThen: (day: number) => boolean) =>
    Array.from(list).filter(isThen).length / list.length;
  const { p10 } = official.last;
  const { p90 } = official.first;
  if (p10 !== null) {
    const early = daysForward(firstDoy, p10);
    misses.early.push({ station, km, by: shareOf(days.last, day => day <= early) - ONE_IN_TEN });
  }
  if (p90 !== null) {
    const late = daysForward(firstDoy, p90);
    misses.late.push({ station, km, by: shareOf(days.first, day => day < 0 || day > late) - ONE_IN_TEN });
  }
}

function modelMisses(station: Station, point: PointFigures, km: number, misses: Misses): void {
  const years = weatherYears(climateFigures(point), SEASONS);
  const winters = findWinters(years);
  const { last, first } = freezeOdds(winters, 32);
  const official = station.official;
  if (official?.last.p50 && last.p50) {
    misses.last.push({ station, km, by: daysAfter(last.p50, official.last.p50) });
  }
  if (official?.first.p50 && first.p50) {
    misses.first.push({ station, km, by: daysAfter(first.p50, official.first.p50) });
  }
  oddsMisses(station, winters, km, misses);
  if (station.gdd50F) {
    const modeled = degreesCToF(yearlyMeanDegreeDaysC(years));
    misses.heat.push({ station, km, by: modeled / station.gdd50F - 1 });
  }
  if (station.coldestNightC !== null) {
    const low = winterLow(winters).meanC;
    misses.coldestC.push({ station, km, by: low - station.coldestNightC });
    misses.halfZones.push({ station, km, by: halfZoneIndex(low) - halfZoneIndex(station.coldestNightC) });
  }
}

function missesOf(stations: readonly Station[]): Misses {
  const pointOf = pointsFor(stations);
  const misses: Misses = {
    tminC: [],
    tmaxC: [],
    last: [],
    first: [],
    coldestC: [],
    halfZones: [],
    heat: [],
    early: [],
    late: [],
    refused: 0,
  };
  const tried = stations.filter(
    station => held(station) && (station.period === '2003-2021' || station.country === 'US'),
  );
  tried.forEach((station, i) => {
    const reports = station.period === '2003-2021';
    if (reports && station.coldestNightC === null) return;
    const point = pointOf(station);
    if (point === null) {
      misses.refused += 1;
      return;
    }
    const km = (point.stations[0] as { km: number; station: NetworkStation }).km;
    if (!reports) monthlyMisses(station, point, km, misses);
    if (reports || i % EVERY === 0) modelMisses(station, point, km, misses);
  });
  return misses;
}

/** States in which nights or heights differ most within a few miles, or lean otherwise than the model lets them. */
const regions = [
  ['in Florida', ['FL']],
  ['on the Pacific coast', ['CA', 'OR', 'WA']],
  ['in the mountain states', ['AZ', 'CO', 'ID', 'MT', 'NM', 'NV', 'UT', 'WY']],
  ['in the states east of them', null],
] as const satisfies readonly (readonly [string, readonly string[] | null])[];
const apart = regions.flatMap(([, states]) => states ?? []) as string[];

const distances = [
  ['up to 10 km', 0, 10],
  ['10 to 25 km', 10, 25],
  ['more than 25 km', 25, Number.POSITIVE_INFINITY],
] as const;

function counted(what: string, misses: readonly Miss[], each: number): string {
  return `${what}, ${Math.round(misses.length / each).toLocaleString('en')} stations`;
}

/** A table of mean absolute errors at stations held out of the network. Takes some seconds. */
export function stationTables(stations: readonly Station[]): EvidenceTable[] {
  const misses = missesOf(stations);
  const normals = rowsFrom(normalsSource, 'measured');
  const reports = rowsFrom(reportsSource, 'measured');
  const rows: EvidenceRow[] = [];
  const row = (
    from: typeof normals,
    what: string,
    of: readonly Miss[],
    most: number,
    unit: string,
    each = 1,
  ) => {
    if (of.length > 0) rows.push(from.number(counted(what, of, each), 0, meanOf(of), most, unit));
  };
  row(normals, 'Monthly minimum', misses.tminC, 0.95, 'C', 12);
  row(normals, 'Monthly maximum', misses.tmaxC, 0.62, 'C', 12);
  for (const [words, from, to] of distances) {
    const near = ({ km }: Miss) => km >= from && km < to;
    row(normals, `Monthly minimum, next station ${words} away`, misses.tminC.filter(near), 1.4, 'C', 12);
  }
  row(normals, 'Middle last 32 F freeze', misses.last, 7, 'days');
  row(normals, 'Middle first 32 F freeze', misses.first, 7, 'days');
  for (const [words, states] of regions) {
    const inRegion = ({ station: { region } }: Miss) =>
      states === null ? !apart.includes(region) : (states as readonly string[]).includes(region);
    row(normals, `Middle last 32 F freeze ${words}`, misses.last.filter(inRegion), 15, 'days');
    row(normals, `Middle first 32 F freeze ${words}`, misses.first.filter(inRegion), 15, 'days');
  }
  const seen = (of: readonly Miss[]) =>
    100 * (ONE_IN_TEN + of.reduce((sum, { by }) => sum + by, 0) / of.length);
  for (const [what, of] of [
    ['Years with the last freeze by the official early date, which one year in ten has', misses.early],
    ['Years with the first freeze after the official late date, which one year in ten has', misses.late],
  ] as const) {
    if (of.length > 0) rows.push(normals.number(counted(what, of, 1), 10, seen(of), 5, '%'));
  }
  const percent = misses.heat.map(miss => ({ ...miss, by: 100 * miss.by }));
  row(normals, 'Degree days a year above 50 F', percent, 8, '%');
  for (const [words, states] of regions) {
    const inRegion = ({ station: { region } }: Miss) =>
      states === null ? !apart.includes(region) : (states as readonly string[]).includes(region);
    row(normals, `Degree days a year above 50 F ${words}`, percent.filter(inRegion), 15, '%');
  }
  const inUs = ({ station }: Miss) => station.country === 'US';
  row(reports, 'Mean coldest night in the United States', misses.coldestC.filter(inUs), 1.7, 'C');
  row(
    reports,
    'Mean coldest night elsewhere',
    misses.coldestC.filter(miss => !inUs(miss)),
    2.3,
    'C',
  );
  const zonesUs = misses.halfZones.filter(inUs);
  const within = (of: readonly Miss[]) => (100 * of.filter(({ by }) => Math.abs(by) <= 1).length) / of.length;
  if (zonesUs.length > 0) {
    rows.push(
      reports.number(
        counted('Winter zone within one half zone in the United States', zonesUs, 1),
        100,
        within(zonesUs),
        8,
        '%',
      ),
    );
  }
  return [
    {
      id: 'stations-held-out',
      title: 'Any point: stations that took no part',
      about: `Fifteen stations of a hundred, chosen by their ids, were taken out, and their climate worked out from the others and their own height. A site that stands in both tables may still take part under its other id. The rows are mean absolute errors; the middle dates are those of the same years as the official ones, 1981-2010. ${misses.refused} of them lie where nothing is said, too far from other stations or too high.`,
      weak: 'Cold hollows and warm slopes a mile apart differ by as much as these errors, so your own dates always win. Dates are weakest in Florida and along the Pacific, where winters hardly freeze or nights depend on the sea; coldest nights are weakest where stations are far apart, in Alaska, in valleys and on islands. A freeze date said for one year in ten comes in about one in seven where no station stood. Outside the United States there are no official freeze dates to stretch the spread by.',
      rows,
      notChecked: [],
    },
  ];
}
