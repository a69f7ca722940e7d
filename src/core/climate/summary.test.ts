import { describe, expect, it } from 'vitest';
import type { ClimateFigures } from './figures.ts';
import { freezeThresholdsF, nothingPublished } from './figures.ts';
import { airClasses, seasonClasses, winterClasses } from './placeClass.ts';
import type { ClimateSummary } from './summary.ts';
import { climateSummary } from './summary.ts';

const bare = {
  rainMm: null,
  dewPointC: null,
  sdTminC: null,
  sdTmaxC: null,
  sdAbout: 'month',
  lag1: null,
  published: nothingPublished,
} as const;

/** Temperatures of Davis, California, as in the long records of the evidence; rain in round invented figures. */
const davis: ClimateFigures = {
  ...bare,
  lat: 38.5,
  tminC: [3.1, 4.6, 6.2, 7.6, 10.5, 12.8, 13.7, 12.9, 12, 9.1, 5.2, 2.9],
  tmaxC: [12.3, 15.8, 18.7, 22.5, 27.6, 31.7, 34.2, 33.3, 31.3, 26.1, 17.6, 12.1],
  rainMm: [95, 90, 70, 25, 15, 4, 0, 1, 5, 20, 50, 80],
};
const halfYear = (months: readonly number[]) => [...months.slice(6), ...months.slice(0, 6)];
const southernDavis: ClimateFigures = {
  ...davis,
  lat: -38.5,
  tminC: halfYear(davis.tminC),
  tmaxC: halfYear(davis.tmaxC),
  rainMm: halfYear(davis.rainMm ?? []),
};
/** Invented: an island without seasons, and an ice cap. */
const island: ClimateFigures = {
  ...bare,
  lat: 0,
  tminC: new Array<number>(12).fill(24),
  tmaxC: new Array<number>(12).fill(30),
  rainMm: new Array<number>(12).fill(250),
};
const iceCap: ClimateFigures = {
  ...bare,
  lat: 82,
  tminC: [-38, -40, -39, -31, -17, -5, -1, -3, -12, -23, -31, -36],
  tmaxC: [-31, -33, -32, -24, -11, -1, 2, 0, -7, -17, -24, -29],
};

/** Every number anywhere in a value. */
function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  if (value instanceof Float64Array) return [...value];
  return value !== null && typeof value === 'object' ? Object.values(value).flatMap(numbersIn) : [];
}

function expectSane(summary: ClimateSummary) {
  expect(numbersIn(summary).every(Number.isFinite)).toBe(true);
  const { winter, season, air } = summary.class.answer;
  expect(winterClasses).toContain(winter);
  expect(seasonClasses).toContain(season);
  expect(airClasses).toContain(air);
  for (const { answer, standing, source } of Object.values(summary.freeze)) {
    expect(answer.none).toBeGreaterThanOrEqual(0);
    expect(answer.none).toBeLessThanOrEqual(1);
    for (const date of [...Object.values(answer.first), ...Object.values(answer.last)]) {
      if (date !== null) expect(date).toMatch(/^\d\d-\d\d$/);
    }
    expect(standing).toMatch(/published|modeled/);
    expect(source.length).toBeGreaterThan(20);
  }
}

describe('climateSummary', () => {
  const summary = climateSummary(davis);

  it('is sane at home, in the south, on the equator and on an ice cap', () => {
    for (const figures of [davis, southernDavis, island, iceCap]) expectSane(climateSummary(figures));
  });

  it('puts lower thresholds later in autumn and earlier in spring, and in fewer years', () => {
    const order = freezeThresholdsF.map(threshold => summary.freeze[`${threshold}F`].answer);
    const season = (date: string | null) => (date === null ? null : date < '07-24' ? `1${date}` : `0${date}`);
    for (let i = 1; i < order.length; i += 1) {
      const [warmer, colder] = [order[i - 1], order[i]];
      expect(colder?.none).toBeGreaterThanOrEqual(warmer?.none ?? 1);
      for (const key of ['p10', 'p50', 'p90'] as const) {
        const [early, late] = [season(warmer?.first[key] ?? null), season(colder?.first[key] ?? null)];
        if (early !== null && late !== null) expect(late >= early).toBe(true);
        const [lastWarm, lastCold] = [season(warmer?.last[key] ?? null), season(colder?.last[key] ?? null)];
        if (lastWarm !== null && lastCold !== null) expect(lastCold <= lastWarm).toBe(true);
      }
    }
  });

  it('gives the south the same winter half a year later', () => {
    const south = climateSummary(southernDavis);
    // The winter low of the two draws lies close to a bound of the winter classes, so that axis is compared by its figure.
    const { season, air } = summary.class.answer;
    expect(south.class.answer).toMatchObject({ season, air });
    expect(Math.abs(south.annualMinC.answer.mean - summary.annualMinC.answer.mean)).toBeLessThan(0.4);
    expect(Math.abs(south.chill.answer.portions.p50 - summary.chill.answer.portions.p50)).toBeLessThan(8);
    expect(summary.freeze['32F'].answer.first.p50).toMatch(/^1[12]-/);
    expect(south.freeze['32F'].answer.first.p50).toMatch(/^0[56]-/);
  });

  it('says "no freeze" where there is none, without dates', () => {
    const { freeze, seasonDays, winterZone } = climateSummary(island);
    expect(freeze['36F'].answer).toEqual({
      first: { p10: null, p50: null, p90: null },
      last: { p10: null, p50: null, p90: null },
      none: 1,
    });
    expect(seasonDays.answer).toEqual({ p10: 365, p50: 365, p90: 365 });
    expect(winterZone.answer.zone).toMatch(/^13/);
  });

  it('knows a place where it freezes all year', () => {
    const { freeze, seasonDays, winterZone, heat } = climateSummary(iceCap);
    expect(freeze['32F'].answer.none).toBe(0);
    expect(seasonDays.answer.p90).toBeLessThan(30);
    expect(winterZone.answer.zone).toMatch(/^[123]/);
    expect(heat.base8cap36.answer.mean).toBeLessThan(20);
  });

  it('calls an estimate an estimate', () => {
    expect(summary.freeze['32F'].standing).toBe('modeled from an estimate');
    const sd = new Array<number>(12).fill(4);
    const given = climateSummary({ ...davis, sdTminC: sd, sdTmaxC: sd, dewPointC: davis.tminC });
    expect(given.freeze['32F'].standing).toBe('modeled');
    expect(given.class.standing).toBe('modeled');
    expect(given.ripeningAir.standing).toBe('modeled');
  });

  it('lets published figures win, and names their source', () => {
    const published = {
      freeze: new Map([
        [
          32 as const,
          {
            first: { p10: '11-01', p50: '11-20', p90: '12-24' },
            last: { p10: '01-20', p50: '02-14', p90: '03-10' },
            none: null,
            source: 'Some Weather Service 1991-2020',
          },
        ],
      ]),
      season: { p10: 240, p50: 270, p90: 310, source: 'Some Weather Service 1991-2020' },
      winterZone: { zone: '9b', basis: '2023 map', source: 'Some Map Maker' },
      annualMin: { meanC: -3.3, p10C: null, source: 'Some Weather Service' },
    };
    const told = climateSummary({ ...davis, published });
    // The published coldest night has a say in the estimated spread, so the model is asked with it too.
    const { annualMin } = published;
    const modeled = climateSummary({ ...davis, published: { ...nothingPublished, annualMin } });
    expect(told.freeze['32F']).toMatchObject({
      answer: { first: { p50: '11-20' }, none: modeled.freeze['32F'].answer.none },
      standing: 'published',
      source: 'Some Weather Service 1991-2020',
    });
    expect(told.freeze['36F'].standing).toBe('modeled from an estimate');
    expect(told.seasonDays.answer.p50).toBe(270);
    expect(told.winterZone).toMatchObject({ answer: { zone: '9b' }, standing: 'published' });
    expect(told.annualMinC.answer.mean).toBe(-3.3);
    expect(told.annualMinC.answer.p10).toBe(modeled.annualMinC.answer.p10);
    expect(told.annualMinC.answer.p10).toBeLessThan(-3.3 - 0.5);
    expect(told.class.answer).toEqual({ winter: 'mild', season: 'long', summer: 'hot', air: 'dry' });
  });

  it.each([
    ['warmer', '10b', 1.67],
    ['colder', '8a', -9.44],
  ])('holds a modeled winter low within a %s published zone', (_, zone, boundC) => {
    const published = {
      ...nothingPublished,
      winterZone: { zone, basis: '2023 map', source: 'Some Map Maker' },
    };
    const { annualMinC } = climateSummary({ ...davis, published });
    expect(Math.abs(annualMinC.answer.mean - boundC)).toBeLessThan(2.79);
    expect(annualMinC.standing).not.toBe('published');
    expect(annualMinC.source).toContain('held within the published winter zone');
    const spread = summary.annualMinC.answer.p10 - summary.annualMinC.answer.mean;
    expect(annualMinC.answer.p10 - annualMinC.answer.mean).toBeCloseTo(spread, 9);
  });
});
