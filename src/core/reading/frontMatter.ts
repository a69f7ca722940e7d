/** Splits a Markdown file into its front matter, the YAML between two lines of three hyphens, and the text below. */

import { atLine, type Problem } from './problem.ts';
import type { YamlSource } from './yamlText.ts';

export interface Split {
  yaml: YamlSource;
  body: { text: string; line: number };
}

const fence = /^---[ \t]*$/;

/** The two parts with the lines they start on, or what is wrong with the front matter. */
export function splitFrontMatter(file: string, text: string): Split | { problem: Problem } {
  const lines = text.split('\n');
  if (!fence.test(lines[0] ?? '')) {
    return {
      problem: {
        rule: 'front-matter',
        file,
        spot: atLine(1),
        got: lines[0] ?? '',
        expected: '---',
        message: 'the first line is not ---',
        remedy: 'start the file with a line ---, then the keys, then another line ---, then the text.',
      },
    };
  }
  const end = lines.findIndex((line, index) => index > 0 && fence.test(line));
  if (end < 0) {
    return {
      problem: {
        rule: 'front-matter',
        file,
        spot: atLine(1),
        expected: 'a second line ---',
        message: 'the front matter that starts here is never closed',
        remedy: 'put a line --- below the last key, above the text.',
      },
    };
  }
  return {
    yaml: { file, text: `${lines.slice(1, end).join('\n')}\n`, firstLine: 2 },
    body: { text: lines.slice(end + 1).join('\n'), line: end + 2 },
  };
}
