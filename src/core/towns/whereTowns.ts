/** The part of its country that a town lies in, in words that tell apart towns of one name. */

import { usStates } from '../places/usStates.ts';
import type { Town } from './town.ts';

const divisionOf = ({ country, division }: Town) => `${country} ${division}`;

/**
 * Names the region of each town: `North Carolina`, `region of Bergamo`. Outside of the United States a division is told by its seat, since the
 * table gives numbers only; empty for the seat itself, and where the table has none.
 */
export function regionNames(towns: readonly Town[]): (town: Town) => string {
  const seats = new Map<string, Town>();
  for (const town of towns) {
    if (!town.seat) continue;
    const key = divisionOf(town);
    const known = seats.get(key);
    if (known === undefined || town.people > known.people) seats.set(key, town);
  }
  return town => {
    const state = town.country === 'US' ? usStates[town.division] : undefined;
    if (state !== undefined) return state;
    const seat = seats.get(divisionOf(town));
    return seat === undefined || seat === town || seat.name === town.name ? '' : `region of ${seat.name}`;
  };
}
