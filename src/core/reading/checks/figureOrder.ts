import { atValue, quote } from '../problem.ts';
import type { Check } from './check.ts';
import { writtenFigures } from './writtenFigures.ts';

/** A range is written from low to high. */
export const figureOrder: Check = ({ species }) =>
  species.flatMap(({ file, written }) =>
    writtenFigures(written).flatMap(({ path, figure: { value } }) => {
      if (!Array.isArray(value) || value[0] <= value[1]) return [];
      const [high, low] = value;
      return [
        {
          rule: 'figure-order' as const,
          file,
          spot: atValue(...path, 'value'),
          got: `[${high}, ${low}]`,
          expected: `[${low}, ${high}]`,
          message: `the range of ${quote(String(path.at(-1)))} runs from ${high} down to ${low}`,
          remedy: `write [${low}, ${high}].`,
        },
      ];
    }),
  );
