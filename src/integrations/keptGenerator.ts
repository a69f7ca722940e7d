/**
 * Keeps what the site generator compiles of the program: the code of the pages, their styles and scripts. A build of the same program then
 * only has to run that code. Nothing of the content is in it, so it can publish nothing old; its key is the hash of all it is compiled from.
 */

import { existsSync, readdirSync } from 'node:fs';
import { cp, readdir, readFile, rename, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AstroIntegration, RouteData } from 'astro';
import type { StaticPathsApp } from 'astro/runtime/prerender/static-paths.js';
import { hashOf } from '../pageReuse.ts';
import { logDestination } from './buildLog.mjs';

const keptFolder = resolve('.cache/generator');
/** Below the folder of a kept generator: its code, and the files that are the same on every site it renders. */
const codeFolder = 'code';
const sameFolder = 'same';
const factsFile = 'facts.json';
/** Kept at most: a few branches or base paths in turn. Some 3 MB each. */
const keptAtMost = 4;

/** As the generator names its folder of compiled pages, below the output or else below where it runs, and the file in it that leads to the rest. */
const compiledFolder = '.prerender';
const compiledElsewhere = '.astro';
const entryName = /^prerender-entry\..+\.mjs$/;

/** What the compiled pages ask of the generator while they are rendered: the styles of each route. */
interface Facts {
  entry: string;
  pages: [key: string, { styles: unknown[] }][];
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

/** The generator kept under a key; null when there is none that can be used. */
export async function keptGenerator(key: string): Promise<KeptGenerator | null> {
  const folder = join(keptFolder, key);
  try {
    const { entry, pages }: Facts = JSON.parse(await readFile(join(folder, factsFile), 'utf8'));
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
    (await readdir(keptFolder)).map(async name => {
      const folder = join(keptFolder, name);
      return { folder, at: (await stat(folder)).mtimeMs };
    }),
  );
  for (const { folder } of used.sort((a, b) => b.at - a.at).slice(keptAtMost)) {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Takes part in a build of the generator to keep what it compiles. */
export interface Keeper {
  integration: AstroIntegration;
  /** Keeps it under a key; to be called once the build has succeeded. */
  keep: (key: string) => Promise<void>;
}

/** `built` is the output folder of the build. */
export function generatorKeeper(built: string): Keeper {
  const aside = join(keptFolder, `.aside-${process.pid}`);
  let routes: ReadonlyMap<string, { styles: unknown[] }> = new Map();
  let folders: { assets: string; publicDir: URL } | null = null;
  async function copyCompiled(): Promise<void> {
    const compiled = [join(built, compiledFolder), resolve(compiledElsewhere, compiledFolder)].find(
      existsSync,
    );
    const entry = compiled && readdirSync(compiled).find(name => entryName.test(name));
    if (!entry) return;
    await rm(aside, { recursive: true, force: true });
    await cp(compiled, join(aside, codeFolder), { recursive: true });
    // Not the whole output folder: others may be writing pages into it by now, and no page may be kept.
    const { assets, publicDir } = folders!;
    await cp(publicDir, join(aside, sameFolder), { recursive: true });
    await cp(join(built, assets), join(aside, sameFolder, assets), { recursive: true });
    const pages = [...routes].map(([key, { styles }]): Facts['pages'][number] => [key, { styles }]);
    await writeFile(join(aside, factsFile), JSON.stringify({ entry, pages } satisfies Facts));
  }
  return {
    integration: {
      name: 'leafdrop-kept-generator',
      hooks: {
        'astro:config:done': ({ config: { build, publicDir } }) => {
          folders = { assets: build.assets, publicDir };
        },
        'astro:build:setup': ({ pages }) => {
          routes = pages as typeof routes;
        },
        // Between compiling and rendering, once styles and scripts lie in the output folder.
        'astro:build:start': ({ setPrerenderer }) =>
          setPrerenderer(usual => ({
            ...usual,
            async setup() {
              await usual.setup?.();
              await copyCompiled();
            },
          })),
      },
    },
    async keep(key) {
      if (!existsSync(aside)) return;
      await rm(join(keptFolder, key), { recursive: true, force: true });
      await rename(aside, join(keptFolder, key));
      await forgetOldest();
    },
  };
}
