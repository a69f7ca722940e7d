/** The figures of species that a guide speaks of, side by side: a reader who has not said which species can look them up. */

import { temperatureText, type UnitChoice } from '../../../core/care/guideMeasures.ts';
import { type SpeciesFigureName, speciesFigures } from '../../../core/care/guideVocabulary.ts';
import type { Figure, Standing } from '../../../core/records/common.ts';
import type { Species } from '../../../core/records/species.ts';
import { speciesName } from '../../words/speciesName.ts';

const headings: Record<SpeciesFigureName, string> = {
  'leaf-damage': 'Leaves are damaged at',
  'dormant-established': 'Established wood stands',
  'dormant-first-winter': 'In its first winter',
  'root-injury': 'Roots are damaged at',
  'root-severe': 'Most roots die at',
  storage: 'Stored at',
  'bare-root-keeps': 'Bare roots keep',
  'chill-hours': 'Chill it needs',
};

const standingInShort: Record<Standing, string> = {
  seen: 'seen in the yard',
  published: 'published',
  memory: 'from memory',
  practice: 'common practice',
  fitted: 'our figure, fitted',
  ours: 'our figure',
  modeled: 'computed',
};

export interface SpeciesTable {
  headings: string[];
  rows: { species: string; cells: { figure: string; known: string }[] }[];
}

function figureInWords(name: SpeciesFigureName, { low, high }: Figure, units: UnitChoice): string {
  const range = low === high ? `${low}` : `${low} to ${high}`;
  if (name === 'bare-root-keeps') return `${range} days`;
  if (name === 'chill-hours') return `${range} hours`;
  return temperatureText(low, high, units);
}

/** Null for a guide that quotes no figure, or speaks of one species only and so gives it in its text. */
export function speciesTable(
  names: readonly SpeciesFigureName[],
  species: readonly Species[],
  units: UnitChoice,
): SpeciesTable | null {
  if (names.length === 0 || species.length < 2) return null;
  return {
    headings: names.map(name => headings[name]),
    rows: species.map(one => ({
      species: speciesName(one),
      cells: names.map(name => {
        const figure = one[speciesFigures[name]];
        return figure === null
          ? { figure: 'not known', known: '' }
          : { figure: figureInWords(name, figure, units), known: standingInShort[figure.standing] };
      }),
    })),
  };
}
