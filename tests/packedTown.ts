/** Points of the world as the rows of towns carry them. */

import { stationNetwork } from '../src/core/climate/anywhere/network.ts';
import { figuresAt } from '../src/core/climate/anywhere/pointFigures.ts';
import { packedFigures } from '../src/core/towns/townFigures.ts';
import type { AskedTown } from '../src/islands/town/answer.ts';
import { readStations } from '../src/stations/read.ts';

/** A town at a point, with the figures that are worked out for it; degrees, and its elevation in m. */
export function packedTown(
  name: string,
  region: string,
  country: string,
  lat: number,
  lon: number,
  heightM: number,
): AskedTown {
  const found = figuresAt(stationNetwork(readStations()), { lat, lon, elevationM: heightM });
  if (found.refused !== undefined) throw new Error(found.refused);
  return { name, region, country, lat, heightM, figures: packedFigures(found) };
}
