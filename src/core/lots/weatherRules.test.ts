import { describe, expect, it } from 'vitest';
import type { DayRule } from '../climate/forecast.ts';
import {
  budbreak,
  coldSoil,
  coldSpell,
  inTurn,
  leafFall,
  rooting,
  warmDay,
  weaning,
} from './weatherRules.ts';

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

it('a cold spell counts days below 10 C, in a row or not', () => {
  const mixed = [...alike(10, 0, 10), ...alike(5, 10, 20), ...alike(11, 0, 10)];
  expect(dayOf(coldSpell(21), mixed)).toBe(26);
});

describe('leaf fall', () => {
  const rule = leafFall({ nightC: -2, meanC: 9, spellDays: 3 });

  it('comes with one cold night', () => {
    expect(
      dayOf(rule, [
        [5, 20],
        [-1.9, 20],
        [-2, 18],
      ]),
    ).toBe(3);
  });

  it('comes with a spell of cool days in a row', () => {
    expect(
      dayOf(rule, [
        [2, 12],
        [2, 12],
        [8, 18],
        [2, 12],
        [2, 12],
        [2, 12],
      ]),
    ).toBe(6);
  });
});

it('soil is cold once two weeks were cold on average', () => {
  expect(dayOf(coldSoil, alike(30, 4, 14))).toBe(14);
  expect(dayOf(coldSoil, [...alike(14, 10, 20), ...alike(30, 2, 8)])).toBe(14 + 8);
  expect(dayOf(coldSoil, alike(30, 5, 16))).toBeNull();
});

it('budbreak counts heat above the base', () => {
  // Every day is warmer than the base all day: the mean of 14 C gives 6 degree days above 8 C.
  expect(dayOf(budbreak(60, 8, 36), alike(30, 9, 19))).toBe(10);
});

it('one thing after another: the second counts from the day after the first', () => {
  const fall = leafFall({ nightC: -2, meanC: -90, spellDays: 99 });
  const days = [...alike(30, 0, 10), [-3, 5] as const, ...alike(30, 0, 10)];
  expect(dayOf(inTurn(fall, coldSpell(21)), days)).toBe(31 + 21);
});
