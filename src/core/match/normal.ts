/** The standard normal distribution, as closely as shares of years are told. */

/** Beyond this the share is 0 or 1 to five digits. */
const FAR = 4.3;

/**
 * Share of a standard normal distribution below z, to 7.5e-8. Source: Abramowitz and Stegun 1964, Handbook of Mathematical
 * Functions, formula 26.2.17.
 */
export function normalShareBelow(z: number): number {
  if (z >= FAR) return 1;
  if (z <= -FAR) return 0;
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = 0.3989422804014327 * Math.exp((-z * z) / 2) * series;
  return z > 0 ? 1 - tail : tail;
}
