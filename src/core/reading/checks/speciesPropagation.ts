import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { lotsBySpecies } from './lotsBySpecies.ts';

/** A species has propagation figures for the methods its lots use; said once per method. */
export const speciesPropagation: Check = draft => {
  const lots = lotsBySpecies(draft);
  return draft.species.flatMap(({ file, id, value }) => {
    const methods = new Set((lots.get(id) ?? []).map(lot => lot.value.method));
    return [...methods]
      .filter(method => value.propagation[method] === undefined)
      .map(method => ({
        rule: 'species-propagation' as const,
        file,
        spot: atValue('propagation'),
        got: Object.keys(value.propagation).join(', '),
        expected: method,
        message: `there are no propagation figures for "${method}", which lots of this species use`,
        remedy: `add ${method} under propagation; without it nobody can say when such lots are rooted and weaned.`,
      }));
  });
};
