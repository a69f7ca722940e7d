/** What the spot of a garden changes about the figures of its town. */

import type { TownFigures } from './townFigures.ts';

/** `open` is like the stations: open ground, neither hollow nor built up. */
export type GardenSpot = 'open' | 'hollow' | 'wall' | 'city';

/** What is added to nights and days, C, and to the error of nights. */
interface Move {
  readonly nightsC: number;
  readonly daysC: number;
  readonly errorC: number;
}

/**
 * Cold air gathers in a hollow at night; a wall that faces the sun, and a dense city, give back the warmth of the day (Oke 1982, Q. J. R.
 * Meteorol. Soc. 108:1-24, on cities, from memory). How much differs from garden to garden. Standing: ours, common practice for the wall and the
 * hollow, no source.
 */
export const spotMoves: Readonly<Record<GardenSpot, Move>> = {
  open: { nightsC: 0, daysC: 0, errorC: 0 },
  hollow: { nightsC: -2, daysC: 0, errorC: 1 },
  wall: { nightsC: 1.5, daysC: 1, errorC: 1 },
  city: { nightsC: 1.5, daysC: 0.5, errorC: 0.7 },
};

export function isSpot(text: string): text is GardenSpot {
  return Object.hasOwn(spotMoves, text);
}

/** The figures of the town moved to the spot. */
export function figuresInSpot(figures: TownFigures, spot: GardenSpot): TownFigures {
  const { nightsC, daysC, errorC } = spotMoves[spot];
  return {
    ...figures,
    tminC: figures.tminC.map(value => value + nightsC),
    // A day never stays below its night.
    tmaxC: figures.tmaxC.map((value, month) =>
      Math.max(value + daysC, (figures.tminC[month] as number) + nightsC),
    ),
    errors: {
      tminC: Math.hypot(figures.errors.tminC, errorC),
      tmaxC: Math.hypot(figures.errors.tmaxC, errorC / 2),
    },
  };
}
