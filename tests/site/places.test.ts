/** The places of the built site: every place has its page, its figures and its picture. */

import Ajv from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { builtSites, pagesOf, readText } from './builtSites.ts';

const { folder } = builtSites.atRoot;
const pages = pagesOf(folder).filter(page => /^places\/[^/]+\/index\.html$/.test(page));
const file = JSON.parse(readText(folder, 'places.json')) as { places: { place: string; name: string }[] };

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
});
