/** Quantiles of simulated years, in the plain sense "reached in at least this share of them". */

export interface Spread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** Smallest of the values that at least a share `p` of them do not pass; the values must be sorted and not empty. */
export function sortedQuantile(sorted: ArrayLike<number>, p: number): number {
  return sorted[Math.max(0, Math.ceil(p * sorted.length - 1e-9) - 1)] as number;
}

/** 10, 50 and 90 % points of values in any order. Throws a RangeError when there are none. */
export function spreadOf(values: Iterable<number>): Spread {
  const sorted = Float64Array.from(values).sort();
  if (sorted.length === 0) throw new RangeError('no values to take quantiles of');
  return {
    p10: sortedQuantile(sorted, 0.1),
    p50: sortedQuantile(sorted, 0.5),
    p90: sortedQuantile(sorted, 0.9),
  };
}

export interface MeanAndSd {
  readonly mean: number;
  readonly sd: number;
}

/** Mean and standard deviation (n - 1) of values; an sd of 0 for a single one. */
export function meanAndSd(values: ArrayLike<number>): MeanAndSd {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i] as number;
  const mean = sum / values.length;
  let squares = 0;
  for (let i = 0; i < values.length; i += 1) squares += ((values[i] as number) - mean) ** 2;
  return { mean, sd: values.length > 1 ? Math.sqrt(squares / (values.length - 1)) : 0 };
}
