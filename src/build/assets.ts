/**
 * Bundles the styles and scripts of the site, and keeps the files in .cache/ by the hash of the program and the base path, so that publishing a
 * change starts no bundler. Nothing of the content is in them. Kept files are taken only with the very bytes that were written.
 */

import { mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { hashOfFiles } from '../files.ts';
import { hashOf } from '../hash.ts';
import type { Assets, CopiedFile } from '../site/site.ts';

const keptFolder = resolve('.cache/assets');
const factsFile = 'assets.json';
const entryFile = 'addresses.mjs';
/** As pages address them, below the output folder. */
const assetsFolder = 'assets';
/** Bundles kept at most: a few branches or base paths in turn. Some 400 kB each. */
const keptAtMost = 4;

interface Facts {
  assets: Assets;
  /** Hash of all other files. */
  bytes: string;
}

export interface Bundle {
  assets: Assets;
  files: CopiedFile[];
}

export interface Bundling {
  /** The project. */
  root: string;
  /** Hash of the program. */
  program: string;
  base: string;
  /** Bundles again, whatever is kept. */
  afresh: boolean;
}

const namesInFolder = {
  chunkFileNames: `${assetsFolder}/[name].[hash].js`,
  assetFileNames: `${assetsFolder}/[name].[hash][extname]`,
};

/** Bundles into a folder, and returns the addresses of what pages ask for. Throws what the bundler says of a source it cannot read. */
async function bundleInto(folder: string, { root, base }: Bundling): Promise<Assets> {
  const { build } = await import('vite');
  await build({
    root,
    base,
    configFile: false,
    envDir: false,
    publicDir: false,
    mode: 'production',
    logLevel: 'error',
    worker: {
      format: 'es',
      rolldownOptions: { output: { ...namesInFolder, entryFileNames: namesInFolder.chunkFileNames } },
    },
    build: {
      // Run in Node for its addresses; what it leads to is for browsers.
      ssr: join(root, 'src/assets.ts'),
      ssrEmitAssets: true,
      outDir: folder,
      emptyOutDir: true,
      minify: true,
      cssMinify: true,
      // The content policy allows no data in the place of a file.
      assetsInlineLimit: 0,
      rolldownOptions: {
        output: { ...namesInFolder, entryFileNames: entryFile },
        // A remark about time, made when the machine is busy.
        checks: { pluginTimings: false },
      },
    },
  });
  const { assets }: { assets: Assets } = await import(pathToFileURL(join(folder, entryFile)).href);
  await rm(join(folder, entryFile));
  return assets;
}

async function bundleIn(folder: string, assets: Assets): Promise<Bundle> {
  const names = (await readdir(join(folder, assetsFolder))).sort();
  const files = names.map(name => ({
    file: `${assetsFolder}/${name}`,
    from: join(folder, assetsFolder, name),
  }));
  return { assets, files };
}

/** What is kept in a folder; null when it is not there, or not as it was written. */
async function keptBundle(folder: string): Promise<Bundle | null> {
  try {
    const { assets, bytes }: Facts = JSON.parse(await readFile(join(folder, factsFile), 'utf8'));
    if ((await hashOfKept(folder, assets)) !== bytes) return null;
    const now = new Date();
    await utimes(folder, now, now);
    return await bundleIn(folder, assets);
  } catch {
    return null;
  }
}

async function hashOfKept(folder: string, assets: Assets): Promise<string> {
  return hashOf(assets, await hashOfFiles(join(folder, assetsFolder), /./));
}

/** Removes all but the bundles used last. */
async function forgetOldest(): Promise<void> {
  const used = await Promise.all(
    (await readdir(keptFolder)).map(async name => {
      const folder = join(keptFolder, name);
      return { folder, at: (await stat(folder)).mtimeMs };
    }),
  );
  for (const { folder } of used.sort((a, b) => b.at - a.at).slice(keptAtMost)) {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The bundled files of a program below a base path: kept ones, or made now. */
export async function bundle(bundling: Bundling): Promise<Bundle> {
  const folder = join(keptFolder, hashOf(bundling.program, bundling.base));
  const kept = bundling.afresh ? null : await keptBundle(folder);
  if (kept !== null) return kept;
  const aside = join(keptFolder, '.aside');
  try {
    // What a killed build has left: one build runs at a time.
    await rm(aside, { recursive: true, force: true });
    await mkdir(aside, { recursive: true });
    const assets = await bundleInto(aside, bundling);
    const facts: Facts = { assets, bytes: await hashOfKept(aside, assets) };
    await writeFile(join(aside, factsFile), JSON.stringify(facts));
    await rm(folder, { recursive: true, force: true });
    await rename(aside, folder);
    await forgetOldest();
    return await bundleIn(folder, assets);
  } finally {
    await rm(aside, { recursive: true, force: true });
  }
}
