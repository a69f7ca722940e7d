/**
 * Blocks of a guide's text, made to HTML once for all readers: in most of them nothing differs but the words of their date, measure and
 * figure directives, which are put in for each reader.
 */

import type { RootContent } from 'mdast';
import type { TextDirective } from 'mdast-util-directive';
import { childrenOf } from '../core/markdown/tree.ts';
import { safeHtml } from './safeHtml.ts';

export interface BlockTemplate {
  /** HTML before, between and behind the words that are put in. */
  readonly html: readonly string[];
  /** Whose words they are. */
  readonly directives: readonly TextDirective[];
}

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
export function blockTemplate(block: RootContent, publish: Publish): BlockTemplate | null {
  // A heading by itself is plain; one inside another block counts among the headings of its page.
  const plain = block.type === 'heading' ? block.children.every(isPlain) : isPlain(block);
  if (!plain || block.type === 'html') return null;
  const directives: TextDirective[] = [];
  const inner = (nodes: readonly RootContent[]): RootContent[] =>
    nodes.flatMap(node =>
      withWords(
        node,
        inner,
        directive => {
          directives.push(directive);
          return SLOT;
        },
        publish,
      ),
    );
  const [copy] = inner([block]);
  const html = copy === undefined ? [] : safeHtml(copy).split(SLOT);
  return html.length === directives.length + 1 ? { html, directives } : null;
}

/** Words as text of HTML, escaped as the rest of the page is. */
export function escaped(words: string): string {
  return words
    .replace(/[ \t]*\n[ \t]*/g, '\n')
    .replace(/[<&]/g, sign => (sign === '<' ? '&#x3C;' : '&#x26;'));
}

/** The block with a reader's words. */
export function filled(
  { html, directives }: BlockTemplate,
  wordsOf: (directive: TextDirective) => string,
): string {
  let text = html[0] as string;
  for (const [index, directive] of directives.entries()) {
    text += escaped(wordsOf(directive)) + html[index + 1];
  }
  return text;
}
