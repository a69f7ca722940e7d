/**
 * From the tree of a text to HTML in which only what is listed here can stand. The check refuses raw HTML and foreign addresses when the text
 * is read; this does not rely on it, so that one mistake is not enough to let a script in.
 */

import type { Element, ElementContent, Nodes, Parents, Root, RootContent } from 'hast';
import { type Schema, sanitize } from 'hast-util-sanitize';
import { toHtml } from 'hast-util-to-html';
import type { Nodes as MarkdownNodes } from 'mdast';
import { type Handlers, toHast } from 'mdast-util-to-hast';
import { linkTarget } from '../core/markdown/links.ts';

/** Before the names of footnotes. Headings never have it, since their names are letters, digits and hyphens. */
const noteMark = 'note_';

/** Stands for a block of our own HTML while the blocks around it are looked through. No Markdown makes an element of this name. */
const finishedTag = 'finished-block';

type PropertyDefinition = NonNullable<NonNullable<Schema['attributes']>[string]>[number];

/** Names of headings, and the one that is given to the heading above the notes. */
const headingName: PropertyDefinition = ['id', /^[a-z0-9-]+$/];

/** Elements, their attributes and the values these may have. */
const allowed: Schema = {
  tagNames: [
    ...['h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'p', 'br', 'hr', 'blockquote', 'ul', 'ol', 'li'],
    ...['a', 'em', 'strong', 'del', 'code', 'pre', 'sup', 'span', 'section', 'div', 'aside'],
    ...['table', 'thead', 'tbody', 'tr', 'th', 'td', finishedTag],
  ],
  attributes: {
    a: [
      'href',
      ['id', /^note_/],
      ['ariaDescribedBy', 'footnote-label'],
      ['ariaLabel', /^Back to reference [\d-]+$/],
    ],
    li: [['id', /^note_/]],
    ol: ['start'],
    h2: [headingName],
    h3: [headingName],
    span: [['id', /^[\w-]+$/]],
    section: [['className', 'footnotes']],
    div: [['className', 'guide-part']],
    aside: [
      ['className', 'guide-caution', 'guide-cautions'],
      ['ariaLabel', 'Caution', 'Take care'],
    ],
    th: [['align', 'left', 'center', 'right']],
    td: [['align', 'left', 'center', 'right']],
    [finishedTag]: ['place'],
  },
  ancestors: {
    thead: ['table'],
    tbody: ['table'],
    tr: ['table'],
    th: ['table'],
    td: ['table'],
  },
  protocols: { href: ['http', 'https', 'mailto'] },
  strip: ['script', 'style'],
  clobber: [],
};

/** Mail, the web and this site: what `protocols` lets through and `//host` does not belong to. */
function hasGoodAddress({ properties }: Element): boolean {
  const { href } = properties;
  return typeof href === 'string' && href !== '' && linkTarget(href, '/').kind !== 'refused';
}

type Parent = Parents & { children: (RootContent | ElementContent)[] };

/** Every element below a node, in the order of the text. The depth of texts is bounded by their check. */
function eachElement(node: Nodes, look: (element: Element, parent: Parent, at: number) => void): void {
  if (!('children' in node)) return;
  const parent = node as Parent;
  for (const [at, child] of parent.children.entries()) {
    eachElement(child, look);
    if (child.type === 'element') look(child, parent, at);
  }
}

const alignment: Record<string, string> = { center: 'centered', right: 'to-the-right' };

/** A cell says by class where its words stand, since the policy of the site forbids styles and HTML has no such attribute any more. */
function setCell(cell: Element): void {
  const { align } = cell.properties;
  cell.properties = cell.tagName === 'th' ? { scope: 'col' } : {};
  const name = typeof align === 'string' ? alignment[align] : undefined;
  if (name !== undefined) cell.properties.className = [name];
}

/** Words of the first row of a table, so that people who do not see it can tell it from others. */
function headWords(node: Nodes): string {
  if (node.type === 'text') return node.value;
  if (!('children' in node)) return '';
  const inHead = node.children.filter(child => child.type !== 'element' || child.tagName !== 'tbody');
  return inHead.map(headWords).join(' ').replace(/\s+/g, ' ').trim();
}

/** A frame in which a wide table scrolls, so that the page does not. It takes the keyboard, or its hidden part could not be reached. */
function framed(table: Element): Element {
  const properties = { className: ['scroll'], ariaLabel: `Table: ${headWords(table)}`, tabIndex: 0 };
  return {
    type: 'element',
    tagName: 'section',
    properties,
    children: [{ ...table, properties: { className: ['ruled'] } }],
  };
}

function finish(tree: Nodes): void {
  eachElement(tree, (element, parent, at) => {
    if (element.tagName === 'a' && !hasGoodAddress(element)) delete element.properties.href;
    else if (element.tagName === 'td' || element.tagName === 'th') setCell(element);
    else if (element.tagName === 'table') parent.children[at] = framed(element);
  });
}

/** A block that is HTML already, and our own. */
export interface FinishedBlock {
  type: 'finished';
  value: string;
}

/** The tree of HTML elements of checked Markdown. Blocks that are finished come back in their places as they are. */
function safeTree(markdown: MarkdownNodes): Nodes {
  const finishedBlocks: string[] = [];
  const handlers = {
    finished(_: unknown, { value }: FinishedBlock): Element {
      finishedBlocks.push(value);
      return {
        type: 'element',
        tagName: finishedTag,
        properties: { place: finishedBlocks.length - 1 },
        children: [],
      };
    },
  };
  const whole =
    markdown.type === 'root' ? markdown : { type: 'root' as const, children: [markdown as never] };
  const made = toHast(whole, {
    handlers: handlers as Handlers,
    clobberPrefix: noteMark,
    footnoteLabel: 'Notes',
    footnoteLabelProperties: {},
  });
  const tree = sanitize(made, allowed);
  finish(tree);
  eachElement(tree, ({ tagName, properties }, parent, at) => {
    if (tagName !== finishedTag) return;
    (parent.children as Nodes[])[at] = {
      type: 'raw',
      value: finishedBlocks[Number(properties.place)] ?? '',
    } as unknown as Nodes;
  });
  return tree;
}

/** The HTML of checked Markdown. */
export function safeHtml(markdown: MarkdownNodes): string {
  return treeHtml(safeTree(markdown));
}

/** The HTML of a tree that came from `safeTree`, the only one in which raw text is ours. */
function treeHtml(tree: Nodes): string {
  return toHtml(tree as Root, { allowDangerousHtml: true });
}
