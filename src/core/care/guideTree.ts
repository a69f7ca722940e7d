/** The body of a guide as a tree of Markdown with directives. */

import type { Root } from 'mdast';
import { type DirectiveNode, parseMarkdown } from '../markdown/tree.ts';
import type { Guide } from '../records/guide.ts';

export {
  childrenOf,
  type DirectiveNode,
  isDirective,
  parseMarkdown as parseGuide,
  plainText,
} from '../markdown/tree.ts';

const trees = new WeakMap<Pick<Guide, 'body'>, Root>();

/** The tree of a guide, made once, since a guide is shown for every place. Nobody may change it. */
export function treeOf(guide: Pick<Guide, 'body'>): Root {
  let tree = trees.get(guide);
  if (tree === undefined) {
    tree = parseMarkdown(guide.body);
    trees.set(guide, tree);
  }
  return tree;
}

/** An attribute as written; undefined when it is not there. */
export function attributeOf(node: DirectiveNode, name: string): string | undefined {
  return node.attributes?.[name] ?? undefined;
}
