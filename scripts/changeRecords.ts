/** What every command shares that changes records: reading the yard, proving the change, showing it, writing it whole. */

import { readFile, stat } from 'node:fs/promises';
import { confirm, isCancel } from '@clack/prompts';
import { changeTogether } from '../src/build/filesTogether.ts';
import { oneAtATime } from '../src/build/oneAtATime.ts';
import { contentDir, placeOf, publicationDay, readContentFiles, shownFolder } from '../src/content.ts';
import { type Day, parseDay } from '../src/core/days.ts';
import { shortDiff } from '../src/core/editing/shortDiff.ts';
import type { Diagnostic } from '../src/core/reading/diagnostic.ts';
import type { PhotoFile } from '../src/core/reading/draft.ts';
import { plural } from '../src/core/reading/problem.ts';
import { type Reading, readRecords, type SourceFile } from '../src/core/reading/read.ts';
import { formatDiagnostic } from '../src/core/reading/report.ts';
import type { FileChange, OpenYard, Planned } from '../src/core/recording/openYard.ts';
import { reuseReadings } from '../src/keptReadings.ts';
import { UsageError } from './command.ts';
import { changedFile, recordsLock, rememberChange } from './lastChange.ts';

/** Flags of every such command. */
export const changeFlags = {
  show: { type: 'boolean' },
  yes: { type: 'boolean' },
} as const;

export const changeHelp = `  --show            says what would change, and changes nothing
  --yes             does not ask
  --help

Nothing is written that npm run check would refuse. npm run undo takes the last change back.
CONTENT_DIR names another content folder, PRIVATE_DIR another private one.
`;

interface YardOnDisk {
  folder: string;
  files: SourceFile[];
  photos: PhotoFile[];
  yard: OpenYard;
}

const textOf = (bytes: Uint8Array) => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
const errorsOf = ({ diagnostics }: Reading) => diagnostics.filter(({ level }) => level === 'error');

function hasErrorsAlready(folder: string, errors: readonly Diagnostic[]): UsageError {
  return new UsageError(
    `nothing was changed, since the records have ${plural(errors.length, 'error')} already. The first: ${formatDiagnostic(errors[0]!, shownFolder(folder))}\n  npm run check shows ${errors.length === 1 ? 'it' : 'them all'}.`,
  );
}

/**
 * Reads the yard, each file by itself: how its records fit together is checked once, with the change made. Throws a UsageError where a file has
 * errors: counts and prices could not be relied on.
 */
export async function yardOnDisk(): Promise<YardOnDisk> {
  const folder = contentDir();
  const { files, photos } = await readContentFiles(folder);
  const today = publicationDay(files);
  const keepReadings = await reuseReadings(folder, files);
  const { records, orders } = readRecords(files, { asOf: today, photos, alone: true });
  await keepReadings();
  if (records === null) throw hasErrorsAlready(folder, errorsOf(readRecords(files, { asOf: today, photos })));
  const texts = new Map(files.map(({ path, bytes }) => [path, textOf(bytes)]));
  return { folder, files, photos, yard: { texts, records, orders, today } };
}

/** The check of the yard as it would be. Throws a UsageError with its message where it finds an error. */
function proved({ folder, files, photos, yard }: YardOnDisk, changes: readonly FileChange[]): string[] {
  const changed = new Map(changes.map(({ path, text }) => [path, text]));
  const encoder = new TextEncoder();
  const after = readRecords(
    [
      ...files.filter(({ path }) => !changed.has(path)),
      ...[...changed].map(([path, text]) => ({ path, bytes: encoder.encode(text) })),
    ],
    { asOf: yard.today, photos },
  );
  const shown = shownFolder(folder);
  // Only where something is wrong is it asked whether it was before.
  if (after.diagnostics.every(({ level }) => level === 'info')) return [];
  const before = readRecords(files, { asOf: yard.today, photos });
  const errors = errorsOf(before);
  if (errors.length > 0) throw hasErrorsAlready(folder, errors);
  const [error] = errorsOf(after);
  if (error)
    throw new UsageError(`nothing was changed, since this would be wrong: ${formatDiagnostic(error, shown)}`);
  const known = new Set(before.diagnostics.map(({ message, rule }) => rule + message));
  return after.diagnostics
    .filter(({ level, message, rule }) => level === 'warning' && !known.has(rule + message))
    .map(each => formatDiagnostic(each, shown));
}

function shownPlace(folder: string, path: string): string {
  return shownFolder(placeOf(folder, path));
}

/** The change as it is shown: each file with the lines taken out and put in. */
function diffOf({ folder, yard }: YardOnDisk, changes: readonly FileChange[]): string {
  return changes
    .map(({ path, text }) => {
      const before = yard.texts.get(path) ?? null;
      const lines = shortDiff(before, text).map(line => `  ${line}`);
      return [`${shownPlace(folder, path)}${before === null ? ' (new)' : ''}`, ...lines].join('\n');
    })
    .join('\n');
}

async function agreed(): Promise<boolean> {
  const answer = await confirm({ message: 'Write this?', output: process.stderr });
  return !isCancel(answer) && answer;
}

async function writeChanges(
  { folder, files }: YardOnDisk,
  changes: readonly FileChange[],
  said: string,
): Promise<void> {
  const encoder = new TextEncoder();
  const read = new Map(files.map(({ path, bytes }) => [path, bytes]));
  const writes = await Promise.all(
    changes.map(async ({ path, text }) => {
      const place = placeOf(folder, path);
      const before = read.get(path) ?? null;
      const [now, mode] = await Promise.all([
        readFile(place).catch(() => null),
        stat(place).then(
          status => status.mode,
          () => 0o600,
        ),
      ]);
      // For root every file can be written; somebody has locked it all the same.
      if ((mode & 0o200) === 0)
        throw new UsageError(
          `${shownPlace(folder, path)} is read-only; make it writable and run this again.`,
        );
      if (Buffer.compare(now ?? Buffer.alloc(0), before ?? Buffer.alloc(0)) !== 0)
        throw new UsageError(
          `${shownPlace(folder, path)} was changed by another program just now, so nothing was written; run this again.`,
        );
      return { path: place, newPath: place, text, before };
    }),
  );
  const fault = (problem: NodeJS.ErrnoException) => {
    if (!['EACCES', 'EPERM', 'EROFS'].includes(problem.code ?? '')) throw problem;
    const at = problem.path ? ` (${problem.path})` : '';
    throw new UsageError(`nothing was written: the folder of the records is read-only${at}.`);
  };
  await changeTogether(folder, writes).catch(fault);
  await rememberChange({
    folder,
    said,
    files: writes.map(({ path, text, before }) => changedFile(path, before, encoder.encode(text))),
  });
}

export interface ChangeOptions {
  show?: boolean | undefined;
  yes?: boolean | undefined;
}

/** Makes a plan from the yard as it is, proves it, shows it, asks a person at a keyboard, and writes it. Waits for other such commands. */
export async function changeRecords(
  plan: (yard: OpenYard) => Planned | Promise<Planned>,
  { show, yes }: ChangeOptions,
): Promise<number> {
  const waiting = () => process.stderr.write('Another command is changing the records; waiting for it ...\n');
  return oneAtATime(recordsLock(contentDir()), waiting, async () => {
    const disk = await yardOnDisk();
    const planned = await plan(disk.yard);
    if ('refused' in planned) throw new UsageError(planned.refused);
    const { said } = planned;
    const changes = planned.changes.filter(({ path, text }) => disk.yard.texts.get(path) !== text);
    if (changes.length === 0) {
      process.stdout.write(`Nothing to change: ${said}\n`);
      return 0;
    }
    const warnings = proved(disk, changes);
    const told = [said, diffOf(disk, changes), ...warnings].join('\n');
    if (show) {
      process.stdout.write(`Would be written. ${told}\n`);
      return 0;
    }
    if (!yes && process.stdin.isTTY) {
      process.stderr.write(`${told}\n`);
      if (!(await agreed())) throw new UsageError('stopped; nothing was changed.');
      await writeChanges(disk, changes, said);
      process.stdout.write('Written. To take it back: npm run undo\n');
      return 0;
    }
    await writeChanges(disk, changes, said);
    process.stdout.write(`${told}\nTo take it back: npm run undo\n`);
    return 0;
  });
}

/** A day given by a flag. Throws a UsageError when it is none. */
export function dayGiven(text: string | undefined, flag: string): Day | undefined {
  if (text === undefined) return undefined;
  const parsed = parseDay(text);
  if (parsed === null) throw new UsageError(`${flag} "${text}" is no calendar day; write it as 2026-11-25.`);
  return parsed;
}
