/** Weights of built pages, compressed with gzip, as hard numbers. Budgets of this project; kB is 1,000 bytes. */

import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { builtSites, filesOf, leadsOn, readText } from './builtSites.ts';

const { folder } = builtSites.atRoot;
const compressed = (text: string) => gzipSync(text, { level: 9 }).length;

function stylesOf(html: string): number {
  return [...html.matchAll(/<link rel="stylesheet" href="\/([^"]+)"/g)].reduce(
    (sum, [, path]) => sum + compressed(readText(folder, path!)),
    0,
  );
}

/** A list page cut to so many rows. */
function cutTo(html: string, rows: number): { html: string; rows: number } {
  let seen = 0;
  const cut = html.replace(/<tbody>.*?<\/tbody>/gs, body => {
    seen += 1;
    return seen > rows ? '' : body;
  });
  return { html: cut, rows: Math.min(seen, rows) };
}

describe('weights', () => {
  it('a stock list of 60 lots is 14 kB with its styles at most', () => {
    const { html, rows } = cutTo(readText(folder, 'stock/index.html'), 60);
    expect(rows).toBe(60);
    expect(compressed(html) + stylesOf(html)).toBeLessThanOrEqual(14_000);
  });

  it('the small plates of 60 rows are 0.8 kB of that at most', () => {
    const { html } = cutTo(readText(folder, 'stock/index.html'), 60);
    const without = html.replace(/<svg class="fruit.*?<\/svg>/gs, '');
    expect(without.length).toBeLessThan(html.length);
    expect(compressed(html) - compressed(without)).toBeLessThanOrEqual(800);
  });

  it('a large plate adds 1.75 kB to its page at most, 1.55 kB in the middle of all', () => {
    const added = filesOf(folder)
      .filter(path => /^cultivars\/[^/]+\/index\.html$/.test(path))
      .map(path => readText(folder, path))
      .filter(html => !leadsOn(html))
      .map(html => compressed(html) - compressed(html.replace(/<svg class="plate .*?<\/svg>/s, '')))
      .sort((a, b) => a - b);
    expect(added[0]).toBeGreaterThan(300);
    expect(added.at(-1)).toBeLessThanOrEqual(1750);
    expect(added[Math.floor(added.length / 2)]).toBeLessThanOrEqual(1550);
  });

  it('the script of the comparison is 2 kB at most', () => {
    const html = readText(folder, 'compare/index.html');
    const scripts = [...html.matchAll(/<script type="module" src="\/([^"]+)"/g)].map(([, path]) => path!);
    expect(scripts).toHaveLength(1);
    expect(compressed(readText(folder, scripts[0]!))).toBeLessThanOrEqual(2000);
  });
});
