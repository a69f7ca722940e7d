/** Measures in guides: read as written, shown in the reader's unit with the other beside it. */

import {
  celsiusToFahrenheit,
  cmToInches,
  degreesCToF,
  degreesFToC,
  fahrenheitToCelsius,
  inchesToCm,
  kgToPounds,
  LITERS_PER_US_GALLON,
  poundsToKg,
  roundTo,
} from '../units.ts';

/** Which unit a reader sees first. */
export type UnitChoice = 'us' | 'metric';

interface MeasureUnit {
  system: UnitChoice;
  /** The unit shown beside it. */
  other: string;
  convert: (value: number) => number;
  /** Step the converted value is rounded to. */
  otherStep: number;
}

const FEET_PER_METER = 100 / inchesToCm(12);

/** Temperatures round to whole F and half C, as everywhere on the site. */
const measureUnits: Record<string, MeasureUnit> = {
  F: { system: 'us', other: 'C', convert: fahrenheitToCelsius, otherStep: 0.5 },
  C: { system: 'metric', other: 'F', convert: celsiusToFahrenheit, otherStep: 1 },
  'degrees F': { system: 'us', other: 'degrees C', convert: degreesFToC, otherStep: 1 },
  'degrees C': { system: 'metric', other: 'degrees F', convert: degreesCToF, otherStep: 1 },
  in: { system: 'us', other: 'cm', convert: inchesToCm, otherStep: 1 },
  cm: { system: 'metric', other: 'in', convert: cmToInches, otherStep: 1 },
  ft: { system: 'us', other: 'm', convert: feet => feet / FEET_PER_METER, otherStep: 0.1 },
  m: { system: 'metric', other: 'ft', convert: meters => meters * FEET_PER_METER, otherStep: 1 },
  L: { system: 'metric', other: 'gal', convert: liters => liters / LITERS_PER_US_GALLON, otherStep: 0.1 },
  qt: { system: 'us', other: 'L', convert: quarts => (quarts * LITERS_PER_US_GALLON) / 4, otherStep: 0.5 },
  gal: { system: 'us', other: 'L', convert: gallons => gallons * LITERS_PER_US_GALLON, otherStep: 1 },
  kg: { system: 'metric', other: 'lb', convert: kgToPounds, otherStep: 1 },
  lb: { system: 'us', other: 'kg', convert: poundsToKg, otherStep: 1 },
  g: { system: 'metric', other: 'oz', convert: grams => kgToPounds(grams / 1000) * 16, otherStep: 1 },
  oz: { system: 'us', other: 'g', convert: ounces => poundsToKg(ounces / 16) * 1000, otherStep: 5 },
};
export const measureUnitNames = Object.keys(measureUnits);

export interface Measure {
  low: number;
  high: number;
  unit: string;
}

const measurePattern = /^(-?\d+(?:\.\d+)?)(?:\s+to\s+(-?\d+(?:\.\d+)?))?\s+([A-Za-z ]+)$/;

/** Reads `24 F`, `34 to 45 F`, `8 to 12 degrees C`, `3 L`; null for anything else. */
export function parseMeasure(text: string): Measure | null {
  const match = measurePattern.exec(text.trim());
  const unit = match?.[3]?.trim() ?? '';
  if (match === null || measureUnits[unit] === undefined) return null;
  const low = Number(match[1]);
  return { low, high: match[2] === undefined ? low : Number(match[2]), unit };
}

function span(low: number, high: number, unit: string): string {
  return low === high ? `${low} ${unit}` : `${low} to ${high} ${unit}`;
}

/** Under a gallon Americans measure in quarts, under a quart in cups; exact by definition: 4 quarts a gallon, 4 cups a quart. */
function smallVolume(liters: number): Pick<MeasureUnit, 'other' | 'convert' | 'otherStep'> | null {
  const gallons = liters / LITERS_PER_US_GALLON;
  if (gallons >= 1) return null;
  const [other, aGallon] = gallons >= 0.25 ? ['qt', 4] : ['cups', 16];
  return { other, convert: value => (value * aGallon) / LITERS_PER_US_GALLON, otherStep: 0.5 };
}

/** Small lengths would round to nothing or to something else: half an inch below three, half a centimeter below five; from two meters on a half is enough. */
function stepFor(other: string, value: number, usual: number): number {
  const size = Math.abs(value);
  if ((other === 'in' && size < 3) || (other === 'cm' && size < 5)) return 0.5;
  return other === 'm' && size >= 2 ? 0.5 : usual;
}

/** `24 F (-4.5 C)` for a reader who thinks in US units, `-4.5 C (24 F)` for one who does not. */
export function measureText({ low, high, unit }: Measure, units: UnitChoice): string {
  const { system } = measureUnits[unit]!;
  const { other, convert, otherStep } = (unit === 'L' && smallVolume(high)) || measureUnits[unit]!;
  const own = span(low, high, unit);
  const step = stepFor(other, convert(low), otherStep);
  const converted = span(roundTo(convert(low), step), roundTo(convert(high), step), other);
  return system === units ? `${own} (${converted})` : `${converted} (${own})`;
}

/** A temperature held in C, whole F and half C: `24 F (-4.5 C)` or the other way round. */
export function temperatureText(lowC: number, highC: number, units: UnitChoice): string {
  const inF = span(roundTo(celsiusToFahrenheit(lowC), 1), roundTo(celsiusToFahrenheit(highC), 1), 'F');
  const inC = span(roundTo(lowC, 0.5), roundTo(highC, 0.5), 'C');
  return units === 'us' ? `${inF} (${inC})` : `${inC} (${inF})`;
}

/** Units of the words of tasks by the readers who think in them. */
const systemOf: Readonly<Record<string, UnitChoice>> = {
  F: 'us',
  'degrees F': 'us',
  in: 'us',
  cups: 'us',
  qt: 'us',
  gallon: 'us',
  gallons: 'us',
  gal: 'us',
  C: 'metric',
  'degrees C': 'metric',
  cm: 'metric',
  liter: 'metric',
  liters: 'metric',
  L: 'metric',
};
const number = String.raw`-?\d+(?:\.\d+)?`;
const measure = `(${number}(?: to ${number})? (?:${Object.keys(systemOf)
  .toSorted((a, b) => b.length - a.length)
  .join('|')}))`;
const pairPattern = new RegExp(String.raw`${measure} \(${measure}\)`, 'g');
const unitOf = (written: string) => /(?:degrees )?[A-Za-z]+$/.exec(written)?.[0] ?? '';

/** A text in which every measure stands beside its other unit, with the reader's own first: `-6.5 C (20 F)` for `20 F (-6.5 C)`. */
export function readersUnitFirst(text: string, units: UnitChoice): string {
  return text.replace(pairPattern, (whole, first: string, second: string) =>
    systemOf[unitOf(second)] === units && systemOf[unitOf(first)] !== units ? `${second} (${first})` : whole,
  );
}
