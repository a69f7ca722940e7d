/**
 * Pages that a yard adds itself: `.astro` files in `src/pages/`, which ask the typed collections. Only where there are any is the site generator
 * started, in a process of its own, and then for every build. Their files are taken into the site with the rest.
 */

import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { constants } from 'node:fs';
import { copyFile, mkdir, readdir, readFile, rm } from 'node:fs/promises';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contentDir } from '../content.ts';
import { keptSince, keptSinceVariable } from '../resultStore.ts';

const generator = fileURLToPath(new URL('generate.ts', import.meta.url));

export interface OwnPages {
  /** The project. */
  root: string;
  /** Folder of the site being built. */
  built: string;
  /** Address of the site, and path below which it lives. */
  address: string;
  base: string;
  /** The day everything is computed for. */
  asOf: string;
}

/** What the process that generates is told: as one argument, in JSON. */
export interface Generation {
  root: string;
  address: string;
  base: string;
  /** Folder of its own for the pages and for all that the generator keeps meanwhile. */
  folder: string;
}

async function filesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  return entries
    .filter(entry => entry.isFile())
    .map(entry => relative(folder, join(entry.parentPath, entry.name)));
}

async function generate(generation: Generation, asOf: string): Promise<void> {
  const child = spawn(process.execPath, [...process.execArgv, generator, JSON.stringify(generation)], {
    cwd: generation.root,
    // Its input ends with this process, and it ends with its input, however this one is killed.
    stdio: ['pipe', 'ignore', 'pipe'],
    env: {
      ...process.env,
      AS_OF: asOf,
      CONTENT_DIR: contentDir(),
      [keptSinceVariable]: String(keptSince()),
      ASTRO_TELEMETRY_DISABLED: '1',
    },
  });
  let said = '';
  child.stderr.on('data', text => {
    said += text;
  });
  const [code] = await once(child, 'close');
  if (code !== 0)
    throw new Error(`the site was not built: ${said.trim() || `the generator ended with code ${code}`}`);
  if (said !== '') process.stderr.write(said);
}

/** Takes a file into the site. Both may have the same font or picture, which is named by its bytes. */
async function take(file: string, from: string, built: string): Promise<void> {
  await mkdir(dirname(join(built, file)), { recursive: true });
  try {
    await copyFile(join(from, file), join(built, file), constants.COPYFILE_EXCL);
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== 'EEXIST') throw problem;
    const [theirs, ours] = await Promise.all([readFile(join(from, file)), readFile(join(built, file))]);
    if (theirs.equals(ours)) return;
    throw new Error(
      `the site was not built: a page of src/pages/ makes ${file}, and the program makes it too; give the page another name.`,
    );
  }
}

/** Adds the yard's own pages to a site being built. Throws when one of them has the address of another file, or has an error. */
export async function addOwnPages({ root, built, asOf, address, base }: OwnPages): Promise<void> {
  const sources = await filesBelow(join(root, 'src/pages'));
  if (sources.length === 0) return;
  // In the project, whatever the output folder is: the generator moves files between its folders as if they were on one disk.
  const folder = resolve(root, '.build/own-pages');
  try {
    // What a killed build has left: one build runs at a time.
    await rm(folder, { recursive: true, force: true });
    await mkdir(folder, { recursive: true });
    await generate({ root, address, base, folder }, asOf);
    const site = join(folder, 'site');
    for (const file of await filesBelow(site)) await take(file, site, built);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
