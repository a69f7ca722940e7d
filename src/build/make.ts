/** Makes files of the site: each is made, searched for what is private, and written, all in one place. */

import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { redirectPage } from '../outputs/redirects.ts';
import { documentOf } from '../site/layout.ts';
import type { Made, Route } from '../site/route.ts';
import { routesOf } from '../site/routes.ts';
import { linksOf, type Site } from '../site/site.ts';
import { type FinishedFile, finishedFile } from './finishedSite.ts';
import { privacyScan, refusePrivate, type Secrets } from './privacyScan.ts';

/** What a maker of files has to know: plain data, so that it can be handed to a worker. */
export interface MakerInput {
  site: Site;
  /** Folder of the site being built. */
  built: string;
  secrets: Secrets;
}

/** Makes the files of some routes, and says what there is to know of each; a file that is not to be is left out. */
export type Maker = (files: readonly string[]) => Promise<FinishedFile[]>;

/** The bytes of a file; a page gets the base layout around it. */
export function bytesOf(made: Exclude<Made, null>, site: Site): Buffer {
  if (typeof made === 'string') return Buffer.from(made);
  if (made instanceof Uint8Array) return Buffer.from(made.buffer, made.byteOffset, made.byteLength);
  return Buffer.from('from' in made ? redirectPage(made, linksOf(site)) : documentOf(made, site));
}

function isRedirect(made: Exclude<Made, null>): boolean {
  return typeof made === 'object' && 'from' in made;
}

/** A maker of the routes of a site. `routes` are worked out anew where they are not given. */
export function makerOf(
  { site, built, secrets }: MakerInput,
  routes: ReadonlyMap<string, Route> = routesOf(site),
): Maker {
  const scan = privacyScan(secrets, site.all);
  const folders = new Set<string>();
  const write = (file: string, bytes: Buffer) => {
    const folder = dirname(join(built, file));
    if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
    folders.add(folder);
    // Refuses a file that something else has written.
    writeFileSync(join(built, file), bytes, { flag: 'wx' });
  };
  return async files => {
    const finished: FinishedFile[] = [];
    for (const file of files) {
      const route = routes.get(file)!;
      const made = await route.make();
      if (made === null) continue;
      const bytes = bytesOf(made, site);
      if (!route.ofNothingWritten) refusePrivate(scan, secrets, file, bytes);
      write(file, bytes);
      finished.push(finishedFile(built, file, bytes, isRedirect(made)));
    }
    return finished;
  };
}
