/** From the bytes of an original to its published copies: upright, in sRGB, without anything the camera wrote. */

import sharp, { type OutputInfo, type Sharp } from 'sharp';
import type { inTurns } from '../turns.ts';
import { opening } from '../wholePhotos.ts';
import { openable } from './heic.ts';
import { background, copySizes, type Format, formats, placeholder, type Size } from './settings.ts';

interface Copy extends Size {
  format: Format;
  bytes: Uint8Array;
}

export interface Copies {
  copies: Copy[];
  /** Data URL of a few pixels. */
  placeholder: string;
}

/** Threads of Node's pool, where pictures are encoded: 4 unless told otherwise. Two stay free for reading and writing files. */
const poolThreads = 4;

/** Pictures decoded or encoded at once in a process. More than there are processors gains nothing and costs memory. */
export function encodersFor(processors: number): number {
  return Math.max(1, Math.min(processors, poolThreads - 1));
}

interface Pixels {
  data: Buffer;
  info: OutputInfo;
}

/** Copies of a picture; its decoding and every encoding takes a turn. Throws what the library says of a file it cannot read. */
export async function makeCopies(photo: Uint8Array, turn: ReturnType<typeof inTurns>): Promise<Copies> {
  const original = await turn(() => openable(photo));
  const { autoOrient } = await sharp(original, opening).metadata();
  const sizes = copySizes(autoOrient);
  const largest = sizes.at(-1)!;
  // Decoded once, at the largest size that is published; a JPEG is shrunk while it is decoded.
  const pixels: Pixels = await turn(() =>
    sharp(original, opening)
      .autoOrient()
      .resize({ ...largest, fit: 'fill' })
      .flatten({ background })
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true }),
  );
  const wanted: { format: Format; size: Size }[] = [
    ...sizes.toReversed().map(size => ({ format: 'avif' as const, size })),
    ...sizes.toReversed().map(size => ({ format: 'webp' as const, size })),
    { format: 'jpg', size: fallbackSize(sizes) },
  ];
  const [copies, stand] = await Promise.all([
    Promise.all(wanted.map(({ format, size }) => turn(() => encoded(pixels, format, size)))),
    turn(() => tiny(pixels)),
  ]);
  return { copies, placeholder: stand };
}

/** Browsers that need the JPEG are old and few: one size, the middle one. */
function fallbackSize(sizes: readonly Size[]): Size {
  return sizes[Math.min(1, sizes.length - 1)]!;
}

function scaled({ data, info }: Pixels, size: Size): Sharp {
  const { width, height, channels } = info;
  const image = sharp(data, { raw: { width, height, channels } });
  return size.width === width && size.height === height ? image : image.resize({ ...size, fit: 'fill' });
}

async function encoded(pixels: Pixels, format: Format, size: Size): Promise<Copy> {
  const { encoder, options } = formats[format];
  const bytes = await scaled(pixels, size).toFormat(encoder, options).toBuffer();
  return { format, ...size, bytes };
}

async function tiny({ data, info }: Pixels): Promise<string> {
  const { width, height, channels } = info;
  const { side, options } = placeholder;
  const bytes = await sharp(data, { raw: { width, height, channels } })
    .resize({ width: side, height: side, fit: 'inside', withoutEnlargement: true })
    .webp(options)
    .toBuffer();
  return `data:image/webp;base64,${bytes.toString('base64')}`;
}
