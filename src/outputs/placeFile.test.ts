import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, weekday } from '../core/days.ts';
import type { Match, SendingRun } from '../core/match/answers.ts';
import { openPlaceFile, placeFileSchema } from './placeFile.ts';

const validate = new Ajv({ strict: true, allErrors: true, formats: { date: true } }).compile(
  placeFileSchema(),
);
const run = (from: string, weeks: number, state: SendingRun['state'], needsStore = false): SendingRun => ({
  from: day(from),
  to: addDays(day(from), 7 * weeks - 1),
  state,
  needsStore,
  shares: Array.from({ length: weeks }, () => 0.5),
});
const fileOf = (runs: SendingRun[]) =>
  openPlaceFile(
    { asOf: day('2026-11-25') },
    { id: 'boston-ma', name: 'Boston' },
    [],
    [
      { form: 'dormant-pot', runs },
      { form: 'bare-root', runs: [] },
    ],
  );

describe('places/ID.json', () => {
  it('keeps to its published schema (checked with Ajv, JSON Schema 2020-12)', () => {
    validate(JSON.parse(JSON.stringify(fileOf([run('2026-11-30', 2, 'by-forecast')]))));
    expect(validate.errors).toBeNull();
    expect(
      validate({
        ...fileOf([]),
        sending: [{ form: 'potted', from: '2026-11-30', to: '2026-12-06', state: 'open' }],
      }),
    ).toBe(false);
  });

  it('tells runs from Monday to Sunday, and makes one of those that only the receiver keeps apart', () => {
    const { sending } = fileOf([
      run('2026-11-30', 2, 'by-forecast'),
      run('2026-12-14', 3, 'by-forecast', true),
      run('2027-01-04', 1, 'open'),
      run('2027-03-01', 4, 'open'),
    ]);
    expect(sending).toEqual([
      { form: 'dormant-pot', from: '2026-11-30', to: '2027-01-03', state: 'by-forecast' },
      { form: 'dormant-pot', from: '2027-01-04', to: '2027-01-10', state: 'open' },
      { form: 'dormant-pot', from: '2027-03-01', to: '2027-03-28', state: 'open' },
    ]);
    for (const { from, to } of sending) expect([weekday(from as Day), weekday(to as Day)]).toEqual([1, 7]);
  });

  const odds = { share: 0.346, word: 'some-years', dates: { p10: 245, p50: 260, p90: 280 } } as const;
  const ripens = (over: object) =>
    ({ crop: 'main', ...odds, blocked: null, headStart: odds, because: [], ...over }) as const;
  const cropsOf = (asOf: string, ...ripening: object[]) =>
    openPlaceFile(
      { asOf: day(asOf) },
      { id: 'x', name: 'X' },
      [{ cultivar: 'amber', level: 'a-gamble', ripening } as unknown as Match],
      [],
    ).cultivars[0]!.crops;

  it('tells the chance of each crop and the dates of the season to come, in order', () => {
    // Day 245 of a common year is September 2, 260 is September 17, 280 is October 7.
    expect(cropsOf('2026-11-25', ripens({}))).toEqual([
      { crop: 'main', chance: 0.35, ripe: { p10: '2027-09-02', p50: '2027-09-17', p90: '2027-10-07' } },
    ]);
    // In the middle of the season the middle date has yet to come, and the early one has passed.
    expect(cropsOf('2026-09-10', ripens({}))[0]!.ripe).toEqual({
      p10: '2026-09-02',
      p50: '2026-09-17',
      p90: '2026-10-07',
    });
  });

  it('keeps the order of dates across the turn of the year, as in the south', () => {
    const south = ripens({ dates: { p10: 350, p50: 5, p90: 20 } });
    expect(cropsOf('2026-11-25', south)[0]!.ripe).toEqual({
      p10: '2026-12-16',
      p50: '2027-01-05',
      p90: '2027-01-20',
    });
  });

  it('gives no date for a crop that sets no fruit or hardly ever ripens', () => {
    expect(cropsOf('2026-11-25', ripens({ blocked: 'needs-wasp', share: 0 }))).toEqual([
      { crop: 'main', chance: 0, ripe: null },
    ]);
    expect(cropsOf('2026-11-25', ripens({ dates: null }))[0]!.ripe).toBeNull();
  });
});
