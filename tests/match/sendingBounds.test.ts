/** Sending on its bounds: synthetic ends whose chances are set, so that every share, week and wait can be told by hand. The bounds are our working figures. */
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day, dayOfYear, daysBetween } from '../../src/core/days.ts';
import type { SendingWeek } from '../../src/core/match/answers.ts';
import { mayBeDormant, receivingOf } from '../../src/core/match/receiving.ts';
import {
  type Destination,
  nextSendingDay,
  passingShare,
  sendingDays,
  sendingRuns,
  sendingWeeks,
  waitFrom,
} from '../../src/core/match/sending.ts';
import { canTravelNow, limitsInWords, tripsOfTen } from '../../src/core/match/travel.ts';
import type { Form } from '../../src/core/records/common.ts';
import { normaliseSending, type SendingRules, type WrittenSending } from '../../src/core/records/sending.ts';

const written: WrittenSending = {
  weekdays: ['wed', 'mon'],
  transit_days: 3,
  limits: { 'bare-root': { plain: {}, lined: {} } },
  not_to: [],
};
const rulesWith = (over: Partial<WrittenSending> = {}) => normaliseSending({ ...written, ...over });
const rules = rulesWith();

interface Chances {
  plain?: number;
  lined?: number;
  cold?: number;
  heat?: number;
  meanC?: number;
  /** First and last days of the year on which trees sleep. */
  asleep?: [number, number] | null;
  freezes?: [number, number] | null;
  /** Days to wait from any Monday, middle and late. */
  waits?: [number, number];
}

/** An end with the same chances on every day. */
function endWith({
  plain = 0,
  lined = plain,
  cold = plain,
  heat = 0,
  meanC = 10,
  asleep = [1, 365],
  freezes = null,
  waits = [0, 0],
}: Chances): Destination {
  const every = (chance: number) => new Float64Array(365).fill(chance);
  const risk = (either: number) => ({ cold: every(cold), heat: every(heat), either: every(either) });
  const counted = {
    middle: new Uint8Array(365).fill(waits[0]),
    late: new Uint8Array(365).fill(waits[1]),
  };
  const span = asleep && { fromDoy: asleep[0], toDoy: asleep[1] };
  const ofForm = new Map([1, 3].map(weekday => [weekday, counted]));
  return {
    name: 'an end',
    risks: {
      'leafed-pot': { plain: risk(plain), lined: null },
      'dormant-pot': { plain: risk(plain), lined: null },
      'bare-root': { plain: risk(plain), lined: risk(lined) },
    },
    year: {
      meanC: every(meanC),
      asleep: { 'in-pot': span, 'bare-root': span },
      firstFreezeDoy: freezes?.[0] ?? null,
      lastFreezeDoy: freezes?.[1] ?? null,
    },
    waits: { 'leafed-pot': ofForm, 'dormant-pot': ofForm, 'bare-root': ofForm },
  };
}

const sure = endWith({});
const monday = day('2027-03-01');
const weekTo = (there: Chances, form: Form = 'dormant-pot', with_: SendingRules = rules, home = sure) =>
  sendingWeeks(home, endWith(there), form, with_, monday)[0]!;

describe('a week', () => {
  it.each([
    [0.1, 'open'],
    [0.1001, 'by-forecast'],
    [0.7, 'by-forecast'],
    [0.7001, 'closed'],
  ] as const)('of which a share of %f breaks a limit is %s', (plain, state) => {
    expect(weekTo({ plain })).toMatchObject({ state, closedBy: state === 'closed' ? 'weather' : null });
  });

  it('passes when both ends do, drawn apart; a parcel that stays at home meets its weather once', () => {
    const [home, away] = [endWith({ plain: 0.2 }), endWith({ plain: 0.5 })];
    expect(passingShare(home, away, 'dormant-pot', 'plain', monday)).toBeCloseTo(0.8 * 0.5, 12);
    expect(passingShare(home, home, 'dormant-pot', 'plain', monday)).toBeCloseTo(0.8, 12);
    expect(passingShare(home, away, 'dormant-pot', 'lined', monday)).toBeNull();
  });

  it('takes the lined carton only where that changes what can be said', () => {
    expect(weekTo({ plain: 0.5, lined: 0.05 }, 'bare-root')).toMatchObject({
      lining: 'lined',
      state: 'open',
    });
    expect(weekTo({ plain: 0.5, lined: 0.4 }, 'bare-root')).toMatchObject({ lining: 'plain' });
    expect(weekTo({ plain: 0.05, lined: 0.5 }, 'bare-root')).toMatchObject({
      lining: 'plain',
      state: 'open',
    });
    expect(weekTo({ plain: 0.5, lined: 0.05 }, 'bare-root', rulesWith({ limits: {} }))).toMatchObject({
      lining: 'plain',
    });
  });

  it('is too long a way from the day after the longest', () => {
    const at = (form: Form, transit_days: number) => weekTo({}, form, rulesWith({ transit_days })).closedBy;
    // Ours: 3 days in leaf, 7 in a pot, 5 with bare roots in a plain carton and 7 in a lined one.
    expect([3, 4].map(days => at('leafed-pot', days))).toEqual([null, 'long-way']);
    expect([7, 8].map(days => at('dormant-pot', days))).toEqual([null, 'long-way']);
    expect([7, 8].map(days => at('bare-root', days))).toEqual([null, 'long-way']);
    const noLiner = rulesWith({ transit_days: 6, limits: {} });
    expect(weekTo({}, 'bare-root', noLiner).closedBy).toBe('long-way');
    expect(weekTo({}, 'bare-root', rulesWith({ transit_days: 6 }))).toMatchObject({
      lining: 'lined',
      share: 1,
    });
  });

  it('is judged on its first day that is not closed by hand', () => {
    const shut = (from: string, to: string) =>
      rulesWith({ by_hand: [{ from, to, state: 'closed', why: 'Away.' }] });
    // Trees here sleep until Tuesday, March 2 (day 61): Monday's parcel may leave, Wednesday's may not.
    const home = endWith({ asleep: [300, 61] });
    expect(weekTo({}, 'dormant-pot', rules, home).closedBy).toBeNull();
    expect(weekTo({}, 'dormant-pot', shut('2027-03-01', '2027-03-01'), home).closedBy).toBe('awake');
    expect(weekTo({}, 'dormant-pot', shut('2027-03-01', '2027-03-03')).closedBy).toBe('hand');
    expect(weekTo({}, 'dormant-pot', shut('2027-03-02', '2027-03-03')).closedBy).toBeNull();
    expect(weekTo({}, 'dormant-pot', shut('2027-02-28', '2027-02-28')).closedBy).toBeNull();
    expect(weekTo({}, 'leafed-pot', rules, endWith({ asleep: null })).closedBy).toBeNull();
    expect(weekTo({}, 'dormant-pot', rules, endWith({ asleep: null })).closedBy).toBe('awake');
  });

  it('lies between Monday and Sunday, its days in order', () => {
    expect(sendingDays(monday, [5, 1, 7])).toEqual(['2027-03-01', '2027-03-05', '2027-03-07']);
    const weeks = sendingWeeks(sure, sure, 'dormant-pot', rules, day('2027-03-04'));
    expect([weeks.length, weeks[0]!.monday, weeks[51]!.monday]).toEqual([52, '2027-03-01', '2028-02-21']);
    expect(
      ['2027-03-01', '2027-03-02', '2027-03-03', '2027-03-04', '2027-03-07'].map(from =>
        nextSendingDay(rules, from as Day),
      ),
    ).toEqual(['2027-03-01', '2027-03-03', '2027-03-03', '2027-03-08', '2027-03-08']);
  });
});

describe('whoever receives it', () => {
  it('plants from 4 C on, holds from 0 C on, and needs a cold store below', () => {
    const at = (meanC: number) => receivingOf(endWith({ meanC }).year, 'dormant-pot', 60);
    expect([4, 3.99, 0, -0.01].map(at)).toEqual(['plant', 'hold', 'hold', 'cold-store']);
  });

  it('gets a tree in leaf from two weeks before the late last freeze until the first freeze', () => {
    const { year } = endWith({ freezes: [300, 120] });
    const at = (doy: number) => receivingOf(year, 'leafed-pot', doy);
    expect([105, 106, 299, 300, 1].map(at)).toEqual(['freezing', 'settle', 'settle', 'freezing', 'freezing']);
    expect(receivingOf(endWith({}).year, 'leafed-pot', 20)).toBe('settle');
  });

  it('is told by the day it arrives, three days on', () => {
    const { year } = endWith({ freezes: [300, 120] });
    const there = { ...endWith({}), year };
    // Day 106 is April 16: a parcel that leaves on Tuesday the 13th would come on it.
    const on = (leaving: string) =>
      sendingWeeks(sure, there, 'leafed-pot', rulesWith({ weekdays: ['mon', 'tue'] }), leaving as Day)[0]!;
    expect(dayOfYear(day('2027-04-16'))).toBe(106);
    expect(on('2027-04-12')).toMatchObject({ receiving: 'freezing', closedBy: 'freezes-there' });
    expect(on('2027-04-19')).toMatchObject({ receiving: 'settle', state: 'open' });
  });

  it('sleep counts from its first to its last day, over the new year', () => {
    const { year } = endWith({ asleep: [330, 70] });
    const at = (doy: number) => mayBeDormant(year, 'bare-root', doy);
    expect([329, 330, 365, 1, 70, 71].map(at)).toEqual([false, true, true, true, true, false]);
  });
});

describe('runs of weeks', () => {
  const week = (at: number, over: Partial<SendingWeek>): SendingWeek => ({
    isoYear: 2027,
    isoWeek: at,
    monday: addDays(monday, 7 * at),
    share: at / 100,
    state: 'open',
    lining: 'plain',
    closedBy: null,
    byHand: null,
    receiving: 'plant',
    ...over,
  });

  it('end where the state changes, a store is needed, or a closed week stands between', () => {
    const runs = sendingRuns([
      week(0, {}),
      week(1, {}),
      week(2, { state: 'closed' }),
      week(3, {}),
      week(4, { receiving: 'cold-store' }),
      week(5, { receiving: 'hold' }),
      week(6, { state: 'by-forecast' }),
    ]);
    expect(
      runs.map(({ from, to, needsStore, state, shares }) => [from, to, needsStore, state, shares]),
    ).toEqual([
      ['2027-03-01', '2027-03-14', false, 'open', [0, 0.01]],
      ['2027-03-22', '2027-03-28', false, 'open', [0.03]],
      ['2027-03-29', '2027-04-04', true, 'open', [0.04]],
      ['2027-04-05', '2027-04-11', false, 'open', [0.05]],
      ['2027-04-12', '2027-04-18', false, 'by-forecast', [0.06]],
    ]);
  });
});

describe('now', () => {
  const route = (there: Chances, home: Chances = {}) => ({
    home: { ...endWith(home), name: 'home', country: 'US' },
    there: { ...endWith(there), name: 'there', region: 'Kansas', country: 'US' },
  });
  const now = (there: Chances, form: Form = 'dormant-pot', asOf = '2027-03-01', home: Chances = {}) => {
    const answer = canTravelNow(route(there, home), rules, day(asOf));
    if (!answer.route) throw new Error('no route');
    return answer.forms.find(each => each.form === form)!;
  };
  const said = (...asked: Parameters<typeof now>) => now(...asked).because.map(({ text }) => text);

  it('waits are counted from the day asked about to the sending day and on', () => {
    expect(now({ waits: [7, 21] }, 'dormant-pot', '2027-03-06').wait).toEqual({ middle: 9, late: 23 });
    expect(now({ waits: [119, 120] }).wait).toEqual({ middle: 119, late: null });
    expect(waitFrom(endWith({}), 'dormant-pot', { weekdays: [5] }, monday, 120)).toEqual({
      middle: null,
      late: null,
    });
  });

  it('waits count from the first sending day on which trees sleep, and end before they wake', () => {
    // Asked on March 6 (day 65): trees sleep from day 80, Sunday March 21; the next sending day is Monday the 22nd, 16 days on.
    const waits = (asleep: [number, number] | null, away: [number, number]) =>
      now({ waits: away }, 'dormant-pot', '2027-03-06', { asleep }).wait;
    expect(waits([80, 200], [0, 7])).toEqual({ middle: 16, late: 23 });
    // Until day 82, Tuesday the 23rd: a week later they are awake.
    expect(waits([80, 82], [0, 7])).toEqual({ middle: 16, late: null });
    expect(waits(null, [0, 7])).toEqual({ middle: null, late: null });
    expect(now({ waits: [0, 7] }, 'leafed-pot', '2027-03-06', { asleep: null }).wait).toEqual({
      middle: 2,
      late: 9,
    });
    // Nor while a tree in leaf would meet freezes: last on day 120, two weeks less; it arrives three days after it leaves.
    const frosty = now({ waits: [0, 0], freezes: [300, 120] }, 'leafed-pot', '2027-03-06').wait;
    expect(frosty.middle).toBe(daysBetween(day('2027-03-06'), day('2027-04-14')));
  });

  it('names a limit at an end from one trip in ten on, the likelier first', () => {
    const cold = (text: string) => text.includes('would meet a night of');
    expect(said({ plain: 0.5, cold: 0.0999 }).some(cold)).toBe(false);
    expect(said({ plain: 0.5, cold: 0.1001 })).toContain(
      'At there 1 trip in 10 that leaves on March 1, 2027 would meet a night of 20 F (-6.5 C) or colder.',
    );
    const both = said({ plain: 0.5, cold: 0.2, heat: 0.4 });
    expect(both.findIndex(text => text.includes('a day of 80 F'))).toBeLessThan(both.findIndex(cold));
  });

  it('tells of passing trips in the singular and the plural', () => {
    expect(said({ plain: 0.3 })[0]).toBe(
      'Of a thousand simulated years, 7 trips in 10 of that week keep to our limits.',
    );
    expect(said({ plain: 0.86 })[0]).toMatch(/1 trip in 10 of that week keeps/);
    expect(said({ plain: 0.85 })[0]).toMatch(/2 trips in 10 of that week keep /);
    expect([0.951, 0.95, 0.05, 0.049].map(tripsOfTen)).toEqual([
      'nearly all trips',
      '10 trips in 10',
      '1 trip in 10',
      'hardly any trip',
    ]);
    expect(limitsInWords({ coldestC: 0, hottestC: 30 })).toBe(
      'no night of 32 F (0 C) or colder and no day of 86 F (30 C) or hotter',
    );
  });

  it('names the next week that is better, and the next that needs no store', () => {
    expect(now({}).from).toBeNull();
    expect(now({ meanC: -5 }).withoutStore).toBeNull();
    const thawing = endWith({ plain: 0.5 });
    // From Thursday of the week of March 29 on it is warm and every trip passes.
    const from = dayOfYear(day('2027-04-01')) - 1;
    const meanC = thawing.year.meanC.map((_, at) => (at >= from ? 6 : -2));
    const either = thawing.risks['dormant-pot'].plain.either.map((_, at) => (at >= from + 4 ? 0.05 : 0.5));
    const there = {
      ...route({}).there,
      year: { ...thawing.year, meanC },
      risks: {
        ...thawing.risks,
        'dormant-pot': { plain: { ...thawing.risks['dormant-pot'].plain, either }, lined: null },
      },
    };
    const answer = canTravelNow({ ...route({}), there }, rules, monday);
    if (!answer.route) throw new Error('no route');
    const dormant = answer.forms.find(({ form }) => form === 'dormant-pot')!;
    expect(dormant.from).toEqual({ state: 'open', monday: '2027-04-05' });
    expect(dormant.withoutStore).toBe('2027-03-29');
  });

  it('says no to places outside the country by name or by the word for all of them', () => {
    const barred = rulesWith({
      not_to: [
        { region: 'CA', why: 'Papers.', checked: '2026-09-14' },
        { region: 'outside the United States', why: 'Papers.', checked: '2026-09-14' },
      ],
    });
    const to = (region: string, country: string) =>
      canTravelNow({ ...route({}), there: { ...route({}).there, region, country } }, barred, monday).route;
    expect([to('Kansas', 'US'), to('Ontario', 'CA'), to('Kent', 'GB')]).toEqual([true, false, false]);
  });
});
