/** The log of what the site has told of the list, content/changes.jsonl: a publication adds to it. */

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { changesFile } from '../core/reading/changeFile.ts';
import { type ChangeLine, changeLineText } from '../core/records/change.ts';
import { withLines } from '../core/records/changeLog.ts';
import { type FileAside, writeAside } from '../files.ts';

/** The log with lines at its end, written beside its place; null where there are none. It is put in place whole, so that no line is ever cut. */
export async function writeChanges(content: string, lines: readonly ChangeLine[]): Promise<FileAside | null> {
  if (lines.length === 0) return null;
  const path = join(content, changesFile);
  const log = existsSync(path) ? readFileSync(path, 'utf8') : '';
  return writeAside(path, withLines(log, lines.map(changeLineText)));
}
