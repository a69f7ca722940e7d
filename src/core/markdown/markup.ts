/** Markup that is never published, told in the same words for cultivars and guides. */

import type { Nodes } from 'mdast';
import { linkTarget } from './links.ts';

export interface MarkupFault {
  rule: 'markdown-html' | 'markdown-link' | 'markdown-image' | 'markdown-depth';
  got: string;
  expected: string;
  /** A clause without a full stop. */
  message: string;
  /** Starts in lower case, ends with a full stop. */
  remedy: string;
}

const longestQuote = 60;
const quote = (text: string) =>
  `"${text.length > longestQuote ? `${text.slice(0, longestQuote - 3)}...` : text}"`;

/** Cells of a table that can be read on a page. Missing cells are filled in, so a few wide rows can stand for millions. Our working figure. */
const mostCells = 5000;

/** What is wrong with one node of a text; null when nothing is. */
export function markupFault(node: Nodes): MarkupFault | null {
  switch (node.type) {
    case 'html':
      return html(node.value);
    case 'image':
    case 'imageReference':
      return image('url' in node ? node.url : (node.label ?? ''));
    case 'link':
    case 'definition':
      return linkTarget(node.url, '/').kind === 'refused' ? link(node.url) : null;
    case 'table':
      return (node.align?.length ?? 0) * node.children.length > mostCells ? table() : null;
    default:
      return null;
  }
}

function html(tag: string): MarkupFault {
  return {
    rule: 'markdown-html',
    got: quote(tag),
    expected: 'Markdown',
    message: `the text holds the HTML ${quote(tag)}`,
    remedy: 'take it out, or write it in Markdown; a bare < is written \\<.',
  };
}

function image(url: string): MarkupFault {
  return {
    rule: 'markdown-image',
    got: quote(url),
    expected: 'no pictures in the text',
    message: 'the text holds a picture',
    remedy: 'put the file in content/photos/ and name it under photos in the front matter of a cultivar.',
  };
}

function link(url: string): MarkupFault {
  return {
    rule: 'markdown-link',
    got: quote(url),
    expected: 'https://, http://, mailto: or a page of this site',
    message: `the link leads to ${quote(url)}`,
    remedy: 'let it start with https://, http://, mailto: or a single /.',
  };
}

function table(): MarkupFault {
  return {
    rule: 'markdown-depth',
    got: 'a very large table',
    expected: `at most ${mostCells} cells`,
    message: `the table has more than ${mostCells} cells`,
    remedy: 'split it, or look for a line of many | signs.',
  };
}
