/** What has been gathered from the files of a content folder so far. */

import type { Day } from '../days.ts';
import type { Draft, PhotoFile } from './draft.ts';
import type { FileKind } from './layout.ts';
import type { Sources } from './locate.ts';
import type { Problem } from './problem.ts';

export interface Gathered {
  draft: Draft;
  problems: Problem[];
  sources: Sources;
  /** Kinds of files that were there, readable or not. */
  kinds: Set<FileKind>;
}

export function nothingYet(asOf: Day, photos: readonly PhotoFile[]): Gathered {
  return {
    draft: {
      asOf,
      yard: null,
      species: [],
      cultivars: [],
      lots: [],
      lotPlaces: [],
      allLotsKnown: true,
      walks: [],
      typedMeasures: [],
      walkNotes: [],
      places: [],
      guides: [],
      videos: [],
      temperatures: [],
      addresses: [],
      changes: [],
      dailyRecords: new Map(),
      costs: null,
      privateYard: null,
      privateCultivars: [],
      privateLots: [],
      privateWalks: [],
      orders: { sales: [], reservations: [], waiting: [] },
      photos,
      ids: {
        species: new Set(),
        cultivar: new Set(),
        lot: new Set(),
        place: new Set(),
        guide: new Set(),
        video: new Set(),
        daily: new Set(),
      },
    },
    problems: [],
    sources: { yaml: new Map(), tables: new Map() },
    kinds: new Set(),
  };
}
