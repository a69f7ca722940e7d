/**
 * Whatever a grower's text holds, only what is listed reaches a page. Pages are read by parse5, which takes HTML apart as the HTML standard
 * says (html.spec.whatwg.org, 13.2), and so as browsers do. The check and the page are each tried without the other.
 */

import fc from 'fast-check';
import { toHtml } from 'hast-util-to-html';
import type { Nodes } from 'mdast';
import { toHast } from 'mdast-util-to-hast';
import { type DefaultTreeAdapterTypes, parseFragment } from 'parse5';
import { describe, expect, test } from 'vitest';
import { checkGuideMarkdown, type GuideSetting } from '../src/core/care/guideMarkdown.ts';
import { parseMarkdown } from '../src/core/markdown/tree.ts';
import { markdownProblems } from '../src/core/reading/markdownBody.ts';
import type { Guide } from '../src/core/records/guide.ts';
import { renderGuide } from '../src/markdown/guideParts.ts';
import { proseHtml } from '../src/markdown/prose.ts';
import { realSpecies, speciesIds } from './care/realPlaces.ts';
import { guideDocuments, proseDocuments } from './markdownGrammar.ts';

/** MARKDOWN_DOCUMENTS asks for more than the usual number. */
const numRuns = Number(process.env.MARKDOWN_DOCUMENTS ?? 250);
const runs = { numRuns };

const elements = new Set([
  ...[
    'h2',
    'h3',
    'p',
    'br',
    'hr',
    'blockquote',
    'ul',
    'ol',
    'li',
    'a',
    'em',
    'strong',
    'del',
    'code',
    'pre',
    'sup',
  ],
  ...['section', 'div', 'aside', 'small', 'span', 'table', 'thead', 'tbody', 'tr', 'th', 'td'],
  // The cautions, which we write.
  ...['details', 'summary'],
]);
/** Attributes by element, with what their values may be. */
const attributes: Record<string, Record<string, RegExp>> = {
  a: {
    href: /^(?:https?:\/\/[^/]|mailto:|\/orchard\/|#)/,
    id: /^note_/,
    'aria-describedby': /^footnote-label$/,
    'aria-label': /^Back to reference [\d-]+$/,
  },
  ol: { start: /^\d+$/ },
  li: { id: /^note_/ },
  h2: { id: /^[a-z0-9-]+$/ },
  h3: { id: /^[a-z0-9-]+$/ },
  p: { class: /^guide-(?:for|task|caution-item)$/, id: /^caution-[a-z0-9-]+$/ },
  section: { class: /^(?:scroll|footnotes)$/, 'aria-label': /^Table: /, tabindex: /^0$/ },
  aside: { class: /^guide-cautions?$/, 'aria-label': /^(?:Take care|Caution)$/ },
  div: { class: /^guide-(?:part|caution-list)$/ },
  span: { class: /^guide-caution-all$/ },
  table: { class: /^ruled$/ },
  th: { scope: /^col$/, class: /^(?:centered|to-the-right)$/ },
  td: { class: /^(?:centered|to-the-right)$/ },
};

type TreeNode = DefaultTreeAdapterTypes.ChildNode;

/** Everything in a piece of HTML that is not on the lists. */
function escapes(html: string, attributesToo = true): string[] {
  const found: string[] = [];
  const waiting: TreeNode[] = [...parseFragment(html).childNodes];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.nodeName === '#text') continue;
    if (!('tagName' in node) || !elements.has(node.tagName)) found.push(node.nodeName);
    else {
      for (const { name, value } of attributesToo ? node.attrs : [])
        if (!attributes[node.tagName]?.[name]?.test(value)) found.push(`${node.tagName} ${name}=${value}`);
      waiting.push(...node.childNodes);
    }
  }
  return found;
}

const page = { path: '/cultivars/wren/', parts: ['traits'], link: (path: string) => `/orchard${path}` };
const prose = (text: string) => proseHtml(text, page);

const setting: GuideSetting = {
  bodyLine: 1,
  kind: 'growing-on',
  species: [],
  forms: [],
  yardSpecies: speciesIds,
};
const species = speciesIds.map(realSpecies);

function guideHtml(body: string): string {
  const guide: Guide = {
    id: 'try',
    title: 'Try',
    kind: 'growing-on',
    summary: 'A try.',
    species: [],
    forms: [],
    body,
    bodyLine: 1,
  };
  return renderGuide(guide, {
    ...{ year: null, species: null, form: null, stage: null, kept: null, tasks: [], oldNames: new Map() },
    units: 'us',
    yardSpecies: species,
    link: page.link,
  }).html;
}

/** What an unguarded page would show: every tag of the author as it is. */
const unguarded = (tree: Nodes) =>
  toHtml(toHast(tree, { allowDangerousHtml: true }), { allowDangerousHtml: true });

describe('the page lets nothing through, whatever the check has seen', () => {
  test('words about a cultivar', () => {
    fc.assert(
      fc.property(proseDocuments, text => {
        expect(escapes(prose(text))).toEqual([]);
      }),
      runs,
    );
  });

  test('guides', () => {
    let shown = 0;
    fc.assert(
      fc.property(guideDocuments, text => {
        const faults = checkGuideMarkdown(text, setting);
        // A guide whose directives are wrong is never rendered.
        if (faults.some(({ rule }) => !rule.startsWith('markdown-'))) return;
        shown += 1;
        expect(escapes(guideHtml(text))).toEqual([]);
      }),
      runs,
    );
    expect(shown).toBeGreaterThan(numRuns / 4);
  });
});

describe('the check lets nothing through, whatever the page does', () => {
  test('words about a cultivar', () => {
    let passed = 0;
    fc.assert(
      fc.property(proseDocuments, text => {
        if (markdownProblems('cultivars/wren.md', text, 1).length > 0) return;
        passed += 1;
        const found = escapes(unguarded(parseMarkdown(text)), false);
        // Headings of other depths are set to two.
        expect(found.filter(name => !/^h[1-6]$/.test(name))).toEqual([]);
      }),
      runs,
    );
    expect(passed).toBeGreaterThan(numRuns / 50);
  });
});

const table = '| Pot | Days |\n|:---|---:|\n| #1 | 20 |\n';

describe('what growers write', () => {
  test('tables', () => {
    const shown =
      '<section class="scroll" aria-label="Table: Pot Days" tabindex="0"><table class="ruled">\n<thead>\n<tr>\n<th scope="col">Pot</th>\n<th scope="col" class="to-the-right">Days</th>\n</tr>\n</thead>\n<tbody>\n<tr>\n<td>#1</td>\n<td class="to-the-right">20</td>\n</tr>\n</tbody>\n</table></section>';
    expect(prose(table)).toBe(shown);
    expect(guideHtml(`Words.\n\n${table}`)).toContain(shown);
  });

  test('tables of a guide with directives and footnotes in them', () => {
    const html = guideHtml(
      'Words.[^a]\n\n| When | How cold |\n|---|---|\n| :around{date="budbreak"} | :measure[24 F][^a] |\n\n[^a]: As *seen* here, :measure[30 F].',
    );
    expect(html).toContain('24 F (-4.5 C)');
    expect(html).toContain('<em>seen</em> here, 30 F (-1 C)');
    expect(html).toContain('href="#note_fn-a" id="note_fnref-a"');
    expect(html).toContain('<h2 id="footnote-label">Notes</h2>');
  });

  test('links under the base path, from the root, from the page and with or without a slash', () => {
    const link = (to: string) => /href="([^"]*)"/.exec(prose(`[x](${to})`))?.[1];
    expect(link('/stock/')).toBe('/orchard/stock/');
    expect(link('/cultivars/inkpot#traits')).toBe('/orchard/cultivars/inkpot/#traits');
    expect(link('../inkpot/')).toBe('/orchard/cultivars/inkpot/');
    expect(link('#traits')).toBe('#traits');
    expect(link('/stock.json')).toBe('/orchard/stock.json');
    expect(link('/search/?q=fig')).toBe('/orchard/search/?q=fig');
    expect(link('https://trees.example/x')).toBe('https://trees.example/x');
    expect(link('//evil.example')).toBeUndefined();
  });

  test('a heading whose name the page has already gets a number', () => {
    expect(prose('# Traits\n\n## Traits\n\n#### Fruit')).toBe(
      '<h2 id="traits--2">Traits</h2>\n<h2 id="traits--3">Traits</h2>\n<h3 id="fruit">Fruit</h3>',
    );
  });

  test('a tilde before a number is no stroke, and two strike through', () => {
    expect(prose('Down to ~20 F, or ~25 F. ~~Gone~~.')).toBe(
      '<p>Down to ~20 F, or ~25 F. <del>Gone</del>.</p>',
    );
  });
});
