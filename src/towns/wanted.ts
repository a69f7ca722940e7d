/** Which towns a yard wants to be found. */

import type { Catalogue } from '../core/catalogue.ts';
import type { WantedTowns } from '../core/towns/town.ts';

export function wantedTowns({ yard, home }: Pick<Catalogue, 'yard' | 'home'>): WantedTowns {
  return {
    country: home.country,
    atHome: yard.towns?.atHome ?? null,
    elsewhere: yard.towns?.elsewhere ?? null,
  };
}
