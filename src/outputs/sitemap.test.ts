/** The sitemap against the protocol of sitemaps.org, version 0.9. */

import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { isListed, type SitemapFile, sitemapFiles } from './sitemap.ts';

const addressOf = (path: string) => new URL(`/orchard${path}`, 'https://trees.example').href;

const parser = new XMLParser({
  isArray: name => name === 'url' || name === 'sitemap',
  ignoreAttributes: false,
});

function locations({ text }: SitemapFile): string[] {
  expect(XMLValidator.validate(text)).toBe(true);
  const { urlset, sitemapindex } = parser.parse(text);
  const list = urlset ?? sitemapindex;
  expect(list['@_xmlns']).toBe('http://www.sitemaps.org/schemas/sitemap/0.9');
  return (list.url ?? list.sitemap).map(({ loc }: { loc: string }) => loc);
}

describe('the sitemap', () => {
  it('is an index that names the lists, and lists that name the pages in full', () => {
    const [index, first, ...more] = sitemapFiles(['/', '/lots/b/', '/lots/a/'], addressOf);
    expect(more).toEqual([]);
    expect(index!.path).toBe('/sitemap.xml');
    expect(locations(index!)).toEqual(['https://trees.example/orchard/sitemap-1.xml']);
    expect(first!.path).toBe('/sitemap-1.xml');
    expect(locations(first!)).toEqual([
      'https://trees.example/orchard/',
      'https://trees.example/orchard/lots/a/',
      'https://trees.example/orchard/lots/b/',
    ]);
  });

  it('is the same for any order of the pages, and names each once', () => {
    const paths = ['/', '/a/', '/b/', '/c/'];
    const files = sitemapFiles(paths, addressOf);
    expect(sitemapFiles([...paths].reverse(), addressOf)).toEqual(files);
    expect(sitemapFiles([...paths, ...paths], addressOf)).toEqual(files);
  });

  it('holds 50,000 addresses a list at most', () => {
    const paths = Array.from({ length: 100_001 }, (_, index) => `/lots/${index}/`);
    const [index, ...lists] = sitemapFiles(paths, addressOf);
    expect(locations(index!)).toHaveLength(3);
    expect(lists.map(list => locations(list).length)).toEqual([50_000, 50_000, 1]);
    expect(new Set(lists.flatMap(locations)).size).toBe(100_001);
  });

  it('keeps each list within its bytes', () => {
    const paths = Array.from({ length: 40 }, (_, index) => `/lots/${'x'.repeat(60)}${index}/`);
    const [, ...lists] = sitemapFiles(paths, addressOf, 50_000, 2000);
    expect(lists.length).toBeGreaterThan(1);
    for (const { text } of lists) expect(new TextEncoder().encode(text).length).toBeLessThanOrEqual(2000);
    expect(lists.flatMap(locations)).toHaveLength(40);
  });

  it('escapes addresses', () => {
    const [, list] = sitemapFiles(["/a/?b=1&c='"], addressOf);
    expect(list!.text).toContain('?b=1&amp;c=');
    expect(locations(list!)).toHaveLength(1);
  });

  it('has no files for no pages: the protocol knows no empty list', () => {
    expect(sitemapFiles([], addressOf)).toEqual([]);
  });
});

describe('a page', () => {
  const page = { path: '/lots/a/', unlisted: false, canonical: 'https://trees.example/orchard/lots/a/' };

  it('is listed when it names itself as canonical', () => {
    expect(isListed(page, addressOf)).toBe(true);
  });

  it('is not when it names another page, none, or asks to be left out', () => {
    expect(isListed({ ...page, canonical: 'https://trees.example/orchard/guides/a/' }, addressOf)).toBe(
      false,
    );
    expect(isListed({ ...page, canonical: null }, addressOf)).toBe(false);
    expect(isListed({ ...page, unlisted: true }, addressOf)).toBe(false);
  });
});
