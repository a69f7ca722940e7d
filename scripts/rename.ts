/** `npm run rename`: gives a record another id, in every file that speaks of it, and leads its old addresses on. */

import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { confirm, isCancel } from '@clack/prompts';
import { changeTogether } from '../src/build/filesTogether.ts';
import { oneAtATime } from '../src/build/oneAtATime.ts';
import { contentDir, placeOf, publicationDay, readContentFiles, shownFolder } from '../src/content.ts';
import { type RecordKind, recordFolders } from '../src/core/addresses/paths.ts';
import type { Day } from '../src/core/days.ts';
import type { PhotoFile } from '../src/core/reading/draft.ts';
import { nearest } from '../src/core/reading/nearest.ts';
import { readRecords, type SourceFile } from '../src/core/reading/read.ts';
import { formatDiagnostic } from '../src/core/reading/report.ts';
import { planRename, type RenamePlan, type RenameRequest } from '../src/core/renaming/rename.ts';
import { yardTexts } from '../src/core/renaming/yardTexts.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const help = `Gives a record another id: renames its file, changes every file that speaks of it, and leads its old address on.

  npm run rename -- cultivar OLD NEW
  npm run rename -- lot OLD NEW          an id on a label stays; rename a lot only to mend a slip
  npm run rename -- guide OLD NEW
  npm run rename -- video OLD NEW
  npm run rename -- place OLD NEW
  npm run rename -- address /old/ /new/  leads an address on where no record is renamed; parts too: /guides/x/#old

  --show       says what would change, and changes nothing
  --yes        does not ask

A heading of a guide that was reworded, or the time of a chapter that was mended, has a new name for its part: lead the old one on as an
address, and links to it open the page at the new one.
A record that was renamed by hand already has only its old address led on and its mentions changed.
CONTENT_DIR names another content folder.
`;

const kinds = [...(Object.keys(recordFolders) as RecordKind[]), 'address'] as const;

function requestOf(words: readonly string[]): RenameRequest {
  const [what = '', from, to, ...more] = words;
  const kind = kinds.find(each => each === what);
  if (kind === undefined) {
    const guess = nearest(what, kinds);
    throw new UsageError(
      `say what is renamed: ${kinds.join(', ')}.${guess ? ` Did you mean "${guess}"?` : ''} Try --help.`,
    );
  }
  if (from === undefined || to === undefined || more.length > 0) {
    throw new UsageError(`write the old and the new: npm run rename -- ${kind} OLD NEW`);
  }
  return { kind, from, to };
}

function planned(plan: RenamePlan, folder: string): string {
  const lines = plan.files.map(({ path, newPath }) =>
    newPath === path ? `  ${folder}/${path}` : `  ${folder}/${path} becomes ${folder}/${newPath}`,
  );
  const added = `  with ${plan.lines} new ${plan.lines === 1 ? 'line' : 'lines'} in ${folder}/addresses.csv`;
  return `${[...lines, added].join('\n')}\n`;
}

/** Refuses a rename that would leave a yard without errors with some. */
function proveSound(
  files: readonly SourceFile[],
  photos: readonly PhotoFile[],
  plan: RenamePlan,
  asOf: Day,
): void {
  const errors = (of: readonly SourceFile[]) =>
    readRecords(of, { asOf, photos }).diagnostics.filter(({ level }) => level === 'error');
  const changed = new Map(plan.files.map(file => [file.path, file]));
  const encoder = new TextEncoder();
  const after = [
    ...files.filter(({ path }) => !changed.has(path)),
    ...plan.files.map(({ newPath, text }) => ({ path: newPath, bytes: encoder.encode(text) })),
  ];
  const [first] = errors(after);
  if (first && errors(files).length === 0) {
    throw new UsageError(
      `nothing was changed, since this would be wrong: ${formatDiagnostic(first, 'content')}`,
    );
  }
}

async function write(folder: string, { files }: RenamePlan): Promise<void> {
  const changes = files.map(({ path, newPath, text }) => ({
    path: placeOf(folder, path),
    newPath: placeOf(folder, newPath),
    text,
  }));
  await changeTogether(folder, changes);
}

/** What readers see of a record is not its id: it stays, and where it is written. Empty for what has no name but its id. */
function nameStays({ kind, to }: RenameRequest, { files }: RenamePlan, folder: string): string {
  if (kind === 'address' || kind === 'lot') return '';
  const file = files.find(
    ({ newPath }) => newPath.replace(/\.[a-z]+$/, '') === `${recordFolders[kind]}/${to}`,
  );
  const [, key, name] = /^(name|title):[ \t]*(\S.*?)\s*$/m.exec(file?.text ?? '') ?? [];
  if (file === undefined || key === undefined) return '';
  return `Readers go on seeing the ${key} ${name}; to change that too, edit ${key}: in ${folder}/${file.newPath}\n`;
}

async function agreed(): Promise<boolean> {
  const answer = await confirm({ message: 'Change these files?', output: process.stderr });
  return !isCancel(answer) && answer;
}

async function renameIn(
  folder: string,
  request: RenameRequest,
  { show, yes }: { show: boolean; yes: boolean },
): Promise<number> {
  const { files, photos } = await readContentFiles(folder);
  // Whatever day is looked at: the new address holds from when it is published.
  const today = publicationDay(files);
  const plan = planRename(yardTexts(files), request, today);
  if ('refused' in plan) throw new UsageError(plan.refused);
  proveSound(files, photos, plan, today);
  const shown = shownFolder(folder);
  const told = planned(plan, shown) + nameStays(request, plan, shown);
  if (show) {
    process.stdout.write(`These would change:\n${told}`);
    return 0;
  }
  if (!yes && process.stdin.isTTY) {
    process.stderr.write(told);
    if (!(await agreed())) throw new UsageError('stopped; nothing was changed.');
  }
  await write(folder, plan);
  process.stdout.write(`Changed:\n${told}`);
  return 0;
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    show: { type: 'boolean' },
    yes: { type: 'boolean' },
  });
  const request = requestOf(positionals);
  const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');
  const waiting = () => process.stderr.write('A build is under way; waiting for it ...\n');
  // A build adds lines to the list of addresses, which this would overwrite.
  return oneAtATime(join(root, '.build/build.lock'), waiting, () =>
    renameIn(contentDir(), request, {
      show: values.show ?? false,
      yes: values.yes ?? false,
    }),
  );
}

await runIfMain(import.meta, main);
