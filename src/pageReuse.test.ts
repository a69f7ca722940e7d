import { describe, expect, it } from 'vitest';
import { loadContent } from './content.ts';
import { assemble, type Catalogue } from './core/catalogue.ts';
import { addDays } from './core/days.ts';
import { changedOnly, groundOf, hashOf, isReused, plannedKeys, planPages } from './pageReuse.ts';
import { shownOfCultivar } from './views/shown.ts';

const pages = ['a', 'b'].map(id => ({ id }));
const shownBy = (shows: Record<string, string>) => (page: { id: string }) => ({
  file: `${page.id}.html`,
  shows: () => shows[page.id]!,
});

describe('pages left out of the work', () => {
  it('are those that rest on the same ground and show the same', () => {
    planPages('ground', new Map());
    expect(changedOnly(pages, shownBy({ a: '1', b: '1' }))).toEqual(pages);
    const before = new Map(plannedKeys());
    planPages('ground', before);
    expect(changedOnly(pages, shownBy({ a: '1', b: '2' }))).toEqual([{ id: 'b' }]);
    expect([isReused('a.html'), isReused('b.html'), isReused('c.html')]).toEqual([true, false, false]);
    planPages('other ground', before);
    expect(changedOnly(pages, shownBy({ a: '1', b: '1' }))).toEqual(pages);
  });

  it('have keys that tell maps and sets apart by what is in them', () => {
    expect(hashOf(new Map([['a', 1]]))).not.toBe(hashOf(new Map([['a', 2]])));
    expect(hashOf(new Set(['a']))).not.toBe(hashOf(new Map([['a', 1]])));
    expect(hashOf({ a: [1, 'x'] })).toBe(hashOf({ a: [1, 'x'] }));
  });
});

describe('what pages rest on', async () => {
  const { reading, asOf } = await loadContent({ dir: 'content' });
  const catalogueOf = (
    change: (records: NonNullable<typeof reading.records>) => void,
    day = asOf,
  ): Catalogue => {
    const records = structuredClone(reading.records!);
    change(records);
    return assemble(records, day, new Map());
  };
  const usual = catalogueOf(() => undefined);
  const ground = (all: Catalogue) => hashOf(groundOf(all));

  it('is the same when a lot changes, and another when the yard, a species, a guide, a video or the day does', () => {
    const afterSale = catalogueOf(({ lots }) => {
      lots[0]!.raised += 1;
    });
    expect(ground(afterSale)).toBe(ground(usual));
    const others = [
      catalogueOf(({ yard }) => {
        yard.tagline = 'Another';
      }),
      catalogueOf(({ species }) => {
        species.get('fig')!.movement = 'Another';
      }),
      catalogueOf(({ guides }) => {
        [...guides.values()][0]!.title = 'Another';
      }),
      catalogueOf(({ videos }) => {
        videos[0]!.title = 'Another';
      }),
      catalogueOf(() => undefined, addDays(asOf, 1)),
    ];
    for (const other of others) expect(ground(other)).not.toBe(ground(usual));
  });

  it('holds nothing of a lot that plain JSON would leave out', () => {
    const seen = new Set<unknown>();
    const kinds = new Set<string>();
    const walk = (value: unknown): void => {
      if (typeof value !== 'object' || value === null || seen.has(value)) {
        kinds.add(typeof value);
        return;
      }
      seen.add(value);
      kinds.add(value.constructor.name);
      for (const part of Object.values(value)) walk(part);
    };
    for (const { cultivar: _cultivar, species: _species, ...answers } of usual.lots) walk(answers);
    expect(seen.size).toBeGreaterThan(1000);
    expect([...kinds].sort()).toEqual(['Array', 'Object', 'boolean', 'number', 'object', 'string']);
  });

  it('and what a cultivar shows changes with it, with its lots, and with no other', () => {
    const { cultivar } = usual.lots[0]!;
    const shown = (all: Catalogue) => all.cultivars.map(entry => shownOfCultivar(all, entry));
    const changed = (all: Catalogue) => {
      const after = shown(all);
      return usual.cultivars
        .filter((_, at) => after[at] !== shown(usual)[at])
        .map(entry => entry.cultivar.id);
    };
    expect(changed(catalogueOf(() => undefined))).toEqual([]);
    const renoted = catalogueOf(({ cultivars }) => {
      cultivars.get(cultivar.id)!.body += ' More.';
    });
    expect(changed(renoted)).toEqual([cultivar.id]);
    const moved = catalogueOf(({ lots }) => {
      lots.find(lot => lot.cultivar === cultivar.id)!.note = 'Moved to the tunnel.';
    });
    expect(changed(moved)).toEqual([cultivar.id]);
  });
});
