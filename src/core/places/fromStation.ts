/** A place record from one of the weather stations that come with the project. */

import type { NetworkStation, StationNetwork } from '../climate/anywhere/network.ts';
import { figuresAt } from '../climate/anywhere/pointFigures.ts';
import { roundTo } from '../units.ts';
import type { Draft, Drafted } from './draft.ts';
import { stationPlace } from './stationName.ts';

const reports = 'Deutscher Wetterdienst, open data (opendata.dwd.de), monthly CLIMAT reports';
const reportTerms = 'DWD open data (GeoNutzV, CC BY 4.0): source Deutscher Wetterdienst, figures averaged.';
const normalTerms = 'US Government work, public domain in the United States.';

/** Longest list of stations shown when a name fits several. */
const MOST_SHOWN = 12;

const plain = (text: string) => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

/** `Asheville Rgnl Ap, NC (USW00003812), 645 m`. */
function inWords({ id, name, region, country, elevationM, period }: NetworkStation): string {
  return `${name}, ${region || country} (${id}), ${Math.round(elevationM)} m, ${period}`;
}

/** The one station of an id, or whose name, state or country and id hold all the words. Otherwise why there is not one. */
export function stationNamed(network: StationNetwork, text: string): NetworkStation | { refused: string } {
  const words = plain(text)
    .split(/[\s,]+/)
    .filter(word => word !== '');
  const byId = network.stations.find(({ id }) => plain(id) === words.join(''));
  if (byId) return byId;
  const found = network.stations.filter(({ name, region, country }) => {
    const said = plain(`${name} ${region} ${country}`).split(/[\s/().-]+/);
    return words.every(word => said.some(each => each.startsWith(word)));
  });
  const exact = found.filter(({ name, region }) =>
    [plain(name), plain(`${name}, ${region}`), plain(`${name} ${region}`)].includes(plain(text)),
  );
  const [only] = exact.length === 1 ? exact : found;
  if (only && (found.length === 1 || exact.length === 1)) return only;
  if (!only) return { refused: `No station is called "${text}". Try fewer words, or a state such as NC.` };
  const more = found.length > MOST_SHOWN ? `\n  and ${found.length - MOST_SHOWN} more` : '';
  return {
    refused: `"${text}" fits ${found.length} stations; give the id of one:\n  ${found.slice(0, MOST_SHOWN).map(inWords).join('\n  ')}${more}`,
  };
}

function officialNote({ official }: NetworkStation): string[] {
  if (official === null) return [];
  return [
    'The spread of nights is stretched for the model to meet the official freeze dates of 1981-2010; dates of a later table go in with --last-freeze and --first-freeze.',
  ];
}

/** Means of 2003-2021, the spread of days and the coldest night as far as they are known at the station. */
export function stationDraft(
  network: StationNetwork,
  station: NetworkStation,
): Drafted | { refused: string } {
  const point = figuresAt(network, station);
  if (point.refused !== undefined) return { refused: point.refused };
  const { recent } = station;
  const means = recent ?? point;
  const own = station.period === '2003-2021';
  const rounded = (values: readonly number[], step: number) => values.map(value => roundTo(value, step));
  const where = own
    ? { name: null, region: null, country: null }
    : stationPlace(`${station.name.toUpperCase()}, ${station.region} ${station.country}`);
  const stationWords = own ? `station WMO ${station.id}` : `station ${station.id} (${station.name})`;
  const rain = station.rainMm ?? point.rainMm;
  const draft: Draft = {
    name: where.name ?? station.name.split('/')[0] ?? station.name,
    ...(where.region === null ? {} : { region: where.region }),
    country: station.country,
    lat: station.lat,
    lon: station.lon,
    elevation_m: station.elevationM,
    tmax_c: rounded(means.tmaxC, 0.1),
    tmin_c: rounded(means.tminC, 0.1),
    ...(rain === null ? {} : { rain_mm: rounded(rain, 1) }),
    ...(point.dewPointC === null ? {} : { dew_c: rounded(point.dewPointC, 0.1) }),
    ...(point.sdTminC === null || point.sdTmaxC === null
      ? {}
      : {
          sd: {
            tmin_c: rounded(point.sdTminC, 0.01),
            tmax_c: rounded(point.sdTmaxC, 0.01),
            source: `From the spread of daily means in the monthly CLIMAT reports (Deutscher Wetterdienst) of the stations around; that of minima stretched by season for the model to meet their freeze dates and coldest nights`,
          },
        }),
    ...(station.coldestNightC === null
      ? {}
      : {
          annual_min_c: {
            mean: station.coldestNightC,
            source: `${reports} of station WMO ${station.id}: coldest night of each of ${station.winters} winters, averaged`,
          },
        }),
    period: own ? '2003-2021' : '1981-2010 moved to 2003-2021',
    source: own
      ? `${reports} of ${stationWords}, March 2003 to July 2021, averaged by month. Dew point: from their vapor pressure.`
      : `NOAA National Centers for Environmental Information, U.S. Climate Normals 1981-2010, ${stationWords}, moved by the change to 2003-2021 measured at the airports around that have figures of both periods (${reports}, averaged). Rain of 1981-2010. Dew point: ${reports} of the stations around.`,
    terms: own ? reportTerms : `${normalTerms} Change since: ${reportTerms}`,
  };
  return { draft, notes: officialNote(station) };
}
