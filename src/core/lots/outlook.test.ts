import { describe, expect, it } from 'vitest';
import { logOf } from '../../../tests/askGate.ts';
import { hills, southern, tropics, worldRecords } from '../../../tests/world.ts';
import { figuresOfPlace } from '../climate/place.ts';
import { addDays, day } from '../days.ts';
import { normalisePlace, type WrittenPlace } from '../records/place.ts';
import { asleep, budsBreak, rootsHold, stillToCome } from './milestones.ts';
import { homeOutlook, LOT_SEASONS } from './outlook.ts';

const asOf = day('2026-09-15');
const outlookAt = (place: WrittenPlace, log: Parameters<typeof homeOutlook>[1] = []) =>
  homeOutlook({ name: place.name, figures: figuresOfPlace(normalisePlace('home', place)) }, log, asOf);
const fig = worldRecords().species.get('fig')!;
const warmDays = fig.propagation['air-layer']!.rootingWarmDays;

describe('outlook', () => {
  it('asks the weather years once for each question', () => {
    const outlook = outlookAt(hills);
    let made = 0;
    const cold = () => {
      made += 1;
      return (tminC: number) => tminC < 0;
    };
    const first = outlook.when('cold', asOf, cold);
    expect(made).toBeGreaterThanOrEqual(LOT_SEASONS - 2);
    const asked = made;
    expect(outlook.when('cold', asOf, cold)).toBe(first);
    expect(made).toBe(asked);
    outlook.when('cold', addDays(asOf, 1), cold);
    expect(made).toBeGreaterThan(asked);
  });

  it('knows the log up to the day only', () => {
    const reading = (on: string) => ({ day: day(on), tminC: 1, tmaxC: 2 });
    const outlook = outlookAt(hills, [reading('2026-09-14'), reading('2026-09-15'), reading('2026-09-16')]);
    expect(outlook.log.map(({ day: on }) => on)).toEqual(['2026-09-14', '2026-09-15']);
  });

  it('is on an earlier day what it was made for that day', () => {
    const log = logOf('2026-06-01', '2026-09-15', 14, 26);
    const now = outlookAt(hills, log);
    const start = day('2026-07-11');
    // Rooting is settled by the log in August; the others lie ahead on some of the days, or on all.
    const questions = (outlook: ReturnType<typeof outlookAt>) => [
      rootsHold(outlook, warmDays, { from: start, to: start }),
      asleep(outlook, fig, day('2026-07-24'), 'in-pot'),
      budsBreak(outlook, fig, asOf),
    ];
    questions(now);
    for (const on of [day('2026-07-20'), day('2026-08-20'), day('2026-09-14')]) {
      const home = { name: hills.name, figures: figuresOfPlace(normalisePlace('home', hills)) };
      expect(questions(now.until(on))).toEqual(questions(homeOutlook(home, log, on)));
      expect(now.until(on).log.at(-1)!.day).toBe(on);
    }
    expect(now.until(asOf)).toBe(now);
  });

  it('tells the mean of the month', () => {
    expect(outlookAt(hills).monthMeanC(day('2026-07-04'))).toBeCloseTo((27.9 + 15.8) / 2, 9);
  });
});

describe('milestones', () => {
  it('come in the order early, likely, late', () => {
    const outlook = outlookAt(hills);
    for (const { range } of [
      asleep(outlook, fig, asOf, 'in-pot'),
      budsBreak(outlook, fig, asOf),
      rootsHold(outlook, warmDays, { from: asOf, to: asOf }),
    ]) {
      expect(range!.from <= range!.likely && range!.likely <= range!.to).toBe(true);
    }
  });

  it('are half a year apart on the other side of the equator', () => {
    expect(budsBreak(outlookAt(hills), fig, asOf).since).toBe('2027-03-01');
    expect(budsBreak(outlookAt(southern), fig, asOf).since).toBe('2026-09-01');
  });

  it('are not told where fewer than half the years have them', () => {
    const { range, share } = asleep(outlookAt(tropics), fig, asOf, 'in-pot');
    expect(range).toBeNull();
    expect(share).toBe(0);
  });

  it('start no earlier than tomorrow', () => {
    const span = { from: day('2026-09-01'), likely: day('2026-09-10'), to: day('2026-10-01') };
    expect(stillToCome(span, asOf)).toEqual({ from: '2026-09-16', likely: '2026-09-16', to: '2026-10-01' });
  });
});
