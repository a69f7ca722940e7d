import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { metricFirst } from './unitOrder.ts';
import {
  caliperInWords,
  celsiusToFahrenheit,
  lengthInWords,
  roundTo,
  temperatureInWords,
  weightInWords,
} from './units.ts';

describe('measures in the metric order', () => {
  it.each([
    ['23 F (-5 C)', '-5 C (23 F)'],
    ['kept at 33 to 40 F (1 to 4 C), roots moist', 'kept at 1 to 4 C (33 to 40 F), roots moist'],
    ['1.5 × 1.3 in (38 × 33 mm)', '38 × 33 mm (1.5 × 1.3 in)'],
    ['2,150\u00a0ft\u00a0(656\u00a0m) above the sea', '656\u00a0m\u00a0(2,150\u00a0ft) above the sea'],
    ['about 5 miles (8 km) away', 'about 8 km (5 miles) away'],
    ['2 to 3 gallons (8 to 11 L)', '8 to 11 L (2 to 3 gallons)'],
    ['2,750 degree-days F (1,530 degree-days C)', '1,530 degree-days C (2,750 degree-days F)'],
  ])('%s', (given, expected) => expect(metricFirst(given)).toBe(expected));

  it.each(['#1 (about 3.3 L)', '46 to 97 F', 'lot 26-layer-01 (2 left)', '-5 C (23 F)'])('leaves %s', given =>
    expect(metricFirst(given)).toBe(given),
  );

  it('turns whatever the site writes about a measure, and turns it once', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 60, noNaN: true }),
        fc.double({ min: 1, max: 400, noNaN: true }),
        (c, size) => {
          const [f, half] = [roundTo(celsiusToFahrenheit(c), 1), roundTo(c, 0.5)];
          expect(metricFirst(temperatureInWords(c))).toBe(`${half} C (${f} F)`);
          for (const text of [lengthInWords(size), caliperInWords(size), weightInWords(size)]) {
            const turned = metricFirst(text);
            expect(turned).not.toBe(text);
            expect(metricFirst(turned)).toBe(turned);
          }
        },
      ),
      { seed: 17, numRuns: 300 },
    ));
});
