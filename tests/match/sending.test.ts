/** Sending weeks by form, and whether a tree can leave now. */
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { findWinters, freezeOdds } from '../../src/core/climate/freezes.ts';
import { weatherYears } from '../../src/core/climate/weatherYears.ts';
import { addDays, type Day, day, dayFromNumber, dayOfYear } from '../../src/core/days.ts';
import { evidenceFigures } from '../../src/core/evidence/matchRipening.ts';
import type { SendingWeek } from '../../src/core/match/answers.ts';
import { destinationOf, homeDays } from '../../src/core/match/destination.ts';
import {
  type Destination,
  isoWeek,
  passingShare,
  sendingRuns,
  sendingWeeks,
  waitFrom,
} from '../../src/core/match/sending.ts';
import { canTravelNow } from '../../src/core/match/travel.ts';
import { forms } from '../../src/core/records/common.ts';
import { normaliseSending, type SendingRules, type WrittenSending } from '../../src/core/records/sending.ts';

const written: WrittenSending = {
  weekdays: ['mon', 'tue'],
  transit_days: 3,
  limits: { 'bare-root': { plain: {}, lined: {} } },
  not_to: [
    { region: 'Arizona', why: 'We lack the papers.', checked: '2026-09-14' },
    { region: 'Outside the United States', why: 'We lack the papers.', checked: '2026-09-14' },
  ],
};
const rules = normaliseSending(written);
const withRules = (over: Partial<WrittenSending>) => normaliseSending({ ...written, ...over });

type Site = Parameters<typeof evidenceFigures>[0];
const yearsOf = (site: Site) => weatherYears(evidenceFigures(site), 400);
const homeYears = yearsOf('johnson');
const home = homeDays(homeYears, rules);
function endOf(site: Site): Destination {
  const years = yearsOf(site);
  return destinationOf(site, years, freezeOdds(findWinters(years), 32), rules, home);
}
const kansas = endOf('johnson');
const davis = endOf('davis');
const sfax = endOf('sfax');

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

describe('sending weeks', () => {
  const from = day('2026-11-25');
  const weeksOf = (form: (typeof forms)[number], with_: SendingRules = rules, there = davis) =>
    sendingWeeks(kansas, there, form, with_, from);
  const stateOn = (weeks: readonly SendingWeek[], monday: string) =>
    weeks.find(week => week.monday === monday)?.state;

  it('are open, by forecast or closed by the share of trips that pass at both ends', () => {
    for (const form of forms) {
      for (const { monday, share, state, closedBy, lining } of weeksOf(form)) {
        const both = [0, 1].map(
          ahead => passingShare(kansas, davis, form, lining, addDays(monday, ahead)) as number,
        );
        expect(share).toBeCloseTo((both[0]! + both[1]!) / 2, 12);
        if (closedBy !== null && closedBy !== 'weather') continue;
        expect(state).toBe(share >= 0.9 ? 'open' : share >= 0.3 ? 'by-forecast' : 'closed');
      }
    }
  });

  it('send trees in leaf in summer and dormant ones in the cool half, never the other way round', () => {
    const leafed = weeksOf('leafed-pot');
    const dormant = weeksOf('dormant-pot');
    expect(stateOn(leafed, '2027-01-18')).toBe('closed');
    expect(stateOn(leafed, '2027-05-24')).not.toBe('closed');
    expect(stateOn(dormant, '2027-03-08')).not.toBe('closed');
    expect(stateOn(dormant, '2027-07-19')).toBe('closed');
    expect(dormant.find(({ monday }) => monday === '2027-07-19')?.closedBy).toBe('awake');
  });

  it('let dormant trees go by the forecast in a winter in which no week is open', () => {
    const winter = weeksOf('dormant-pot').filter(
      ({ monday }) => monday >= '2026-12-07' && monday <= '2027-02-22',
    );
    expect(winter.every(({ state }) => state !== 'open')).toBe(true);
    expect(winter.some(({ state }) => state === 'by-forecast')).toBe(true);
  });

  it('use the lined carton where the plain one will not do', () => {
    const weeks = weeksOf('bare-root');
    expect(weeks.some(({ lining, state }) => lining === 'lined' && state !== 'closed')).toBe(true);
    const plainOnly = weeksOf('bare-root', withRules({ limits: {} }));
    expect(plainOnly.every(({ lining }) => lining === 'plain')).toBe(true);
    const better = { closed: 0, 'by-forecast': 1, open: 2 };
    weeks.forEach((week, i) => {
      expect(better[week.state]).toBeGreaterThanOrEqual(better[plainOnly[i]!.state]);
    });
  });

  it('are opened and closed by hand, with the reason', () => {
    const by_hand = [
      { from: '2027-05-24', to: '2027-05-30', state: 'closed' as const, why: 'We are away.' },
      {
        from: '2027-01-19',
        to: '2027-01-19',
        state: 'open' as const,
        forms: ['dormant-pot' as const],
        why: 'Mild.',
      },
    ];
    const hand = withRules({ by_hand });
    const shut = weeksOf('leafed-pot', hand).find(({ monday }) => monday === '2027-05-24');
    expect(shut).toMatchObject({ state: 'closed', closedBy: 'hand', byHand: 'We are away.' });
    expect(weeksOf('dormant-pot', hand).find(({ monday }) => monday === '2027-01-18')).toMatchObject({
      state: 'open',
      byHand: 'Mild.',
    });
    expect(stateOn(weeksOf('bare-root', hand), '2027-01-18')).toBe(
      stateOn(weeksOf('bare-root'), '2027-01-18'),
    );
  });

  it('leave the other sending day of a week that is closed by hand in part', () => {
    const monday = { from: '2027-05-24', to: '2027-05-24', state: 'closed' as const, why: 'We are away.' };
    const week = weeksOf('leafed-pot', withRules({ by_hand: [monday] })).find(
      each => each.monday === '2027-05-24',
    );
    expect(week?.closedBy).not.toBe('hand');
    expect(week?.share).toBe(passingShare(kansas, davis, 'leafed-pot', 'plain', day('2027-05-25')));
  });

  it('are closed to trees in leaf that would be longer than three days on the way', () => {
    const slow = withRules({ transit_days: 4 });
    expect(weeksOf('leafed-pot', slow).every(({ closedBy }) => closedBy === 'long-way')).toBe(true);
    expect(weeksOf('dormant-pot', slow).some(({ state }) => state !== 'closed')).toBe(true);
  });

  it('never send a tree in leaf among the freezes of the far end', () => {
    const weeks = weeksOf('leafed-pot', rules, kansas);
    const among = weeks.filter(({ receiving }) => receiving === 'freezing');
    expect(among.length).toBeGreaterThan(10);
    for (const { state, closedBy } of among) expect([state, closedBy]).toEqual(['closed', 'freezes-there']);
  });

  it('are told in runs that hold every week that is not closed, once', () => {
    for (const form of forms) {
      const weeks = weeksOf(form);
      const runs = sendingRuns(weeks);
      for (const { monday, state, receiving } of weeks) {
        const found = runs.filter(run => run.from <= monday && monday <= run.to);
        expect(found).toHaveLength(state === 'closed' ? 0 : 1);
        if (found[0]) expect(found[0]).toMatchObject({ state, needsStore: receiving === 'cold-store' });
      }
    }
  });
});

describe('what the receiver can do', () => {
  it('follows how warm the place is in the week', () => {
    const weeks = sendingWeeks(kansas, kansas, 'dormant-pot', rules, day('2026-12-01'));
    for (const { monday, receiving } of weeks) {
      const meanC = kansas.year.meanC[(dayOfYear(monday) + 3 - 1) % 365] as number;
      expect(receiving).toBe(meanC >= 4 ? 'plant' : meanC >= 0 ? 'hold' : 'cold-store');
    }
    expect(new Set(weeks.map(({ receiving }) => receiving))).toContain('cold-store');
  });
});

describe('can it travel', () => {
  const to = (region: string, country: string, there = davis) => ({
    home: { ...kansas, country: 'US' },
    there: { ...there, region, country },
  });
  const formsOn = (asOf: Day, there = davis) => {
    const answer = canTravelNow(to('California', 'US', there), rules, asOf);
    if (!answer.route) throw new Error('no route');
    return new Map(answer.forms.map(travel => [travel.form, travel]));
  };

  it('now, on the next sending day', () => {
    const leafed = formsOn(day('2027-05-20')).get('leafed-pot');
    expect(leafed?.leaving).toBe('2027-05-24');
    expect(leafed?.state).not.toBe('closed');
  });

  it('not in the cold: from when, and which end stands against it', () => {
    const leafed = formsOn(day('2026-12-09')).get('leafed-pot')!;
    expect(leafed.state).toBe('closed');
    expect(leafed.from!.monday >= '2027-03-15' && leafed.from!.monday <= '2027-05-15').toBe(true);
    expect(leafed.because.map(({ text }) => text).join(' ')).toMatch(
      /December 14, 2026 would meet a night of 35 F/,
    );
  });

  it('by the forecast, with the usual wait', () => {
    const dormant = formsOn(day('2026-12-09')).get('dormant-pot')!;
    expect(dormant.state).toBe('by-forecast');
    expect(dormant.wait.middle).not.toBeNull();
    expect(dormant.because.map(({ text }) => text).join(' ')).toContain('no carrier publishes any');
  });

  it('waits from a day between sending days are counted from that day', () => {
    const onMonday = waitFrom(davis, 'dormant-pot', rules, day('2026-12-14'), 120);
    const onSaturday = waitFrom(davis, 'dormant-pot', rules, day('2026-12-12'), 120);
    expect(onSaturday.middle).toBe(onMonday.middle! + 2);
  });

  it('not to a region the yard does not send to, by name or by country', () => {
    const barred = canTravelNow(to('Arizona', 'US'), rules, day('2027-04-22'));
    expect(barred.route).toBe(false);
    const abroad = canTravelNow(to('Sfax', 'TN', sfax), rules, day('2027-04-22'));
    expect(abroad.route ? '' : abroad.because[0]?.text).toContain('plant health authority');
  });
});

describe('limits of an older yard, one for all forms', () => {
  it('only ever narrow the careful limits of each form', () => {
    const { limits } = withRules({ coldest_f: 20, hottest_f: 95, limits: {} });
    const bare = withRules({ limits: {} }).limits;
    expect(limits).toEqual(bare);
    const strict = withRules({ coldest_f: 40, hottest_f: 70, limits: {} }).limits;
    for (const form of forms) {
      expect(strict[form].plain.coldestC).toBeCloseTo(40 / 9, 6);
      expect(strict[form].plain.hottestC).toBeCloseTo(190 / 9, 6);
    }
  });
});
