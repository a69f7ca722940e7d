/** A thread that takes files of the published site into the new one, without copying their bytes where the disk allows. */

import { copyFileSync, linkSync, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { stampOf } from './finishedSite.ts';
import type { LinkInput } from './lastBuild.ts';

const { out, built, files }: LinkInput = workerData;
const folders = new Set<string>();
/** Stamps of the copies: a link keeps that of its file. */
const copied = new Map<string, string>();

for (const file of files) {
  const to = join(built, file);
  const folder = dirname(to);
  if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
  folders.add(folder);
  try {
    linkSync(join(out, file), to);
  } catch {
    copyFileSync(join(out, file), to);
    copied.set(file, stampOf(to));
  }
}
parentPort!.postMessage(copied);
