import { dayInWords } from '../../days.ts';
import { atValue } from '../problem.ts';
import type { Check } from './check.ts';

/** No lot is started of a cultivar that the yard no longer raises. */
export const lotRetired: Check = ({ lots, cultivars }) => {
  const retired = new Map(cultivars.map(({ id, value }) => [id, value.retired]));
  return lots.flatMap(({ file, index, value }) => {
    const last = retired.get(value.cultivar) ?? null;
    if (last === null || value.started <= last) return [];
    return [
      {
        rule: 'lot-retired' as const,
        file,
        spot: atValue(index, 'started'),
        got: value.started,
        expected: `${last} or earlier`,
        message: `the lot was started after ${value.cultivar} was retired on ${dayInWords(last)}`,
        remedy: `mend the day, or take the line "retired" out of content/cultivars/${value.cultivar}.md if it is raised again.`,
      },
    ];
  });
};
