/** The body of a guide as a tree of Markdown with directives. */

import type { Nodes, Parents, Root } from 'mdast';
import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import { remark } from 'remark';
import remarkDirective from 'remark-directive';

export type DirectiveNode = ContainerDirective | LeafDirective | TextDirective;

const processor = remark().use(remarkDirective).freeze();

/** Parses a body; any text has a tree. */
export function parseGuide(body: string): Root {
  return processor.parse(body);
}

export function isDirective(node: Nodes): node is DirectiveNode {
  return node.type === 'containerDirective' || node.type === 'leafDirective' || node.type === 'textDirective';
}

export function childrenOf(node: Nodes): Nodes[] {
  return 'children' in node ? (node as Parents).children : [];
}

/** The words below a node, markup left out. */
export function plainText(node: Nodes): string {
  if ('value' in node) return node.value;
  if (node.type === 'break') return ' ';
  return childrenOf(node).map(plainText).join('');
}

/** An attribute as written; undefined when it is not there. */
export function attributeOf(node: DirectiveNode, name: string): string | undefined {
  return node.attributes?.[name] ?? undefined;
}
