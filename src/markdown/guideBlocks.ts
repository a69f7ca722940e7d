/** From the tree of a guide to its text as data, made once for all readers. */

import type { RootContent } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { attributeOf, plainText } from '../core/care/guideTree.ts';
import { childrenOf, nodesOf } from '../core/markdown/tree.ts';
import type { AskedWords, BlockTemplate, GuideNode } from './guideText.ts';
import { safeHtml } from './safeHtml.ts';

/** Stands for words that are put in later. No author's text with it is made a template. */
const SLOT = '\uE000';

/** What has a say beyond its own block, or is for some readers only. */
const notPlain: readonly RootContent['type'][] = [
  'containerDirective',
  'leafDirective',
  'heading',
  'definition',
  'linkReference',
  'imageReference',
  'footnoteReference',
  'footnoteDefinition',
];

function isPlain(node: RootContent): boolean {
  return !notPlain.includes(node.type) && childrenOf(node).every(child => isPlain(child as RootContent));
}

/** An address as the author wrote it to the one that is published; null for one that is never published. */
export type Publish = (address: string) => string | null;

export function askedWords(directive: TextDirective): AskedWords {
  return { name: directive.name, attributes: directive.attributes ?? {}, label: plainText(directive) };
}

/**
 * A node of Markdown with the words of its directives in their places, links as they are published and the author's HTML left out;
 * `inner` does the same for its children.
 */
export function withWords(
  node: RootContent,
  inner: (nodes: readonly RootContent[]) => RootContent[],
  wordsOf: (directive: TextDirective) => string,
  publish: Publish,
): RootContent[] {
  if (node.type === 'html') return [];
  if (node.type === 'textDirective') return [{ type: 'text', value: wordsOf(node) }];
  const copy =
    node.type === 'link' || node.type === 'definition' ? { ...node, url: publish(node.url) ?? '' } : node;
  if (!('children' in copy)) return [copy];
  return [{ ...copy, children: inner(copy.children as RootContent[]) } as RootContent];
}

/** Null for a block that has to be made for each reader. */
function blockTemplate(block: RootContent, publish: Publish): BlockTemplate | null {
  // A heading by itself is plain; one inside another block counts among the headings of its page.
  const plain = block.type === 'heading' ? block.children.every(isPlain) : isPlain(block);
  if (!plain || block.type === 'html') return null;
  const words: AskedWords[] = [];
  const inner = (nodes: readonly RootContent[]): RootContent[] =>
    nodes.flatMap(node =>
      withWords(
        node,
        inner,
        directive => {
          words.push(askedWords(directive));
          return SLOT;
        },
        publish,
      ),
    );
  const [copy] = inner([block]);
  const html = copy === undefined ? [] : safeHtml(copy).split(SLOT);
  return html.length === words.length + 1 ? { html, words } : null;
}

const openTag = '<h2>'.length;
const closeTag = '</h2>'.length;

/** What stands between the tags of a heading. */
function innerTemplate({ html, words }: BlockTemplate): BlockTemplate {
  const last = html.length - 1;
  return {
    words,
    html: html.map((piece, at) =>
      piece.slice(at === 0 ? openTag : 0, at === last ? piece.length - closeTag : piece.length),
    ),
  };
}

/** One block as data; none for an author's HTML. */
export function guideNodes(node: RootContent, publish: Publish): GuideNode[] {
  const inner = (nodes: readonly RootContent[]) => nodes.flatMap(child => guideNodes(child, publish));
  if (node.type === 'containerDirective') {
    if (node.name !== 'part') return [{ kind: 'caution', nodes: inner(node.children) }];
    const definitions = [...nodesOf(node)].flatMap(({ node: each }) =>
      each.type === 'definition' || each.type === 'footnoteDefinition' ? [each] : [],
    );
    return [
      {
        kind: 'part',
        attributes: node.attributes ?? {},
        nodes: inner(node.children),
        definitions: inner(definitions),
      },
    ];
  }
  if (node.type === 'leafDirective') {
    return [
      node.name === 'cautions'
        ? { kind: 'cautions' }
        : { kind: 'task', name: attributeOf(node, 'name') ?? '' },
    ];
  }
  const template = blockTemplate(node, publish);
  if (node.type === 'heading') {
    const depth = Math.min(3, Math.max(2, node.depth)) as 2 | 3;
    const text = plainText(node);
    return template === null
      ? [{ kind: 'treeHeading', depth, text, node }]
      : [{ kind: 'heading', depth, text, template: innerTemplate(template) }];
  }
  if (template !== null) return [{ kind: 'block', ...template }];
  return node.type === 'html' ? [] : [{ kind: 'tree', node }];
}
