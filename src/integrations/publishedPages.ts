/**
 * What the last build published, and taking pages from it. The list is kept in .cache/, with the hash of every page's bytes: a page that
 * was touched since, or a list that is lost, broken or of another program, only means that the page is rendered again.
 */

import { createHash } from 'node:crypto';
import { copyFileSync, linkSync, mkdirSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import type { Catalogue } from '../core/catalogue.ts';
import { hashOfFiles, writeWhole } from '../files.ts';
import { groundOf, hashOf, type PageKeys } from '../pageReuse.ts';

const listFolder = resolve('.cache/pages');

interface PublishedList {
  ground: string;
  /** Key and hash of the bytes by file. */
  pages: Record<string, [key: string, bytes: string]>;
}

export function hashOfBytes(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('base64url').slice(0, 32);
}

function listPath(out: string): string {
  return join(listFolder, `${hashOf(out)}.json`);
}

export interface Ground {
  /** Hash of the program. */
  program: string;
  content: string;
  base: string;
  catalogue: Catalogue;
}

/** Hash of the program: its sources, its settings and the packages it uses. */
export async function programHash(root: string): Promise<string> {
  const sources = await hashOfFiles(join(root, 'src'), /^(?!.*\.test\.).*\.(?:ts|mjs|astro|css|svg|json)$/);
  // Laid into every site as they are.
  const laidIn = await hashOfFiles(join(root, 'public'), /./);
  const settings = [
    await readFile(join(root, 'astro.config.mjs')),
    await readFile(join(root, 'package-lock.json')),
  ];
  return hashOf(sources, laidIn, settings.map(hashOfBytes));
}

/** Hash of what every page rests on: the program and its packages, the photographs, the base path, the day, the yard, all but stock. */
export async function groundHash({ program, content, base, catalogue }: Ground): Promise<string> {
  // A yard without photographs has no such folder.
  const photos = await hashOfFiles(join(content, 'photos'), /./).catch(() => null);
  return hashOf(program, photos, base, groundOf(catalogue));
}

/** What is known of the pages published before: key and hash of the bytes by file. */
export type PublishedPages = ReadonlyMap<string, readonly [key: string, bytes: string]>;

/** The pages that rest on the same ground, as the last build has left them. */
export async function publishedPages(out: string, ground: string): Promise<PublishedPages> {
  try {
    const list: PublishedList = JSON.parse(await readFile(listPath(out), 'utf8'));
    return list.ground === ground ? new Map(Object.entries(list.pages)) : new Map();
  } catch {
    return new Map();
  }
}

/** The bytes of a page in the output folder; null when they are not what was published. */
export function untouchedBytes(out: string, file: string, published: PublishedPages): Buffer | null {
  try {
    const bytes = readFileSync(join(out, file));
    return hashOfBytes(bytes) === published.get(file)?.[1] ? bytes : null;
  } catch {
    // Gone or not to be read: rendered again.
    return null;
  }
}

/** Keys of the pages in the output folder that are as they were published. */
export function untouchedKeys(
  out: string,
  published: PublishedPages,
  isWanted: (file: string) => boolean,
): PageKeys {
  const keys = new Map<string, string>();
  for (const [file, [key]] of published) {
    if (isWanted(file) && untouchedBytes(out, file, published) !== null) keys.set(file, key);
  }
  return keys;
}

/** Takes a file of the published site into the new one, without copying its bytes where the disk allows. */
export function takeOver(out: string, built: string, file: string): void {
  const to = join(built, file);
  mkdirSync(dirname(to), { recursive: true });
  try {
    linkSync(join(out, file), to);
  } catch {
    copyFileSync(join(out, file), to);
  }
}

/** Keeps the list for the next build. `bytes` holds the hash of every file of the site. */
export async function keepList(
  out: string,
  ground: string,
  keys: PageKeys,
  bytes: ReadonlyMap<string, string>,
): Promise<void> {
  const pages: PublishedList['pages'] = {};
  for (const [file, key] of keys) pages[file] = [key, bytes.get(file)!];
  await writeWhole(listPath(out), JSON.stringify({ ground, pages } satisfies PublishedList));
}
