import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { groupBy, paged, pagePath } from './paging.ts';

const groupsOfRows = fc
  .array(fc.array(fc.integer(), { maxLength: 30 }), { maxLength: 8 })
  .map(lists =>
    lists.map((rows, index) => ({ id: `g${index}`, heading: `Group ${index}`, botanical: null, rows })),
  );

describe('a long list cut into pages', () => {
  it('keeps every row once and in order, and no page is too long', () => {
    fc.assert(
      fc.property(groupsOfRows, fc.integer({ min: 1, max: 12 }), (groups, perPage) => {
        const { pages, total } = paged(groups, perPage);
        const shown = pages.flatMap(page => page.groups.flatMap(({ rows }) => rows));
        expect(shown).toEqual(groups.flatMap(({ rows }) => rows));
        expect(total).toBe(shown.length);
        const lengths = pages.map(page => page.groups.reduce((sum, { rows }) => sum + rows.length, 0));
        expect(Math.max(...lengths)).toBeLessThanOrEqual(perPage);
        expect(lengths.slice(0, -1).every(length => length === perPage)).toBe(true);
        expect(pages.map(({ number }) => number)).toEqual(pages.map((_, index) => index + 1));
      }),
    );
  });

  it('says for each group on which page it begins, and marks what carries on', () => {
    fc.assert(
      fc.property(groupsOfRows, fc.integer({ min: 1, max: 12 }), (groups, perPage) => {
        const { pages, contents } = paged(groups, perPage);
        for (const { id, page, count } of contents) {
          const parts = pages.flatMap(({ number, groups: shown }) =>
            shown.filter(group => group.id === id).map(group => ({ number, group })),
          );
          expect(parts[0]?.number).toBe(page);
          expect(parts.map(({ group }) => group.continued)).toEqual(parts.map((_, index) => index > 0));
          expect(parts.every(({ group }) => group.count === count)).toBe(true);
        }
      }),
    );
  });

  it('has one empty page when there is nothing to show', () => {
    expect(paged([], 10)).toEqual({ pages: [{ number: 1, groups: [] }], contents: [], total: 0 });
  });

  it('gives the first page the address of the list', () => {
    expect(pagePath('/stock/', 1)).toBe('/stock/');
    expect(pagePath('/stock/', 3)).toBe('/stock/page/3/');
  });

  it('groups in the order in which keys first appear', () => {
    expect([...groupBy(['pear', 'fig', 'plum', 'file'], word => word.charAt(0))]).toEqual([
      ['p', ['pear', 'plum']],
      ['f', ['fig', 'file']],
    ]);
  });
});
