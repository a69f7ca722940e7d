import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day } from '../../../core/days.ts';
import { nextTasks } from './nextTasks.ts';
import { nowCard } from './now.ts';
import type { TaskView } from './taskView.ts';
import { stripRows, yearStrip } from './yearStrip.ts';

function task(title: string, from: string, to: string): TaskView {
  const care = [{ title: 'lifting', fragment: '#caution-lifting' }];
  return {
    id: title,
    title,
    when: `${from} to ${to}`,
    from: day(from),
    to: day(to),
    trigger: '',
    because: '',
    needs: null,
    care,
  };
}

const feed = task('Feed', '2026-08-10', '2026-08-17');
const look = task('Look', '2026-11-27', '2027-03-23');
const wake = task('Wake', '2027-03-24', '2027-03-31');
const asOf = day('2026-11-25');

describe('the next tasks', () => {
  it.each([
    ['2026-08-01', ['Feed', 'Look']],
    ['2026-08-17', ['Feed', 'Look']],
    ['2026-08-18', ['Look', 'Wake']],
    ['2027-03-24', ['Wake']],
    ['2028-01-01', []],
  ])('on %s are %s', (today, titles) => {
    expect(nextTasks([wake, look, feed], today).map(({ title }) => title)).toEqual(titles);
  });

  it('are never over, at most two, and in order of their first day', () => {
    const days = fc.integer({ min: 0, max: 700 }).map(count => addDays(asOf, count) as string);
    const tasks = fc.array(
      fc
        .tuple(days, fc.nat(90))
        .map(([from, length]) => ({ from, to: addDays(from as Day, length) as string })),
    );
    fc.assert(
      fc.property(tasks, days, (all, today) => {
        const told = nextTasks(all, today);
        expect(told.length).toBe(Math.min(2, all.filter(({ to }) => to >= today).length));
        expect(told.every(({ to }) => to >= today)).toBe(true);
        expect(told.map(({ from }) => from)).toEqual(told.map(({ from }) => from).toSorted());
      }),
      { seed: 17, numRuns: 200 },
    );
  });
});

describe('the strip of the year', () => {
  it('has a row for each task, its seasons together, within twelve months', () => {
    const again = task('Look', '2027-11-20', '2028-03-20');
    const rows = stripRows([look, wake, again, task('Later', '2027-12-24', '2027-12-31')], day('2026-11-01'));
    expect(rows.map(({ title }) => title)).toEqual(['Look', 'Wake']);
    // Days from November 1, 2026 by hand: November 27 is 26 days on, 24 March 29 + 31 + 31 + 28 + 24 = 143.
    expect(rows[0]!.bars).toEqual([{ from: 26, days: 117 }]);
    expect(rows[1]!.bars).toEqual([{ from: 143, days: 8 }]);
  });

  it('keeps every bar within the year', () => {
    const long = stripRows([task('All year', '2026-01-01', '2028-12-31')], day('2026-11-01'));
    expect(long[0]!.bars).toEqual([{ from: 0, days: 365 }]);
  });

  it('marks the day it is made for, and is not there without tasks', () => {
    expect(yearStrip([], asOf)).toBe(false);
    expect((yearStrip([look], asOf) as { html: string }).html).toContain('class="today" x="24"');
  });
});

describe('the card', () => {
  it('tells the next tasks with their cautions, and nothing where no task has a date', () => {
    const card = nowCard({ tasks: [look, wake], arrivals: null }, 'Boston', asOf) as { html: string };
    expect(card.html).toContain('Now in Boston');
    expect(card.html.indexOf('Look')).toBeLessThan(card.html.indexOf('Wake'));
    expect(card.html).toContain('Take care: <a href="#caution-lifting">lifting</a>.');
    expect(nowCard({ tasks: [], arrivals: null }, 'Boston', asOf)).toBe(false);
  });
});
