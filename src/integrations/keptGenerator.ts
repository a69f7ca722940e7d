/**
 * Has the site generator compile the program, the code of the pages with their styles and scripts, and keeps that: a build of the same program
 * then only has to run the code. Nothing of the content is in it, so it can publish nothing old; its key is the hash of all it is compiled from,
 * and beside it stands the hash of its own bytes, so that code which was cut short or altered is never run.
 */

import { readdirSync } from 'node:fs';
import { cp, mkdir, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type AstroIntegration, build as buildSite, type RouteData } from 'astro';
import type { StaticPathsApp } from 'astro/runtime/prerender/static-paths.js';
import { hashOfFiles } from '../files.ts';
import { hashOf } from '../pageReuse.ts';
import { buildLog, logDestination } from './buildLog.mjs';

const keptFolder = resolve('.cache/generator');
/**
 * Where the program is compiled: in the project, whatever the output folder is. The generator compares that folder with the project by the
 * beginning of its path, and moves files between them as if they were on one disk.
 */
const compilingFolder = resolve('.build/compiling');
/** Below the folder of a kept generator: its code, and the files that are the same on every site it renders. */
const codeFolder = 'code';
const sameFolder = 'same';
const factsFile = 'facts.json';
/** Kept at most: a few branches or base paths in turn. Some 3 MB each. */
const keptAtMost = 4;

/** Names of kept generators, which are keys, and of what a killed build has left. */
const ownFolders = /^(?:[\w-]{32}|\.aside-\d+)$/;

/** As the generator names its folder of compiled pages below the output, and the file in it that leads to the rest. */
const compiledFolder = '.prerender';
const entryName = /^prerender-entry\..+\.mjs$/;

/** What the compiled pages ask of the generator while they are rendered: the styles of each route. */
interface Facts {
  entry: string;
  pages: [key: string, { styles: unknown[] }][];
  /** Hash of all other files. */
  bytes: string;
}

/** The part of the compiled application that is used here. */
export interface CompiledApp extends StaticPathsApp {
  setInternals: (internals: { pagesByKeys: ReadonlyMap<string, unknown> }) => void;
  setOptions: (options: object) => void;
  render: (request: Request, options: { routeData: RouteData }) => Promise<Response>;
}

export interface KeptGenerator {
  app: CompiledApp;
  /** Folder of the files that are the same on every site: styles, scripts, and those of public/. */
  same: string;
}

/** Key of what the generator compiles of a program. The address of the site and the path below which it lives are compiled into every link. */
export function generatorKey(program: string, address: string, base: string): string {
  return hashOf(program, process.version, address, base);
}

/** Hash of all that is kept of a generator. */
export async function hashOfKept(folder: string, { entry, pages }: Omit<Facts, 'bytes'>): Promise<string> {
  const code = await hashOfFiles(join(folder, codeFolder), /./);
  return hashOf(code, await hashOfFiles(join(folder, sameFolder), /./), entry, pages);
}

/** The generator kept under a key; null when there is none that can be used. */
export async function keptGenerator(key: string): Promise<KeptGenerator | null> {
  const folder = join(keptFolder, key);
  try {
    const { entry, pages, bytes }: Facts = JSON.parse(await readFile(join(folder, factsFile), 'utf8'));
    if ((await hashOfKept(folder, { entry, pages })) !== bytes) return null;
    const { app }: { app: CompiledApp } = await import(pathToFileURL(join(folder, codeFolder, entry)).href);
    app.setInternals({ pagesByKeys: new Map(pages) });
    app.setOptions({ settings: { scripts: [] }, logger: { options: { destination: logDestination() } } });
    // What an earlier build of this process found out about its own content.
    app.routeCache?.clearAll();
    const now = new Date();
    await utimes(folder, now, now);
    return { app, same: join(folder, sameFolder) };
  } catch {
    // Lost or broken: compiled again.
    return null;
  }
}

/** Removes all but the generators used last. */
async function forgetOldest(): Promise<void> {
  const used = await Promise.all(
    (await readdir(keptFolder))
      .filter(name => ownFolders.test(name))
      .map(async name => {
        const folder = join(keptFolder, name);
        return { folder, at: (await stat(folder)).mtimeMs };
      }),
  );
  for (const { folder } of used.sort((a, b) => b.at - a.at).slice(keptAtMost)) {
    await rm(folder, { recursive: true, force: true });
  }
}

export interface Compiling {
  /** The project. */
  root: string;
  /** Address of the site, and path below which it lives. */
  address: string;
  base: string;
}

interface CodeKeeper {
  integration: AstroIntegration;
  /** Once the program is compiled: what there is to know of its code, which lies in the folder `aside` by then. */
  facts: () => Omit<Facts, 'bytes'>;
}

/** Takes the code aside before the generator removes it, and has it render nothing. */
function codeKeeper(site: string, aside: string): CodeKeeper {
  let routes: ReadonlyMap<string, { styles: unknown[] }> = new Map();
  let entry: string | undefined;
  async function takeAside(): Promise<void> {
    await cp(join(site, compiledFolder), join(aside, codeFolder), { recursive: true });
    entry = readdirSync(join(aside, codeFolder)).find(name => entryName.test(name));
  }
  return {
    integration: {
      name: 'leafdrop-kept-generator',
      hooks: {
        'astro:build:setup': ({ pages }) => {
          routes = pages as typeof routes;
        },
        // Between compiling and rendering, once styles and scripts lie in the output folder.
        'astro:build:start': ({ setPrerenderer }) =>
          setPrerenderer({
            name: 'leafdrop-compiler',
            setup: takeAside,
            getStaticPaths: async () => [],
            render: async () => {
              throw new Error('nothing is rendered while the program is compiled');
            },
          }),
      },
    },
    facts() {
      if (entry === undefined)
        throw new Error('the generator has not put what it compiled where it is looked for');
      return { entry, pages: [...routes].map(([key, { styles }]) => [key, { styles }]) };
    },
  };
}

/**
 * Compiles the program and keeps it under a key. Throws when the generator has logged an error, whatever it made of it, and when what it
 * compiled cannot be run.
 */
export async function compileGenerator(
  key: string,
  { root, address, base }: Compiling,
): Promise<KeptGenerator> {
  const folder = join(compilingFolder, String(process.pid));
  const aside = join(keptFolder, `.aside-${process.pid}`);
  // A variable of this name, as some shells and test runners set it, would win over the base path in every link.
  delete process.env.BASE_URL;
  try {
    for (const each of [folder, aside]) await rm(each, { recursive: true, force: true });
    await mkdir(folder, { recursive: true });
    const compiled = codeKeeper(join(folder, 'site'), aside);
    await buildSite({
      root,
      site: address,
      base,
      outDir: join(folder, 'site'),
      // A cache of the generator's own could publish old content, so each build starts from none.
      cacheDir: join(folder, 'cache'),
      mode: 'production',
      integrations: [compiled.integration],
    });
    const [problem] = buildLog().problems;
    if (problem !== undefined) throw new Error(`the site was not built: ${problem}`);
    await cp(join(folder, 'site'), join(aside, sameFolder), { recursive: true });
    const bytes = await hashOfKept(aside, compiled.facts());
    await writeFile(join(aside, factsFile), JSON.stringify({ ...compiled.facts(), bytes } satisfies Facts));
    await rm(join(keptFolder, key), { recursive: true, force: true });
    await rename(aside, join(keptFolder, key));
    await forgetOldest();
  } finally {
    for (const each of [folder, aside]) await rm(each, { recursive: true, force: true });
  }
  const kept = await keptGenerator(key);
  if (kept === null) throw new Error('the site was not built: what was compiled of the program does not run');
  return kept;
}
