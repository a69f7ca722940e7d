import { atValue, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

/** Lines of the rounding rise, and only the last one has no upper end. */
export const yardRounding: Check = ({ yard }) => {
  if (!yard) return [];
  const { file, value } = yard;
  const { rounding } = value.prices;
  return rounding.flatMap(({ below }, index): Problem[] => {
    const last = index === rounding.length - 1;
    const previous = rounding[index - 1]?.below ?? null;
    if (last && below !== null) {
      return [
        {
          rule: 'yard-rounding',
          file,
          spot: atValue('prices', 'rounding', index, 'below'),
          got: String(below),
          expected: 'no "below" on the last line',
          message: `the last line of the rounding ends at ${below}, so higher prices are not rounded`,
          remedy: 'take "below" out of the last line, or add a line without it.',
        },
      ];
    }
    const wrong = last ? null : below === null ? 'has no "below", though lines follow it' : null;
    const falls = below !== null && previous !== null && below <= previous;
    if (wrong === null && !falls) return [];
    return [
      {
        rule: 'yard-rounding',
        file,
        spot: atValue('prices', 'rounding', index, 'below'),
        got: below === null ? '' : String(below),
        expected: previous === null ? 'a number' : `more than ${previous}`,
        message: wrong
          ? `line ${index + 1} of the rounding ${wrong}`
          : `line ${index + 1} of the rounding ends at ${below}, not above the ${previous} of the line before`,
        remedy: 'let "below" rise from line to line, and leave it out on the last line only.',
      },
    ];
  });
};
