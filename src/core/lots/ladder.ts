/** The price ladder: preferred numbers, each rung about the same share above the one below. */

/**
 * Most rounded-free preferred numbers per decade.
 * Source: ISO 3:1973, "Preferred numbers - Series of preferred numbers", series R5, R10, R20.
 */
const preferredNumbers = {
  R5: [1, 1.6, 2.5, 4, 6.3],
  R10: [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8],
  R20: [1, 1.12, 1.25, 1.4, 1.6, 1.8, 2, 2.24, 2.5, 2.8, 3.15, 3.55, 4, 4.5, 5, 5.6, 6.3, 7.1, 8, 9],
} as const;

export type Series = keyof typeof preferredNumbers;

/** The number on a rung: rung 0 is 1, and each decade has 5, 10 or 20 rungs. Exact to the digits of the standard. */
export function rungValue(series: Series, rung: number): number {
  const numbers = preferredNumbers[series];
  const decade = Math.floor(rung / numbers.length);
  const mantissa = numbers[rung - decade * numbers.length]!;
  // Through text, so that 3.15 x 10 is 31.5 and not 31.499999999999996.
  return Number(`${mantissa}e${decade}`);
}

/** The rung nearest an amount above zero, by ratio; the lower one when both are as near. Throws a RangeError otherwise. */
export function nearestRung(series: Series, amount: number): number {
  if (!(amount > 0) || !Number.isFinite(amount)) throw new RangeError(`no rung for ${amount}`);
  const perDecade = preferredNumbers[series].length;
  let rung = Math.floor(Math.log10(amount) * perDecade) - 1;
  while (rungValue(series, rung + 1) <= amount) rung += 1;
  const [below, above] = [rungValue(series, rung), rungValue(series, rung + 1)];
  return amount * amount > below * above ? rung + 1 : rung;
}

/** One line of a yard's rounding: prices below `below` (null: all the rest) go to a multiple of `to`. */
export interface RoundingLine {
  below: number | null;
  to: number;
}

function toMultiple(amount: number, to: number): number {
  return Math.max(Math.floor(amount / to + 0.5 + 1e-9), 1) * to;
}

/**
 * A price by the yard's rounding, lines in order of rising limits. Never falls when the price rises, also where one line ends and
 * the next begins: a price is at least what the end of every lower line rounds to. Never zero.
 */
export function roundPrice(lines: readonly RoundingLine[], amount: number): number {
  let rounded = 0;
  let from = 0;
  for (const { below, to } of lines) {
    if (amount < from) break;
    const end = below ?? Number.POSITIVE_INFINITY;
    rounded = Math.max(rounded, toMultiple(Math.min(amount, end), to));
    from = end;
  }
  return rounded;
}
