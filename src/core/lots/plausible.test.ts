/** Slips of unit on the bench. What a pot holds is ours, no source; inches, feet and millimeters are those of the International Yard and Pound (1959). */

import { describe, expect, test } from 'vitest';
import { day } from '../days.ts';
import { implausible, type MeasureColumn, type MeasureContext } from './plausible.ts';

const fresh: MeasureContext = {
  pot: '#1',
  heightCm: null,
  caliperMm: null,
  last: { heightCm: null, caliperMm: null },
};
const seen: MeasureContext = {
  ...fresh,
  last: {
    heightCm: { value: 61, on: day('2026-10-17') },
    caliperMm: { value: 9, on: day('2026-10-17') },
  },
};

describe('the likely unit', () => {
  test.each<[MeasureColumn, number, MeasureContext, string | null]>([
    ['height_in', 61, fresh, '61 cm'],
    ['height_in', 61, seen, '61 cm'],
    ['caliper_in', 9, fresh, '9 mm'],
    ['height_in', 240, fresh, '240 mm'],
    ['height_cm', 24, seen, null],
    [
      'height_cm',
      18,
      { ...seen, last: { ...seen.last, heightCm: { value: 60, on: day('2026-10-17') } } },
      '18 in',
    ],
    ['height_in', 2, seen, '2 ft'],
    ['caliper_mm', 0.9, seen, '0.9 cm'],
    ['caliper_in', 0.9, { ...fresh, pot: 'SP4', heightCm: 40 }, '0.9 cm'],
    ['height_in', 300, { ...fresh, pot: null, caliperMm: 20 }, '300 cm'],
  ])('%s %d: %s', (column, typed, context, likely) => {
    const found = implausible(column, typed, context);
    if (column === 'height_cm' && typed === 24) expect(found).toBe(null);
    else expect(found?.likely).toBe(likely);
  });
});

test.each<[MeasureColumn, number, MeasureContext]>([
  ['height_in', 24, fresh],
  ['height_in', 38, seen],
  ['height_cm', 61, seen],
  ['caliper_mm', 9, seen],
  ['caliper_mm', 14, seen],
  // A tree cut back for the carton.
  [
    'height_in',
    30,
    {
      ...fresh,
      pot: '#3',
      caliperMm: 22,
      last: { ...fresh.last, heightCm: { value: 180, on: day('2026-10-17') } },
    },
  ],
  // Too tall for its pot, and seen so before: it is so.
  ['height_in', 70, { ...fresh, last: { ...fresh.last, heightCm: { value: 172, on: day('2026-10-17') } } }],
  ['height_in', 400, { ...fresh, pot: null }],
])('nothing is said of %s %d', (column, typed, context) => {
  expect(implausible(column, typed, context)).toBe(null);
});

test('what is odd is said with both units and the day', () => {
  expect(implausible('height_in', 61, seen)?.why).toBe(
    '61 in (155 cm) is more than a tree in a #1 pot is likely to be tall',
  );
  expect(implausible('height_in', 50, { ...seen, pot: null })?.why).toBe(
    '50 in (127 cm), but it was 24 in (61 cm) on October 17, 2026',
  );
  expect(implausible('caliper_mm', 3, { ...fresh, heightCm: 120 })?.why).toBe(
    'a tree 47 in (120 cm) tall hardly has a stem of 3 mm (0.1 in)',
  );
});
