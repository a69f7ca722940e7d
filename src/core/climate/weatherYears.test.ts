import { describe, expect, it } from 'vitest';
import { hashText } from '../random.ts';
import { monthOfDay, wrapDoy } from './calendar.ts';
import { monthlyMeans } from './dailyCurve.ts';
import { estimatedSpread, SMALLEST_SPREAD_C, spreadAboutCurve } from './dailySpread.ts';
import type { ClimateFigures } from './figures.ts';
import { figuresFault, nothingPublished } from './figures.ts';
import { findWinters, freezeOdds } from './freezes.ts';
import { memoryOf } from './memory.ts';
import { weatherKey, weatherYears } from './weatherYears.ts';

/** A continental place; invented round figures. */
const figures: ClimateFigures = {
  lat: 39,
  tminC: [-6, -4, 1, 7, 13, 18, 21, 19, 15, 8, 1, -4],
  tmaxC: [4, 7, 14, 19, 24, 29, 32, 31, 27, 20, 12, 6],
  rainMm: null,
  dewPointC: null,
  sdTminC: [5.6, 5.9, 5.3, 4.6, 4.1, 3.2, 3, 3.3, 4.3, 4.7, 5, 5.7],
  sdTmaxC: [6.5, 7.3, 7.1, 5.9, 4.7, 4, 4, 4.2, 5.3, 6, 6.2, 6.6],
  sdAbout: 'curve',
  lag1: null,
  published: nothingPublished,
};
const halfYear = (months: readonly number[]) => [...months.slice(6), ...months.slice(0, 6)];

function fingerprint(series: Float32Array): string {
  return hashText(Array.from(series.subarray(0, 3650), value => value.toFixed(4)).join()).toString(16);
}

describe('weatherYears', () => {
  const years = weatherYears(figures);

  it('gives the same years for the same figures, for ever: a change here changes every modeled answer', () => {
    expect([fingerprint(years.tminC), fingerprint(years.tmaxC)]).toMatchInlineSnapshot(`
      [
        "7381e85e02016339",
        "aeb6d2f449e7152a",
      ]
    `);
    expect(weatherYears({ ...figures }).tminC).toEqual(years.tminC);
  });

  it('draws other weather for other figures, but not for what has no part in it', () => {
    const key = weatherKey(figures);
    expect(weatherKey({ ...figures, lag1: 0.7 })).not.toBe(key);
    expect(weatherKey({ ...figures, tminC: figures.tminC.map(t => t - 0.1) })).not.toBe(key);
    expect(weatherKey({ ...figures, rainMm: figures.tmaxC, dewPointC: figures.tminC })).toBe(key);
  });

  it.each(['tmin', 'tmax'] as const)('keeps the means and spreads of %s', of => {
    const series = of === 'tmin' ? years.tminC : years.tmaxC;
    const [means, spreads] =
      of === 'tmin' ? [figures.tminC, figures.sdTminC] : [figures.tmaxC, figures.sdTmaxC];
    const byDay = Array.from({ length: 365 }, () => [0, 0] as [number, number]);
    series.forEach((tC, i) => {
      const sums = byDay[wrapDoy(years.firstDoy + i) - 1] as [number, number];
      sums[0] += tC;
      sums[1] += tC * tC;
    });
    const dailyMeans = byDay.map(([sum]) => sum / years.count);
    monthlyMeans(dailyMeans).forEach((mean, month) => {
      expect(Math.abs(mean - (means[month] as number)), `month ${month}`).toBeLessThan(0.15);
    });
    const sds = byDay.map(([, squares], day) =>
      Math.sqrt(squares / years.count - (dailyMeans[day] as number) ** 2),
    );
    const middles = [15, 45, 74, 105, 135, 166, 196, 227, 258, 288, 319, 349];
    // Four standard errors of a deviation from 500 independent seasons are 0.13.
    middles.forEach(day => {
      const wanted = spreads?.[monthOfDay[day] as number] ?? 0;
      expect(Math.abs((sds[day] as number) / wanted - 1), `day ${day}`).toBeLessThan(0.13);
    });
  });

  it('never puts a maximum below its minimum', () => {
    expect(years.tminC.every((low, i) => (years.tmaxC[i] as number) >= low)).toBe(true);
  });

  it('remembers: a day tells of the next, and a little of the month after', () => {
    const acf = (lag: number) => {
      let [cross, square] = [0, 0];
      const anomalies = Float64Array.from(years.tminC, (tC, i) => {
        const month = monthOfDay[wrapDoy(years.firstDoy + i) - 1] as number;
        return (tC - (figures.tminC[month] as number)) / (figures.sdTminC?.[month] ?? 1);
      });
      for (let i = 0; i + 30 < anomalies.length; i += 1) {
        cross += (anomalies[i] as number) * (anomalies[i + lag] as number);
        square += (anomalies[i] as number) ** 2;
      }
      return cross / square;
    };
    expect(acf(1)).toBeGreaterThan(0.52);
    expect(acf(1)).toBeLessThan(0.7);
    expect(acf(30)).toBeGreaterThan(0.02);
  });

  it('is the same weather half a year later south of the equator', () => {
    const south = weatherYears({
      ...figures,
      lat: -39,
      tminC: halfYear(figures.tminC),
      tmaxC: halfYear(figures.tmaxC),
      sdTminC: halfYear(figures.sdTminC ?? []),
      sdTmaxC: halfYear(figures.sdTmaxC ?? []),
    });
    expect(south.firstDoy).toBe(24);
    const mean = (series: Float32Array) => series.reduce((sum, tC) => sum + tC, 0) / series.length;
    expect(mean(south.tminC)).toBeCloseTo(mean(years.tminC), 0);
    expect(mean(south.tminC.subarray(180, 200))).toBeLessThan(5);
  });

  it('refuses figures that cannot be modeled, and says why', () => {
    const broken: [Partial<ClimateFigures>, RegExp][] = [
      [{ tminC: figures.tminC.slice(1) }, /twelve/],
      [{ tminC: figures.tmaxC, tmaxC: figures.tminC }, /month 1: the minimum is above/],
      [{ lat: 91 }, /latitude/],
      [{ sdTminC: new Array<number>(12).fill(-1) }, /negative/],
      [{ lag1: 1 }, /lag/],
      [{ tmaxC: figures.tmaxC.map(() => Number.NaN) }, /maximum/],
    ];
    for (const [part, message] of broken) {
      expect(() => weatherYears({ ...figures, ...part })).toThrow(message);
      expect(figuresFault({ ...figures, ...part })).toMatch(message);
    }
    expect(figuresFault(figures)).toBeNull();
  });
});

describe('spread', () => {
  it('is estimated for every place on earth within what stations show', () => {
    for (const lat of [-90, -45, -1, 0, 30, 60, 90]) {
      for (const shift of [-50, -20, 0, 15]) {
        const place = {
          ...figures,
          lat,
          tminC: figures.tminC.map(t => t + shift),
          tmaxC: figures.tmaxC.map(t => t + shift),
        };
        for (const of of ['tmin', 'tmax'] as const) {
          for (const sd of estimatedSpread(place, of)) {
            expect(sd).toBeGreaterThanOrEqual(SMALLEST_SPREAD_C);
            expect(sd).toBeLessThan(18);
          }
        }
      }
    }
  });

  it('shifts by half a year south of the equator', () => {
    const south = { ...figures, lat: -39, tminC: halfYear(figures.tminC), tmaxC: halfYear(figures.tmaxC) };
    const [north, mirrored] = [estimatedSpread(figures, 'tmin'), halfYear(estimatedSpread(south, 'tmin'))];
    mirrored.forEach((sd, month) => {
      expect(sd).toBeCloseTo(north[month] as number, 12);
    });
  });

  it('loses the drift of the season, most in spring and autumn', () => {
    const slope = Float64Array.from({ length: 365 }, (_, day) => day / 5);
    // 31 days of 0.2 C a day: a variance of 0.2^2 (31^2 - 1) / 12 = 3.2.
    expect(spreadAboutCurve(new Array<number>(12).fill(5), slope)[0]).toBeCloseTo(Math.sqrt(25 - 3.2), 10);
  });
});

describe('memoryOf', () => {
  it.each([null, 0, 0.3, 0.6, 0.8, 0.99])('has unit variance and the right lag for a measured %s', lag1 => {
    const { quickLag, slowLag, quickWeight, slowWeight } = memoryOf(lag1);
    const sum = (a: number, b: number) => 1 / (1 - a * b);
    const covariance = (lag: number) =>
      quickWeight ** 2 * quickLag ** lag * sum(quickLag, quickLag) +
      slowWeight ** 2 * slowLag ** lag * sum(slowLag, slowLag) +
      quickWeight * slowWeight * (quickLag ** lag + slowLag ** lag) * sum(quickLag, slowLag);
    expect(covariance(0)).toBeCloseTo(1, 12);
    expect(covariance(1)).toBeCloseTo(0.9 * quickLag + 0.1 * slowLag, 12);
    if (lag1 !== null && lag1 >= 0.3 && lag1 <= 0.8) expect(covariance(1)).toBeCloseTo(lag1 - 0.1, 12);
  });
});

describe('places outside the latitudes the middle fit was made on', () => {
  const yearRound = (value: number) => new Array<number>(12).fill(value);
  const bare = {
    rainMm: null,
    dewPointC: null,
    sdTminC: null,
    sdTmaxC: null,
    sdAbout: 'month',
    lag1: null,
    published: nothingPublished,
  } as const;

  // Typed from climate tables from memory: Nairobi (1.3 S, 1,795 m) and Quito (0.2 S, 2,850 m) do not freeze.
  it.each([
    [
      'Nairobi',
      -1.3,
      [12, 12, 13, 14, 13, 12, 11, 11, 12, 13, 13, 13],
      [26, 27, 27, 25, 24, 23, 22, 23, 25, 26, 24, 25],
    ],
    ['Quito', -0.2, yearRound(9), yearRound(19)],
  ])('%s does not freeze by an estimated spread', (_, lat, tminC, tmaxC) => {
    const winters = findWinters(weatherYears({ ...bare, lat, tminC, tmaxC }, 400));
    expect(freezeOdds(winters, 32).none).toBeGreaterThan(0.98);
  });
});
