import { atValue, plural, quote } from '../problem.ts';
import type { Check } from './check.ts';
import { lotsBySpecies } from './lotsBySpecies.ts';

/** Every species that has lots has a base price. */
export const priceBase: Check = draft => {
  const { yard } = draft;
  if (!yard) return [];
  return [...lotsBySpecies(draft)]
    .filter(([species]) => draft.ids.species.has(species) && !Object.hasOwn(yard.value.prices.base, species))
    .map(([species, lots]) => ({
      rule: 'price-base' as const,
      file: yard.file,
      spot: atValue('prices', 'base'),
      got: Object.keys(yard.value.prices.base).join(', '),
      expected: species,
      message: `there is no base price for ${quote(species)}, which has ${plural(lots.length, 'lot')}`,
      remedy: `add a line "${species}: ..." under prices: base: with the price of the base size.`,
    }));
};
