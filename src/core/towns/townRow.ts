/** A town as the files for the browser carry it. */

/**
 * Name, region (empty where none is known), ISO 3166 code of the country, latitude and longitude in degrees, height in m, people, and its climate figures packed: empty where none can be said; and
 * the other name that the row stands under, where it is one.
 */
export type TownRow = readonly [
  name: string,
  region: string,
  country: string,
  lat: number,
  lon: number,
  heightM: number,
  people: number,
  figures: string,
  otherName?: string,
];

/** Towns whose names sound near each other. */
export interface NameFile {
  readonly rows: readonly TownRow[];
}

/** Where each file of names begins, by the sound of the first name in it. */
export interface NameIndex {
  readonly from: readonly string[];
}

/** ZIP codes that begin with the same three digits: the towns around each, nearest first, by their index in `rows`. */
export interface ZipFile {
  readonly zips: Readonly<Record<string, readonly number[]>>;
  readonly rows: readonly TownRow[];
}
