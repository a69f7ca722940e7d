/**
 * Photographs: originals stay in the content folder; what is published are smaller copies without camera data.
 * Copies are kept under names made from the bytes of the original and from the settings, so nothing is encoded twice.
 */

import { createHash } from 'node:crypto';
import { mkdir, readFile, rename, stat, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { contentDir } from './content.ts';

const cacheDir = resolve('.cache/photos');

/** Widths in pixels; a copy is never wider than its original. */
const widths = [480, 960, 1440] as const;
/** Part of the name of every copy: change it when a setting below changes. */
const settingsVersion = '1';

const formats = {
  avif: { type: 'image/avif', encode: (image: Sharp) => image.avif({ quality: 50, effort: 3 }) },
  webp: { type: 'image/webp', encode: (image: Sharp) => image.webp({ quality: 75 }) },
  jpg: {
    type: 'image/jpeg',
    encode: (image: Sharp) => image.flatten({ background: '#fff' }).jpeg({ quality: 78, mozjpeg: true }),
  },
} as const;
type Format = keyof typeof formats;

export interface PhotoVariant {
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
  /** Names of all copies, as they lie in the cache. */
  names: string[];
}

/** A photograph that cannot be published; the message names the file and what to do. */
export class PhotoError extends Error {
  override name = 'PhotoError';
}

const started = new Map<string, Promise<PublishedPhoto>>();

/** Photographs worked on at once: enough to keep the encoders busy, few enough that large originals fit in memory. */
const lanes: Promise<unknown>[] = [Promise.resolve(), Promise.resolve()];
let queued = 0;

/** Starts a job when the one before it in its lane is done, however that ended. */
function inTurn<T>(job: () => Promise<T>): Promise<T> {
  const lane = queued % lanes.length;
  queued += 1;
  const result = lanes[lane]!.then(job);
  lanes[lane] = result.catch(() => undefined);
  return result;
}

/** The published copies of a photograph in content/photos; made on the first call. Throws a PhotoError. */
export function photo(file: string): Promise<PublishedPhoto> {
  let published = started.get(file);
  if (!published) {
    published = inTurn(() => publish(file));
    started.set(file, published);
  }
  return published;
}

/** The bytes of a copy made before, and its media type. */
export async function photoCopy(name: string): Promise<{ bytes: Uint8Array<ArrayBuffer>; type: string }> {
  const format = name.slice(name.lastIndexOf('.') + 1) as Format;
  return { bytes: new Uint8Array(await readFile(join(cacheDir, name))), type: formats[format].type };
}

async function publish(file: string): Promise<PublishedPhoto> {
  const original = await readOriginal(file);
  const { width, height } = await uprightSize(file, original);
  const hash = createHash('sha256').update(settingsVersion).update(original).digest('hex').slice(0, 16);
  const ours = widths.filter(candidate => candidate <= width);
  const sized = ours.length === 0 ? [width] : ours;
  const middle = sized[Math.min(1, sized.length - 1)]!;
  const nameOf = (format: Format, at: number) => `${hash}-${at}.${format}`;
  const wanted: [Format, number][] = [
    ...sized.map(at => ['avif', at] as [Format, number]),
    ...sized.map(at => ['webp', at] as [Format, number]),
    ['jpg', middle],
  ];
  await mkdir(cacheDir, { recursive: true });
  await Promise.all(wanted.map(([format, at]) => makeCopy(file, original, format, at, nameOf(format, at))));
  const variants = (format: Format) =>
    sized.map(at => ({ path: `/photos/${nameOf(format, at)}`, width: at }));
  return {
    sources: (['avif', 'webp'] as const).map(format => ({
      type: formats[format].type,
      variants: variants(format),
    })),
    fallback: `/photos/${nameOf('jpg', middle)}`,
    width: middle,
    height: Math.round((height * middle) / width),
    names: wanted.map(([format, at]) => nameOf(format, at)),
  };
}

async function readOriginal(file: string): Promise<Uint8Array> {
  if (/\.hei[cf]$/i.test(file)) {
    throw new PhotoError(
      `photos/${file}: HEIC pictures cannot be read; save it as JPEG and name that file instead.`,
    );
  }
  try {
    return await readFile(join(contentDir(), 'photos', file));
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== 'ENOENT') throw problem;
    throw new PhotoError(`photos/${file}: there is no such file in ${join(contentDir(), 'photos')}.`);
  }
}

function unreadable(file: string, problem: unknown): PhotoError {
  const why = problem instanceof Error ? problem.message.split('\n')[0] : String(problem);
  return new PhotoError(
    `photos/${file}: this picture cannot be read (${why}); save it again as JPEG or PNG.`,
  );
}

/** Size after the camera's turn is applied. */
async function uprightSize(file: string, original: Uint8Array): Promise<{ width: number; height: number }> {
  try {
    const { autoOrient } = await sharp(original).metadata();
    return autoOrient;
  } catch (problem) {
    throw unreadable(file, problem);
  }
}

async function exists(path: string): Promise<boolean> {
  return stat(path).then(
    () => true,
    () => false,
  );
}

/** Encodes a copy unless it is there. Written aside and moved, so that a broken run leaves no half file. */
async function makeCopy(
  file: string,
  original: Uint8Array,
  format: Format,
  width: number,
  name: string,
): Promise<void> {
  const target = join(cacheDir, name);
  if (await exists(target)) return;
  try {
    const image = sharp(original).autoOrient().resize({ width, withoutEnlargement: true });
    const aside = `${target}.${process.pid}.part`;
    await writeFile(aside, await formats[format].encode(image).toBuffer());
    await rename(aside, target);
  } catch (problem) {
    throw unreadable(file, problem);
  }
}
