/** What was told of the list when the site was published, content/changes.jsonl: read line by line. */

import { type ChangeLine, parseChangeLine } from '../records/change.ts';
import { atLine, type Problem } from './problem.ts';

/** Name of the file in the content folder. */
export const changesFile = 'changes.jsonl';

/** Lines without problems, in the order of the file. A line that stands twice is of two copies put together, and counts once. */
export function readChanges(file: string, text: string): { lines: ChangeLine[]; problems: Problem[] } {
  const lines = new Map<string, ChangeLine>();
  const problems: Problem[] = [];
  for (const [index, written] of text.split(/\r\n|\n|\r/).entries()) {
    if (written.trim() === '') continue;
    const line = parseChangeLine(written);
    if (line === null) problems.push(notOurs(file, index + 1));
    else lines.set('id' in line ? line.id : written.trim(), line);
  }
  return { lines: [...lines.values()], problems };
}

function notOurs(file: string, line: number): Problem {
  return {
    rule: 'change-line',
    file,
    spot: atLine(line),
    got: 'another text',
    expected: 'a line as the build writes it',
    message: 'the line is not one that the build has written',
    remedy:
      'delete it if it was typed by hand; take the file back from an earlier version if it was cut off.',
  };
}
