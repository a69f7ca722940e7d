/** Markdown text: raw HTML, dangerous links, pictures and directives nobody handles. */

import type { Node, Parent } from 'mdast';
import { remark } from 'remark';
import remarkDirective from 'remark-directive';
import { depthProblem } from './markdownDepth.ts';
import { atLine, type Problem, quote } from './problem.ts';

/** Signs without which a text holds nothing this file looks for; most texts are told clean by it, without a parse. */
const suspicious = /<[a-z!/?]|\]\(|\]:|!\[|:[a-z]/i;

const parser = remark().use(remarkDirective);

/** Kinds of address that are published: web, mail, this site, or a relative path. */
const goodAddress = /^(?:https?:\/\/|mailto:|\/(?!\/)|#|\.{1,2}\/|[^:]*$)/i;

interface Place {
  line: number;
  column: number;
}

/** Problems in a text whose first line is `firstLine` of its file. */
export function markdownProblems(file: string, text: string, firstLine: number): Problem[] {
  if (!suspicious.test(text)) return [];
  const deep = depthProblem(file, text, firstLine);
  if (deep) return [deep];
  const problems: Problem[] = [];
  visit(parser.parse(text), node => {
    const words = wordsFor(node);
    if (!words) return;
    const { line, column } = placeOf(node);
    problems.push({ ...words, file, spot: atLine(line + firstLine - 1, column) });
  });
  return problems;
}

/** Every node of a tree, without recursion: brackets can be nested deeper than the stack. */
function visit(root: Node, look: (node: Node) => void): void {
  const waiting = [root];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    look(node);
    if ('children' in node) waiting.push(...(node as Parent).children);
  }
}

function placeOf({ position }: Node): Place {
  return { line: position?.start.line ?? 1, column: position?.start.column ?? 1 };
}

type Words = Omit<Problem, 'file' | 'spot'>;

function wordsFor(node: Node): Words | null {
  const { type, url, value, name } = node as Node & { url?: string; value?: string; name?: string };
  switch (type) {
    case 'html':
      return htmlWords(value ?? '');
    case 'image':
    case 'imageReference':
      return imageWords(url ?? '');
    case 'link':
    case 'definition':
      return goodAddress.test(url ?? '') ? null : linkWords(url ?? '');
    case 'textDirective':
    case 'leafDirective':
    case 'containerDirective':
      return directiveWords(name ?? '', type);
    default:
      return null;
  }
}

function htmlWords(tag: string): Words {
  return {
    rule: 'markdown-html',
    got: quote(tag),
    expected: 'Markdown',
    message: `the text holds the HTML ${quote(tag)}`,
    remedy: 'take it out, or write it in Markdown; a bare < is written \\<.',
  };
}

function imageWords(url: string): Words {
  return {
    rule: 'markdown-image',
    got: quote(url),
    expected: 'no pictures in the text',
    message: 'the text holds a picture',
    remedy: 'put the file in content/photos/ and name it under photos in the front matter.',
  };
}

function linkWords(url: string): Words {
  return {
    rule: 'markdown-link',
    got: quote(url),
    expected: 'https://, http://, mailto: or a page of this site',
    message: `the link leads to ${quote(url)}`,
    remedy: 'let it start with https://, http://, mailto: or /.',
  };
}

function directiveWords(name: string, type: string): Words {
  const sign = { textDirective: ':', leafDirective: '::' }[type] ?? ':::';
  return {
    rule: 'markdown-directive',
    got: quote(`${sign}${name}`),
    expected: 'no directives in the text',
    message: `${quote(`${sign}${name}`)} is a directive that nobody knows, and its text would vanish`,
    remedy: sign === ':' ? 'put a space after the colon, or a backslash before it.' : 'take the line out.',
  };
}
