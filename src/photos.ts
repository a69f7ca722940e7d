/**
 * Photographs: originals stay in the content folder; what is published are smaller copies without camera data. Copies are kept between
 * builds, so nothing is encoded twice.
 */

import { readFile, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { contentDir } from './content.ts';
import { photoEnds, photoFacts } from './core/reading/photoFacts.ts';
import { photoTrouble } from './core/reading/photoTrouble.ts';
import { encodersFor, makeCopies } from './photos/copies.ts';
import { type Format, formats } from './photos/settings.ts';
import { fileOf, type KeptPhoto, keepPhoto, keptBytes, keptPhoto, keyOf } from './photos/store.ts';
import { inTurns } from './turns.ts';

interface PhotoVariant {
  /** Path on the site. */
  path: string;
  width: number;
}

export interface PublishedPhoto {
  /** Best format first; JPEG comes as `fallback` only. */
  sources: { type: string; variants: PhotoVariant[] }[];
  /** Path of the JPEG for browsers without the others. */
  fallback: string;
  /** Size in pixels of the fallback, upright. */
  width: number;
  height: number;
  /** Data URL of a few pixels, for the time until a copy is there. */
  placeholder: string;
  /** Names of all copies on the site. */
  names: string[];
}

/** A photograph that cannot be published; the message names the file and what to do. */
class PhotoError extends Error {
  override name = 'PhotoError';
}

/** By path, time and size of the original. */
const started = new Map<string, Promise<PublishedPhoto>>();
const encoders = encodersFor(availableParallelism());
/** Originals in memory at once: one more than encoders, so that while the last large copy of one is made, the next keeps the others busy. */
const photoTurn = inTurns(encoders + 1);
const encodeTurn = inTurns(encoders);
let encoded = 0;

/** Copies that this process has encoded so far: none when nothing changed since the last run. */
export function encodedCopies(): number {
  return encoded;
}

/** The published copies of a photograph in content/photos; made on the first call. Throws a PhotoError. */
export async function photo(file: string): Promise<PublishedPhoto> {
  const path = join(contentDir(), 'photos', file);
  const key = `${path}\n${await lastWritten(path)}`;
  let published = started.get(key);
  if (!published) {
    published = photoTurn(() => publish(file, path));
    started.set(key, published);
  }
  return published;
}

async function lastWritten(path: string): Promise<string> {
  return stat(path).then(
    ({ mtimeMs, size }) => `${mtimeMs} ${size}`,
    () => 'not there',
  );
}

const copyName = /^([0-9a-f]{16})-(\d+\.(avif|webp|jpg))$/;

/** The bytes of a copy made before, and its media type. Throws on a name that `photo` has not given. */
export async function photoCopy(name: string): Promise<{ bytes: Uint8Array<ArrayBuffer>; type: string }> {
  const [, key, file, format] = copyName.exec(name) ?? [];
  if (!key || !file || !format) throw new PhotoError(`${name} is no copy of a photo.`);
  return { bytes: await keptBytes(key, file), type: formats[format as Format].type };
}

async function publish(file: string, path: string): Promise<PublishedPhoto> {
  const original = await readOriginal(file, path);
  const trouble = photoTrouble(photoFacts(photoEnds(original)));
  if (trouble) throw new PhotoError(`photos/${file}: ${trouble.message}; ${trouble.remedy}`);
  const key = await keyOf(original);
  return shown((await keptPhoto(key)) ?? (await make(file, key, original)));
}

async function make(file: string, key: string, original: Uint8Array): Promise<KeptPhoto> {
  const copies = await makeCopies(original, encodeTurn).catch(problem => {
    const why = problem instanceof Error ? problem.message.split('\n')[0] : String(problem);
    throw new PhotoError(
      `photos/${file}: this picture cannot be read (${why}); save it again as JPEG or PNG.`,
    );
  });
  encoded += copies.copies.length;
  return keepPhoto(key, copies);
}

function shown({ key, copies, placeholder }: KeptPhoto): PublishedPhoto {
  const nameOf = (copy: (typeof copies)[number]) => `${key}-${fileOf(copy)}`;
  const of = (format: Format) =>
    copies.filter(copy => copy.format === format).sort((a, b) => a.width - b.width);
  const [jpeg] = of('jpg');
  return {
    sources: (['avif', 'webp'] as const).map(format => ({
      type: formats[format].type,
      variants: of(format).map(copy => ({ path: `/photos/${nameOf(copy)}`, width: copy.width })),
    })),
    fallback: `/photos/${nameOf(jpeg!)}`,
    width: jpeg!.width,
    height: jpeg!.height,
    placeholder,
    names: copies.map(nameOf),
  };
}

async function readOriginal(file: string, path: string): Promise<Uint8Array> {
  try {
    return await readFile(path);
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== 'ENOENT') throw problem;
    throw new PhotoError(`photos/${file}: there is no such file in ${join(contentDir(), 'photos')}.`);
  }
}

/** Told after each photograph: how many are done, of how many, and how many copies had to be encoded. */
export type PhotosTold = (done: number, all: number, encoded: number) => void;

/**
 * The published copies of photographs by the file of the original; those that are missing are made. Throws one PhotoError that names every
 * photograph that cannot be published.
 */
export async function publishedPhotos(
  files: readonly string[],
  tell: PhotosTold = () => {},
): Promise<Map<string, PublishedPhoto>> {
  const before = encodedCopies();
  let done = 0;
  const results = await Promise.allSettled(
    files.map(async file => {
      const published = await photo(file);
      done += 1;
      tell(done, files.length, encodedCopies() - before);
      return [file, published] as const;
    }),
  );
  const failed = results.flatMap(result => (result.status === 'rejected' ? [result.reason as unknown] : []));
  const unexpected = failed.find(reason => !(reason instanceof Error && reason.name === 'PhotoError'));
  if (unexpected !== undefined) throw unexpected;
  if (failed.length > 0) throw new PhotoError(failed.map(reason => (reason as Error).message).join('\n'));
  return new Map(results.flatMap(result => (result.status === 'fulfilled' ? [result.value] : [])));
}
