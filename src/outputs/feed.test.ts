/** Feeds against RFC 4287 (Atom), RFC 3339 (times), XML 1.0 and jsonfeed.org/version/1.1; read back with fast-xml-parser. */

import fc from 'fast-check';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { day } from '../core/days.ts';
import { atomFeed, type Feed, type FeedEntry, jsonFeed } from './feed.ts';

const entry = (differs: Partial<FeedEntry> = {}): FeedEntry => ({
  id: 'tag:trees.example,2026-11-21:lot/a-1/ready',
  title: 'Bellwether fig, lot a-1: ready bare-root',
  day: day('2026-11-21'),
  url: 'https://trees.example/lots/a-1/',
  summary: 'Ready bare-root. 4 left.',
  html: '<p>Ready bare-root. 4 left.</p>',
  tag: 'ready',
  ...differs,
});

const feed = (entries: FeedEntry[], differs: Partial<Feed> = {}): Feed => ({
  id: 'https://trees.example/changes/',
  title: 'Testing Bench: what changed on the list',
  subtitle: 'Lots that opened and sold out.',
  author: 'Testing Bench',
  home: 'https://trees.example/',
  page: 'https://trees.example/changes/',
  atom: 'https://trees.example/changes.atom',
  json: 'https://trees.example/changes.json',
  entries,
  ...differs,
});

type Element = Record<string, unknown>;

/** Every element as a list, attributes with `@`. */
const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '@',
  isArray: (_name, _path, _leaf, isAttribute) => !isAttribute,
  parseTagValue: false,
  trimValues: false,
  alwaysCreateTextNode: true,
});

function parsed(text: string): { root: Element; entries: Element[] } {
  expect(XMLValidator.validate(text)).toBe(true);
  const root = (parser.parse(text) as { feed: [Element] }).feed[0];
  return { root, entries: (root.entry ?? []) as Element[] };
}

const all = (of: Element, name: string): Element[] => (of[name] ?? []) as Element[];
const textOf = (of: Element, name: string): string => String(all(of, name)[0]?.['#text'] ?? '');

/** RFC 3339, 5.6, as narrowed by RFC 4287, 3.3: capital T and Z. */
const dateTime =
  /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T\d\d:\d\d:\d\d(?:\.\d+)?(?:Z|[+-]\d\d:\d\d)$/;
const iri = /^[a-z][a-z0-9+.-]*:\S+$/i;

const two = feed([
  entry(),
  entry({ id: 'tag:trees.example,2026-11-20:lot/a-2/opened', day: day('2026-11-20'), tag: 'opened' }),
]);

describe('the Atom feed', () => {
  const { root, entries } = parsed(atomFeed(two));

  it.each([
    ['2 the namespace of Atom', root['@xmlns'] === 'http://www.w3.org/2005/Atom'],
    ['4.1.1 exactly one id', all(root, 'id').length === 1],
    ['4.1.1 exactly one title', all(root, 'title').length === 1],
    ['4.1.1 exactly one updated', all(root, 'updated').length === 1],
    ['4.1.1 one or more authors, since no entry has one', all(root, 'author').length >= 1],
    ['4.1.1 at most one subtitle', all(root, 'subtitle').length <= 1],
    ['4.1.1 a link to itself', all(root, 'link').filter(link => link['@rel'] === 'self').length === 1],
    [
      '4.1.1 one alternate link of a type',
      all(root, 'link').filter(link => link['@rel'] === 'alternate').length === 1,
    ],
    ['3.2.1 a name of the author', textOf(all(root, 'author')[0]!, 'name') === 'Testing Bench'],
    ['4.2.6 an id that is an IRI', iri.test(textOf(root, 'id'))],
    ['4.2.15 updated as a date of 3.3', dateTime.test(textOf(root, 'updated'))],
    ['4.2.7.1 an href in every link', all(root, 'link').every(link => iri.test(String(link['@href'])))],
  ])('has by RFC 4287, %s', (_what, holds) => {
    expect(holds).toBe(true);
  });

  it.each([
    ['4.1.2 exactly one id', (of: Element) => all(of, 'id').length === 1],
    ['4.1.2 exactly one title', (of: Element) => all(of, 'title').length === 1],
    ['4.1.2 exactly one updated', (of: Element) => all(of, 'updated').length === 1],
    ['4.1.2 at most one published', (of: Element) => all(of, 'published').length <= 1],
    ['4.1.2 at most one content', (of: Element) => all(of, 'content').length <= 1],
    ['4.1.2 at most one summary', (of: Element) => all(of, 'summary').length <= 1],
    ['4.1.2 one alternate link', (of: Element) => all(of, 'link').length === 1],
    ['4.2.6 an id that is an IRI', (of: Element) => iri.test(textOf(of, 'id'))],
    ['4.2.2.1 a term in its category', (of: Element) => String(all(of, 'category')[0]!['@term']).length > 0],
    [
      '4.2.9 and 4.2.15 dates of 3.3',
      (of: Element) => ['published', 'updated'].every(name => dateTime.test(textOf(of, name))),
    ],
    [
      '4.1.3.3 HTML without child elements',
      (of: Element) => Object.keys(all(of, 'content')[0]!).sort().join() === '#text,@type',
    ],
  ])('has in each entry by RFC 4287, %s', (_what, holds) => {
    expect(entries).toHaveLength(2);
    expect(entries.filter(of => !holds(of))).toEqual([]);
  });

  it('is as new as its newest entry, whatever the day of the build', () => {
    expect(textOf(root, 'updated')).toBe('2026-11-21T00:00:00Z');
  });

  it('is well formed without entries too, and says it never changed', () => {
    const empty = parsed(atomFeed(feed([])));
    expect(empty.entries).toEqual([]);
    expect(dateTime.test(textOf(empty.root, 'updated'))).toBe(true);
  });

  it('stays well formed and says the same whatever the text', () => {
    const wild = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(fc.integer({ min: 0, max: 0xffff })).map(units => String.fromCharCode(...units)),
      fc.constantFrom(']]>', '<script>', '&amp;', '"\'', '\ud800', 'a\u0000b', '\uffff', '\ufffe', '😀'),
    );
    /** XML 1.0, fifth edition, production 2 (Char). */
    const isChar = (code: number) =>
      [0x9, 0xa, 0xd].includes(code) ||
      (code >= 0x20 && code <= 0xd7ff) ||
      (code >= 0xe000 && code <= 0xfffd) ||
      (code >= 0x10000 && code <= 0x10ffff);
    fc.assert(
      fc.property(wild, wild, (title, summary) => {
        const text = atomFeed(
          feed([entry({ title, summary, html: summary, tag: title })], { author: title }),
        );
        expect([...text].filter(character => !isChar(character.codePointAt(0)!))).toEqual([]);
        const kept = [...title].filter(character => isChar(character.codePointAt(0)!)).join('');
        const [read] = parsed(text).entries;
        expect(textOf(read!, 'title').replace(/\r\n?/g, '\n')).toBe(kept.replace(/\r\n?/g, '\n'));
      }),
      { seed: 4287, numRuns: 400 },
    );
  });
});

describe('the JSON feed', () => {
  const written = jsonFeed(two);

  it.each([
    ['version (required)', written.version === 'https://jsonfeed.org/version/1.1'],
    ['title (required)', written.title.length > 0],
    [
      'home_page_url and feed_url as addresses',
      [written.home_page_url, written.feed_url].every(url => URL.canParse(url)),
    ],
    [
      'authors as a list of objects with a name or more (1.1)',
      written.authors.every(({ name }) => name.length > 0),
    ],
    ['language (1.1, RFC 5646)', written.language === 'en'],
    ['items (required)', written.items.length === 2],
  ])('has by version 1.1: %s', (_what, holds) => {
    expect(holds).toBe(true);
  });

  it('has in each item an id that is text and unique, content, and dates of RFC 3339', () => {
    const ids = written.items.map(({ id }) => id);
    expect(new Set(ids).size).toBe(2);
    for (const item of written.items) {
      expect(typeof item.id).toBe('string');
      expect(item.content_html.length).toBeGreaterThan(0);
      expect(item.date_published).toMatch(dateTime);
      expect(URL.canParse(item.url)).toBe(true);
      expect(item.tags.every(tag => typeof tag === 'string')).toBe(true);
    }
  });

  it('tells the same as the Atom feed', () => {
    const { entries } = parsed(atomFeed(two));
    expect(written.items.map(({ id, title }) => [id, title])).toEqual(
      entries.map(of => [textOf(of, 'id'), textOf(of, 'title')]),
    );
  });
});
