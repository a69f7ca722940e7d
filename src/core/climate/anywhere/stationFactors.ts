/** The season factors of every station that has observed freeze dates or coldest nights. */

import { nothingPublished } from '../figures.ts';
import type { NetworkStation, StationNetwork } from './network.ts';
import { climateFigures, figuresAt } from './pointFigures.ts';
import { seasonFactors } from './seasonFactors.ts';
import type { ObservedFactors } from './station.ts';

/** Of one station; null where it has no such observations or no spread is known around it. */
export function factorsOfStation(network: StationNetwork, station: NetworkStation): ObservedFactors | null {
  const { official, coldestNightC, tminC, tmaxC } = station;
  if (official !== null) {
    const point = figuresAt(network, { ...station, unfactored: true });
    if (point.refused !== undefined || point.sdTminC === null) return null;
    return seasonFactors(
      { ...climateFigures(point), tminC, tmaxC, published: nothingPublished },
      { lastDoy: official.last.p50, firstDoy: official.first.p50, coldestNightC: null },
    );
  }
  if (coldestNightC === null || station.spread === null) return null;
  return seasonFactors(
    {
      lat: station.lat,
      tminC,
      tmaxC: tmaxC.map((high, month) => Math.max(high, tminC[month] as number)),
      rainMm: null,
      dewPointC: null,
      sdTminC: station.spread.tminC,
      sdTmaxC: station.spread.tmaxC,
      sdAbout: 'month',
      lag1: null,
      published: nothingPublished,
    },
    { lastDoy: null, firstDoy: null, coldestNightC },
  );
}
