import { describe, expect, it } from 'vitest';
import type { DayRule } from '../climate/forecast.ts';
import { leafFall } from '../phenology/leafFall.ts';
import { coldSoil, inTurn, rooting, warmDay, weaning } from './weatherRules.ts';

/** Day on which a rule comes true over days of [tmin, tmax], from 1; null when it does not. */
function dayOf(makeRule: () => DayRule, days: readonly (readonly [number, number])[]): number | null {
  const rule = makeRule();
  const index = days.findIndex(([tminC, tmaxC], since) => rule(tminC, tmaxC, since));
  return index < 0 ? null : index + 1;
}
const alike = (count: number, tminC: number, tmaxC: number) =>
  new Array<[number, number]>(count).fill([tminC, tmaxC]);

describe('warm days', () => {
  it.each([
    [5, 15, 0],
    [0, 10, 0],
    [12, 22, 0.5],
    [19, 29, 1],
    [30, 40, 1.2],
  ])('a day of %i to %i C counts %d', (tminC, tmaxC, counts) => {
    expect(warmDay(tminC, tmaxC)).toBeCloseTo(counts, 12);
  });

  it('add up until roots hold', () => {
    expect(dayOf(rooting(21), alike(100, 19, 29))).toBe(21);
    expect(dayOf(rooting(21), alike(100, 12, 22))).toBe(42);
    expect(dayOf(rooting(21), alike(400, 0, 10))).toBeNull();
  });
});

it('weaning counts days, cold ones half', () => {
  expect(dayOf(weaning(42), alike(100, 10, 20))).toBe(42);
  expect(dayOf(weaning(42), alike(100, 0, 10))).toBe(84);
});

it('soil is cold once two weeks were cold on average', () => {
  expect(dayOf(coldSoil, alike(30, 4, 14))).toBe(14);
  expect(dayOf(coldSoil, [...alike(14, 10, 20), ...alike(30, 2, 8)])).toBe(14 + 8);
  expect(dayOf(coldSoil, alike(30, 5, 16))).toBeNull();
});

it('one thing after another: the second counts from the day after the first', () => {
  const fall = leafFall({ nightC: -2, meanC: -90, spellDays: 99 });
  const days21 = () => (_low: number, _high: number, since: number) => since >= 20;
  const days = [...alike(30, 0, 10), [-3, 5] as const, ...alike(30, 0, 10)];
  expect(dayOf(inTurn(fall, days21), days)).toBe(31 + 21);
});
