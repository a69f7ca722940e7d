/** The built HTML is valid (html-validate: HTML Living Standard and WCAG rules) and keeps to the site's own rules. */

import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { builtSites, leadsOn, pagesOf, readText } from './builtSites.ts';
import { makeUpOf, withoutScripts } from './makeUp.ts';
import { examplesOfEveryKind, kindOf } from './pageKinds.ts';

const { folder } = builtSites.atRoot;
const pages = pagesOf(folder);
const made = new Map(pages.map(page => [page, makeUpOf(readText(folder, page))]));

const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:a11y'],
  rules: {
    // Matters of taste in generated markup.
    'void-style': 'off',
    'no-trailing-whitespace': 'off',
    'doctype-style': 'off',
    'attribute-boolean-style': 'off',
    'attribute-empty-style': 'off',
    'long-title': 'off',
    'no-inline-style': 'error',
    // Boxes of one question share a name; HTML sends each that is checked (HTML, 4.10.5.1.15).
    'form-dup-name': ['error', { shared: ['radio', 'checkbox', 'button', 'reset', 'submit'] }],
  },
});

/**
 * Pages given to the validator: the examples of every kind, and every page that holds a make-up that no page before it held. Hundreds of
 * guides for places differ in dates and words only, and the rules look at elements, their attributes, what they stand in and the order of
 * headings: a page that holds nothing new gives the rules nothing new to say. What depends on the single page, ids and signs that stand
 * for others, is asked of every page below.
 */
function pagesToValidate(): string[] {
  const examples = new Set(
    examplesOfEveryKind(folder).map(({ path }) => path.replace(/(^|\/)$/, '$1index.html')),
  );
  const seen = new Set<string>();
  return pages.filter(page => {
    const fresh = [...made.get(page)!].filter(part => !seen.has(part));
    for (const part of fresh) seen.add(part);
    return fresh.length > 0 || examples.has(page);
  });
}

/** The kind of a page; what only leads on is a kind of its own. */
function kindOrLead(page: string): string {
  return leadsOn(readText(folder, page)) ? 'leads on' : kindOf(page);
}

describe('built pages', () => {
  it('are there', () => {
    expect(pages.length).toBeGreaterThan(90);
  });

  it('are valid HTML', async () => {
    const problems: string[] = [];
    const validated = pagesToValidate();
    expect(new Set(validated.map(kindOrLead))).toEqual(new Set(pages.map(kindOrLead)));
    for (const page of validated) {
      const report = await validator.validateString(readText(folder, page), page);
      for (const { messages } of report.results) {
        problems.push(
          ...messages.map(
            ({ ruleId, message, line, column }) => `${page}:${line}:${column} ${ruleId}: ${message}`,
          ),
        );
      }
    }
    expect(problems).toEqual([]);
  });

  it.each([
    ['an element where none stood', '<p>', '<p><button type="button">x</button>'],
    ['an attribute', '<p>', '<p hidden>'],
    ['another value of an attribute', 'scope="col"', 'scope="column"'],
    ['a heading of another rank', /<(\/?)h2/g, '<$1h5'],
    ['an end left out', '</ul>', ''],
    ['an empty description of a picture', / alt="[^"]+"/, ' alt=""'],
  ])('are validated for %s', (_, from, to) => {
    const seen = new Set([...made.values()].flatMap(parts => [...parts]));
    const page = pages.find(file => readText(folder, file) !== readText(folder, file).replace(from, to))!;
    const spoilt = makeUpOf(readText(folder, page).replace(from, to));
    expect([...spoilt].filter(part => !seen.has(part))).not.toEqual([]);
  });

  it('never give one id to two elements, name one that is not there, or show a sign of HTML as text', () => {
    const wrong = pages.filter(page => {
      const html = withoutScripts(readText(folder, page));
      const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id!);
      const named = [
        ...html.matchAll(/\s(?:for|list|headers|aria-[a-z]*by|aria-controls|aria-details)="([^"]*)"/g),
      ];
      const there = new Set(ids);
      const text = html.replace(/<[a-z/!][^>]*>/gi, '');
      return (
        there.size < ids.length ||
        named.some(([, wanted]) => wanted!.split(' ').some(id => !there.has(id))) ||
        /[<>]|&(?!#?\w+;)/.test(text)
      );
    });
    expect(wrong).toEqual([]);
  });

  it('never give one id to two elements, nor show a sign of HTML as text', () => {
    const wrong = pages.filter(page => {
      const html = withoutScripts(readText(folder, page));
      const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id);
      const text = html.replace(/<[a-z/!][^>]*>/gi, '');
      return new Set(ids).size < ids.length || /[<>]|&(?!#?\w+;)/.test(text);
    });
    expect(wrong).toEqual([]);
  });

  it.each([
    ['one main heading', (html: string) => html.match(/<h1[\s>]/g)?.length === 1],
    [
      'a description, except pages that only lead on',
      (html: string) =>
        html.includes('<meta http-equiv="refresh"') ||
        /<meta name="description" content="[^"]{20,}"/.test(html),
    ],
    [
      'a canonical address, except the page that is not found',
      (html: string, page: string) =>
        page === '404.html' || /<link rel="canonical" href="https:\/\/[^"]+"/.test(html),
    ],
    ['a content policy', (html: string) => /http-equiv="content-security-policy"/i.test(html)],
    ['no handler and no inline style', (html: string) => !/\s(?:on[a-z]+|style)="/.test(html)],
    [
      'no script or style from elsewhere',
      (html: string) => !/<(?:script|link|img)[^>]+(?:src|href)="https?:\/\/(?![^"]*\.example)/.test(html),
    ],
  ])('each have %s', (_, holds) => {
    expect(pages.filter(page => !holds(readText(folder, page), page))).toEqual([]);
  });
});
