/** Our working rules beside common practice: not proof, but a rule that disagrees with practice would be wrong. */

import type { DayRule } from '../climate/forecast.ts';
import { rooting, weaning } from '../lots/weatherRules.ts';
import { budbreak } from '../phenology/budbreak.ts';
import { defaultCutBackCm } from '../records/sending.ts';
import { cmToInches } from '../units.ts';
import type { EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

/** Days until a rule comes true when every day is alike. */
function daysAt(tminC: number, tmaxC: number, makeRule: () => DayRule): number {
  const rule = makeRule();
  for (let since = 0; since < 1000; since += 1) if (rule(tminC, tmaxC, since)) return since + 1;
  return Number.POSITIVE_INFINITY;
}

/** Heat to budbreak of a fig, degree days above 8 C. Standing: ours, fitted. */
const FIG_BUDBREAK = 164;

function practice(): EvidenceTable {
  const from = rowsFrom('Common practice, no source', 'practice');
  const warm = daysAt(20, 28, budbreak({ heat: FIG_BUDBREAK, baseC: 8, capC: 36 }));
  return {
    id: 'practice',
    title: 'Our rules beside common practice',
    about:
      'Growers know these numbers from doing it. They are no measurements; our rules only have to fall in with them.',
    weak: 'Nobody has published these figures.',
    rows: [
      from.number('height trees are cut back to for sending', 30, cmToInches(defaultCutBackCm), 1, 'in'),
      from.number('weaning of a layer in warm weather', 42, daysAt(15, 25, weaning(42)), 7, 'days'),
      from.number('roots of a potted layer hold, at 24 C', 21, daysAt(19, 29, rooting(21)), 1, 'days'),
      from.number('an unwoken fig in the warmth resumes growth', 10.5, warm, 3.5, 'days'),
    ],
    notChecked: [
      {
        what: 'strongly rooted about six months after severing',
        why: 'a figure of the species record, used as it is written',
      },
    ],
  };
}

export const lotsPracticeTables: readonly EvidenceTable[] = [practice()];
