/** The open file of every place of the demonstration: true to its schema, its dates in order, its weeks whole. */

import Ajv from 'ajv/dist/2020.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { assembled, loadContent } from '../src/content.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { addDays, type Day, daysBetween, weekday } from '../src/core/days.ts';
import { type Outlooks, outlooksFor } from '../src/outlooks.ts';
import { type OpenPlaceFile, openPlaceFile, placeFileSchema } from '../src/outputs/placeFile.ts';
import { sendingRunsTo } from '../src/site/pages/places/sending.ts';
import { listedCultivars } from '../src/site/parts/raised.ts';

let all: Catalogue;
let outlooks: Outlooks;
let files: OpenPlaceFile[];

beforeAll(async () => {
  all = (await assembled(await loadContent({ dir: 'content' }))).catalogue;
  outlooks = await outlooksFor(all);
  files = all.places.map(({ id }) => {
    const answers = outlooks.get(id)!;
    const matches = listedCultivars(all).map(({ cultivar }) => answers.match(cultivar));
    return openPlaceFile(all, answers.place, matches, sendingRunsTo(all, outlooks, answers));
  });
});

describe('the open file of a place', () => {
  it('keeps to its published schema (checked with Ajv, JSON Schema 2020-12), in every place', () => {
    const validate = new Ajv({ strict: true, allErrors: true, formats: { date: true } }).compile(
      placeFileSchema(),
    );
    expect(files.length).toBeGreaterThan(50);
    for (const file of files) {
      validate(JSON.parse(JSON.stringify(file)));
      expect({ place: file.place, errors: validate.errors }).toEqual({ place: file.place, errors: null });
    }
  });

  it('has every cultivar of the list once, its dates in order and in the coming year, and none where it hardly ever ripens', () => {
    const listed = listedCultivars(all).map(({ cultivar }) => cultivar.id);
    for (const { cultivars } of files) {
      expect(cultivars.map(({ cultivar }) => cultivar)).toEqual(listed);
      for (const { crop, chance, ripe } of cultivars.flatMap(({ crops }) => crops)) {
        if (ripe === null) continue;
        expect(['main', 'breba']).toContain(crop);
        expect(chance).toBeGreaterThanOrEqual(0.1);
        expect(ripe.p10 <= ripe.p50 && ripe.p50 <= ripe.p90).toBe(true);
        expect(daysBetween(ripe.p10 as Day, ripe.p90 as Day)).toBeLessThan(150);
        expect(daysBetween(all.asOf, ripe.p50 as Day)).toBeGreaterThanOrEqual(0);
        expect(daysBetween(all.asOf, ripe.p50 as Day)).toBeLessThan(366);
      }
    }
  });

  it('tells weeks from Monday to Sunday, those of a form apart and in order, from the week of the day on', () => {
    for (const { sending } of files) {
      for (const [, runs] of Map.groupBy(sending, ({ form }) => form)) {
        let after = addDays(all.asOf, -7);
        for (const { from, to } of runs as unknown as { from: Day; to: Day }[]) {
          expect([weekday(from), weekday(to)]).toEqual([1, 7]);
          expect(from > after && from < to).toBe(true);
          after = to;
        }
        expect(daysBetween(all.asOf, after)).toBeLessThan(53 * 7);
      }
    }
  });

  it('has weeks for every form where the yard sends to, and none beyond its borders', () => {
    const formsTo = (id: string) =>
      new Set(files.find(({ place }) => place === id)!.sending.map(({ form }) => form)).size;
    expect(formsTo('boston-ma')).toBe(3);
    for (const { place } of files) {
      const { country } = all.places.find(({ id }) => id === place)!;
      if (country !== 'US') expect(formsTo(place)).toBe(0);
    }
  });
});
