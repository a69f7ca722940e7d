/** Renders the pages of a site with what was compiled of the program: the same files as the generator writes by itself. */

import { cp, mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { type PathWithRoute, StaticPaths } from 'astro/runtime/prerender/static-paths.js';
import { inTurns } from '../turns.ts';
import { countPage } from './buildLog.mjs';
import type { KeptGenerator } from './keptGenerator.ts';

/** As the generator is told to in its settings. */
const pagesAtOnce = 4;

/** File of a rendered path below the output folder, in the generator's format of one folder for each page. */
export function fileOfPath({ pathname, route }: { pathname: string; route: { type: string } }): string {
  const path = pathname.replace(/^\/|\/$/g, '');
  if (route.type !== 'page') return path;
  // The one page that hosts look for under its own name.
  if (path === '404') return '404.html';
  return path === '' ? 'index.html' : `${path}/index.html`;
}

export interface Site {
  /** Address of the site, without the base path, and the path with a slash at both ends. */
  address: string;
  base: string;
  built: string;
}

async function renderPath({ app }: KeptGenerator, path: PathWithRoute, { address, base, built }: Site) {
  const { pathname, route } = path;
  const ending = route.type === 'page' && !pathname.endsWith('/') ? '/' : '';
  const url = new URL(base + encodeURI(pathname).replace(/^\//, '') + ending, address);
  const response = await app.render(new Request(url), { routeData: route });
  const file = fileOfPath(path);
  if (!response.ok && file !== '404.html')
    throw new Error(`${pathname} was not rendered: ${response.status}`);
  const to = join(built, file);
  await mkdir(dirname(to), { recursive: true });
  // Refuses a second page of the same file.
  await writeFile(to, Buffer.from(await response.arrayBuffer()), { flag: 'wx' });
}

/** Renders every path the pages ask for, and puts the files beside that are the same on every site. */
export async function renderKept(generator: KeptGenerator, site: Site): Promise<void> {
  await cp(generator.same, site.built, { recursive: true });
  const turn = inTurns(pagesAtOnce);
  const paths = await new StaticPaths(generator.app).getAll();
  let isFailing = false;
  const renderings = paths.map(path =>
    turn(async () => {
      if (isFailing) return;
      try {
        await renderPath(generator, path, site);
      } catch (problem) {
        isFailing = true;
        throw problem;
      }
      countPage();
    }),
  );
  // All of them: where one fails, the others must have stopped writing before the folder is removed.
  const failed = (await Promise.allSettled(renderings)).find(({ status }) => status === 'rejected');
  if (failed?.status === 'rejected') throw failed.reason;
}
