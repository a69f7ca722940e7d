/** Days and dates as calendars and guides say them. */

import { describe, expect, it } from 'vitest';
import { daysInWords, etoOfMonth } from '../../src/core/care/growingWindows.ts';
import { dayAtChance, freezeDays, hasFreezeAt, speciesDays } from '../../src/core/care/guideDates.ts';
import { DAYS_PER_YEAR, monthOfDay, wrapDoy } from '../../src/core/climate/calendar.ts';
import { extraterrestrialRadiation, hargreavesEtoMm } from '../../src/core/climate/evapotranspiration.ts';
import { coldYear, mildYear, never } from './roundYear.ts';

/** Evapotranspiration of each month, January first, on the days of a season. */
const byMonth = (mm: readonly number[], firstDoy: number) =>
  Array.from({ length: DAYS_PER_YEAR }, (_, at) => mm[monthOfDay[wrapDoy(firstDoy + at) - 1]!]!);

describe('days between waterings in words', () => {
  const firstDoy = 205;
  const etoMm = byMonth([1, 1, 2, 4, 4, 6, 6, 5, 3, 2, 1, 1], firstDoy);

  it('joins months that are alike, in their order', () => {
    // Season day 0 is July 24: 251 is April 1, 372 is July 31.
    expect(daysInWords({ etoMm, firstDoy }, 251, 372, mm => 12 / mm)).toBe(
      'every 3 days in Apr to May, 2 in Jun to Jul',
    );
    expect(daysInWords({ etoMm, firstDoy }, 312, 330, mm => 6 / mm)).toBe('every day in Jun');
    expect(daysInWords({ etoMm, firstDoy }, 251, 300, mm => 12 / mm)).toBe('every 3 days in Apr to May');
  });

  it('takes the mean of a month', () => {
    expect(etoOfMonth({ etoMm, firstDoy }, 3)).toBeCloseTo(4);
    expect(etoOfMonth({ etoMm, firstDoy }, 8)).toBeCloseTo(3);
    expect(etoOfMonth({ etoMm, firstDoy }, 0)).toBeCloseTo(1);
  });
});

describe('dates of guides', () => {
  it('are early, middle and late, by the chance that is asked for', () => {
    // Day 70 of a season that starts on July 24 is October 2; the first freeze is about day 80, the last about day 280.
    const first = freezeDays(coldYear(), 'first-freeze', '32F');
    expect(first).toEqual({ early: '10-02', middle: '10-12', late: '10-22' });
    expect(dayAtChance(first, 'first-freeze', '1-in-10')).toBe('10-02');
    expect(dayAtChance(first, 'first-freeze', '5-in-10')).toBe('10-12');
    expect(dayAtChance(first, 'first-freeze', '9-in-10')).toBe('10-22');
    const last = freezeDays(coldYear(), 'last-freeze', '32F');
    expect(dayAtChance(last, 'last-freeze', '1-in-10')).toBe(last.late);
    expect(dayAtChance(last, 'last-freeze', '9-in-10')).toBe(last.early);
  });

  it('of the species follow its year', () => {
    const year = coldYear();
    expect(speciesDays(year, 'leaf-fall')).toEqual({ early: '10-12', middle: '10-22', late: '11-01' });
    // The last feed comes 70 days before the first freeze of the usual year, or before leaf fall may begin where that is sooner: day 10.
    expect(speciesDays(year, 'stop-feeding').middle).toBe('08-03');
    expect(speciesDays(year, 'safe-out').middle).toBe('05-10');
    expect(speciesDays(year, 'dormant').middle).toBe('11-21');
    expect(speciesDays(year, 'budbreak').middle).toBe('05-10');
    expect(speciesDays(coldYear({ evergreen: true }), 'budbreak').middle).toBeNull();
    expect(hasFreezeAt(year, '20F')).toBe(true);
    const mild = mildYear();
    expect(hasFreezeAt({ ...mild, firstFreeze: { ...mild.firstFreeze, '20F': never } }, '20F')).toBe(false);
  });
});

describe('reference evapotranspiration', () => {
  it('is the worked radiation of FAO-56, example 8, and turns to water by equations 20 and 52', () => {
    expect(extraterrestrialRadiation(-20, 246)).toBeCloseTo(32.2, 1);
    // By hand: 0.0023 x (25 + 17.8) x sqrt(10) x 0.408 x 32.19.
    expect(hargreavesEtoMm(-20, 246, 20, 30)).toBeCloseTo(4.09, 1);
    expect(hargreavesEtoMm(60, 355, -40, -30)).toBe(0);
    expect(hargreavesEtoMm(45, 172, 15, 15)).toBe(0);
  });
});
