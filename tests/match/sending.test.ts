/** Sending weeks and whether a parcel can leave now. */
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import type { WeatherYears } from '../../src/core/climate/weatherYears.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { addDays, type Day, day, dayFromNumber, dayOfYear } from '../../src/core/days.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import { isoWeek, sendingWeeks, tripRisk, tripRisks } from '../../src/core/match/sending.ts';
import { canTravelNow } from '../../src/core/match/travel.ts';
import type { SendingRules } from '../../src/core/records/yard.ts';

const rules: SendingRules = {
  weekdays: [1, 2],
  transitDays: 3,
  coldestC: -20 / 3,
  hottestC: 35,
  cutBackCm: 76,
  notTo: [
    { region: 'Arizona', why: 'We lack the papers.', checked: day('2026-09-14') },
    { region: 'Outside the United States', why: 'We lack the papers.', checked: day('2026-09-14') },
  ],
};
const risksOf = (name: Parameters<typeof evidenceFigures>[0]) =>
  tripRisks(weatherYears(evidenceFigures(name)), rules);
const kansas = risksOf('johnson');
const davis = risksOf('davis');
const sfax = risksOf('sfax');

describe('ISO weeks', () => {
  it('agree with the reference implementation of Temporal', () => {
    fc.assert(
      fc.property(fc.integer({ min: -20_000, max: 60_000 }), number => {
        const of = dayFromNumber(number);
        const theirs = Temporal.PlainDate.from(of);
        expect(isoWeek(of)).toMatchObject({ isoYear: theirs.yearOfWeek, isoWeek: theirs.weekOfYear });
        expect(Temporal.PlainDate.from(isoWeek(of).monday).dayOfWeek).toBe(1);
      }),
    );
  });
});

describe('trip risks', () => {
  /** Two seasons from 24 July, mild but for what is set. */
  function twoSeasons(cold: readonly number[], hot: readonly number[]): WeatherYears {
    const tminC = new Float32Array(730).fill(5);
    const tmaxC = new Float32Array(730).fill(20);
    for (const at of cold) tminC[at] = -7;
    for (const at of hot) tmaxC[at] = 36;
    return { lat: 40, firstDoy: 205, count: 2, tminC, tmaxC, spreadEstimated: false };
  }

  it('count a limit met on any day of the trip, in its share of the years', () => {
    const { cold, heat, either } = tripRisks(twoSeasons([200], [201, 566]), rules);
    const at = (index: number) => (204 + index) % 365;
    expect([196, 197, 200, 201].map(index => cold[at(index)])).toEqual([0, 0.5, 0.5, 0]);
    expect([197, 198, 201, 202].map(index => heat[at(index)])).toEqual([0, 1, 1, 0]);
    expect([197, 198, 201, 202].map(index => either[at(index)])).toEqual([0.5, 1, 1, 0]);
  });

  it('rise with the days on the way and with tighter limits', () => {
    const years = weatherYears(evidenceFigures('johnson'), 100);
    const total = (over: Partial<SendingRules>) =>
      tripRisks(years, { ...rules, ...over }).either.reduce((sum, risk) => sum + risk, 0);
    expect(total({ transitDays: 5 })).toBeGreaterThan(total({}));
    expect(total({ coldestC: -3 })).toBeGreaterThan(total({}));
    expect(total({ hottestC: 32 })).toBeGreaterThan(total({}));
  });

  it('of both ends are at least those of either', () => {
    for (let i = 0; i < 365; i += 7) {
      const leaving = addDays(day('2026-01-01'), i);
      const both = tripRisk(kansas, davis, leaving);
      const at = dayOfYear(leaving) - 1;
      expect(both).toBeGreaterThanOrEqual(Math.max(kansas.either[at]!, davis.either[at]!) - 1e-12);
      expect(tripRisk(kansas, davis, leaving)).toBeCloseTo(tripRisk(davis, kansas, leaving), 12);
    }
  });
});

describe('sending weeks', () => {
  it('are shut in a Kansas winter and open in spring; every open week keeps to one in ten', () => {
    const { weeks, ranges } = sendingWeeks(kansas, davis, rules, day('2026-11-25'));
    expect(weeks).toHaveLength(52);
    expect(weeks[0]!.monday).toBe('2026-11-23');
    const open = (monday: string) => weeks.find(week => week.monday === monday)!.open;
    expect(open('2027-01-18')).toBe(false);
    expect(open('2027-04-19')).toBe(true);
    expect(open('2027-07-19')).toBe(false);
    for (const week of weeks) {
      const risks = [0, 1].map(number => tripRisk(kansas, davis, addDays(week.monday, number)));
      expect(week.risk).toBe(Math.max(...risks));
      expect(week.open).toBe(week.risk <= 0.1);
    }
    const inRange = (monday: Day) => ranges.some(({ from, to }) => from <= monday && monday <= to);
    for (const { monday, open: isOpen } of weeks) expect(inRange(monday)).toBe(isOpen);
  });
});

describe('can it travel', () => {
  const home = { name: 'Kansas', country: 'US', risks: kansas };
  const to = (region: string, country: string, risks = davis) => ({ name: 'there', region, country, risks });

  it('now, on the next sending day', () => {
    const { answer, because } = canTravelNow(home, to('California', 'US'), rules, day('2027-04-22'));
    expect(answer).toEqual({ state: 'now', from: '2027-04-26' });
    expect(because[0]!.text).toContain('26 April 2027');
  });

  it('not in the cold: when, and which end stands against it', () => {
    const { answer, because } = canTravelNow(home, to('California', 'US'), rules, day('2026-12-09'));
    expect(answer.state).toBe('wait');
    expect(answer.from! >= '2027-03-01' && answer.from! <= '2027-04-30').toBe(true);
    expect(because[0]!.text).toMatch(/14 December 2026 meets a night of 20 F.* at Kansas/);
    expect(because.at(-1)!.text).toContain('one in ten');
  });

  it('never where every week is too hot or too cold', () => {
    const oven = { cold: sfax.cold, heat: sfax.heat.map(() => 1), either: sfax.either.map(() => 1) };
    const { answer, because } = canTravelNow(home, to('Nowhere', 'US', oven), rules, day('2026-12-09'));
    expect(answer).toEqual({ state: 'never', from: null });
    expect(because.length).toBeGreaterThan(1);
  });

  it('not to a region the yard does not send to, by name or by country', () => {
    expect(canTravelNow(home, to('Arizona', 'US'), rules, day('2027-04-22')).answer.state).toBe('no-route');
    const abroad = canTravelNow(home, to('Sfax', 'TN', sfax), rules, day('2027-04-22'));
    expect(abroad.answer).toEqual({ state: 'no-route', from: null });
    expect(abroad.because[0]!.text).toContain('plant health authority');
  });
});
