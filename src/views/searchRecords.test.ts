import { beforeAll, describe, expect, it } from 'vitest';
import { loadContent } from '../content.ts';
import { assemble, type Catalogue } from '../core/catalogue.ts';
import { ripeningClasses } from '../core/records/common.ts';
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
  it('is every cultivar and every guide, once', () => {
    expect(records.map(({ url }) => url)).toEqual([
      ...all.cultivars.map(({ cultivar }) => `/cultivars/${cultivar.id}/`),
      ...all.guides.map(({ id }) => `/guides/${id}/`),
    ]);
  });

  it('has every sort key as a number, since one without drops out of a sorted list', () => {
    for (const { sort } of records) {
      expect(Object.keys(sort).sort()).toEqual(['name', 'price', 'ready', 'ripening']);
      for (const value of Object.values(sort)) expect(value).toMatch(/^\d+$/);
    }
  });

  it('carries the choices of all lots that are not sold out', () => {
    for (const { cultivar, lots } of all.cultivars) {
      const { filters, sort } = recordOf(cultivar.id);
      const standing = lots.filter(({ soldOut }) => !soldOut);
      const ready = standing.some(({ forms }) => forms.some(({ state }) => state === 'ready'));
      expect(filters.state!.includes('ready'), cultivar.id).toBe(ready);
      expect(filters.state!.includes('sold'), cultivar.id).toBe(standing.length === 0);
      expect(sort.ready === '0', cultivar.id).toBe(ready);
      expect(ripeningClasses[Number(sort.ripening)]).toBe(cultivar.ripening);
      const prices = standing.flatMap(({ forms, tiers }) =>
        forms.flatMap(({ form }) => tiers[form]?.answer.price.minor ?? []),
      );
      expect(filters.tier!.map(Number).sort((a, b) => a - b)).toEqual(
        [...new Set(prices)].sort((a, b) => a - b),
      );
      if (prices.length > 0) expect(Number(sort.price)).toBe(Math.min(...prices));
    }
  });

  it('has words without markup', () => {
    for (const { content } of records) expect(content).not.toMatch(/<\/?[a-z]+[^>]*>|&amp;|&#39;/);
    expect(records.find(({ url }) => url === '/guides/air-layering/')!.content.length).toBeGreaterThan(1000);
  });

  it('finds a lot under its cultivar', () => {
    const { lot } = all.lots[0]!;
    expect(recordOf(lot.cultivar).content).toContain(`Lot ${lot.id}.`);
  });
});
