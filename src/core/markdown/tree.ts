/**
 * The one Markdown of the yard, for cultivars and guides, for the check and for the page: CommonMark 0.31 with tables, footnotes,
 * strikethrough and bare web addresses as in GFM (github.github.com/gfm), and directives. What a check has not seen a page cannot show,
 * since both take their tree from here. Task lists are left out: a box that nobody can tick is no use on a page.
 */

import type { Nodes, Parents, Root } from 'mdast';
import {
  type ContainerDirective,
  directiveFromMarkdown,
  type LeafDirective,
  type TextDirective,
} from 'mdast-util-directive';
import { fromMarkdown } from 'mdast-util-from-markdown';
import { gfmAutolinkLiteralFromMarkdown } from 'mdast-util-gfm-autolink-literal';
import { gfmFootnoteFromMarkdown } from 'mdast-util-gfm-footnote';
import { gfmStrikethroughFromMarkdown } from 'mdast-util-gfm-strikethrough';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { directive } from 'micromark-extension-directive';
import { gfmAutolinkLiteral } from 'micromark-extension-gfm-autolink-literal';
import { gfmFootnote } from 'micromark-extension-gfm-footnote';
import { gfmStrikethrough } from 'micromark-extension-gfm-strikethrough';
import { gfmTable } from 'micromark-extension-gfm-table';

export type DirectiveNode = ContainerDirective | LeafDirective | TextDirective;

const syntax = [
  gfmAutolinkLiteral(),
  gfmFootnote(),
  // One tilde is "about": ~20 F.
  gfmStrikethrough({ singleTilde: false }),
  gfmTable(),
  directive(),
];
const meaning = [
  gfmAutolinkLiteralFromMarkdown(),
  gfmFootnoteFromMarkdown(),
  gfmStrikethroughFromMarkdown(),
  gfmTableFromMarkdown(),
  directiveFromMarkdown(),
];

/** The tree of a text; any text has one. */
export function parseMarkdown(text: string): Root {
  return fromMarkdown(text, { extensions: syntax, mdastExtensions: meaning });
}

export function isDirective(node: Nodes): node is DirectiveNode {
  return node.type === 'containerDirective' || node.type === 'leafDirective' || node.type === 'textDirective';
}

export function childrenOf(node: Nodes): Nodes[] {
  return 'children' in node ? (node as Parents).children : [];
}

/** Every node of a tree with its depth, in the order of the text. Without recursion: brackets can be nested deeper than the stack. */
export function* nodesOf(tree: Nodes): Generator<{ node: Nodes; depth: number }> {
  const waiting = [{ node: tree, depth: 0 }];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    yield next;
    const depth = next.depth + 1;
    waiting.push(
      ...childrenOf(next.node)
        .toReversed()
        .map(node => ({ node, depth })),
    );
  }
}

/** The words below a node, markup left out. */
export function plainText(node: Nodes): string {
  const words: string[] = [];
  for (const { node: each } of nodesOf(node)) {
    if ('value' in each) words.push(each.value);
    else if (each.type === 'break') words.push(' ');
  }
  return words.join('');
}
