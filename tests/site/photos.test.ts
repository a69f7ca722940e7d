/** The photographs of the built site: no camera data in any raster, no original, nothing cropped, enlarged or moved about. */

import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { hashOfBytes } from '../../src/files.ts';
import { builtSites, filesOf, pagesOf, readText } from './builtSites.ts';

const { folder } = builtSites.atRoot;
const rasters = filesOf(folder).filter(path => /\.(?:avif|gif|heic|jpe?g|png|tiff?|webp)$/i.test(path));
const copies = rasters.filter(path => path.startsWith('photos/'));
const originals = resolve(import.meta.dirname, '../../content/photos');

/** Marks of camera data in a file: EXIF (CIPA DC-008, 4.7.2), XMP (ISO 16684-1), the block that holds IPTC. */
const marks = ['Exif\0\0', 'http://ns.adobe.com/xap', 'x:xmpmeta', 'Photoshop 3.0', 'GPSLatitude'];

const figures = pagesOf(folder).flatMap(page =>
  [...readText(folder, page).matchAll(/<figure class="photo">.*?<\/figure>/gs)].map(([html], index) => ({
    page,
    html,
    index,
  })),
);

describe('published photographs', () => {
  it('are there: all originals that are shown, in all formats', () => {
    const endings = new Set(copies.map(path => path.slice(path.lastIndexOf('.'))));
    expect([...endings].sort()).toEqual(['.avif', '.jpg', '.webp']);
    const keys = new Set(copies.map(path => path.slice('photos/'.length).split('-')[0]));
    expect(keys.size).toBe(readdirSync(originals).length);
  });

  it('carry no camera data, no profile and no mark of either', async () => {
    for (const path of rasters) {
      const bytes = readFileSync(join(folder, path));
      const { exif, xmp, iptc, orientation } = await sharp(bytes).metadata();
      expect([exif, xmp, iptc, orientation ?? 1], path).toEqual([undefined, undefined, undefined, 1]);
      expect(
        marks.filter(mark => bytes.includes(Buffer.from(mark, 'latin1'))),
        path,
      ).toEqual([]);
    }
  });

  it('are never an original', () => {
    const hashes = new Set(
      readdirSync(originals).map(name => hashOfBytes(readFileSync(join(originals, name)))),
    );
    expect(hashes.size).toBeGreaterThan(0);
    const found = filesOf(folder).filter(path => hashes.has(hashOfBytes(readFileSync(join(folder, path)))));
    expect(found).toEqual([]);
    expect(copies.filter(path => !/^photos\/[0-9a-f]{16}-\d+\.(?:avif|webp|jpg)$/.test(path))).toEqual([]);
  });
});

describe('photographs on pages', () => {
  it('keep their room free, say what they show, and are the copies they say', async () => {
    expect(figures.length).toBeGreaterThan(5);
    const ratios = new Map<string, number>();
    for (const path of copies) {
      const { width, height } = await sharp(join(folder, path)).metadata();
      expect(path).toContain(`-${width}.`);
      ratios.set(path, width / height);
    }
    for (const { page, html } of figures) {
      const [, shown] = html.match(/<img[^>]+>/g)!;
      expect(shown, page).toMatch(/alt="[^"]{5,}"/);
      const [, width, height] = /width="(\d+)" height="(\d+)"/.exec(shown!)!;
      for (const [, path] of html.matchAll(/\/(photos\/[^\s"]+)/g)) {
        expect(Math.abs(ratios.get(path!)! - Number(width) / Number(height)), page).toBeLessThan(0.01);
      }
    }
  });

  it('load when they come into view, but for the first of a cultivar or a lot', () => {
    for (const { page, html, index } of figures) {
      const first = /^(?:cultivars|lots)\//.test(page) && index === 0;
      expect(html.includes('fetchpriority="high"'), page).toBe(first);
      expect(html.includes('loading="lazy"'), page).toBe(!first);
    }
  });

  it('have a placeholder of 0.25 kB at most in the compressed page', () => {
    for (const page of new Set(figures.map(figure => figure.page))) {
      const html = readText(folder, page);
      const without = html.replace(/<img class="placeholder"[^>]*>/g, '');
      const count = figures.filter(figure => figure.page === page).length;
      expect(without.length).toBeLessThan(html.length);
      const added = gzipSync(html, { level: 9 }).length - gzipSync(without, { level: 9 }).length;
      expect(added / count, page).toBeLessThanOrEqual(250);
    }
  });
});
