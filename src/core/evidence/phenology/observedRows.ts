/**
 * Dated observations from publications, used for fitting and for the tables. A row holds: id, place, crop, ripening class, event, first
 * and last day, standing, source.
 *
 * Standing: `read` the passage was read; `worked` worked out from figures read there; `copy` read in a copy by another publisher;
 * `memory` from memory of the publication named and not read again, so that a date may be off by a week or two.
 * Many a "harvest begins" is the start of picking rather than the first ripe fruit: some five days of error lie under every row.
 */
import { type Crop, crops, type RipeningClass, ripeningClasses } from '../../records/common.ts';
import { americanPersimmonRows } from '../data/phenology/americanPersimmon.ts';
import { asianPersimmonRows } from '../data/phenology/asianPersimmon.ts';
import { figRows } from '../data/phenology/fig.ts';
import { jujubeRows } from '../data/phenology/jujube.ts';
import { mulberryRows } from '../data/phenology/mulberry.ts';
import { placeRows } from '../data/phenology/places.ts';
import { pomegranateRows } from '../data/phenology/pomegranate.ts';
import { sourceRows } from '../data/phenology/sources.ts';
import type { EvidenceStanding } from '../table.ts';
import { type Observation, type ObservedEvent, observedEvents } from './observation.ts';

const rowsBySpecies = {
  'Ficus carica': figRows,
  'Morus alba': mulberryRows,
  'Diospyros kaki': asianPersimmonRows,
  'Diospyros virginiana': americanPersimmonRows,
  'Ziziphus jujuba': jujubeRows,
  'Punica granatum': pomegranateRows,
} as const;

const standings: Readonly<Record<string, EvidenceStanding>> = {
  read: 'published',
  worked: 'published',
  copy: 'published',
  memory: 'memory',
};

export interface SourcedObservation extends Observation {
  readonly source: string;
  readonly standing: EvidenceStanding;
}

const linesOf = (text: string) => text.trim().split('\n');
const cellsOf = (line: string) => line.trim().split(/\s+\|\s+/);

function placesByKey(): Map<string, Pick<Observation, 'place' | 'lat' | 'lon' | 'elevationM'>> {
  return new Map(
    linesOf(placeRows).map(line => {
      const [key = '', name, country, at = ''] = cellsOf(line);
      const [lat, lon, elevationM] = at.split(' ').map(Number) as [number, number, number];
      return [key, { place: `${name}, ${country}`, lat, lon, elevationM }];
    }),
  );
}

function oneOf<T extends string>(known: readonly T[], text: string | undefined): T | null {
  return known.find(each => each === text) ?? null;
}

/** Every row, in the order of the tables. Throws a RangeError for a row that names an unknown place, source or event. */
export function observedRows(): SourcedObservation[] {
  const places = placesByKey();
  const sources = new Map(linesOf(sourceRows).map(line => cellsOf(line) as [string, string]));
  return Object.entries(rowsBySpecies).flatMap(([species, text]) =>
    linesOf(text).map(line => {
      const [id = '', at = '', crop, name, event, from = '', to = '', standing = '', source = ''] = line
        .trim()
        .split(' ');
      const place = places.get(at);
      const known = oneOf<ObservedEvent>(observedEvents, event);
      const publication = sources.get(source);
      const worth = standings[standing];
      if (!place || !known || !publication || !worth) throw new RangeError(`observation ${id} is not whole`);
      return {
        id,
        species,
        ...place,
        event: known,
        crop: oneOf<Crop>(crops, crop),
        class: oneOf<RipeningClass>(ripeningClasses, name),
        from,
        to,
        source: publication,
        standing: worth,
      };
    }),
  );
}
