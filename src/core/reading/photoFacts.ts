/**
 * What the first and last bytes of a photograph tell, without decoding it: of which kind it is, how large, whether it is whole, and
 * whether it says where it was taken. Never throws, whatever the bytes.
 *
 * Formats: JPEG, ITU-T T.81 annex B; PNG, W3C Portable Network Graphics third edition; WebP, RFC 9649; AVIF and HEIC, ISO/IEC 14496-12
 * and 23008-12; EXIF, CIPA DC-008, whose directories are those of TIFF 6.0.
 */

export type PhotoKind =
  | 'jpeg'
  | 'png'
  | 'webp'
  | 'avif'
  | 'heic'
  | 'gif'
  | 'tiff'
  | 'svg'
  | 'text'
  | 'unknown';

export interface PhotoEnds {
  /** Bytes of the whole file. */
  size: number;
  /** The first bytes: all of a small file. */
  head: Uint8Array;
  /** The last bytes: all of a small file. */
  tail: Uint8Array;
}

export interface PhotoFacts {
  kind: PhotoKind;
  /** Bytes of the whole file. */
  size: number;
  /** Pixels as stored, before the camera's turn; null when the head does not tell. */
  pixels: { width: number; height: number } | null;
  /** False when the end is missing. */
  whole: boolean;
  /** Several pictures that play one after the other. */
  animated: boolean;
  /** Holds the place where it was taken. */
  place: boolean;
}

/** How much of the start and of the end is looked at: the size is behind color profile and camera data, each up to 64 KiB a segment. */
export const photoHeadBytes = 256 * 1024;
export const photoTailBytes = 64 * 1024;

/** The ends of a file whose bytes are all at hand. */
export function photoEnds(bytes: Uint8Array): PhotoEnds {
  const size = bytes.length;
  return {
    size,
    head: bytes.subarray(0, photoHeadBytes),
    tail: bytes.subarray(Math.max(0, size - photoTailBytes)),
  };
}

/** Whether the bytes at an offset are those of a text in Latin-1. */
function isAt(bytes: Uint8Array, offset: number, text: string): boolean {
  for (let i = 0; i < text.length; i += 1) if (bytes[offset + i] !== text.charCodeAt(i)) return false;
  return true;
}

/** Offset of a text from an offset on; -1 when it is not there. */
function find(bytes: Uint8Array, text: string, from = 0): number {
  const first = text.charCodeAt(0);
  let at = bytes.indexOf(first, from);
  while (at >= 0 && !isAt(bytes, at, text)) at = bytes.indexOf(first, at + 1);
  return at;
}

/** A number of `length` bytes; 0 beyond the end. */
function number(bytes: Uint8Array, offset: number, length: number, littleEndian = false): number {
  let value = 0;
  for (let i = 0; i < length; i += 1)
    value = value * 256 + (bytes[offset + (littleEndian ? length - 1 - i : i)] ?? 0);
  return value;
}

const gifStarts = ['GIF87a', 'GIF89a'];
const tiffStarts = ['II*\0', 'MM\0*'];

function kindOfBytes(head: Uint8Array): PhotoKind {
  if (isAt(head, 0, '\xff\xd8\xff')) return 'jpeg';
  if (isAt(head, 0, '\x89PNG\r\n\x1a\n')) return 'png';
  if (isAt(head, 0, 'RIFF') && isAt(head, 8, 'WEBP')) return 'webp';
  if (isAt(head, 4, 'ftyp')) return kindOfBrands(head);
  if (gifStarts.some(start => isAt(head, 0, start))) return 'gif';
  if (tiffStarts.some(start => isAt(head, 0, start))) return 'tiff';
  const start = head.subarray(0, 1024);
  if (find(start, '<svg') >= 0) return 'svg';
  return start.every(byte => byte >= 32 || byte === 9 || byte === 10 || byte === 13) ? 'text' : 'unknown';
}

function kindOfBrands(head: Uint8Array): PhotoKind {
  const end = Math.min(number(head, 0, 4), head.length, 256);
  for (let at = 8; at + 4 <= end; at += 4)
    if (isAt(head, at, 'avif') || isAt(head, at, 'avis')) return 'avif';
  for (let at = 8; at + 4 <= end; at += 4)
    if (['heic', 'heix', 'hevc', 'heim', 'heis', 'mif1', 'msf1'].some(brand => isAt(head, at, brand)))
      return 'heic';
  return 'unknown';
}

type Shape = Pick<PhotoFacts, 'pixels' | 'whole' | 'animated'>;

/** Start-of-frame markers: C0 to CF without the tables C4 and CC and the reserved C8. */
const isFrame = (marker: number) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
const startOfScan = 0xda;

function jpegShape({ size, head, tail }: PhotoEnds): Shape {
  let pixels: PhotoFacts['pixels'] = null;
  let at = 2;
  while (at + 4 <= head.length && head[at] === 0xff && head[at + 1] !== startOfScan) {
    const marker = head[at + 1]!;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (isFrame(marker)) pixels = { width: number(head, at + 7, 2), height: number(head, at + 5, 2) };
    at += 2 + Math.max(2, number(head, at + 2, 2));
  }
  // A small picture inside the camera data ends with the same mark, so only what follows the scan counts.
  const from = Math.max(0, at - (size - tail.length));
  return { pixels, whole: find(tail, '\xff\xd9', from) >= 0, animated: false };
}

function pngShape({ head, tail }: PhotoEnds): Shape {
  return {
    pixels: { width: number(head, 16, 4), height: number(head, 20, 4) },
    whole: find(tail, 'IEND') >= 0,
    // The control chunk of an animation stands before the first picture.
    animated: find(head.subarray(0, Math.max(0, find(head, 'IDAT'))), 'acTL') >= 0,
  };
}

function webpShape({ size, head }: PhotoEnds): Shape {
  return {
    pixels: webpPixels(head),
    whole: number(head, 4, 4, true) + 8 <= size,
    animated: isAt(head, 12, 'VP8X') && ((head[20] ?? 0) & 2) !== 0,
  };
}

function webpPixels(head: Uint8Array): PhotoFacts['pixels'] {
  if (isAt(head, 12, 'VP8X'))
    return { width: number(head, 24, 3, true) + 1, height: number(head, 27, 3, true) + 1 };
  if (isAt(head, 12, 'VP8 '))
    return { width: number(head, 26, 2, true) % 0x4000, height: number(head, 28, 2, true) % 0x4000 };
  if (isAt(head, 12, 'VP8L')) {
    const bits = number(head, 21, 4, true);
    return { width: (bits % 0x4000) + 1, height: (Math.floor(bits / 0x4000) % 0x4000) + 1 };
  }
  return null;
}

/** The largest of the sizes that an AVIF or HEIC states: a picture in tiles states those of the tiles too. */
function tiledShape({ head }: PhotoEnds): Shape {
  let pixels: PhotoFacts['pixels'] = null;
  for (let at = find(head, 'ispe'); at >= 0; at = find(head, 'ispe', at + 4)) {
    const stated = { width: number(head, at + 8, 4), height: number(head, at + 12, 4) };
    if (pixels === null || stated.width * stated.height > pixels.width * pixels.height) pixels = stated;
  }
  const brand = isAt(head, 8, 'avis');
  return { pixels, whole: true, animated: brand };
}

const shapes: Partial<Record<PhotoKind, (ends: PhotoEnds) => Shape>> = {
  jpeg: jpegShape,
  png: pngShape,
  webp: webpShape,
  avif: tiledShape,
  heic: tiledShape,
};

const gpsDirectory = 0x8825;
const latitude = 2;
const longitude = 4;
const entryBytes = 12;

/** Tags of a TIFF directory with their value or offset, as far as the bytes go. */
function directory(bytes: Uint8Array, start: number, offset: number, little: boolean): Map<number, number> {
  const tags = new Map<number, number>();
  const at = start + offset;
  const count = Math.min(number(bytes, at, 2, little), 200);
  for (let i = 0; i < count; i += 1) {
    const entry = at + 2 + i * entryBytes;
    if (entry + entryBytes > bytes.length) break;
    tags.set(number(bytes, entry, 2, little), number(bytes, entry + 8, 4, little));
  }
  return tags;
}

/** Whether camera data anywhere in the bytes hold a latitude or longitude. The containers differ; the directories inside are the same. */
function holdsPlace(bytes: Uint8Array): boolean {
  // Adobe's XMP, as text.
  if (find(bytes, 'GPSLatitude') >= 0) return true;
  return tiffStarts.some(mark => {
    for (let at = find(bytes, mark); at >= 0; at = find(bytes, mark, at + 4)) {
      const little = mark.startsWith('I');
      const gps = directory(bytes, at, number(bytes, at + 4, 4, little), little).get(gpsDirectory);
      if (gps === undefined) continue;
      const tags = directory(bytes, at, gps, little);
      if (tags.has(latitude) || tags.has(longitude)) return true;
    }
    return false;
  });
}

export function photoFacts(ends: PhotoEnds): PhotoFacts {
  const kind = kindOfBytes(ends.head);
  const shape = shapes[kind]?.(ends) ?? { pixels: null, whole: true, animated: false };
  const place = holdsPlace(ends.head) || (ends.head.length < ends.size && holdsPlace(ends.tail));
  return { kind, size: ends.size, ...shape, place };
}
