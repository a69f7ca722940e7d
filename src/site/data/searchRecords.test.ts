import { beforeAll, describe, expect, it } from 'vitest';
import { loadContent } from '../../content.ts';
import { assemble, type Catalogue } from '../../core/catalogue.ts';
import { listedCultivars } from '../parts/raised.ts';
import { searchRecords } from './searchRecords.ts';

let all: Catalogue;
let records: ReturnType<typeof searchRecords>;
beforeAll(async () => {
  const { reading, asOf } = await loadContent({ dir: 'content' });
  all = assemble(reading.records!, asOf, new Map());
  records = searchRecords(all);
});

const recordOf = (id: string) => records.find(({ url }) => url === `/cultivars/${id}/`)!;

describe('what a search finds', () => {
  it('is every cultivar, guide and video, once', () => {
    expect(records.map(({ url }) => url)).toEqual([
      ...listedCultivars(all).map(({ cultivar }) => `/cultivars/${cultivar.id}/`),
      ...all.guides.map(({ id }) => `/guides/${id}/`),
      ...all.videos.map(({ id }) => `/videos/${id}/`),
    ]);
  });

  it('has its place as a number, since one without drops out of a sorted list', () => {
    expect(records.map(({ sort }) => sort.place)).toEqual(records.map((_, place) => String(place)));
  });

  it('has every word a cultivar is known by', () => {
    for (const { cultivar, species, flavor, lots } of listedCultivars(all)) {
      const { content } = recordOf(cultivar.id);
      for (const words of [
        cultivar.name,
        ...cultivar.synonyms,
        ...species.common,
        species.botanical,
        flavor.name,
      ]) {
        expect(content).toContain(words);
      }
      for (const { lot } of lots) expect(content).toContain(`Lot ${lot.id}.`);
      expect(content).toContain(cultivar.body.trim().slice(0, 60));
    }
  });

  it('has words without markup', () => {
    for (const { content } of records) expect(content).not.toMatch(/<\/?[a-z]+[^>]*>|&amp;|&#39;/);
    expect(records.find(({ url }) => url === '/guides/air-layering/')!.content.length).toBeGreaterThan(1000);
  });
});
