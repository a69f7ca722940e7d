import type { Cultivar } from '../../records/cultivar.ts';
import { atValue, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

/** A species has the heat need of the ripening classes and crops that its cultivars have. */
export const speciesHeat: Check = ({ cultivars, species }) => {
  const heatOf = new Map(species.map(({ id, value }) => [id, value.heatNeed]));
  return cultivars.flatMap(({ file, value }) => {
    const heat = heatOf.get(value.species);
    if (!heat) return [];
    return value.crops
      .filter(crop => heat[crop][value.ripening] === undefined)
      .map(crop => ({ ...(crop === 'main' ? mainWords(value) : brebaWords(value)), file }));
  });
};

function mainWords({ species, ripening }: Cultivar): Omit<Problem, 'file'> {
  return {
    rule: 'species-heat-need',
    spot: atValue('ripening'),
    got: ripening,
    expected: `a class with a heat need in species/${species}.yaml`,
    message: `the species ${species} has no heat need for the ripening class "${ripening}"`,
    remedy: `add ${ripening} under heat: need: main: in content/species/${species}.yaml, or mend the class.`,
  };
}

function brebaWords({ species, ripening }: Cultivar): Omit<Problem, 'file'> {
  return {
    rule: 'species-breba-need',
    spot: atValue('crops'),
    got: 'breba',
    expected: `a breba heat need for "${ripening}" in species/${species}.yaml`,
    message: `the species ${species} has no heat need for a breba crop of the class "${ripening}"`,
    remedy: `add ${ripening} under heat: need: breba: in content/species/${species}.yaml; until then its ripening is left open.`,
  };
}
