/**
 * Weights of built pages, compressed with gzip, as hard numbers. Budgets of this project; kB is 1,000 bytes. Photographs and typefaces are
 * not counted: they come after the words.
 */

import { statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { atSite } from './atSite.ts';
import { builtSites, filesOf, leadsOn, pagesOf, readText } from './builtSites.ts';
import { examplesOfEveryKind, kindOf } from './pageKinds.ts';
import { inTurns } from './visiting.ts';

const { folder, base } = builtSites.atRoot;
const compressed = (text: string) => gzipSync(text, { level: 9 }).length;

/** Compressed size of a file of the site; each is looked at once. */
const weights = new Map<string, number>();
function weightOf(file: string): number {
  const known = weights.get(file) ?? compressed(readText(folder, file));
  weights.set(file, known);
  return known;
}

const sum = (files: Iterable<string>) => [...files].reduce((bytes, file) => bytes + weightOf(file), 0);

/** Style sheets of a page that hold its first paint up. */
function stylesOf(html: string): string[] {
  return [...html.matchAll(/<link rel="stylesheet"(?! media="print") href="\/([^"]+)"/g)].map(
    ([, path]) => path!,
  );
}

function scriptTags(html: string): string[] {
  return [...html.matchAll(/<script\b[^>]*>/g)].map(([tag]) => tag);
}

/** Scripts a page loads by itself, with all that they import before they run. What a script loads on use is not among them. */
function scriptsOf(html: string): Set<string> {
  const found = new Set<string>();
  const follow = (file: string) => {
    if (found.has(file)) return;
    found.add(file);
    for (const [, target] of readText(folder, file).matchAll(
      /(?:^|[;}\s])(?:import|export)\s*(?:[^"'();]*?from\s*)?["']([^"']+\.js)["']/g,
    )) {
      follow(new URL(target!, `http://site/${file}`).pathname.slice(1));
    }
  };
  for (const tag of scriptTags(html)) {
    const [, source] = /\bsrc="\/([^"]+)"/.exec(tag) ?? [];
    if (source !== undefined) follow(source);
  }
  return found;
}

const pages = pagesOf(folder)
  .map(file => ({ file, html: readText(folder, file) }))
  .filter(({ html }) => !leadsOn(html));

/** A list page cut to the blocks that hold so many lots, folded ones counted. */
function cutTo(html: string, rows: number): { html: string; rows: number } {
  let seen = 0;
  const cut = html.replace(/<tr><th scope="row">.*?<\/tr>/gs, row => {
    seen += 1;
    return seen > rows ? '' : row;
  });
  return { html: cut, rows: Math.min(seen, rows) };
}

/** Most that a page weighs as a whole, its styles with it. Whatever is not named here comes whole with the first view. */
const firstView = 14_000;
const wholePage: Readonly<Record<string, number>> = {
  // Every answer with its reasons.
  lot: 17_000,
  // Verdicts for every place, with their reasons.
  cultivar: 24_500,
  // The year as a picture, every cultivar by its verdict, tables of the climate.
  place: 22_000,
  // As many lots as there are; 60 of them are within the first view (below).
  'stock list': 15_000,
  'stock by form': 14_500,
  // Every place to choose from.
  'own place': 16_000,
  // Figures of every place.
  'place list': 18_500,
  // Long words, the dates of every species in a place.
  guide: 16_500,
  'guide for a form': 16_500,
  'guide for a place': 16_500,
  // Every row of evidence, folded away.
  'how we know': 50_000,
};

describe('the whole page with its styles', () => {
  it('is 14 kB on every kind of page at most; those with long tables or words have a limit of their own', () => {
    const heavy = pages
      .map(({ file, html }) => ({ file, bytes: weightOf(file) + sum(stylesOf(html)) }))
      .filter(({ file, bytes }) => bytes > (wholePage[kindOf(file)] ?? firstView));
    expect(heavy).toEqual([]);
    const kinds = new Set(pages.map(({ file }) => kindOf(file)));
    expect(Object.keys(wholePage).filter(kind => !kinds.has(kind))).toEqual([]);
  });

  it('is 14.5 kB on a stock list of 60 lots at most', () => {
    const { html, rows } = cutTo(readText(folder, 'stock/index.html'), 60);
    expect(rows).toBe(60);
    // 14.4 kB: a first view of it is far below 14, see above.
    expect(compressed(html) + sum(stylesOf(html))).toBeLessThanOrEqual(14_500);
  });
});

describe('the first view of every kind of page', () => {
  const here = atSite({ folder, base });

  it('needs 14 kB at most, on a telephone and on a wide screen', async () => {
    const found: { page: string; bytes: number; whole: number }[] = [];
    const context = await here.browser.newContext({ javaScriptEnabled: false });
    await inTurns(examplesOfEveryKind(folder), 3, async ({ kind, path }) => {
      const page = await context.newPage();
      for (const [width, height] of [
        [412, 823],
        [1280, 800],
      ] as const) {
        await page.setViewportSize({ width, height });
        await page.goto(here.site.address + path);
        // All of the source up to the last words or picture that begin above the fold, whatever is folded away or hidden between them.
        const { shown, whole } = await page.evaluate(() => {
          const within = (element: Element) =>
            [...element.getClientRects()].some(
              ({ top, width, height }) => top < innerHeight && width * height > 1,
            );
          const last = [...document.body.querySelectorAll('main *')].filter(within).at(-1)!;
          const upTo = document.createRange();
          upTo.setStart(document.documentElement, 0);
          upTo.setEndAfter(last);
          const holder = document.createElement('html');
          holder.append(upTo.cloneContents());
          return { shown: holder.outerHTML, whole: document.documentElement.outerHTML };
        });
        const styles = sum(stylesOf(whole));
        found.push({
          page: `${kind} ${path} ${width} px`,
          bytes: compressed(shown) + styles,
          whole: compressed(whole) + styles,
        });
      }
      await page.close();
    });
    await context.close();
    expect(found.filter(({ bytes }) => bytes > firstView)).toEqual([]);
    // The cut is a cut: much of a long page lies below it.
    expect(found.filter(({ bytes, whole }) => bytes < whole - 5000).length).toBeGreaterThan(5);
  });
});

describe('scripts', () => {
  it('hold up no page: each is a module, which runs when the page is there', () => {
    const blocking = pages.flatMap(({ file, html }) =>
      scriptTags(html)
        .filter(tag => !/ type="(?:module|application\/ld\+json)"/.test(tag))
        .map(tag => `${file}: ${tag}`),
    );
    expect(blocking).toEqual([]);
  });

  it('for the place of the visitor come as one file, asked for once the page is there', () => {
    const lists = pages.filter(({ file }) =>
      ['home', 'stock list', 'lot', 'cultivar', 'guide', 'place'].includes(kindOf(file)),
    );
    expect(lists.length).toBeGreaterThan(10);
    const others = lists.flatMap(({ file, html }) =>
      scriptTags(html)
        .filter(tag => tag.includes(' src='))
        .map(tag => `${file}: ${tag}`),
    );
    expect(others).toEqual([]);
    for (const { file, html } of lists) {
      expect(scriptsOf(html).size, file).toBe(1);
      expect(scriptTags(html).filter(tag => tag.includes(' data-src=')).length, file).toBe(1);
    }
  });

  it('of our own are 12 kB a page at most, with every module that is loaded before they run', () => {
    const sizes = pages.map(({ file, html }) => ({ file, bytes: sum(scriptsOf(html)) }));
    // Where towns are looked up at once, and where all rows are searched, the page is there for the script.
    const longer: Record<string, number> = { 'own place': 13_500, search: 17_000 };
    expect(sizes.filter(({ file, bytes }) => bytes > (longer[kindOf(file)] ?? 12_000))).toEqual([]);
    // Every script is one file with all that it imports: a further one would be a round trip.
    for (const { file, html } of pages) {
      const named = scriptTags(html).filter(tag => / (?:data-)?src=/.test(tag)).length;
      expect(scriptsOf(html).size, file).toBe(named);
    }
  });

  /**
   * The core of the verdicts is no script of a page: it is loaded when a visitor gives freeze dates of their own, and never before. It has a
   * budget of its own, 21 kB.
   */
  it('that own freeze dates load on use are 21 kB at most, and no page loads them by itself', () => {
    const [core, ...others] = filesOf(folder).filter(path => /^assets\/verdictsApart\.[^/]+\.js$/.test(path));
    expect(others).toEqual([]);
    expect(sum(scriptsOf(`<script src="/${core}">`))).toBeLessThanOrEqual(21_000);
    expect(pages.filter(({ html }) => scriptsOf(html).has(core!)).map(({ file }) => file)).toEqual([]);
  });

  it('of the comparison are 2 kB at most', () => {
    const own = [...scriptsOf(readText(folder, 'compare/index.html'))].filter(
      file => !/\/everyPage\./.test(file),
    );
    expect(own).toHaveLength(1);
    expect(sum(own)).toBeLessThanOrEqual(2000);
  });
});

describe('typefaces', () => {
  // As much as a new connection brings at once where three files share a slow line: 204.8 kB/s for the 150 ms of one way to the host and back.
  it('that pages are set in are two files of 24 kB together, the second asked for of 10 kB at most', () => {
    const cut = filesOf(folder).filter(file => /^assets\/(?:sans|serif)[-.]/.test(file));
    const sizes = cut.map(file => statSync(join(folder, file)).size);
    expect(cut.map(file => file.replace(/^assets\/(.+?)\..*$/, '$1')).sort()).toEqual(['sans', 'serif']);
    expect(sizes[0]! + sizes[1]!).toBeLessThanOrEqual(24_000);
    expect(Math.min(...sizes)).toBeLessThanOrEqual(10_000);
  });
});

describe('drawn fruits', () => {
  it('of 60 rows are 0.8 kB at most', () => {
    const { html } = cutTo(readText(folder, 'stock/index.html'), 60);
    const without = html.replace(/<svg class="fruit.*?<\/svg>/gs, '');
    expect(without.length).toBeLessThan(html.length);
    expect(compressed(html) - compressed(without)).toBeLessThanOrEqual(800);
  });

  it('add 1.75 kB to the page of a cultivar at most, 1.55 kB in the middle of all', () => {
    const added = pages
      .filter(({ file }) => kindOf(file) === 'cultivar')
      .map(({ html }) => compressed(html) - compressed(html.replace(/<svg class="plate .*?<\/svg>/s, '')))
      .sort((a, b) => a - b);
    expect(added[0]).toBeGreaterThan(300);
    expect(added.at(-1)).toBeLessThanOrEqual(1750);
    expect(added[Math.floor(added.length / 2)]).toBeLessThanOrEqual(1550);
  });
});
