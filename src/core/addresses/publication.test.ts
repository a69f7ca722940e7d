import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays, day } from '../days.ts';
import type { AddressRow } from '../records/address.ts';
import { assignCodes } from './codes.ts';
import { type BuiltPage, publicationOf } from './publication.ts';

const on = day('2026-11-25');
const today = { asOf: on, isPublished: true };

function page(path: string, ...ids: string[]): BuiltPage {
  return { path, ids, promised: ids };
}

function rowsOf(...lines: [address: string, leadsTo?: string][]): AddressRow[] {
  return lines.map(([address, leadsTo], index) => ({
    address,
    since: day('2026-01-01'),
    leadsTo: leadsTo ?? null,
    line: index + 2,
  }));
}

const none = new Map<string, string>();

describe('publishing', () => {
  test('lists pages, their promised parts and codes, each once', () => {
    const codes = new Map([
      ['/lots/a/', '3467'],
      ['/videos/none/', '7643'],
    ]);
    const built = [page('/lots/a/'), page('/', 'news')];
    const { lost, redirects, news } = publicationOf([], codes, built, today);
    expect(lost).toEqual([]);
    expect(redirects).toEqual([{ from: '/go/3467/', to: '/lots/a/' }]);
    expect(news.map(({ address, leadsTo }) => [address, leadsTo])).toEqual([
      ['/', null],
      ['/#news', null],
      ['/lots/a/', null],
      ['/go/3467/', '/lots/a/'],
    ]);
    const again = publicationOf(
      news.map((row, index) => ({ ...row, line: index + 2 })),
      codes,
      built,
      today,
    );
    expect(again.news).toEqual([]);
  });

  test('loses a page, a part, and what leads to either', () => {
    const rows = rowsOf(['/a/'], ['/b/#x'], ['/c/', '/a/'], ['/d/', '/b/#x'], ['/e/', '/b/']);
    const { lost } = publicationOf(rows, none, [page('/b/')], today);
    expect(lost.map(({ row, end }) => [row.address, end])).toEqual([
      ['/a/', null],
      ['/b/#x', null],
      ['/c/', { to: '/a/', hops: 1 }],
      ['/d/', { to: '/b/#x', hops: 1 }],
    ]);
  });

  test('sends on from what was renamed, straight to the end, and tells of a circle', () => {
    const rows = rowsOf(['/a/', '/b/'], ['/b/', '/c/'], ['/x/', '/y/'], ['/y/', '/x/']);
    const { lost, redirects } = publicationOf(rows, none, [page('/c/')], today);
    expect(redirects).toEqual([
      { from: '/a/', to: '/c/' },
      { from: '/b/', to: '/c/' },
    ]);
    expect(lost.map(({ row, end }) => [row.address, end])).toEqual([
      ['/x/', { loop: ['/x/', '/y/'] }],
      ['/y/', { loop: ['/y/', '/x/'] }],
    ]);
  });

  test('sends a further page of a list that has become short to its first', () => {
    const { lost, redirects } = publicationOf(
      rowsOf(['/stock/'], ['/stock/page/3/']),
      none,
      [page('/stock/')],
      today,
    );
    expect(lost).toEqual([]);
    expect(redirects).toEqual([{ from: '/stock/page/3/', to: '/stock/' }]);
  });

  const guides = ['/guides/g/', '/guides/g/p/', '/guides/g/q/'];
  const wereThere: [string, string?][] = [...guides, '/places/p/', '/places/q/'].map(address => [address]);

  test.each([
    ['another place', '/places/q/', '/guides/g/q/'],
    ['the list of places', '/places/', '/guides/g/'],
  ])('lets the guides for a place that is gone follow it to %s', (_, to, guide) => {
    const rows = rowsOf(['/places/'], ...wereThere, ['/places/p/', to]);
    const pages = ['/places/', '/places/q/', '/guides/g/', '/guides/g/q/'].map(path => page(path));
    const { lost, redirects } = publicationOf(rows, none, pages, today);
    expect(lost).toEqual([]);
    expect(redirects).toEqual([
      { from: '/guides/g/p/', to: guide },
      { from: '/places/p/', to },
    ]);
  });

  test('lets all that was made of a guide that is gone follow it, its parts to the top of the page', () => {
    const rows = rowsOf(
      ...wereThere,
      ['/guides/g/#x'],
      ['/guides/h/'],
      ['/guides/h/q/'],
      ['/guides/g/', '/guides/h/'],
    );
    const pages = ['/places/p/', '/places/q/', '/guides/h/', '/guides/h/q/'].map(path => page(path));
    const { lost, redirects } = publicationOf(rows, none, pages, today);
    expect(lost).toEqual([]);
    expect(redirects).toEqual([
      { from: '/guides/g/', to: '/guides/h/' },
      // Never published for this place.
      { from: '/guides/g/p/', to: '/guides/h/' },
      { from: '/guides/g/q/', to: '/guides/h/q/' },
    ]);
  });

  test('asks for the parts of a guide that was renamed', () => {
    const rows = rowsOf(['/guides/g/'], ['/guides/g/#x'], ['/guides/g/', '/guides/h/'], ['/guides/h/']);
    const { lost } = publicationOf(rows, none, [page('/guides/h/')], today);
    expect(lost.map(({ row }) => row.address)).toEqual(['/guides/g/#x']);
  });

  test('lets a guide stand in for its pages for a species that is gone, and misses one page of a species that is there', () => {
    const rows = rowsOf(
      ['/guides/g/'],
      ['/guides/g/bare-root/fig/'],
      ['/guides/g/leafed-pot/fig/'],
      ['/guides/g/bare-root/plum/'],
    );
    const pages = ['/guides/g/', '/guides/g/leafed-pot/fig/'].map(path => page(path));
    const { lost, redirects } = publicationOf(rows, none, pages, today);
    expect(lost.map(({ row }) => row.address)).toEqual(['/guides/g/bare-root/fig/']);
    expect(redirects).toEqual([{ from: '/guides/g/bare-root/plum/', to: '/guides/g/' }]);
  });

  test('misses the guide for a place that is there', () => {
    const pages = ['/guides/g/', '/guides/g/q/', '/places/p/', '/places/q/'].map(path => page(path));
    const { lost } = publicationOf(rowsOf(...wereThere), none, pages, today);
    expect(lost.map(({ row }) => row.address)).toEqual(['/guides/g/p/']);
  });

  test('for a look at another day asks for no address of a later day, and lists nothing', () => {
    const later = [{ ...rowsOf(['/a/'])[0]!, since: addDays(on, 1) }];
    const look = publicationOf(later, none, [page('/')], { asOf: on, isPublished: false });
    expect([look.lost, look.news]).toEqual([[], []]);
    expect(publicationOf([], none, [page('/')], { asOf: addDays(on, 90), isPublished: false }).news).toEqual(
      [],
    );
  });

  test('asks for every address when it is published, and goes on listing when a line is of a later day', () => {
    const ahead = addDays(on, 30);
    const rows = [...rowsOf(['/']), { ...rowsOf(['/a/'])[0]!, since: ahead }];
    expect(publicationOf(rows, none, [page('/')], today).lost.map(({ row }) => row.address)).toEqual(['/a/']);
    const { news } = publicationOf(rows, none, [page('/'), page('/a/'), page('/b/')], today);
    // In order of days, as the list is kept.
    expect(news).toEqual([{ address: '/b/', since: ahead, leadsTo: null }]);
  });

  test('500 renames and retirements end without a dead address', () => {
    const step = fc.record({
      at: fc.nat(10_000),
      what: fc.constantFrom('rename', 'rename', 'retire', 'open'),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 500, maxLength: 500 }), steps => {
        let rows: AddressRow[] = [];
        let names = Array.from({ length: 30 }, (_, at) => `/lots/lot-${at}/`);
        const retired: string[] = [];
        const everPublished = new Set<string>();
        const add = (lines: readonly Omit<AddressRow, 'line'>[]) => {
          rows = [...rows, ...lines.map((row, index) => ({ ...row, line: rows.length + index + 2 }))];
        };
        for (const [index, { at, what }] of steps.entries()) {
          const victim = names[at % names.length]!;
          if (what === 'open' || names.length < 3) names = [...names, `/lots/new-${index}/`];
          else if (what === 'retire') {
            // A retired record keeps its page.
            names = names.filter(name => name !== victim);
            retired.push(victim);
          } else {
            const next = `/lots/renamed-${index}/`;
            names = names.map(name => (name === victim ? next : name));
            add([{ address: victim, since: on, leadsTo: next }]);
          }
          // Publishing at every step would take the time of the test; every tenth shows the same.
          if (index % 10 > 0 && index < steps.length - 1) continue;
          const pages = [...names, ...retired];
          const built = pages.map(path => page(path));
          const publication = publicationOf(rows, assignCodes(rows, pages), built, today);
          expect(publication.lost).toEqual([]);
          add(publication.news);
          for (const { address } of publication.news) everPublished.add(address);
          const served = new Map<string, string>([
            ...pages.map(path => [path, path] as const),
            ...publication.redirects.map(({ from, to }) => [from, to] as const),
          ]);
          for (const address of everPublished) {
            const end = served.get(address);
            expect(end !== undefined && pages.includes(end), `${address} to ${end}`).toBe(true);
          }
        }
      }),
      { seed: 11, numRuns: 4 },
    );
  });
});
