import type { Draft, LotEntry } from '../draft.ts';

/** Lots by the species of their cultivar; lots whose cultivar cannot be read are left out. */
export function lotsBySpecies({ lots, cultivars }: Draft): Map<string, LotEntry[]> {
  const speciesOf = new Map(cultivars.map(({ id, value }) => [id, value.species]));
  const grouped = new Map<string, LotEntry[]>();
  for (const lot of lots) {
    const species = speciesOf.get(lot.value.cultivar);
    if (species === undefined) continue;
    const group = grouped.get(species);
    if (group) group.push(lot);
    else grouped.set(species, [lot]);
  }
  return grouped;
}
