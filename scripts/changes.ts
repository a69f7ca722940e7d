/** `npm run changes`: what the working copy changes on the public site against a committed version. */

import { chooseDay, contentDir, readContentFiles, shownFolder } from '../src/content.ts';
import { assemble } from '../src/core/catalogue.ts';
import { compare, type Side } from '../src/core/comparison/comparison.ts';
import { type ContentState, fileChanges } from '../src/core/comparison/fileChanges.ts';
import { publicFiles, withPrivateFiles } from '../src/core/comparison/privateFiles.ts';
import { problemChanges } from '../src/core/comparison/problemChanges.ts';
import type { Day } from '../src/core/days.ts';
import { type Reading, readRecords } from '../src/core/reading/read.ts';
import type { Records } from '../src/core/records/records.ts';
import { type ChangeReport, reportMarkdown, reportText } from '../src/site/reports/changeReport.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';
import { contentAt } from './gitContent.ts';

const help = `Says what the files as they are now change on the public site.

  npm run changes                             against the last commit
  npm run changes -- --against main           against another version: a branch, a tag, a commit
  npm run changes -- --as-of 2026-11-25       computed for another day, both sides
  npm run changes -- --as-of-before 2026-11-24  the earlier version as of its own day: what the days in between do shows too
  npm run changes -- --markdown               for a pull request
  npm run changes -- --json                   for other programs

CONTENT_DIR names another content folder; its own repository is asked. Ends with code 1 when the files have errors, 0 otherwise.
`;

export interface ChangesRequest {
  against?: string | undefined;
  asOf?: string | undefined;
  asOfBefore?: string | undefined;
}

function read(state: ContentState, asOf: Day): Reading {
  return readRecords(state.files, { asOf, photos: state.photos });
}

/** The climates of places are shown on pages only, so they are not worked out here. */
function sideOf({ records }: Reading, asOf: Day): Side | null {
  return records && { catalogue: assemble(records, asOf, new Map()), addresses: records.addresses };
}

/** The later state with the files of some paths as they were in the earlier one. */
function withFilesOf(after: ContentState, before: ContentState, paths: ReadonlySet<string>): ContentState {
  return {
    files: [
      ...after.files.filter(({ path }) => !paths.has(path)),
      ...before.files.filter(({ path }) => paths.has(path)),
    ],
    // A photo set aside is not looked into again.
    photos: [...new Map([...before.photos, ...after.photos].map(({ name, facts }) => [name, facts]))].map(
      ([name, facts]) => ({ name, facts: paths.has(`photos/${name}`) ? null : facts }),
    ),
  };
}

/** Compares the content folder with a revision of its repository. Throws a UsageError when there is nothing to compare with. */
export async function changes(request: ChangesRequest = {}): Promise<ChangeReport> {
  const dir = contentDir();
  const folder = shownFolder(dir);
  const present = await readContentFiles(dir);
  const past = withPrivateFiles(contentAt(dir, folder, request.against ?? 'HEAD', present), present);
  const asOf = chooseDay(present.files, request.asOf);
  const asOfBefore = request.asOfBefore === undefined ? asOf : chooseDay(past.files, request.asOfBefore);
  const after = read(present, asOf);
  const before = past.present ? read(past, asOfBefore) : null;

  const errors = after.diagnostics.filter(({ level }) => level === 'error');
  const errorsBefore = before?.diagnostics.filter(({ level }) => level === 'error').length ?? 0;
  const setAside = [...new Set(errors.map(({ file }) => file))].sort();
  const shown = errors.length === 0 ? after : read(withFilesOf(present, past, new Set(setAside)), asOf);
  const sideAfter = errorsBefore > 0 ? null : sideOf(shown, asOf);
  return {
    against: past.revision,
    asOf: { before: asOfBefore, after: asOf },
    folder,
    errors,
    setAside,
    errorsBefore,
    comparison: sideAfter && compare(before && sideOf(before, asOfBefore), sideAfter),
    problems: problemChanges(before?.diagnostics ?? [], after.diagnostics),
    files: fileChanges(publicFiles(past), publicFiles(present), past.exchanged),
    photos: past.exchanged.map(file => ({
      file,
      shownBy: shown.records ? showing(shown.records, file) : [],
    })),
  };
}

/** Cultivars, by name, and lots, by id, that show a photograph. */
function showing({ cultivars, lots }: Records, file: string): string[] {
  return [
    ...[...cultivars.values()]
      .filter(({ photos }) => photos.some(photo => photo.file === file))
      .map(({ name }) => name),
    ...lots.filter(({ photo }) => photo?.file === file).map(({ id }) => id),
  ];
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    against: { type: 'string' },
    'as-of': { type: 'string' },
    'as-of-before': { type: 'string' },
    markdown: { type: 'boolean' },
    json: { type: 'boolean' },
  });
  refuseLooseWords(positionals);
  if (values.markdown && values.json) throw new UsageError('give --markdown or --json, not both.');
  const report = await changes({
    against: values.against,
    asOf: values['as-of'],
    asOfBefore: values['as-of-before'],
  });
  const inJson = () => JSON.stringify(report, null, 2);
  const text = values.json ? inJson() : values.markdown ? reportMarkdown(report) : reportText(report);
  process.stdout.write(`${text}\n`);
  return report.errors.length > 0 ? 1 : 0;
}

await runIfMain(import.meta, main);
