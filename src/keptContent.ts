/**
 * What was read of content/, kept on the process: the build reads it once, loads the collections in one module graph and renders the pages
 * in another, and all must show the same. A file of its own, so that the collections need not load everything that reads content.
 */

import type { Catalogue } from './core/catalogue.ts';
import type { Records } from './core/records/records.ts';

export interface Loaded {
  records: Records;
  catalogue: Catalogue;
}

interface Kept {
  /** What it was made from: the folder and the day. */
  key: string;
  loaded: Promise<Loaded>;
}

const holder = globalThis as typeof globalThis & { leafdropContent?: Kept };

/** What is kept, if it was made from what is asked for; what was read before is asked for without a key. */
export function keptContent(key?: string): Promise<Loaded> | undefined {
  const kept = holder.leafdropContent;
  return key === undefined || kept?.key === key ? kept?.loaded : undefined;
}

/** Keeps what was read, in the place of what was kept before. */
export function keep(key: string, loaded: Promise<Loaded>): Promise<Loaded> {
  holder.leafdropContent = { key, loaded };
  return loaded;
}
