/** Finds the weather station that speaks for a place, by ZIP code, town or name, in the tables that come with Leafdrop. */

import {
  type NetworkStation,
  type StationNetwork,
  stationNetwork,
} from '../src/core/climate/anywhere/network.ts';
import type { Drafted } from '../src/core/places/draft.ts';
import { stationDraft, stationNamed } from '../src/core/places/fromStation.ts';
import { stationInWords, stationsNear } from '../src/core/places/nearStations.ts';
import { readStations } from '../src/stations/read.ts';
import { zipPosition } from '../src/zipAreas.ts';
import { UsageError } from './command.ts';

const mostOffered = 5;

/** A station that is offered, with how far it is where that is known. */
export interface OfferedStation {
  station: NetworkStation;
  words: string;
}

let network: StationNetwork | undefined;

function known(): StationNetwork {
  network ??= stationNetwork(readStations());
  return network;
}

export const isZip = (text: string): boolean => /^\d{5}$/.test(text.trim());

/** The station of a name or an id. Throws a UsageError where there is none, or several are called so. */
export function stationCalled(text: string): OfferedStation[] {
  const station = stationNamed(known(), text);
  if ('refused' in station) throw new UsageError(station.refused);
  return [{ station, words: stationInWords(station) }];
}

/** Stations around a ZIP code, nearest first. Throws a UsageError where there is no such code, or no station near it. */
export async function stationsAround(zip: string): Promise<OfferedStation[]> {
  const position = await zipPosition(zip.trim());
  if (position === null)
    throw new UsageError(`there is no ZIP code ${zip.trim()}; look it up again, or give the name of a town.`);
  const near = stationsNear(known(), position, mostOffered);
  if (near.length === 0)
    throw new UsageError(
      `no weather station lies within 60 km of ZIP code ${zip.trim()}; give the name of one with --station.`,
    );
  return near.map(({ station, km }) => ({
    station,
    words: `${stationInWords(station)}, ${km < 1 ? 'less than 1' : Math.round(km)} km away`,
  }));
}

/** What is known of the climate at a station. Throws a UsageError where nothing can be said. */
export function draftOfStation(station: NetworkStation): Drafted {
  const drafted = stationDraft(known(), station);
  if ('refused' in drafted) throw new UsageError(drafted.refused);
  return drafted;
}
