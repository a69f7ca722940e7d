/**
 * HEIC, as telephones write it: decoded by libheif, since the library that makes the copies comes without HEVC. What comes out is a PNG with the
 * profile of the original, so that a picture in wide colors looks the same.
 */

import { resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { photoEnds, photoFacts } from '../core/reading/photoFacts.ts';

interface Pixels {
  width: number;
  height: number;
  data: Uint8ClampedArray;
}

/** A decoder that hangs on a damaged file must not hang the build: the largest pictures take some seconds. Our working figure. */
const MOST_SECONDS = 120;

function decoded(bytes: Uint8Array): Promise<Pixels> {
  // The decoder writes remarks of its own, which would reach the grower's terminal.
  const worker = new Worker(resolve('src/photos/heicWorker.ts'), {
    workerData: bytes,
    stdout: true,
    stderr: true,
  });
  return new Promise<Pixels>((done, fail) => {
    const late = setTimeout(() => fail(new Error('it takes too long to decode')), MOST_SECONDS * 1000);
    worker.once('message', done);
    worker.once('error', fail);
    worker.once('exit', () => {
      clearTimeout(late);
      fail(new Error('the decoder ended without a picture'));
    });
  }).finally(() => worker.terminate());
}

/** The color profile that a HEIC file carries; null without one. ISO/IEC 14496-12, ColorInformationBox of type `prof` or `rICC`. */
export function profileOf(bytes: Uint8Array): Uint8Array | null {
  const file = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = file.indexOf('colr'); at >= 4; at = file.indexOf('colr', at + 4)) {
    const end = at - 4 + file.readUInt32BE(at - 4);
    const type = file.toString('latin1', at + 4, at + 8);
    if ((type === 'prof' || type === 'rICC') && end > at + 8 && end <= file.length)
      return file.subarray(at + 8, end);
  }
  return null;
}

/** Bytes of a PNG before its second chunk: signature and header. W3C PNG, third edition. */
const PNG_HEADER_BYTES = 33;

/** A PNG with a color profile put in behind its header. */
function withProfile(png: Buffer, profile: Uint8Array): Buffer {
  const content = Buffer.concat([Buffer.from('iCCPicc\0\0', 'latin1'), deflateSync(profile)]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(content.length - 4);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(content));
  return Buffer.concat([
    png.subarray(0, PNG_HEADER_BYTES),
    length,
    content,
    check,
    png.subarray(PNG_HEADER_BYTES),
  ]);
}

async function pngOfHeic(bytes: Uint8Array): Promise<Uint8Array> {
  const { data, width, height } = await decoded(bytes);
  const png = await sharp(data, { raw: { width, height, channels: 4 } })
    .removeAlpha()
    .png({ compressionLevel: 1 })
    .toBuffer();
  const profile = profileOf(bytes);
  return profile === null ? png : withProfile(png, profile);
}

/** An original as the library can open it: itself, or a PNG of a HEIC. Throws what the decoder says of a file it cannot read. */
export async function openable(original: Uint8Array): Promise<Uint8Array> {
  return photoFacts(photoEnds(original)).kind === 'heic' ? pngOfHeic(original) : original;
}
