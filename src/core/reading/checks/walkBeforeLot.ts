import { atCell, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** A lot is not seen before it was started. */
export const walkBeforeLot: Check = ({ walks, privateWalks, lots }) => {
  const started = new Map(lots.map(({ id, value }) => [id, value.started]));
  return [...walks, ...privateWalks].flatMap(({ file, day, rows }) =>
    rows.flatMap(({ lot, line }) => {
      const start = started.get(lot);
      if (start === undefined || start <= day) return [];
      return [
        {
          rule: 'walk-before-lot' as const,
          file,
          spot: atCell(line, 'lot'),
          got: day,
          expected: `${start} or later`,
          message: `the lot ${quote(lot)} was started on ${start}, after this walk`,
          remedy: 'mend the day of the walk or of the lot, or the id in this row.',
        },
      ];
    }),
  );
};
