/** The body of a guide as a tree of Markdown with directives. */

import type { Nodes, Parents, Root } from 'mdast';
import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import { remark } from 'remark';
import remarkDirective from 'remark-directive';
import type { Guide } from '../records/guide.ts';

export type DirectiveNode = ContainerDirective | LeafDirective | TextDirective;

const processor = remark().use(remarkDirective).freeze();

/** Parses a body; any text has a tree. */
export function parseGuide(body: string): Root {
  return processor.parse(body);
}

const trees = new WeakMap<Pick<Guide, 'body'>, Root>();

/** The tree of a guide, made once, since a guide is shown for every place. Nobody may change it. */
export function treeOf(guide: Pick<Guide, 'body'>): Root {
  let tree = trees.get(guide);
  if (tree === undefined) {
    tree = parseGuide(guide.body);
    trees.set(guide, tree);
  }
  return tree;
}

export function isDirective(node: Nodes): node is DirectiveNode {
  return node.type === 'containerDirective' || node.type === 'leafDirective' || node.type === 'textDirective';
}

export function childrenOf(node: Nodes): Nodes[] {
  return 'children' in node ? (node as Parents).children : [];
}

/** The words below a node, markup left out. Without recursion: text can be nested deeper than the stack. */
export function plainText(node: Nodes): string {
  const words: string[] = [];
  const waiting = [node];
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    if ('value' in next) words.push(next.value);
    else if (next.type === 'break') words.push(' ');
    else waiting.push(...childrenOf(next).toReversed());
  }
  return words.join('');
}

/** An attribute as written; undefined when it is not there. */
export function attributeOf(node: DirectiveNode, name: string): string | undefined {
  return node.attributes?.[name] ?? undefined;
}
