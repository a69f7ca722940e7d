/**
 * Sine and cosine that give the same bits on every machine: the language leaves the last digit of `Math.cos` to each
 * engine, and the weather years must not depend on it. Only `+ - * /` are used.
 */

const TAU = 6.283185307179586;

/** Terms enough for double precision on a quarter turn. */
const TERMS = 13;

/** Cosine of a part of a full turn (0.25 is a right angle). */
export function cosTurn(turns: number): number {
  const folded = Math.abs(turns - Math.round(turns));
  if (folded > 0.25) return -cosTurn(0.5 - folded);
  const square = (folded * TAU) ** 2;
  let sum = 0;
  for (let k = TERMS; k >= 1; k -= 1) sum = (1 + sum) * (-square / ((2 * k - 1) * (2 * k)));
  return 1 + sum;
}

/** Sine of a part of a full turn. */
export function sinTurn(turns: number): number {
  return cosTurn(turns - 0.25);
}
