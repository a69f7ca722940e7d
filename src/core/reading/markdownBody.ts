/** Text of a cultivar: markup that is never published, and directives, which only guides have. */

import { markupFault } from '../markdown/markup.ts';
import { type DirectiveNode, isDirective, nodesOf, parseMarkdown } from '../markdown/tree.ts';
import { depthProblem, tooDeep } from './markdownDepth.ts';
import { atLine, type Problem, quote } from './problem.ts';

/** Signs without which a text holds nothing this file looks for; most texts are told clean by it, without a parse. */
const suspicious = /<[a-z!/?]|\]\(|\]:|!\[|:[a-z]|:\/\/|www\.|@|\|/i;

/** Emphasis, links and brackets inside one another. The page is made by functions that call themselves for each level. */
const deepest = 60;

/** Problems in a text whose first line is `firstLine` of its file. */
export function markdownProblems(file: string, text: string, firstLine: number): Problem[] {
  const deep = depthProblem(file, text, firstLine);
  if (deep) return [deep];
  if (!suspicious.test(text) && !deepMarks.test(text)) return [];
  const problems: Problem[] = [];
  for (const { node, depth } of nodesOf(parseMarkdown(text))) {
    const { line, column } = node.position?.start ?? { line: 1, column: 1 };
    if (depth > deepest) return [...problems, tooDeep(file, line + firstLine - 1)];
    const words = isDirective(node) ? directiveWords(node) : markupFault(node);
    if (words) problems.push({ ...words, file, spot: atLine(line + firstLine - 1, column) });
  }
  return problems;
}

/** As many stars, lines and brackets as it takes to nest too deep. */
const deepMarks = new RegExp(`(?:[*_[~][^*_[~]*){${deepest}}`);

const signs = { textDirective: ':', leafDirective: '::', containerDirective: ':::' } as const;

function directiveWords({ name, type }: DirectiveNode): Omit<Problem, 'file' | 'spot'> {
  const called = quote(`${signs[type]}${name}`);
  return {
    rule: 'markdown-directive',
    got: called,
    expected: 'no directives in the text',
    message: `${called} is a directive that nobody knows, and its text would vanish`,
    remedy:
      type === 'textDirective'
        ? 'put a space after the colon, or a backslash before it.'
        : 'take the line out.',
  };
}
