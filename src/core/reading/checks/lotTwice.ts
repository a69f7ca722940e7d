import { atCell, quote } from '../problem.ts';
import type { Check } from './check.ts';

/** A walk has one line per lot. */
export const lotTwice: Check = ({ walks, privateWalks }) =>
  [...walks, ...privateWalks].flatMap(({ file, rows }) => {
    const lines = new Map<string, number>();
    return rows.flatMap(({ lot, line }) => {
      const first = lines.get(lot);
      if (first === undefined) {
        lines.set(lot, line);
        return [];
      }
      return [
        {
          rule: 'lot-twice' as const,
          file,
          spot: atCell(line, 'lot'),
          got: quote(lot),
          expected: 'one line per lot',
          message: `the lot ${quote(lot)} is there twice, first in line ${first}`,
          remedy: 'put what was seen in one line.',
        },
      ];
    });
  });
