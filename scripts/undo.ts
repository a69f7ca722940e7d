/** `npm run undo`: takes back what the last command has changed in the records. */

import { readFile, rm } from 'node:fs/promises';
import { changeTogether } from '../src/build/filesTogether.ts';
import { oneAtATime } from '../src/build/oneAtATime.ts';
import { contentDir, shownFolder } from '../src/content.ts';
import { hashOfBytes } from '../src/files.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { type ChangedFile, forgetChange, lastChange, recordsLock } from './lastChange.ts';

const help = `Takes back what the last command (sold, hold, price, lot, cultivar, species) has changed in the records, as long as the files
are as it left them.

  npm run undo
`;

async function isUntouched({ path, after }: ChangedFile): Promise<boolean> {
  const now = await readFile(path).catch(() => null);
  return now !== null && hashOfBytes(now) === after;
}

async function undo(): Promise<number> {
  const change = await lastChange(contentDir());
  if (change === null) throw new UsageError('there is nothing to take back.');
  for (const file of change.files) {
    if (!(await isUntouched(file)))
      throw new UsageError(
        `${shownFolder(file.path)} was changed since, so nothing is taken back; mend it by hand, or with git.`,
      );
  }
  const kept = change.files.flatMap(({ path, before }) =>
    before === null ? [] : [{ path, newPath: path, text: Buffer.from(before, 'base64').toString('utf8') }],
  );
  await changeTogether(change.folder, kept);
  for (const { path, before } of change.files) if (before === null) await rm(path);
  await forgetChange(change.folder);
  process.stdout.write(`Taken back: ${change.said}\n`);
  return 0;
}

export async function main(words: string[]): Promise<number> {
  const { positionals } = readFlags(words, help, {});
  if (positionals.length > 0) throw new UsageError('undo takes no words. Try --help.');
  const waiting = () => process.stderr.write('Another command is changing the records; waiting for it ...\n');
  return oneAtATime(recordsLock(contentDir()), waiting, undo);
}

await runIfMain(import.meta, main);
