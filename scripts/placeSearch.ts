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

const isZip = (text: string) => /^\d{5}$/.test(text.trim());

/** Stations for what somebody typed, the best first. Throws a UsageError where there is none, or too many are called so. */
export async function stationsFor(text: string): Promise<OfferedStation[]> {
  if (!isZip(text)) {
    const station = stationNamed(known(), text);
    if ('refused' in station) throw new UsageError(station.refused);
    return [{ station, words: stationInWords(station) }];
  }
  const position = await zipPosition(text.trim());
  if (position === null)
    throw new UsageError(
      `there is no ZIP code ${text.trim()}; look it up again, or give the name of a town.`,
    );
  const near = stationsNear(known(), position, mostOffered);
  if (near.length === 0)
    throw new UsageError(
      `no weather station lies within 60 km of ZIP code ${text.trim()}; give the name of one with --station.`,
    );
  return near.map(({ station, km }) => ({
    station,
    words: `${stationInWords(station)}, ${Math.round(km)} km away`,
  }));
}

/** What is known of the climate at a station. Throws a UsageError where nothing can be said. */
export function draftOfStation(station: NetworkStation): Drafted {
  const drafted = stationDraft(known(), station);
  if ('refused' in drafted) throw new UsageError(drafted.refused);
  return drafted;
}
