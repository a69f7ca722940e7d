import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, weekday } from '../core/days.ts';
import type { SendingRun } from '../core/match/answers.ts';
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
  openPlaceFile({ asOf: day('2026-11-25') }, { id: 'boston-ma', name: 'Boston' }, [
    { form: 'dormant-pot', runs },
    { form: 'bare-root', runs: [] },
  ]);

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
});
