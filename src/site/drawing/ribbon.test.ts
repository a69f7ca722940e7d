import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DAYS_PER_YEAR } from '../../core/climate/calendar.ts';
import type { YearRibbon } from '../../core/climate/ribbon.ts';
import { RIBBON_HEIGHT, RIBBON_WIDTH, ribbonDrawing, ribbonMonths } from './ribbon.ts';

/** A year with its coldest day at the turn of the year, swinging about a mean. */
function yearOf({ mean = 10, swing = 12, warmest = 182 } = {}): YearRibbon {
  const wave = (day: number) => mean + swing * Math.cos((2 * Math.PI * (day - warmest)) / DAYS_PER_YEAR);
  const table = (offset: number) =>
    Float64Array.from({ length: DAYS_PER_YEAR }, (_, day) => wave(day) + offset);
  return {
    lowC: table(-6),
    highC: table(6),
    coldLowC: table(-12),
    hotHighC: table(12),
    freezeChance: table(-6).map(low => Math.min(1, Math.max(0, 0.5 - low / 10))),
  };
}

/** `x y` pairs of a path of straight lines. */
function pointsOf(path: string): [number, number][] {
  return path
    .replace(/^M|z$/g, '')
    .split('L')
    .map(pair => pair.split(' ').map(Number) as [number, number]);
}

const north = ribbonDrawing(yearOf(), 45);

describe('the year ribbon', () => {
  it('spans the whole year from edge to edge and closes', () => {
    const line = pointsOf(north.low);
    expect(line.map(([x]) => x).at(0)).toBe(0);
    expect(line.map(([x]) => x).at(-1)).toBe(RIBBON_WIDTH);
    expect(line.at(0)?.[1]).toBe(line.at(-1)?.[1]);
    expect(pointsOf(north.usual)).toHaveLength(2 * line.length);
  });

  it('puts warmer days higher and the spread round the usual band', () => {
    const [low, high] = [pointsOf(north.low), pointsOf(north.high)];
    low.forEach(([, y], index) => {
      expect(high[index]![1]).toBeLessThan(y);
    });
    const heights = (path: string) => pointsOf(path).map(([, y]) => y);
    expect(Math.min(...heights(north.spread))).toBeLessThan(Math.min(...heights(north.usual)));
    expect(Math.max(...heights(north.spread))).toBeGreaterThan(Math.max(...heights(north.usual)));
    // Highest where the year is warmest, about July 1; the curve is flat there and its points are rounded.
    const [warmestX] = high.reduce((best, point) => (point[1] < best[1] ? point : best));
    expect(Math.abs(warmestX - 182)).toBeLessThanOrEqual(10);
  });

  it('names each level in both scales and marks 32 F', () => {
    const freezing = north.lines.filter(line => line.freezing);
    expect(freezing.map(({ fahrenheit, celsius }) => [fahrenheit, celsius])).toEqual([['32 F', '0 C']]);
    expect(north.lines.map(({ y }) => y)).toEqual(north.lines.map(({ y }) => y).sort((a, b) => b - a));
    // The mean of 10 C less 6 and 12 gives a low of -8 C on the coldest day: just above the line of -10 C.
    const minusTen = north.lines.find(({ celsius }) => celsius === '-10 C')!.y;
    const lowest = Math.max(...pointsOf(north.low).map(([, y]) => y));
    expect(lowest).toBeLessThan(minusTen);
    expect(minusTen - lowest).toBeLessThan(4);
  });

  it('keeps one scale for all places and widens it only for a place beyond it', () => {
    const mild = ribbonDrawing(yearOf({ mean: 15, swing: 3 }), 45);
    expect(mild.lines).toEqual(north.lines);
    const harsh = ribbonDrawing(yearOf({ mean: -10, swing: 30 }), 62);
    expect(harsh.lines.length).toBeGreaterThan(north.lines.length);
  });

  it('starts in July south of the equator, so that the growing season is in the middle', () => {
    expect(ribbonMonths(-35)[0]).toBe(6);
    const south = ribbonDrawing(yearOf({ warmest: 15 }), -35);
    expect(south.months.map(({ name }) => name).join(' ')).toBe(
      'Jul Aug Sep Oct Nov Dec Jan Feb Mar Apr May Jun',
    );
    const [warmestX] = pointsOf(south.high).reduce((best, point) => (point[1] < best[1] ? point : best));
    expect(Math.abs(warmestX - (15 + 184))).toBeLessThanOrEqual(10);
    expect(north.months[0]).toEqual({ from: 0, middle: 4.2, name: 'Jan' });
  });

  it('draws a mark for the nights that may freeze, as high as the chance', () => {
    const heights = [...north.freezes.matchAll(/v-([\d.]+)h/g)].map(([, height]) => Number(height));
    const { from, to } = north.strip;
    expect(heights.length).toBeGreaterThan(20);
    expect(heights.length).toBeLessThan(73);
    expect(Math.max(...heights)).toBe(to - from);
    expect(ribbonDrawing(yearOf({ mean: 30, swing: 2 }), 5).freezes).toBe('');
  });

  it('says in words what it shows', () => {
    expect(north.description).toMatch(
      /Usual highs run from 39 F \(4 C\) in (?:December|January) to 82 F \(28 C\) in July/,
    );
    expect(north.description).toMatch(
      /freeze between about (?:October|November) \d+ and (?:March|April) \d+\.$/,
    );
    expect(ribbonDrawing(yearOf({ mean: 30, swing: 2 }), 5).description).toMatch(/No night freezes/);
    expect(ribbonDrawing(yearOf({ mean: -40, swing: 2 }), 80).description).toMatch(/Every night/);
    expect(ribbonDrawing(yearOf({ mean: 15, swing: 5 }), 40).description).toMatch(/likeliest night|No night/);
  });

  it('stays inside its frame whatever the climate', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 35, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        (mean, swing, lat) => {
          const drawing = ribbonDrawing(yearOf({ mean, swing }), lat);
          for (const path of [drawing.spread, drawing.usual, drawing.low, drawing.high]) {
            for (const [x, y] of pointsOf(path)) {
              expect(x >= 0 && x <= RIBBON_WIDTH && y >= 0 && y <= drawing.strip.from).toBe(true);
            }
          }
          expect(drawing.freezes).not.toMatch(/NaN/);
          expect(drawing.lines.every(({ y }) => y >= 0 && y <= RIBBON_HEIGHT)).toBe(true);
        },
      ),
      { numRuns: 60 },
    );
  });
});
