/** The built HTML is valid (html-validate: HTML Living Standard and WCAG rules) and keeps to the site's own rules. */

import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { builtSites, pagesOf, readText } from './builtSites.ts';

const { folder } = builtSites.atRoot;
const pages = pagesOf(folder);

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
  },
});

describe('built pages', () => {
  it('are there', () => {
    expect(pages.length).toBeGreaterThan(90);
  });

  it('are valid HTML', async () => {
    const problems: string[] = [];
    for (const page of pages) {
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
