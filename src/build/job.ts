/** What the steps of one build share, and the first of them: the content is checked, and what all pages need is made ready. */

import { mkdir } from 'node:fs/promises';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  assembled,
  changeHistory,
  checkContent,
  contentDir,
  type LoadedContent,
  type OpenContent,
  shownFolder,
} from '../content.ts';
import { privateDir } from '../contentFolder.ts';
import type { Catalogue } from '../core/catalogue.ts';
import type { ListHistory } from '../core/history/history.ts';
import { textReport } from '../core/reading/report.ts';
import type { Records } from '../core/records/records.ts';
import { publishedPhotos } from '../photos.ts';
import { photoFiles } from '../site/parts/photoFiles.ts';
import type { Site } from '../site/site.ts';
import { townFiles } from '../towns/townFiles.ts';
import { wantedTowns } from '../towns/wanted.ts';
import { bundle } from './assets.ts';
import { globalInputsOf } from './lastBuild.ts';
import { refuseLostFiles } from './lostFiles.ts';
import { assertReplaceable, assertWritable, followed, outputFolder } from './outputFolder.ts';
import { photoProgress } from './photoProgress.ts';
import type { Secrets } from './privacyScan.ts';
import { publicFiles } from './publicFiles.ts';
import { folderBeside } from './siteFolders.ts';
import type { SiteMark } from './siteMark.ts';
import type { BuildSettings } from './upToDate.ts';

/** The project. */
export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** The folder of the project that is there for sites. */
const ownFolder = join(root, 'dist');

/** Where the finished site goes: OUT_DIR, else dist/ in the project. Throws an OutputError for a place where a site would destroy something else. */
export function outDir(): string {
  const asked = resolve(root, process.env.OUT_DIR || ownFolder);
  return outputFolder(asked, { root, content: [contentDir(), privateDir(contentDir())], home: homedir() });
}

export interface BuildRequest {
  settings: BuildSettings;
  content: OpenContent;
  /** Where the site goes. */
  out: string;
  /** Makes everything, also what shows nothing new. */
  afresh: boolean;
}

export interface BuildJob extends BuildRequest {
  content: LoadedContent;
  records: Records;
  history: ListHistory;
  site: Site;
  /** Where the site is built before it is put in its place. */
  built: string;
  /** What must not be published. */
  secrets: Secrets;
  /** Hash of what every file depends on. */
  globalInputs: string;
  /** What the check said. */
  report: string;
}

export function markOf({ yard: { name, address } }: Catalogue): SiteMark {
  return { yard: name, address };
}

/** Throws an OutputError unless a folder may be replaced by this yard's site. */
export function assertOurs(out: string, catalogue: Catalogue): void {
  assertReplaceable(out, markOf(catalogue), out === followed(ownFolder));
}

/** Checks the content; null when it has errors. Either way the report is printed. */
export async function prepare(request: BuildRequest): Promise<BuildJob | null> {
  const { settings, out, afresh } = request;
  const { program, base } = settings;
  const content = await checkContent(request.content);
  const { diagnostics, privateNotes: notes } = content.reading;
  const shownContent = shownFolder(content.dir);
  const report = diagnostics.length > 0 ? `${textReport(diagnostics, shownContent)}\n` : '';
  process.stderr.write(report);
  if (content.reading.records === null) {
    process.stderr.write('Nothing was built; the site is as it was.\n');
    return null;
  }
  const loaded = await assembled(content);
  const { records, catalogue: all } = loaded;
  refuseLostFiles({ content: content.dir, out, shownDir: shownContent }, markOf(all));
  assertOurs(out, all);
  await mkdir(dirname(out), { recursive: true });
  assertWritable(out);
  const { assets, files } = await bundle({ root, program, base, afresh });
  const photos = await publishedPhotos(photoFiles(all), photoProgress());
  const history = changeHistory(loaded);
  const towns = await townFiles(wantedTowns(all), count =>
    console.error(
      `Working out the climate of ${count.toLocaleString('en')} towns: the better part of a minute, this once.`,
    ),
  );
  const copied = [...files, ...(await publicFiles(root)), ...towns];
  const site: Site = {
    all,
    changes: history.events,
    photos,
    assets,
    copied,
    base,
    preview: settings.preview,
  };
  return {
    ...request,
    content,
    records,
    history,
    site,
    built: folderBeside(out, 'building'),
    secrets: { notes, content: content.dir, shownContent },
    globalInputs: globalInputsOf(program, site),
    report,
  };
}
