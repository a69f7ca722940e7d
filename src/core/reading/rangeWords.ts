/** A number beyond its bounds, and whether another unit explains it. */

import type { KeyPath, Problem } from './problem.ts';
import { unitQuestion } from './unitSense.ts';

function bounds(low: number | null, high: number | null): string {
  if (low !== null && high !== null) return `${low} to ${high}`;
  return low !== null ? `at least ${low}` : `at most ${high}`;
}

export function rangeWords(
  name: string,
  path: KeyPath,
  value: number,
  low: number | null,
  high: number | null,
): Omit<Problem, 'file' | 'spot'> {
  const key = String(path.findLast(step => typeof step === 'string') ?? '');
  const inList = typeof path.at(-1) === 'number';
  const allowed = bounds(low, high);
  return {
    rule: 'out-of-range',
    got: String(value),
    expected: allowed,
    message: `${name} is ${value} where ${allowed} is allowed`,
    remedy: unitQuestion({ key, inList, value, low, high }) ?? 'look the number up again.',
  };
}
