/** Evidence for measures: units and container volumes. */

import { classifyLiters, containerClasses, containerOf } from '../records/container.ts';
import {
  celsiusToFahrenheit,
  cmToInches,
  degreesFToC,
  fahrenheitToCelsius,
  inchesToCm,
  inchesToMm,
  kgToPounds,
  LITERS_PER_CUBIC_INCH,
  LITERS_PER_US_GALLON,
  poundsToKg,
} from '../units.ts';
import type { EvidenceTable } from './table.ts';
import { printed, rowsFrom } from './table.ts';

function exactUnits(): EvidenceTable {
  const nist = rowsFrom('NIST Handbook 44, Appendix C, General Tables of Units of Measurement');
  const cfr = rowsFrom('16 CFR 500.19, conversion factors');
  return {
    id: 'units',
    title: 'Units of length, volume, weight and temperature',
    about:
      'Inches, gallons and pounds are defined by whole numbers of metric units; our conversions have to be exact. The second source prints six digits.',
    weak: null,
    rows: [
      nist.number('1 in', 25.4, inchesToMm(1), 0, 'mm'),
      nist.number('1 ft', 30.48, inchesToCm(12), 0, 'cm'),
      nist.number('1 US gal', 3.785411784, LITERS_PER_US_GALLON, 0, 'L'),
      nist.number(
        '1 US gal in cubic inches',
        231,
        LITERS_PER_US_GALLON / LITERS_PER_CUBIC_INCH,
        1e-9,
        'cu in',
      ),
      nist.number('1 cu in', 0.016387064, LITERS_PER_CUBIC_INCH, 0, 'L'),
      nist.number('1 lb', 0.45359237, poundsToKg(1), 0, 'kg'),
      cfr.number('1 cm', 0.393701, cmToInches(1), printed(6), 'in'),
      cfr.number('1 cubic inch', 16.3871, LITERS_PER_CUBIC_INCH * 1000, printed(4), 'cm3'),
      cfr.number('1 gallon', 3.78541, LITERS_PER_US_GALLON, printed(5), 'L'),
      cfr.number('1 kilogram', 2.20462, kgToPounds(1), printed(5), 'lb'),
      nist.number('32 F', 0, fahrenheitToCelsius(32), 0, 'C'),
      nist.number('212 F', 100, fahrenheitToCelsius(212), 1e-12, 'C'),
      nist.number('-40 C', -40, celsiusToFahrenheit(-40), 1e-12, 'F'),
      rowsFrom('Arithmetic: a total of degree days is scaled, never shifted by 32', 'computed').number(
        '100 F-degree-days',
        55.56,
        degreesFToC(100),
        printed(2),
        'C-degree-days',
      ),
    ],
    notChecked: [],
  };
}

/** Bounds of the trade's container classes in liters, computed apart from the cubic inches, to two decimals. */
const classLiters: readonly [string, number, number][] = [
  ['SP1', 0.11, 0.13],
  ['SP2', 0.21, 0.25],
  ['SP3', 0.33, 0.49],
  ['SP4', 0.84, 1.03],
  ['SP5', 1.52, 2.23],
  ['#1', 2.49, 4.11],
  ['#2', 5.24, 7.77],
  ['#3', 10.29, 12.16],
  ['#5', 12.86, 20.35],
  ['#7', 21.91, 29.33],
  ['#10', 34.09, 43.36],
  ['#15', 45.36, 60.57],
  ['#20', 74.07, 84.43],
  ['#25', 94.64, 112.43],
];

function containers(): EvidenceTable {
  const from = rowsFrom(
    'The bounds the program uses, typed from memory of ANSI Z60.1; liters worked separately',
    'own',
  );
  const gaps = rowsFrom('Nearest class of a volume between two classes, worked by hand', 'computed');
  const nearest = (liters: number) => containerClasses[classifyLiters(liters).classIndex]!.name;
  return {
    id: 'containers',
    title: 'Container classes in liters',
    about:
      'The trade counts pots in cubic inches. A pot written in liters gets the class that spans it, or the nearest one.',
    weak: 'The cubic inches are from memory of the standard and are to be verified before a claim that a size conforms to it.',
    rows: [
      ...classLiters.flatMap(([name, low, high]) => {
        const found = containerClasses.find(candidate => candidate.name === name)!;
        return [
          from.number(
            `${name}, smallest`,
            low,
            found.fromCubicInches * LITERS_PER_CUBIC_INCH,
            printed(2),
            'L',
          ),
          from.number(`${name}, largest`, high, found.toCubicInches * LITERS_PER_CUBIC_INCH, printed(2), 'L'),
        ];
      }),
      // 4.11 L ends #1, 5.24 L begins #2: the middle is 4.68 L.
      gaps.text('4.5 L', '#1', nearest(4.5)),
      gaps.text('4.9 L', '#2', nearest(4.9)),
      gaps.text('a pot of 3 L', '#1', containerClasses[containerOf('3 L').classIndex]!.name),
    ],
    notChecked: [],
  };
}

export const lotsMeasureTables: readonly EvidenceTable[] = [exactUnits(), containers()];
