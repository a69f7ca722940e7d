import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { pathOfFile, readSite } from './finishedSite.ts';

const built = mkdtempSync(join(tmpdir(), 'leafdrop-finished-'));
afterAll(() => rmSync(built, { recursive: true, force: true }));

describe('a finished site', () => {
  it('knows which files are pages', () => {
    expect(pathOfFile('index.html')).toBe('/');
    expect(pathOfFile('lots/a/index.html')).toBe('/lots/a/');
    expect(pathOfFile('404.html')).toBeNull();
    expect(pathOfFile('stock.json')).toBeNull();
  });

  it('tells the named parts of a page, whether it is listed, and its canonical address', () => {
    mkdirSync(join(built, 'é'), { recursive: true });
    writeFileSync(
      join(built, 'index.html'),
      '<link rel="canonical" href="https://a.example/"><h1 id="top" data-id="no">x</h1><p class="b" id="späte-feige">y</p><a href="#top">up</a>',
    );
    writeFileSync(join(built, 'é/index.html'), '<meta name="robots" content="noindex"><p>id="none"</p>');
    writeFileSync(join(built, 'data.json'), '{}');
    const shown: string[] = [];
    const { pages, files } = readSite(built, [], file => shown.push(file));
    expect(pages).toEqual([
      {
        path: '/',
        ids: ['top', 'späte-feige'],
        fragments: new Set(['top']),
        unlisted: false,
        canonical: 'https://a.example/',
      },
      { path: '/é/', ids: [], fragments: new Set(), unlisted: true, canonical: null },
    ]);
    expect(shown).toEqual(['data.json', 'index.html', 'é/index.html']);
    expect([...files.keys()]).toEqual(shown);
  });

  it('is refused where a file is missing that was said to be written', () => {
    const known = [{ file: 'lots/a/index.html', stamp: '', page: null }];
    expect(() => readSite(built, known, () => {})).toThrow('lots/a/index.html is missing');
  });

  it('passes on what the look at a file throws', () => {
    expect(() =>
      readSite(built, [], file => {
        throw new Error(`not ${file}`);
      }),
    ).toThrow('not data.json');
  });
});
