/** Towns of the world as the GeoNames table of places with 500 people and more gives them (www.geonames.org, CC BY 4.0). */

export interface Town {
  readonly name: string;
  /** Other names in Latin letters, most often given first. */
  readonly otherNames: readonly string[];
  /** ISO 3166 code. */
  readonly country: string;
  /** Code of the first-order division: the postal code of a state in the United States, mostly a number elsewhere. */
  readonly division: string;
  /** Degrees, south and west negative. */
  readonly lat: number;
  readonly lon: number;
  /** Height of the ground above the sea, m. */
  readonly heightM: number;
  readonly people: number;
  /** Whether it is the seat of its first-order division, or the capital of its country. */
  readonly seat: boolean;
}

/** Which towns can be looked up: the fewest people a town has in the yard's own country and elsewhere; null where none can. */
export interface WantedTowns {
  readonly country: string;
  readonly atHome: number | null;
  readonly elsewhere: number | null;
}

/**
 * Kinds of places that are no towns of today: parts of a town, and what is given up, destroyed or of the past. Source: feature codes of
 * GeoNames, class P.
 */
const noTowns = new Set(['PPLX', 'PPLQ', 'PPLH', 'PPLW', 'PPLCH']);
const seats = new Set(['PPLA', 'PPLC']);

/** Columns of the table. Source: the readme of the GeoNames export. */
const column = {
  name: 1,
  otherNames: 3,
  lat: 4,
  lon: 5,
  kind: 7,
  country: 8,
  division: 10,
  people: 14,
  heightM: 16,
} as const;
const COLUMNS = 19;

/** What GeoNames writes where no height is known, m. */
const NO_HEIGHT = -9999;

const latin = /^[\p{Script=Latin}\p{Mark} .'’-]{4,}$/u;

function isWanted(
  country: string,
  people: number,
  { country: home, atHome, elsewhere }: WantedTowns,
): boolean {
  const fewest = country === home ? atHome : elsewhere;
  return fewest !== null && people >= fewest;
}

/**
 * The wanted towns of the table, in its order. Throws a RangeError with the number of the line for a row that is none, as of a file cut
 * short.
 */
export function readTowns(table: string, wanted: WantedTowns): Town[] {
  const towns: Town[] = [];
  let line = 0;
  for (let from = 0; from < table.length; ) {
    line += 1;
    const end = table.indexOf('\n', from);
    const row = table.slice(from, end < 0 ? table.length : end);
    from = end < 0 ? table.length : end + 1;
    const cells = row.split('\t');
    const cell = (name: keyof typeof column) => cells[column[name]] ?? '';
    const [lat, lon, heightM] = [cell('lat'), cell('lon'), cell('heightM')].map(text =>
      text === '' ? Number.NaN : Number(text),
    ) as [number, number, number];
    if (cells.length !== COLUMNS || !Number.isFinite(lat) || !Number.isFinite(lon)) {
      throw new RangeError(
        `line ${line} of the table of towns has ${cells.length} columns of ${COLUMNS}, or no position: the table is cut short or altered. Install the packages anew.`,
      );
    }
    const people = Number(cell('people')) || 0;
    if (noTowns.has(cell('kind')) || !Number.isFinite(heightM) || heightM === NO_HEIGHT) continue;
    if (!isWanted(cell('country'), people, wanted)) continue;
    towns.push({
      name: cell('name'),
      otherNames: cell('otherNames')
        .split(',')
        .filter(name => latin.test(name) && name !== name.toUpperCase()),
      country: cell('country'),
      division: cell('division'),
      lat,
      lon,
      heightM,
      people,
      seat: seats.has(cell('kind')),
    });
  }
  return towns;
}
