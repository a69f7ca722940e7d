/** What to look at instead of a cultivar that is sold out or does not suit. */

import type { Catalogue, PublicCultivar } from '../../core/catalogue.ts';
import { alternatives } from '../../core/match/alternatives.ts';
import type { Alternative } from '../../core/match/answers.ts';
import { cultivarPath } from '../addresses/paths.ts';
import { memoize } from '../memo.ts';
import { stockState } from '../pages/cultivars/cultivar.ts';
import { flavorOf, speciesName } from '../pages/stock/stock.ts';
import type { StateView } from '../words/state.ts';

/** Shown at once; further ones stand by for a visitor with a place, where some of the first may not suit. */
const shown = 5;
const standingBy = 15;

export interface AlternativeRow {
  id: string;
  path: string;
  name: string;
  species: string;
  flavor: string;
  why: string;
  stock: StateView;
  /** Shown before a place is chosen. */
  first: boolean;
}

const candidates = memoize((all: Catalogue) => {
  const entries = new Map(all.cultivars.map(entry => [entry.cultivar.id, entry]));
  const toBeHad = all.cultivars
    .filter(({ lots }) => lots.some(({ soldOut }) => !soldOut))
    .map(({ cultivar }) => ({ cultivar, match: null }));
  return { entries, toBeHad, nearest: new Map<string, Alternative[]>() };
});

/** Those nearest to a cultivar. Only its species, flavor and ripening decide, so cultivars alike in these share one search. */
function nearestTo(all: Catalogue, cultivar: PublicCultivar): Alternative[] {
  const { toBeHad, nearest } = candidates(all);
  const key = `${cultivar.species} ${cultivar.flavor} ${cultivar.ripening}`;
  const alike = nearest.get(key) ?? alternatives({ ...cultivar, id: '' }, toBeHad, standingBy + 1);
  nearest.set(key, alike);
  return alike.filter(({ cultivar: id }) => id !== cultivar.id).slice(0, standingBy);
}

const rowsOf = memoize((all: Catalogue) => memoize((cultivar: PublicCultivar) => rowsNear(all, cultivar)));

/** The nearest cultivars that are on the list, by flavor and ripening. */
export function alternativeRows(all: Catalogue, cultivar: PublicCultivar): AlternativeRow[] {
  return rowsOf(all)(cultivar);
}

function rowsNear(all: Catalogue, cultivar: PublicCultivar): AlternativeRow[] {
  const { entries } = candidates(all);
  return nearestTo(all, cultivar).map((found, index) => {
    const entry = entries.get(found.cultivar)!;
    return {
      id: found.cultivar,
      path: cultivarPath(found.cultivar),
      name: entry.cultivar.name,
      species: speciesName(entry.species),
      flavor: flavorOf(all, entry.cultivar.flavor),
      why: found.because.map(({ text }) => text).join(' '),
      stock: stockState(entry, all),
      first: index < shown,
    };
  });
}
