/**
 * Chance of no freeze over a run of nights, worked out rather than drawn: nights as a first-order chain of normal
 * anomalies. The weather years rest on the same idea; this is the part of it that can be checked against exact values.
 */

/** Nodes and weights of 6-point Gauss-Legendre quadrature on -1 to 1. */
const nodes = [0.2386191860831969, 0.6612093864662645, 0.9324695142031521] as const;
const weights = [0.467913934572691, 0.3607615730481386, 0.1713244923791704] as const;

/** Beyond this the series below loses to its own rounding; the share outside is under 1e-15. */
const SERIES_END = 8;

/** Share of a standard normal distribution below `x`. Source: Marsaglia 2004, J. Stat. Software 11(4) (series). */
export function normalShareBelow(x: number): number {
  if (x < -SERIES_END) return 0;
  if (x > SERIES_END) return 1;
  let [sum, term, previous] = [x, x, 0];
  for (let k = 3; sum !== previous; k += 2) {
    previous = sum;
    term *= (x * x) / k;
    sum += term;
  }
  return 0.5 + (sum * Math.exp((-x * x) / 2)) / Math.sqrt(2 * Math.PI);
}

/**
 * Chance that two standard normal values with correlation `r` are above `h` and `k`.
 * Source: Drezner and Wesolowsky 1990, J. Statist. Comput. Simul. 35:101-107 (integral over the correlation).
 */
export function bothAbove(h: number, k: number, r: number): number {
  const half = Math.asin(r) / 2;
  const integrand = (angle: number) =>
    Math.exp(-(h * h + k * k - 2 * h * k * Math.sin(angle)) / (2 * Math.cos(angle) ** 2));
  const sum = nodes.reduce(
    (total, node, i) =>
      total + (weights[i] as number) * (integrand(half * (1 - node)) + integrand(half * (1 + node))),
    0,
  );
  return normalShareBelow(-h) * normalShareBelow(-k) + (half * sum) / (2 * Math.PI);
}

export interface ConstantNights {
  readonly meanC: number;
  readonly sdC: number;
  readonly thresholdC: number;
  readonly nights: number;
  /** Correlation of a night with the one before; 0 for independent nights. */
  readonly lag1: number;
}

/** Chance of one freezing night, of two nights without one, of a night without after another, and of none at all. */
export function freezeChances({ meanC, sdC, thresholdC, nights, lag1 }: ConstantNights) {
  const standard = (thresholdC - meanC) / sdC;
  const one = normalShareBelow(standard);
  const two = bothAbove(standard, standard, lag1);
  const after = two / (1 - one);
  return { one, two, after, none: (1 - one) * after ** (nights - 1) };
}
