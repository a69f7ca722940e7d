/** The search index of a site, made with Pagefind from records rather than from pages, so that it need not wait for them. */

import { mkdir, readFile, stat, writeFile } from 'node:fs/promises';
import { dirname, join, resolve } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { close, createIndex, type PagefindIndex } from 'pagefind';
import { signed, unsigned, writeWhole } from '../files.ts';
import { hashOf } from '../hash.ts';
import { mayBeTaken } from '../resultStore.ts';
import type { SearchRecord } from '../site/data/searchRecords.ts';

const keptFolder = resolve('.cache/search');

/** Parts of the index written for people who want a ready-made search page; ours is our own. */
const readyMadeParts = /^pagefind-(?:ui|modular-ui|component-ui|highlight)\b/;

export interface SearchIndex {
  /** Writes the index as `pagefind/` into a built site. Throws when the index cannot be made. */
  writeInto: (built: string) => Promise<void>;
}

/**
 * Fails when this process has nothing left to wait for: the index is made by a program of its own, and where that dies, the library goes on
 * waiting for its answer and nothing is said.
 */
function watchProgram(): { stopped: Promise<never>; unwatch: () => void } {
  const { promise: stopped, reject } = Promise.withResolvers<never>();
  const onNothingLeft = () => reject(cannotBeMade(['the program that makes it has stopped']));
  process.once('beforeExit', onNothingLeft);
  return { stopped, unwatch: () => process.off('beforeExit', onNothingLeft) };
}

export interface IndexRequest {
  records: readonly SearchRecord[];
  /** Where the site goes. */
  out: string;
  /** Hash of the program and its packages. */
  program: string;
}

interface IndexFile {
  path: string;
  content: Uint8Array;
}

/** What was kept under a path and this key; null where there is nothing that may be taken. */
async function keptFiles(path: string, key: string): Promise<IndexFile[] | null> {
  try {
    if (!mayBeTaken((await stat(path)).mtimeMs)) return null;
    const bytes = unsigned(await readFile(path));
    const [ofKey, files] = bytes === null ? [] : deserialize(bytes);
    return ofKey === key ? files : null;
  } catch {
    return null;
  }
}

/**
 * Starts the index of everything a search finds, or takes that of the last build where the records are the same. It is made by a process of its own
 * while the pages are rendered. The same records give the same bytes. `stop` must be called whatever happens.
 */
export function startSearchIndex(request: IndexRequest): SearchIndex & { stop: () => Promise<void> } {
  const { records, out, program } = request;
  const { stopped, unwatch } = watchProgram();
  let index: PagefindIndex | null = null;
  async function make(): Promise<IndexFile[]> {
    const path = join(keptFolder, hashOf(out));
    const key = hashOf(program, records);
    const kept = await keptFiles(path, key);
    if (kept !== null) return kept;
    index = await indexOf(records);
    const { files, errors } = await index.getFiles();
    if (errors.length > 0) throw cannotBeMade(errors);
    const ours = files.filter(({ path: part }) => !readyMadeParts.test(part));
    await writeWhole(path, signed(serialize([key, ours])));
    return ours;
  }
  const ready = Promise.race([make(), stopped]);
  // Told by whoever waits for them; a build that fails earlier does not wait.
  for (const each of [ready, stopped]) each.catch(() => undefined);
  return {
    async writeInto(built) {
      // Written here, not by the program, which panics on a full disk.
      for (const { path, content } of await ready) {
        const to = join(built, 'pagefind', path);
        await mkdir(dirname(to), { recursive: true });
        await writeFile(to, content);
      }
    },
    async stop() {
      await ready.catch(() => undefined);
      if (index !== null) {
        await Promise.race([index.deleteIndex(), stopped]).catch(() => undefined);
        await close();
      }
      unwatch();
    },
  };
}

function cannotBeMade(errors: readonly string[]): Error {
  return new Error(`the search index could not be made: ${errors.join('; ')}`);
}

async function indexOf(records: readonly SearchRecord[]): Promise<PagefindIndex> {
  const { index, errors } = await createIndex({ forceLanguage: 'en' });
  if (!index) throw cannotBeMade(errors);
  const problems: string[] = [];
  for (const record of records) {
    const added = await index.addCustomRecord({
      ...record,
      sort: { ...record.sort },
    });
    problems.push(...added.errors);
  }
  if (problems.length > 0) throw cannotBeMade(problems);
  return index;
}
