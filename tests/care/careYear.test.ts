/** The year of a species against other code that watches the same weather day by day, and against published freeze dates. */

import { describe, expect, it } from 'vitest';
import { guideCalendar } from '../../src/core/care/guideCalendar.ts';
import { sentenceOffenders } from '../../src/core/care/guideSentences.ts';
import { dayOfSeason } from '../../src/core/care/seasonClock.ts';
import { tasksOfGuide } from '../../src/core/care/taskTable.ts';
import { forecastDay } from '../../src/core/climate/forecast.ts';
import { day, daysBetween } from '../../src/core/days.ts';
import { inTurn } from '../../src/core/lots/weatherRules.ts';
import { budbreak, budbreakNeed } from '../../src/core/phenology/budbreak.ts';
import { restMet } from '../../src/core/phenology/dormancy.ts';
import { leafFall, leafFallFigures } from '../../src/core/phenology/leafFall.ts';
import { guideKinds } from '../../src/core/records/guide.ts';
import { realClimate, realSpecies, realYear, speciesIds } from './realPlaces.ts';

const placeIds = ['minneapolis-mn', 'asheville-nc', 'seattle-wa', 'santiago-cl', 'beijing-cn'] as const;
/** Quantiles of 250 seasons beside those of 999. */
const DAYS_OF_SAMPLING = 4;

describe('careYear', () => {
  it.each(placeIds)(
    'finds leaf fall, dormancy and budbreak at %s on the days the lots are forecast by',
    placeId => {
      const species = realSpecies('fig');
      const year = realYear(placeId, 'fig');
      const { years } = realClimate(placeId);
      const start = dayOfSeason({ season: 2026, at: 0 }, year.firstDoy);
      const falls = leafFall(leafFallFigures(species));
      const sleeps = inTurn(falls, restMet('in-pot'));
      // None of these places has winters so mild that chill puts off the day from which heat counts.
      const heatFrom = day(year.firstDoy === 24 ? '2026-09-01' : '2027-03-01');
      const wakes = budbreak(budbreakNeed(species));
      const compare = (at: number | null, median: string | null) => {
        expect(at).not.toBeNull();
        expect(median).not.toBeNull();
        const off = daysBetween(
          day(median as string),
          dayOfSeason({ season: 2026, at: at as number }, year.firstDoy),
        );
        expect(Math.abs(off)).toBeLessThanOrEqual(DAYS_OF_SAMPLING);
      };
      compare(year.leafFall.p50, forecastDay(years, start, falls, 300).median);
      compare(year.dormant.p50, forecastDay(years, start, sleeps, 340).median);
      compare(year.budbreak.p50, forecastDay(years, heatFrom, wakes, 200).median);
    },
  );

  it('keeps its days in order', () => {
    for (const placeId of placeIds) {
      for (const speciesId of speciesIds) {
        const year = realYear(placeId, speciesId);
        for (const { p10, p50, p90 } of [year.leafFall, year.dormant, year.budbreak]) {
          const known = [p10, p50, p90].filter(at => at !== null);
          expect([...known].sort((a, b) => a - b)).toEqual(known);
        }
        if (year.leafFall.p50 !== null && year.dormant.p50 !== null) {
          expect(year.dormant.p50).toBeGreaterThan(year.leafFall.p50);
        }
      }
    }
  });

  it('puts a small pot at risk no later than a large one', () => {
    for (const placeId of placeIds) {
      const [small, large] = [3, 53].map(liters => realYear(placeId, 'fig', liters).potRiskFirst.p10);
      expect(small ?? 366).toBeLessThanOrEqual(large ?? 366);
    }
  });

  it('holds the winter low within a published zone where the mean is modeled', () => {
    // Mobile is 9a on the 2023 USDA map: mean annual minimum 20 to 25 F (-6.7 to -3.9 C). The low of one winter in ten is below the mean.
    const { winterLowC } = realYear('mobile-al', 'fig');
    expect(winterLowC).toBeLessThan(-6.7);
    expect(winterLowC).toBeGreaterThan(-6.7 - 6);
  });
});

describe('guideCalendar', () => {
  it.each(guideKinds)('%s: tasks of its kind, in order, each once a season', kind => {
    for (const placeId of placeIds) {
      const tasks = guideCalendar(kind, realYear(placeId, 'fig'), day('2026-11-25'));
      expect(tasks.every(({ name }) => tasksOfGuide[kind].includes(name))).toBe(true);
      expect(new Set(tasks.map(({ id }) => id)).size).toBe(tasks.length);
      const starts = tasks.map(({ range }) => range.from);
      expect([...starts].sort()).toEqual(starts);
      if (kind !== 'arrival' && kind !== 'propagation') expect(tasks.length).toBeGreaterThan(0);
    }
  });

  it('speaks in sentences of at most 35 words', () => {
    const texts = placeIds.flatMap(placeId =>
      guideKinds.flatMap(kind =>
        guideCalendar(kind, realYear(placeId, 'fig'), day('2026-11-25')).flatMap(
          ({ trigger, because, cautions }) => [
            trigger,
            ...because.map(({ text }) => text),
            ...cautions.filter(({ topic }) => topic !== 'plant' && topic !== 'pets').map(({ text }) => text),
          ],
        ),
      ),
    );
    expect(texts.length).toBeGreaterThan(100);
    const offenders = new Set(
      texts.flatMap(text => sentenceOffenders(text).map(({ words, sentence }) => `${words} ${sentence}`)),
    );
    expect([...offenders]).toEqual([]);
  });
});
