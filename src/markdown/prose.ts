/** The grower's words about a cultivar as HTML. */

import { publishedAddress } from '../core/markdown/links.ts';
import { headingParts } from '../core/markdown/parts.ts';
import { nodesOf, parseMarkdown } from '../core/markdown/tree.ts';
import { plainParagraphs } from './plainParagraphs.ts';
import { safeHtml } from './safeHtml.ts';

/** The page on which the words stand. */
export interface ProsePage {
  /** From the root of the site: `/cultivars/bellwether/`. */
  path: string;
  /** Names of the parts it has besides those of the text. */
  parts: readonly string[];
  /** Turns a path of the site into a link under its base path. */
  link: (path: string) => string;
}

/** HTML of Markdown, made from its tree whatever it holds. */
export function processedProse(markdown: string, { path, parts, link }: ProsePage): string {
  const tree = parseMarkdown(markdown);
  for (const [heading, { id }] of headingParts(tree, parts)) {
    // The name of the cultivar is the page's only heading above them.
    heading.depth = heading.depth < 3 ? 2 : 3;
    heading.data = { hProperties: { id } };
  }
  for (const { node } of nodesOf(tree)) {
    if (node.type === 'link' || node.type === 'definition')
      node.url = publishedAddress(node.url, path, link) ?? '';
  }
  return safeHtml(tree);
}

/** HTML of checked Markdown. */
export function proseHtml(markdown: string, page: ProsePage): string {
  return plainParagraphs(markdown) ?? processedProse(markdown, page);
}
