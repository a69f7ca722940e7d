/** What the development server answers: any route of the site, made when it is asked for. Loaded anew by the server whenever a source has changed. */

import { assets } from '../assets.ts';
import { assembled, changeHistory, loadContent, shownFolder } from '../content.ts';
import { textReport } from '../core/reading/report.ts';
import { htmlText } from '../outputs/htmlText.ts';
import { publishedPhotos } from '../photos.ts';
import { photoFiles } from '../site/parts/photoFiles.ts';
import type { Route } from '../site/route.ts';
import { routesOf } from '../site/routes.ts';
import type { Site } from '../site/site.ts';
import { townFiles } from '../towns/townFiles.ts';
import { wantedTowns } from '../towns/wanted.ts';
import { bytesOf } from './make.ts';

export interface DevRequest {
  /** Below the output folder: `lots/26-layer-01/index.html`. */
  file: string;
  base: string;
  asOf: string | undefined;
  /** Differs whenever a file of the content has changed. */
  contentVersion: number;
}

type Loaded = { site: Site; routes: Map<string, Route> } | { report: string };

let loaded: { version: number; of: Promise<Loaded> } | undefined;

async function load({ base, asOf }: DevRequest): Promise<Loaded> {
  const content = await loadContent({ asOf });
  const { records, diagnostics } = content.reading;
  if (records === null) return { report: textReport(diagnostics, shownFolder(content.dir)) };
  const known = await assembled(content);
  const { catalogue: all } = known;
  const photos = await publishedPhotos(photoFiles(all));
  const copied = await townFiles(wantedTowns(all), () => undefined);
  const site: Site = {
    all,
    changes: changeHistory(known).events,
    photos,
    assets,
    copied,
    base,
    preview: false,
  };
  return { site, routes: routesOf(site) };
}

/** The page that shows what is wrong with the content, until it is mended. */
function reportPage(report: string): string {
  return `<!DOCTYPE html><html lang="en"><head><title>Errors in the content</title></head><body><pre>${htmlText(report)}</pre></body></html>`;
}

/** The bytes of a file of the site; null for one that no route makes. */
export async function devAnswer(request: DevRequest): Promise<{ status: number; bytes: Buffer } | null> {
  if (loaded?.version !== request.contentVersion)
    loaded = { version: request.contentVersion, of: load(request) };
  const found = await loaded.of;
  if ('report' in found) return { status: 500, bytes: Buffer.from(reportPage(found.report)) };
  const made = (await found.routes.get(request.file)?.make()) ?? null;
  return made === null ? null : { status: 200, bytes: bytesOf(made, found.site) };
}
