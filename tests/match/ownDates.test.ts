/** A cultivar's own dates of ripe fruit take the place of its class, at the place they were seen and elsewhere. */
import { describe, expect, it } from 'vitest';
import { climateSummary } from '../../src/core/climate/summary.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { monthDay } from '../../src/core/days.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { ownSpecies, ownSpeciesId } from '../../src/core/match/ownDates.ts';
import { placeOutlook } from '../../src/core/match/placeOutlook.ts';
import { heatStarts } from '../../src/core/phenology/heatStart.ts';
import { daysAfterClass, meanYear } from '../../src/core/phenology/seenDate.ts';
import type { Species } from '../../src/core/records/species.ts';
import { fig, figure } from './places.ts';

const figures = evidenceFigures('davis');
const years = weatherYears(figures);
const climate = climateSummary(figures, years);
const weatherAt = (id: string) => (id === 'davis' ? { name: 'Davis', years } : null);
const persimmon: Species = {
  ...fig,
  id: 'persimmon',
  heatNeed: { main: {}, breba: {} },
  bloom: { heat: figure(400), toRipeDays: { early: figure(120), mid: figure(150) }, leastHeat: figure(1000) },
};

function middleAtDavis(species: Species, crop: 'main' | 'breba' = 'main'): number {
  const starts = heatStarts(years, [species], climate.chill.answer);
  const outlook = placeOutlook({ id: 'davis', name: 'Davis', figures, years, climate, heatStarts: starts }, [
    species,
  ]);
  return outlook.species.get(species.id)!.crops[crop].get('mid')!.outdoors.dates!.p50;
}

const seenOn = (species: Species, doy: number, crop: 'main' | 'breba' = 'main') => ({
  species: species.id,
  id: 'own',
  ripening: 'mid' as const,
  ripeSeen: [{ place: 'davis', crop, from: monthDay(doy - 4), to: monthDay(doy + 4), note: null }],
});

describe.each([
  ['a species timed by heat', fig],
  ['a species timed by bloom', persimmon],
])('%s', (_, species) => {
  it('ripens where it was seen when it was seen, to two days', () => {
    const usual = middleAtDavis(species);
    for (const shift of [-18, 0, 25]) {
      const own = ownSpecies(species, seenOn(species, usual + shift), weatherAt)!;
      expect(Math.abs(middleAtDavis(own) - (usual + shift))).toBeLessThanOrEqual(2);
    }
  });

  it('keeps the other classes, and says that its own was seen', () => {
    const own = ownSpecies(species, seenOn(species, 240), weatherAt)!;
    const classes = (of: Species) => of.bloom?.toRipeDays ?? of.heatNeed.main;
    expect(classes(own).early).toBe(classes(species).early);
    expect(classes(own).mid).toMatchObject({
      standing: 'seen',
      source: expect.stringContaining('Davis, August 24 to September 1'),
    });
  });
});

it('shifts only the crop it is about', () => {
  const own = ownSpecies(fig, seenOn(fig, 190, 'breba'), weatherAt)!;
  expect(own.heatNeed.main).toBe(fig.heatNeed.main);
  expect(own.heatNeed.breba.mid!.value).not.toBeCloseTo(fig.heatNeed.breba.mid!.value, 0);
});

it('takes the mean of several dates and shows their range', () => {
  const { ripeSeen, ...rest } = seenOn(fig, 220);
  const [seen] = ripeSeen;
  const later = { ...seen!, from: monthDay(236), to: monthDay(244) };
  const one = (each: typeof later) =>
    ownSpecies(fig, { ...rest, ripeSeen: [each] }, weatherAt)!.heatNeed.main.mid!.value;
  const both = ownSpecies(fig, { ...rest, ripeSeen: [seen!, later] }, weatherAt)!.heatNeed.main.mid!;
  expect(both.value).toBeCloseTo((one(seen!) + one(later)) / 2, 6);
  expect([both.low, both.high]).toEqual([one(seen!), one(later)]);
});

it('is the plain species without dates, or with dates at a place that is not known', () => {
  expect(ownSpecies(fig, { ...seenOn(fig, 220), ripeSeen: [] }, weatherAt)).toBeNull();
  expect(ownSpecies(fig, seenOn(fig, 220), () => null)).toBeNull();
  expect(ownSpeciesId({ species: 'fig', id: 'own', ripeSeen: [] })).toBe('fig');
  expect(ownSpeciesId(seenOn(fig, 220))).toBe('fig/own');
});

it('knows how far a date lies from the class', () => {
  const year = meanYear(years, fig);
  const usual = middleAtDavis(fig);
  const range = (doy: number) => ({ from: monthDay(doy), to: monthDay(doy) });
  expect(
    Math.abs(
      daysAfterClass(year, range(usual + 30), { by: 'heat', heat: 1890, budbreakHeat: 164, leastDays: 0 }) -
        30,
    ),
  ).toBeLessThanOrEqual(3);
  expect(
    Math.abs(
      daysAfterClass(year, range(usual - 30), { by: 'heat', heat: 1890, budbreakHeat: 164, leastDays: 0 }) +
        30,
    ),
  ).toBeLessThanOrEqual(3);
  const need = { by: 'bloom' as const, bloomHeat: 400, days: 150, leastHeat: 1000 };
  const bloomUsual = middleAtDavis(persimmon);
  expect(Math.abs(daysAfterClass(year, range(bloomUsual - 20), need) + 20)).toBeLessThanOrEqual(3);
  // The range runs over the new year: south of the equator a fig of January is no fig of July.
  expect(
    daysAfterClass(year, range(200), { by: 'heat', heat: 90_000, budbreakHeat: 164, leastDays: 0 }),
  ).toBe(199 - 365);
});
