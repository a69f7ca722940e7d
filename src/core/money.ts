/** Money: whole minor units (cents, pence, yen) with a currency. Never a float. */

export interface Money {
  /** Whole minor units; zero or more. */
  minor: number;
  /** ISO 4217 code, such as USD. */
  currency: string;
}

const decimalsByCurrency = new Map<string, number>();

/** How many decimals a currency is written with (USD 2, JPY 0), as in ISO 4217. Throws a RangeError on a malformed code. */
export function currencyDecimals(currency: string): number {
  let decimals = decimalsByCurrency.get(currency);
  if (decimals === undefined) {
    decimals =
      new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ??
      2;
    decimalsByCurrency.set(currency, decimals);
  }
  return decimals;
}

/**
 * Reads an amount written as text, such as `45` or `45.50`, into minor units. Null for anything else:
 * signs, separators, more decimals than the currency has. Text, since YAML would turn 1.10 into 1.1.
 */
export function parseAmount(text: string, currency: string): number | null {
  const match = /^(\d{1,9})(?:\.(\d+))?$/.exec(text);
  if (!match) return null;
  const decimals = currencyDecimals(currency);
  const fraction = match[2] ?? '';
  if (fraction.length > decimals) return null;
  return Number(`${match[1]}${fraction.padEnd(decimals, '0')}`);
}

/** Minor units of a whole number of major units: 45 USD is 4500. */
export function fromMajor(major: number, currency: string): number {
  return Math.round(major * 10 ** currencyDecimals(currency));
}

const formatters = new Map<string, Intl.NumberFormat>();

/** Formatters are kept: making one costs far more than using it. */
function formatter(currency: string, decimals: number): Intl.NumberFormat {
  const key = `${currency} ${decimals}`;
  let made = formatters.get(key);
  if (made === undefined) {
    made = new Intl.NumberFormat('en-US', {
      style: 'currency',
      currency,
      minimumFractionDigits: decimals,
      maximumFractionDigits: decimals,
    });
    formatters.set(key, made);
  }
  return made;
}

/** Kept, since thousands of lots share a few prices. */
const printed = new Map<string, string>();

/** A price as printed: `$45`, `$45.50`, `¥4,500`. Decimals are left off when they are zero. */
export function priceInWords({ minor, currency }: Money): string {
  const key = `${minor} ${currency}`;
  let words = printed.get(key);
  if (words === undefined) {
    const decimals = currencyDecimals(currency);
    const whole = minor % 10 ** decimals === 0;
    words = formatter(currency, whole ? 0 : decimals).format(minor / 10 ** decimals);
    printed.set(key, words);
  }
  return words;
}
