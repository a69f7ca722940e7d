/** Records as they were known on a day. */

import { describe, expect, test } from 'vitest';
import { day } from '../src/core/days.ts';
import { readClockSettings, readRecords } from '../src/core/reading/read.ts';
import type { Records } from '../src/core/records/records.ts';
import { loadYard } from './yards/loadYard.ts';

const { files, photos } = loadYard('base');

function knownOn(text: string): Records {
  const { records, diagnostics } = readRecords(files, { asOf: day(text), photos });
  if (!records) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return records;
}

describe('what was known on a day', () => {
  test('leaves out lots, walks, videos and temperatures of later days', () => {
    const { lots, walks, videos, temperatures } = knownOn('2026-04-01');
    expect(lots.map(({ id }) => id)).toEqual(['bellwether-2602', 'inkpot-2501']);
    expect([walks, videos, temperatures]).toEqual([[], [], []]);
  });

  test('leaves out what was done to a lot later', () => {
    const lot = (text: string) => knownOn(text).lots.find(({ id }) => id === 'bellwether-2601')!;
    expect(lot('2026-06-19')).toMatchObject({ severed: null, pottings: [] });
    expect(lot('2026-06-20')).toMatchObject({ severed: '2026-06-20' });
    expect(lot('2026-06-20').pottings.map(({ container }) => container.written)).toEqual(['SP4']);
    expect(lot('2026-08-15').pottings.map(({ container }) => container.written)).toEqual(['SP4', '#1']);
    const held = (text: string) => knownOn(text).lots.find(({ id }) => id === 'bellwether-2602')!.hold;
    expect([held('2026-09-30'), held('2026-10-01')]).toEqual([
      null,
      { since: '2026-10-01', why: 'Not yet rooted.' },
    ]);
  });

  test('grows from day to day and never loses anything', () => {
    const days = [
      '2025-01-01',
      '2025-06-01',
      '2026-03-01',
      '2026-05-04',
      '2026-09-05',
      '2026-10-17',
      '2026-11-25',
    ];
    const sizes = days.map(text => {
      const { lots, walks, videos, temperatures } = knownOn(text);
      return lots.length + walks.length + videos.length + temperatures.length;
    });
    expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
    expect(sizes.at(-1)).toBe(8);
  });
});

test('measures come out in one unit (1 in is 25.4 mm: NIST Handbook 44, Appendix C)', () => {
  const { walks, species, lots, temperatures } = knownOn('2026-11-25');
  expect(walks[0]?.rows[0]).toMatchObject({
    heightCm: 45.72,
    caliperMm: 8,
    left: 18,
    lost: 2,
    returned: null,
    line: 2,
  });
  expect(species.get('fig')?.leafDamageC.value).toBeCloseTo(-1.111, 3);
  expect(species.get('fig')?.propagation.cutting?.success.value).toBe(0.6);
  expect(lots[1]?.price).toEqual({ minor: 4550, why: 'Small lot.', until: null });
  expect(temperatures[1]?.tminC).toBeCloseTo(-0.556, 3);
});

test('private notes and daily records', () => {
  const withDaily = [
    ...files,
    { path: 'places/unused.csv', bytes: new TextEncoder().encode('date,tmin_c,tmax_c\n2020-01-01,1,2\n') },
  ];
  const { records } = readRecords(withDaily, { asOf: day('2026-11-25'), photos });
  expect(records?.dailyRecords).toEqual(new Map([['unused.csv', 'date,tmin_c,tmax_c\n2020-01-01,1,2\n']]));
});

test('the clock settings are read without the rest', () => {
  const yard = (text: string) => [{ path: 'yard.yaml', bytes: new TextEncoder().encode(text) }];
  expect(readClockSettings(files)).toEqual({ timeZone: 'America/New_York', fixedDay: null });
  expect(readClockSettings(yard('time_zone: UTC\nfixed_day: 2026-11-25'))).toEqual({
    timeZone: 'UTC',
    fixedDay: '2026-11-25',
  });
  expect(readClockSettings(yard('time_zone: 3\nfixed_day: 2026-02-30'))).toEqual({
    timeZone: null,
    fixedDay: null,
  });
  expect(readClockSettings([])).toEqual({ timeZone: null, fixedDay: null });
});
