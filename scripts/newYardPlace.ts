/** Where a new yard stands: a reference climate that is shipped, or a record made from a weather station. */

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import type { NetworkStation } from '../src/core/climate/anywhere/network.ts';
import { addTo, finishDraft } from '../src/core/places/draft.ts';
import { placeText } from '../src/core/places/placeText.ts';
import type { FileChange } from '../src/core/recording/openYard.ts';
import type { Offered } from './ask.ts';
import { UsageError } from './command.ts';
import { draftOfStation, isZip, stationCalled, stationsAround } from './placeSearch.ts';

export interface FoundPlace {
  id: string;
  name: string;
  /** ISO 3166-1, two letters. */
  country: string;
  /** Its record; null where it is shipped. */
  file: FileChange | null;
}

/** A place to choose: a shipped one, or a station. */
export interface PlaceChoice extends Offered {
  shipped: FoundPlace | null;
  station: NetworkStation | null;
  /** Whether the station does not say in which state or province it is. */
  needsRegion: boolean;
}

const shippedPlaces = fileURLToPath(new URL('../content/places', import.meta.url));

/** A shipped place by its id, or by its name with or without its region; null for none, or several of a name. */
function shippedPlace(text: string): FoundPlace | null {
  const wanted = text.trim().toLowerCase();
  const found = readdirSync(shippedPlaces)
    .filter(file => file.endsWith('.yaml'))
    .flatMap(file => {
      const { name, region, country } = parse(readFileSync(join(shippedPlaces, file), 'utf8'), {
        schema: 'core',
      });
      const id = file.slice(0, -'.yaml'.length);
      const names = [id, name, `${name}, ${region}`, `${name} ${region}`].map(each => each.toLowerCase());
      return names.includes(wanted) ? [{ id, name, country, file: null }] : [];
    });
  return found.length === 1 ? found[0]! : null;
}

/** Places for what somebody typed, the best first. Throws a UsageError where there is none. */
export async function findPlaces(typed: string): Promise<PlaceChoice[]> {
  const shipped = shippedPlace(typed);
  if (shipped)
    return [{ value: shipped.id, label: shipped.name, shipped, station: null, needsRegion: false }];
  const stations = isZip(typed) ? await stationsAround(typed) : stationCalled(typed);
  return stations.map(({ station, words }) => ({
    value: station.id,
    label: words,
    shipped: null,
    station,
    needsRegion: draftOfStation(station).draft.region === undefined,
  }));
}

/** The place that was chosen, with the record that is written for it. Throws a UsageError where something is missing for one. */
export function homeOf(
  { shipped, station }: PlaceChoice,
  { name, region }: { name?: string | undefined; region?: string | undefined },
): FoundPlace {
  if (shipped) return shipped;
  const { draft } = draftOfStation(station!);
  const whole = addTo(draft, { ...(name ? { name } : {}), ...(region ? { region } : {}) });
  const finished = finishDraft(whole, null);
  if ('problems' in finished) throw new UsageError(finished.problems.join('\n  '));
  const { id, record } = finished;
  const known = name ? null : shippedPlace(id);
  if (known) return known;
  return {
    id,
    name: record.name,
    country: record.country,
    file: { path: `places/${id}.yaml`, text: placeText(record) },
  };
}
