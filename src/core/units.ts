/**
 * Measures: exact conversions, and the one place where a measure becomes text.
 * Values are stored in C, mm, cm, liters, kg; they are rounded once, when shown.
 */

/** Exact by definition: NIST Handbook 44, Appendix C. */
const MM_PER_INCH = 25.4;
/** Exact: 231 cubic inches (NIST Handbook 44, Appendix C). A nursery "gallon" pot holds less than this. */
export const LITERS_PER_US_GALLON = 3.785411784;
/** Exact: 25.4 mm cubed. */
export const LITERS_PER_CUBIC_INCH = 0.016387064;
/** Exact: avoirdupois pound (NIST Handbook 44, Appendix C). */
const KG_PER_POUND = 0.45359237;

/** A temperature reading, F to C. Not for differences or degree days: see `degreesFToC`. */
export function fahrenheitToCelsius(tF: number): number {
  return (tF - 32) / 1.8;
}

/** A temperature reading, C to F. */
export function celsiusToFahrenheit(tC: number): number {
  return tC * 1.8 + 32;
}

/** A temperature difference or a degree-day total, F to C: scaled only, never shifted by 32. */
export function degreesFToC(differenceF: number): number {
  return differenceF / 1.8;
}

/** A temperature difference or a degree-day total, C to F. */
export function degreesCToF(differenceC: number): number {
  return differenceC * 1.8;
}

export function inchesToMm(inches: number): number {
  return inches * MM_PER_INCH;
}

export function mmToInches(mm: number): number {
  return mm / MM_PER_INCH;
}

export function inchesToCm(inches: number): number {
  return (inches * MM_PER_INCH) / 10;
}

export function cmToInches(cm: number): number {
  return (cm * 10) / MM_PER_INCH;
}

export function kgToPounds(kg: number): number {
  return kg / KG_PER_POUND;
}

export function poundsToKg(pounds: number): number {
  return pounds * KG_PER_POUND;
}

/**
 * Rounds half away from zero to a step (1, 0.5, 10, ...), without the float dust of `value / step * step`
 * and without negative zero.
 */
export function roundTo(value: number, step: number): number {
  const steps = Math.sign(value) * Math.floor(Math.abs(value) / step + 0.5 + 1e-9);
  const decimals = step >= 1 ? 0 : Math.ceil(-Math.log10(step));
  return Number((steps * step).toFixed(decimals)) + 0;
}

/** A temperature as people read it: `23 F (-5 C)`, whole F and half C. */
export function temperatureInWords(tC: number): string {
  return `${roundTo(celsiusToFahrenheit(tC), 1)} F (${roundTo(tC, 0.5)} C)`;
}

/** A temperature difference as people read it: `9 F (5 C)`, whole F and half C; the sign stays. */
export function differenceInWords(differenceC: number): string {
  return `${roundTo(degreesCToF(differenceC), 1)} F (${roundTo(differenceC, 0.5)} C)`;
}

/** A height or other length: `30 in (76 cm)`. */
export function lengthInWords(cm: number): string {
  return `${roundTo(cmToInches(cm), 1)} in (${roundTo(cm, 1)} cm)`;
}

/** A stem diameter: `0.5 in (13 mm)`. */
export function caliperInWords(mm: number): string {
  return `${roundTo(mmToInches(mm), 0.05)} in (${roundTo(mm, 1)} mm)`;
}

/** A weight for a parcel: `7 lb (3.0 kg)`. */
export function weightInWords(kg: number): string {
  return `${roundTo(kgToPounds(kg), 1)} lb (${roundTo(kg, 0.1)} kg)`;
}
