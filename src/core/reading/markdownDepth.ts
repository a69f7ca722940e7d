/** Markdown that nests deeper than any page: refused before a parse, which would take minutes or run out of stack. */

import { atLine, type Problem } from './problem.ts';

/** Blocks inside one another: quotes, lists, directives. A page has three or four. */
const deepest = 20;

/** Quote and list marks at the start of a line. */
const marks = new RegExp(`^(?:[ \\t]*(?:>|[-*+]|\\d{1,9}[.)])[ \\t]*){${deepest}}`);
/** A list that deep is indented by at least two spaces for each level. */
const indent = new RegExp(`^[ \\t]{${deepest * 2}}`);
const opening = /^[ \t]*:{3,}[ \t]*[a-z]/i;
const closing = /^[ \t]*:{3,}[ \t]*$/;

/** The problem of a text that nests too deep, or null. `firstLine` is the line of the file that the text starts on. */
export function depthProblem(file: string, text: string, firstLine: number): Problem | null {
  let open = 0;
  for (const [index, line] of text.split('\n').entries()) {
    if (opening.test(line)) open += 1;
    else if (closing.test(line)) open = Math.max(0, open - 1);
    if (open > deepest || marks.test(line) || indent.test(line)) return tooDeep(file, firstLine + index);
  }
  return null;
}

export function tooDeep(file: string, line: number): Problem {
  return {
    rule: 'markdown-depth',
    file,
    spot: atLine(line),
    expected: `at most ${deepest} levels`,
    message: 'the text is nested or indented too deep to be a page',
    remedy: 'write it with fewer quotes, lists or blocks inside one another, or without the indentation.',
  };
}
