import { beforeAll, describe, expect, it } from 'vitest';
import { loadContent } from '../../content.ts';
import { assemble, type Catalogue } from '../../core/catalogue.ts';
import { searchChoices } from '../pages/search/searchChoices.ts';
import { listedCultivars } from '../parts/raised.ts';
import { searchRecords } from './searchRecords.ts';
import { type RowsFile, searchRows } from './searchRows.ts';

let all: Catalogue;
let file: RowsFile;
beforeAll(async () => {
  const { reading, asOf } = await loadContent({ dir: 'content' });
  all = assemble(reading.records!, asOf, new Map());
  file = searchRows(all);
});

const offersOf = (id: string) => {
  const row = file.trees.find(tree => tree.id === id)!;
  return row.offers.map(index => file.offers[index]!);
};

describe('rows of the search page', () => {
  it('stand in the order of the records of the index', () => {
    const paths = [...file.trees.map(({ id }) => `/cultivars/${id}/`), ...file.pages.map(({ path }) => path)];
    expect(paths).toEqual(searchRecords(all).map(({ url }) => url));
  });

  it('have an offer for every form of every lot that is not sold out, and one that says sold where there is none', () => {
    for (const { cultivar, lots } of listedCultivars(all)) {
      const offers = offersOf(cultivar.id);
      const standing = lots.filter(({ soldOut }) => !soldOut);
      const expected = standing.flatMap(({ forms, tiers, size }) =>
        forms.map(({ form, state }) =>
          [form, state, tiers[form]?.answer.price.minor ?? '', size.answer.name].join(' '),
        ),
      );
      const told = offers.map(({ form, readiness, price, size }) => [form, readiness, price, size].join(' '));
      expect(new Set(told), cultivar.id).toEqual(new Set(standing.length === 0 ? [' sold  '] : expected));
      for (const { readiness, days } of offers) {
        if (readiness === 'ready') expect(days).toBe(0);
        else if (readiness === 'opens') expect(days === null || days > 0).toBe(true);
        else expect(days).toBeNull();
      }
    }
  });

  it('can be narrowed by every value that they have', () => {
    const values = (group: keyof RowsFile['choices']) => file.choices[group].map(([value]) => value);
    for (const { species, flavor, ripening } of file.trees) {
      expect(values('species')).toContain(species);
      expect(values('flavor')).toContain(flavor);
      expect(values('ripening')).toContain(ripening);
    }
    for (const { form, readiness, price, size } of file.offers) {
      expect(values('readiness')).toContain(readiness);
      if (readiness === 'sold') continue;
      expect(values('form')).toContain(form);
      expect(values('size')).toContain(size);
      if (price !== '') expect(values('price')).toContain(price);
    }
  });

  it('are counted beside each choice; the sum over species is all', () => {
    const [species] = searchChoices(all);
    expect(species!.choices.reduce((sum, { count }) => sum + count!, 0)).toBe(listedCultivars(all).length);
  });
});
