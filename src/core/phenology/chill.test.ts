/** Whether winter gives the chill a species needs, and from when heat counts. */
import { describe, expect, it } from 'vitest';
import { fig } from '../../../tests/match/places.ts';
import { climateSummary } from '../climate/summary.ts';
import { weatherYears } from '../climate/weatherYears.ts';
import { evidenceFigures } from '../evidence/matchRipening.ts';
import { chillNeed, chillState } from './chill.ts';
import { heatCountsFrom } from './heatStart.ts';

const spread = (p10: number, p50: number, p90: number) => ({ p10, p50, p90 });
const chill = { portions: spread(20, 30, 40), hours: spread(200, 400, 600) };

describe('chill', () => {
  it('goes by portions where the species gives them, else by hours', () => {
    expect(chillNeed(fig)).toEqual({ unit: 'portions', value: 10, least: 5 });
    expect(chillNeed({ ...fig, chillPortions: null })).toEqual({ unit: 'hours', value: 200, least: 100 });
    expect(chillNeed({ ...fig, chillPortions: null, chillHours: null })).toBeNull();
  });

  it.each([
    [20, 15, 'met'],
    [25, 10, 'doubtful'],
    [35, 30, 'doubtful'],
    [35, 31, 'short'],
  ] as const)('a need of %d portions, %d at the least, is %s', (value, least, state) => {
    expect(chillState({ unit: 'portions', value, least }, chill)).toBe(state);
  });

  it('is no question for a species without a figure', () => {
    expect(chillState(null, chill)).toBe('met');
  });
});

describe('the day from which heat counts', () => {
  const wake = (name: Parameters<typeof evidenceFigures>[0], ...portions: number[]) => {
    const figures = evidenceFigures(name);
    const years = weatherYears(figures, 40);
    const needs = portions.map(value => ({ unit: 'portions' as const, value, least: value }));
    return heatCountsFrom(years, needs, climateSummary(figures, years).chill.answer);
  };

  it('is March 1 where winters are ample, later where they are mild, the end of March where they fall short', () => {
    const firstOfMarch = 59;
    expect(wake('bonn', 10, 25)).toEqual([firstOfMarch, firstOfMarch]);
    const [small, middling, large, tooLarge] = wake('sfax', 5, 41, 43, 90);
    expect(small).toBe(firstOfMarch);
    expect(middling).toBeGreaterThan(firstOfMarch);
    expect(large).toBeGreaterThan(middling!);
    expect(tooLarge).toBe(90);
  });

  it('takes needs in hours as well', () => {
    const figures = evidenceFigures('sfax');
    const years = weatherYears(figures, 40);
    const { answer } = climateSummary(figures, years).chill;
    const hours = (value: number) => ({ unit: 'hours' as const, value, least: value });
    const [small, large] = heatCountsFrom(years, [hours(5), hours(160)], answer);
    expect(small).toBeLessThanOrEqual(large!);
    expect(large).toBeGreaterThan(59);
  });
});
