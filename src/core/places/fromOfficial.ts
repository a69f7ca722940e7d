/** A place record from the normals of an official station. */

import type { StationFigures } from '../climate/official/stationFigures.ts';
import type { WrittenPlace } from '../records/place.ts';
import { degreesFToC, roundTo } from '../units.ts';
import type { Draft, Drafted } from './draft.ts';
import { stationPlace } from './stationName.ts';

const agency = 'NOAA National Centers for Environmental Information, U.S. Climate Normals';

function freezeOf({ freeze, period, station }: StationFigures): WrittenPlace['freeze'] {
  if (!freeze) return undefined;
  const at = [...freeze].map(([thresholdF, { first, last, none }]) => [
    `${thresholdF}F`,
    { first, last, ...(none === null ? {} : { none }) },
  ]);
  return {
    ...Object.fromEntries(at),
    source: `${agency} ${period}, annual and seasonal, station ${station}`,
  };
}

/** Figures stay in the units they are published in; only the spread, which a record keeps in C, is converted. */
export function officialDraft(figures: StationFigures): Drafted {
  const { station, name, period, sd, rainIn } = figures;
  const where = stationPlace(name);
  const inC = (values: number[]) => values.map(value => roundTo(degreesFToC(value), 0.01));
  const freeze = freezeOf(figures);
  const draft: Draft = {
    ...(where.name === null ? {} : { name: where.name }),
    ...(where.region === null ? {} : { region: where.region }),
    ...(where.country === null ? {} : { country: where.country }),
    lat: figures.lat,
    lon: figures.lon,
    elevation_m: figures.elevationM,
    tmax_f: figures.tmaxF.map(value => roundTo(value, 0.1)),
    tmin_f: figures.tminF.map(value => roundTo(value, 0.1)),
    ...(rainIn ? { rain_in: rainIn } : {}),
    ...(sd
      ? {
          sd: {
            tmin_c: inC(sd.tminF),
            tmax_c: inC(sd.tmaxF),
            about: 'curve',
            source: `${agency} ${period}, daily, station ${station}`,
          },
        }
      : {}),
    ...(freeze ? { freeze } : {}),
    period,
    source: `${agency} ${period}, station ${station} (${name}).`,
    terms: 'US Government work, public domain in the United States.',
  };
  return { draft, notes: figures.notes };
}
