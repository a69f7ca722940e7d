/** What keeps a photograph from being published, in words: the same for the check and for the build. */

import type { PhotoFacts, PhotoKind } from './photoFacts.ts';

/**
 * Pixels a photograph may have. A bound on memory and time: a small file can claim any size. The largest sensors of telephones have
 * 200 million. Our working figure.
 */
export const mostPixels = 204_800_000;

export interface PhotoTrouble {
  rule: 'photo-unreadable' | 'photo-cut-short' | 'photo-too-large';
  /** What was found. */
  got: string;
  expected: string;
  /** A clause without a full stop. */
  message: string;
  /** Starts in lower case, ends with a full stop. */
  remedy: string;
}

const shownKinds: ReadonlySet<PhotoKind> = new Set(['jpeg', 'png', 'webp', 'avif', 'heic']);

const kindWords: Record<PhotoKind, string> = {
  jpeg: 'a JPEG picture',
  png: 'a PNG picture',
  webp: 'a WebP picture',
  avif: 'an AVIF picture',
  heic: 'a HEIC picture',
  gif: 'a GIF picture',
  tiff: 'a TIFF picture',
  svg: 'an SVG drawing',
  text: 'text',
  unknown: 'something that is no picture known here',
};

const kinds = 'a whole picture in JPEG, PNG, WebP, AVIF or HEIC';

const millions = (count: number) => `${Math.round(count / 1e6)} million`;

/** Null when nothing that the ends of the file tell stands in the way. */
export function photoTrouble({ kind, size, pixels, whole }: PhotoFacts): PhotoTrouble | null {
  if (size === 0) {
    return {
      rule: 'photo-unreadable',
      got: 'nothing',
      expected: kinds,
      message: 'the photo is an empty file',
      remedy: 'copy it from the camera or telephone again.',
    };
  }
  if (!shownKinds.has(kind)) {
    const renamed = kind === 'text' || kind === 'unknown';
    return {
      rule: 'photo-unreadable',
      got: kindWords[kind],
      expected: kinds,
      message: `the file holds ${kindWords[kind]}, whatever its name says`,
      remedy: renamed
        ? 'put the picture itself there.'
        : 'open it in a picture program, export it as JPEG and name that file.',
    };
  }
  if (!whole || (pixels !== null && (pixels.width === 0 || pixels.height === 0))) {
    return {
      rule: 'photo-cut-short',
      got: `${size} bytes without the end`,
      expected: kinds,
      message: 'the end of the photo is missing',
      remedy: 'copy it from the camera or telephone again.',
    };
  }
  if (pixels !== null && pixels.width * pixels.height > mostPixels) {
    return {
      rule: 'photo-too-large',
      got: `${pixels.width} by ${pixels.height} pixels`,
      expected: `${millions(mostPixels)} pixels at most`,
      message: `the photo has ${pixels.width} by ${pixels.height} pixels, which is ${millions(pixels.width * pixels.height)}`,
      remedy: `save a smaller copy, of ${millions(mostPixels)} pixels at most, and name that file.`,
    };
  }
  return null;
}
