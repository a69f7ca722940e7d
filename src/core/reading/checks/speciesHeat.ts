import { ripeningFigure } from '../../phenology/fruit.ts';
import type { Cultivar } from '../../records/cultivar.ts';
import type { Species } from '../../records/species.ts';
import { atValue, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

/** A species has a figure for the ripening classes and crops that its cultivars have. */
export const speciesHeat: Check = ({ cultivars, species }) => {
  const speciesOf = new Map(species.map(({ id, value }) => [id, value]));
  return cultivars.flatMap(({ file, value }) => {
    const own = speciesOf.get(value.species);
    if (!own) return [];
    return value.crops
      .filter(crop => ripeningFigure(own, crop, value.ripening) === null)
      .map(crop => ({ ...(crop === 'main' ? mainWords(value, own) : brebaWords(value)), file }));
  });
};

function mainWords({ species, ripening }: Cultivar, { bloom }: Species): Omit<Problem, 'file'> {
  const [what, where] =
    bloom === null ? ['heat need', 'heat: need: main:'] : ['days from bloom to ripe', 'bloom: to_ripe:'];
  return {
    rule: 'species-heat-need',
    spot: atValue('ripening'),
    got: ripening,
    expected: `a class with ${bloom === null ? 'a heat need' : what} in species/${species}.yaml`,
    message: `the species ${species} has no ${what} for the ripening class "${ripening}"`,
    remedy: `add ${ripening} under ${where} in content/species/${species}.yaml, or mend the class.`,
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
