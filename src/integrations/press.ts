/** Starts the press beside a build, hands it its order and its moulds, and takes what it printed. */

import { fork } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { shortAddress } from '../core/addresses/paths.ts';
import type { Redirect } from '../core/addresses/publication.ts';
import type { Catalogue } from '../core/catalogue.ts';
import { siteLinks } from '../outputs/siteLinks.ts';
import { isWhole, mouldFile, mouldFolder, mouldKinds, type PouredKind } from '../views/mould.ts';
import type { PrintedFile } from '../views/printed.ts';
import { writeRedirect } from './addressList.ts';
import { ended } from './ended.ts';
import { type FinishedFile, pathOfFile } from './finishedSite.ts';
import type { Secrets } from './privacyScan.ts';

const pressRoom = fileURLToPath(new URL('pressRoom.ts', import.meta.url));

/** What the press is asked to print. */
export interface PressOrder {
  all: Catalogue;
  /** Folder of the site being built, and of the one before. */
  built: string;
  out: string;
  base: string;
  ground: string;
  /** Prints every page, also those that show nothing new. */
  afresh: boolean;
  secrets: Secrets;
}

/** A file of the new site, with the key of what it shows. */
export type KeyedFile = FinishedFile & { key: string };

/** What came off the press. */
export interface PrintRun {
  files: KeyedFile[];
  /** How many of them are those of the site before. */
  reused: number;
}

export const nothingPrinted: PrintRun = { files: [], reused: 0 };

export type ToPress =
  | { order: PressOrder }
  /** What the generator rendered for the mould of each kind. */
  | { moulds: Record<PouredKind, string> };

export type FromPress = { run: PrintRun } | { problem: string };

/** The short address of a printed page; null where it has none. */
export function shortAddressOf({ codes }: Pick<Catalogue, 'codes'>, file: string): Redirect | null {
  const path = pathOfFile(file);
  const code = path === null ? undefined : codes.get(path);
  return path === null || code === undefined ? null : { from: shortAddress(code), to: path };
}

/** The short addresses of the pages among these files. */
export function shortAddressesOf(
  all: Pick<Catalogue, 'codes'>,
  files: readonly { file: string }[],
): Redirect[] {
  return files.flatMap(({ file }) => shortAddressOf(all, file) ?? []);
}

export interface Press {
  /** Hands over the moulds as soon as the generator has written all of them; called now and then, it does nothing until then, and nothing after. */
  offerMoulds: () => void;
  /** Helps with what is left to do, and returns what was printed, moulds taken away. Throws when something could not be printed, or would show something private. */
  finished: () => Promise<PrintRun>;
  /** Ends the press, whatever it is doing, and waits until it is gone. */
  stop: () => Promise<void>;
}

/**
 * Writes what sends readers on from the short addresses of printed pages, the last first, until it meets the press, which comes from the other
 * end. Both write the same, so it does no harm when they meet at one file.
 */
function helpFromTheEnd({ all, built, base }: PressOrder, printed: readonly PrintedFile[]): void {
  const links = siteLinks(all.yard.address, base);
  for (const redirect of shortAddressesOf(all, printed).toReversed()) {
    if (!writeRedirect(built, redirect, links)) return;
  }
}

/** Starts the press on an order of these files. */
export function startPress(order: PressOrder, printed: readonly PrintedFile[]): Press {
  const child = fork(pressRoom, { serialization: 'advanced', stdio: ['ignore', 'ignore', 'inherit', 'ipc'] });
  const run = new Promise<PrintRun>((resolve, reject) => {
    child.on('message', (message: FromPress) => {
      if ('run' in message) resolve(message.run);
      else reject(new Error(message.problem));
    });
    child.on('error', reject);
    child.on('exit', code => reject(new Error(`the press stopped before its work was done (code ${code})`)));
  });
  // Told by whoever waits for it; a build that fails earlier does not wait.
  run.catch(() => undefined);
  const tell = (message: ToPress) => child.send(message);
  tell({ order });

  let offered = false;
  const path = (kind: PouredKind) => join(order.built, mouldFile(kind));
  const offerMoulds = () => {
    if (offered || !mouldKinds.every(kind => existsSync(path(kind)))) return;
    const texts = mouldKinds.map(kind => [kind, readFileSync(path(kind), 'utf8')] as const);
    if (!texts.every(([, text]) => isWhole(text))) return;
    offered = true;
    tell({ moulds: Object.fromEntries(texts) as Record<PouredKind, string> });
  };
  return {
    offerMoulds,
    async finished() {
      offerMoulds();
      if (!offered) throw new Error('the generator has not rendered what the press needs');
      helpFromTheEnd(order, printed);
      const done = await run;
      for (const kind of mouldKinds)
        await rm(join(order.built, mouldFolder(kind)), { recursive: true, force: true });
      return done;
    },
    stop: () => ended(child),
  };
}
