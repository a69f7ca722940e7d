/** The figures of a town brought to the height of a garden in it. */

import { temperaturesAtHeight } from '../climate/anywhere/samples.ts';
import type { TownFigures } from './townFigures.ts';

/** A garden further above or below the middle of its town is nearer to another one. Standing: ours. */
const MOST_APART_M = 1000;
/** How far the fall of temperature with height differs from place to place, C a km. Standing: ours. */
const LAPSE_ERROR = 1.5;
const METERS_PER_FOOT = 0.3048;

export type MovedFigures =
  | { readonly ok: true; readonly figures: TownFigures }
  | { readonly ok: false; readonly text: string };

const m = (value: number) => `${Math.round(value).toLocaleString('en-US')} m`;
const ft = (value: number) => `${(Math.round(value / METERS_PER_FOOT / 10) * 10).toLocaleString('en-US')} ft`;

/** Moves the temperatures by the usual fall with height, and widens the errors; or says why the height cannot be. */
export function figuresAtHeight(figures: TownFigures, townM: number, ownM: number): MovedFigures {
  if (!Number.isFinite(ownM))
    return { ok: false, text: 'Give the elevation as a number, or leave it empty.' };
  const apart = Math.abs(ownM - townM);
  if (apart > MOST_APART_M) {
    const said = `The middle of the town lies at ${ft(townM)} (${m(townM)}), and you gave ${ft(ownM)} (${m(ownM)}).`;
    const asFeet = ownM * METERS_PER_FOOT;
    const asMeters = ownM / METERS_PER_FOOT;
    const hint =
      Math.abs(asFeet - townM) <= MOST_APART_M
        ? ' Is it in feet?'
        : Math.abs(asMeters - townM) <= MOST_APART_M
          ? ' Is it in meters?'
          : '';
    return { ok: false, text: `${said} That is too far apart.${hint}` };
  }
  const aboveKm = (townM - ownM) / 1000;
  const moved = temperaturesAtHeight(figures, aboveKm);
  const by = (moved[0] as number) - (figures.tminC[0] as number);
  const wider = (error: number) => Math.hypot(error, LAPSE_ERROR * aboveKm);
  return {
    ok: true,
    figures: {
      ...figures,
      tminC: moved.slice(0, 12),
      tmaxC: moved.slice(12),
      dewPointC: figures.dewPointC?.map(value => value + by) ?? null,
      errors: { tminC: wider(figures.errors.tminC), tmaxC: wider(figures.errors.tmaxC) },
    },
  };
}
