/** The log of published changes of the list, content/changes.jsonl: a publication adds to it, and the site carries it. */

import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { changesFile } from '../core/reading/changeFile.ts';
import { type ChangeLine, changeLineText } from '../core/records/change.ts';
import { withLines } from '../core/records/changeLog.ts';
import { type FileAside, writeAside } from '../files.ts';

/** The log with what is new at its end. */
export interface NewLog {
  text: string;
  /** How many lines are new. */
  added: number;
}

/** The log as it will be once the site is in place; null where nothing was ever published. */
export function newLog(content: string, lines: readonly ChangeLine[]): NewLog | null {
  const path = join(content, changesFile);
  const before = existsSync(path) ? readFileSync(path, 'utf8') : '';
  const text = withLines(before, lines.map(changeLineText));
  return text.trim() === '' ? null : { text, added: lines.length };
}

/** Lays the log into the site, so that a lost one can be taken back from there. It says nothing that the feeds have not said. */
export function publishLog(built: string, log: NewLog | null): void {
  if (log !== null) writeFileSync(join(built, changesFile), log.text);
}

/** Writes the log beside its place; the file is replaced whole, so that no line is ever cut. Null where nothing is new. */
export async function writeNewLog(content: string, log: NewLog | null): Promise<FileAside | null> {
  return log !== null && log.added > 0 ? writeAside(join(content, changesFile), log.text) : null;
}
