/** The places of the built site: every place has its page, its figures and its picture, and no page is heavy. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { builtSites, pagesOf, readText } from './builtSites.ts';

const { folder } = builtSites.atRoot;
const pages = pagesOf(folder).filter(page => /^places\/[^/]+\/index\.html$/.test(page));
const file = JSON.parse(readText(folder, 'places.json')) as { places: { place: string; name: string }[] };

/** Size of a page as it travels, kB. */
function compressedKb(page: string): number {
  return gzipSync(readFileSync(join(folder, page)), { level: 9 }).length / 1000;
}

describe('places', () => {
  it('have a page each, and places.json has them all', () => {
    expect(pages.length).toBeGreaterThanOrEqual(60);
    expect(file.places.map(({ place }) => `places/${place}/index.html`).sort()).toEqual(pages);
  });

  it('publish a schema their file keeps to (checked with Ajv, JSON Schema 2020-12)', () => {
    const validate = new Ajv({ strict: true, allErrors: true }).compile(
      JSON.parse(readText(folder, 'places.schema.json')),
    );
    validate(file);
    expect(validate.errors).toBeNull();
  });

  it('show a picture with a text alternative, and no empty figure', () => {
    const wrong = pages.filter(page => {
      const html = readText(folder, page);
      const drawn = /<svg role="img" aria-labelledby="ribbon-title ribbon-words"/.test(html);
      const described = /<desc id="ribbon-words">Usual highs run from -?\d/.test(html);
      const text = html
        .replace(/<(?:script|style)[\s\S]*?<\/(?:script|style)>/g, '')
        .replace(/<[^>]+>/g, ' ');
      return !drawn || !described || /\b(?:NaN|undefined|null|Infinity)\b/.test(text);
    });
    expect(wrong).toEqual([]);
  });

  it('weigh no more than 30 kB compressed, the evidence no more than 60 kB', () => {
    expect(Math.max(...pages.map(compressedKb))).toBeLessThanOrEqual(30);
    expect(compressedKb('places/index.html')).toBeLessThanOrEqual(30);
    expect(compressedKb('how-we-know/index.html')).toBeLessThanOrEqual(60);
  });
});
