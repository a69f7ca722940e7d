/**
 * One lot walked through a year, day by day: layers put on in June, cut and potted in July, weaned, sold in leaf, asleep in late
 * autumn, sold dormant, sold out in spring. Every day is computed anew, as a build on that day would.
 */

import { beforeAll, describe, expect, it } from 'vitest';
import type { LotEntry } from '../src/core/catalogue.ts';
import { figuresOfPlace } from '../src/core/climate/place.ts';
import { weatherYears } from '../src/core/climate/weatherYears.ts';
import { addDays, type Day, day, dayInWords, daysBetween } from '../src/core/days.ts';
import type { FormAnswer, Gate, GateName } from '../src/core/lots/answers.ts';
import type { Form } from '../src/core/records/common.ts';
import { normalisePlace } from '../src/core/records/place.ts';
import type { DailyReading } from '../src/core/records/records.ts';
import { catalogueOf, hills, type Line, worldRecords } from './world.ts';

const first = day('2026-06-06');
const last = day('2027-06-05');

/** One year of weather as it came: a season that the forecasts do not know, from July 24, 2025 on. */
function weatherOfTheYear(): DailyReading[] {
  const seasons = weatherYears(figuresOfPlace(normalisePlace('hills', hills)), 3);
  const start = day('2025-07-24');
  return Array.from({ length: 2 * 365 }, (_, index) => ({
    day: addDays(start, index),
    tminC: seasons.tminC[index]!,
    tmaxC: seasons.tmaxC[index]!,
  })).filter(reading => reading.day >= first && reading.day <= last);
}

const weather = weatherOfTheYear();
/** The night that took the leaves: 29 F or colder. */
const leavesTaken = weather.find(({ day: at, tminC }) => at > '2026-09-01' && tminC <= (29 - 32) / 1.8)!.day;

const outdoors = { health: 'sound', where: 'outdoors' } as const;
const walks: Record<string, Line[]> = {
  '2026-08-08': [
    { left: 19, lost: 1, roots: 'showing', leaves: 'full', wood: 'green', health: 'sound', where: 'shade' },
  ],
  '2026-08-29': [{ left: 19, roots: 'holding', leaves: 'full', heightCm: 47, caliperMm: 7, ...outdoors }],
  '2026-09-19': [{ left: 17, leaves: 'full', wood: 'green', ...outdoors }],
  '2026-10-10': [{ left: 15, leaves: 'full', wood: 'part', heightCm: 61, caliperMm: 9, ...outdoors }],
  [addDays(leavesTaken, 2)]: [{ leaves: 'falling', wood: 'part', ...outdoors }],
  [addDays(leavesTaken, 10)]: [{ left: 14, leaves: 'bare', wood: 'part', roots: 'full', ...outdoors }],
  '2026-12-12': [{ left: 9, leaves: 'bare', wood: 'brown', ...outdoors }],
  '2027-01-09': [{ left: 5, health: 'sound' }],
  '2027-02-06': [{ left: 3, leaves: 'bare', health: 'sound' }],
  '2027-03-06': [{ left: 1, leaves: 'bare', health: 'sound' }],
  '2027-04-03': [{ left: 0 }],
};

interface Page {
  on: Day;
  entry: LotEntry;
}

function replay(log: readonly DailyReading[]): Page[] {
  const records = worldRecords({ walks });
  const pages: Page[] = [];
  for (let on = first; on <= last; on = addDays(on, 1)) {
    const known = { ...records, temperatures: log.filter(reading => reading.day <= on) };
    pages.push({ on, entry: catalogueOf(known, on).lots[0]! });
  }
  return pages;
}

const formOf = ({ entry }: Page, form: Form): FormAnswer => entry.forms.find(answer => answer.form === form)!;
const gateOf = (page: Page, form: Form, name: GateName): Gate =>
  formOf(page, form).gates.find(gate => gate.name === name)!;
const wordsOf = (because: FormAnswer['because']) => because.map(({ text }) => text).join(' ');
const forms: Form[] = ['leafed-pot', 'dormant-pot', 'bare-root'];

/** Days on which a form is ready, as unbroken spans. */
function readySpans(pages: readonly Page[], form: Form): { from: Day; to: Day }[] {
  const spans: { from: Day; to: Day }[] = [];
  for (const page of pages) {
    if (formOf(page, form).state !== 'ready') continue;
    const open = spans.at(-1);
    if (open && addDays(open.to, 1) === page.on) open.to = page.on;
    else spans.push({ from: page.on, to: page.on });
  }
  return spans;
}

/** Every gate of every form, each day beside the day before. */
function turns(pages: readonly Page[]): { name: string; was: Gate; is: Gate; on: Day }[] {
  return pages.slice(1).flatMap((page, index) =>
    forms.flatMap(form =>
      formOf(page, form).gates.map((is, place) => ({
        name: `${form} ${is.name}`,
        was: formOf(pages[index]!, form).gates[place]!,
        is,
        on: page.on,
      })),
    ),
  );
}

describe.each([
  ['with the yard’s own thermometer', weather],
  ['without a thermometer', []],
] as const)('a year of one lot, %s', (_how, log) => {
  let pages: Page[];
  const at = (on: string): Page => pages[daysBetween(first, day(on))]!;
  beforeAll(() => {
    pages = replay(log);
  });

  it('waits on the mother plant, then is weaned about six weeks after it was cut', () => {
    expect(wordsOf(gateOf(at('2026-06-20'), 'leafed-pot', 'weaned').because)).toContain(
      'still hang on the mother',
    );
    const weanedOn = pages.find(page => gateOf(page, 'leafed-pot', 'weaned').state === 'passed')!.on;
    expect(Math.abs(daysBetween(day('2026-07-11'), weanedOn) - 42)).toBeLessThanOrEqual(3);
  });

  it('is ready in leaf on the day roots are seen holding, not before', () => {
    expect(readySpans(pages, 'leafed-pot')[0]!.from).toBe('2026-08-29');
  });

  it('is not sold in leaf once the leaves are down', () => {
    for (const { to } of readySpans(pages, 'leafed-pot').filter(({ from }) => from < '2027-01-01')) {
      expect(to <= addDays(leavesTaken, 2)).toBe(true);
    }
    const winter = formOf(at('2026-12-20'), 'leafed-pot');
    expect(winter.state).toBe('opens');
    expect(winter.range!.from > '2027-04-01').toBe(true);
  });

  it('becomes dormant by evidence: never before bare branches were seen, nor before the cold days', () => {
    const [span] = readySpans(pages, 'dormant-pot');
    expect(span!.from >= addDays(leavesTaken, 10)).toBe(true);
    expect(span!.from >= addDays(leavesTaken, 2 + 20)).toBe(true);
    const dayBefore = formOf(at(addDays(span!.from, -1)), 'dormant-pot');
    expect(wordsOf(dayBefore.because)).toContain('not yet dormant');
    expect(readySpans(pages, 'bare-root')[0]!.from >= span!.from).toBe(true);
  });

  it('is sold out when none are left, and stays so', () => {
    for (const page of pages.filter(({ on }) => on >= '2027-04-03')) {
      expect(page.entry.soldOut).toBe(true);
      for (const form of forms) expect(formOf(page, form).state).toBe('blocked');
    }
    expect(at('2027-06-01').entry.stock).toMatchObject({ raised: 20, left: 0, lost: 1, sold: 19 });
  });

  it('is ready exactly when every gate has passed, and promises nothing for a day gone by', () => {
    for (const page of pages) {
      for (const form of forms) {
        const answer = formOf(page, form);
        expect(answer.state === 'ready').toBe(answer.gates.every(({ state }) => state === 'passed'));
        expect(answer.range !== null).toBe(answer.state === 'opens');
        if (answer.range) {
          expect(answer.range.from > page.on).toBe(true);
          expect(answer.range.to >= answer.range.from).toBe(true);
        }
        expect(answer.because.length).toBeGreaterThan(0);
      }
    }
  });

  it('goes against an earlier forecast only by what was seen or measured, and says so', () => {
    let against = 0;
    for (const { name, was, is, on } of turns(pages)) {
      if (was.state !== 'opens') continue;
      const early = is.state === 'passed' && on < was.range!.from;
      const later = is.state === 'opens' && is.range!.to > was.range!.to;
      const lapsed = is.state === 'look' || is.state === 'blocked';
      if (!early && !later && !lapsed) continue;
      against += 1;
      const words = wordsOf(is.because);
      const walked = on in walks && words.includes(`on the walk of ${dayInWords(on)}`);
      const measured = words.includes(`thermometer up to ${dayInWords(on)}`);
      // A forecast that runs out unseen turns into the wish for a look; that too is said.
      const asks = is.state === 'look' && /should|may/.test(words);
      const leavesGone = words.includes('Leaves should have been down since');
      expect(walked || measured || asks || leavesGone, `${name} on ${on}: ${words}`).toBe(true);
      if (early) expect(walked || measured, `${name} on ${on}: ${words}`).toBe(true);
    }
    expect(against).toBeGreaterThan(0);
  });

  it('keeps a forecast while nothing new is known: only days gone by drop off', () => {
    let kept = 0;
    for (const { name, was, is, on } of turns(pages)) {
      if (log.length > 0 || on in walks || was.state !== 'opens' || is.state !== 'opens') continue;
      // Cutting and potting on July 11, and leaves that must be down by now, are new knowledge too.
      if (on === '2026-07-11' || wordsOf(is.because).includes('Leaves should have been down since')) continue;
      kept += 1;
      expect(is.range!.to, `${name} on ${on}`).toBe(was.range!.to);
      expect(is.range!.from >= was.range!.from, `${name} on ${on}`).toBe(true);
    }
    expect(log.length > 0 || kept > 100).toBe(true);
  });
});

describe('a forecast as the season goes on', () => {
  const widthOn = (on: string) => {
    const records = worldRecords({
      walks: { '2026-09-19': [{ left: 17, leaves: 'full', ...outdoors }] },
    });
    const known = { ...records, temperatures: weather.filter(reading => reading.day <= on) };
    const { range } = catalogueOf(known, on).lots[0]!.forms[1]!.gates.find(({ name }) => name === 'dormant')!;
    return daysBetween(range!.from, range!.to);
  };

  it('narrows with what the thermometer has seen', () => {
    const widths = ['2026-09-20', addDays(leavesTaken, 1), addDays(leavesTaken, 12)].map(widthOn);
    expect(widths[1]!).toBeLessThan(widths[0]!);
    expect(widths[2]!).toBeLessThan(widths[1]!);
  });
});
