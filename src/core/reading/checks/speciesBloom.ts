import { missingBloomKeys } from '../../records/speciesRipening.ts';
import { atValue } from '../problem.ts';
import type { Check } from './check.ts';

const inWords: Readonly<Record<string, string>> = {
  heat: 'heat (to full bloom)',
  to_ripe: 'to_ripe (days from bloom to ripe)',
  least_heat: 'least_heat (from bloom to ripe)',
};

/** A species whose fruit is not timed by heat gives its bloom figures; what is missing is filled in with stand-ins. */
export const speciesBloom: Check = ({ species }) =>
  species.flatMap(({ file, written: { bloom, heat } }) => {
    const missing = bloom === undefined && heat.need !== undefined ? [] : missingBloomKeys(bloom);
    if (missing.length === 0) return [];
    const list = missing.map(key => inWords[key] ?? key).join(', ');
    return [
      {
        rule: 'species-bloom' as const,
        file,
        spot: atValue(bloom === undefined ? 'heat' : 'bloom'),
        got: bloom === undefined ? 'no bloom' : 'only a part of bloom',
        expected: 'heat: need, or bloom with heat, to_ripe and least_heat',
        message: `bloom does not give ${list}; stand-ins of ours are used, and pages say so`,
        remedy: `add ${missing.join(', ')} under bloom:, each with unit, standing and source; or give heat: need: where heat times the fruit.`,
      },
    ];
  });
