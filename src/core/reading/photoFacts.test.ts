import fc from 'fast-check';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { photoEnds, photoFacts } from './photoFacts.ts';

const factsOf = (bytes: Uint8Array) => photoFacts(photoEnds(bytes));

function picture(width: number, height: number): Sharp {
  return sharp({ create: { width, height, channels: 3, background: '#a63' } });
}

/** 35° 34′ N, 83° W, as a telephone writes it: CIPA DC-008, 4.6.6. */
const place = {
  IFD0: { Make: 'a telephone' },
  IFD3: {
    GPSLatitudeRef: 'N',
    GPSLatitude: '35/1 34/1 0/1',
    GPSLongitudeRef: 'W',
    GPSLongitude: '83/1 0/1 0/1',
  },
};

const encoders = {
  jpeg: (image: Sharp) => image.jpeg(),
  'jpeg, progressive': (image: Sharp) => image.jpeg({ progressive: true }),
  'jpeg, CMYK': (image: Sharp) => image.toColourspace('cmyk').jpeg(),
  png: (image: Sharp) => image.png(),
  'png, 16 bits': (image: Sharp) => image.toColourspace('rgb16').png(),
  'webp, lossy': (image: Sharp) => image.webp(),
  'webp, lossless': (image: Sharp) => image.webp({ lossless: true }),
  avif: (image: Sharp) => image.avif({ effort: 0 }),
};

describe('what the ends of a photograph tell', () => {
  // The reference is the library that reads the same files whole.
  it.each(Object.entries(encoders))('%s: kind and size as the library reads them', async (name, encode) => {
    const bytes = await encode(picture(90, 61)).toBuffer();
    const read = await sharp(bytes).metadata();
    const { kind, pixels, whole, animated, place: placed } = factsOf(bytes);
    expect(kind).toBe(name.split(',')[0]);
    expect(pixels).toEqual({ width: read.width, height: read.height });
    expect([whole, animated, placed]).toEqual([true, false, false]);
  });

  it.each(Object.entries(encoders))('%s: the place where it was taken', async (_, encode) => {
    const bytes = await encode(picture(90, 61).withExif(place)).toBuffer();
    expect(factsOf(bytes).place).toBe(true);
    const other = await encode(picture(90, 61).withExif({ IFD0: { Make: 'a telephone' } })).toBuffer();
    expect(factsOf(other).place).toBe(false);
  });

  it('a place that is only in XMP', async () => {
    const xmp =
      '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="35,34.0N"/></rdf:RDF></x:xmpmeta>';
    expect(factsOf(await picture(90, 61).withXmp(xmp).jpeg().toBuffer()).place).toBe(true);
  });

  it('a large file is judged by its ends alone', async () => {
    const noise = picture(900, 900).composite([
      {
        input: await sharp({
          create: {
            width: 900,
            height: 900,
            channels: 3,
            background: '#000',
            noise: { type: 'gaussian', mean: 128, sigma: 60 },
          },
        })
          .png()
          .toBuffer(),
      },
    ]);
    const bytes = await noise.withExif(place).jpeg({ quality: 95 }).toBuffer();
    const { head, tail, size } = photoEnds(bytes);
    expect(head.length + tail.length).toBeLessThan(size);
    expect(factsOf(bytes)).toMatchObject({
      kind: 'jpeg',
      pixels: { width: 900, height: 900 },
      whole: true,
      place: true,
    });
    expect(factsOf(bytes.subarray(0, size - 5000)).whole).toBe(false);
  });

  it.each([
    ['jpeg', (image: Sharp) => image.jpeg()],
    ['png', (image: Sharp) => image.png()],
    ['webp', (image: Sharp) => image.webp()],
  ])('%s: an end that is missing, also behind a small picture in the camera data', async (_, encode) => {
    const bytes = await encode(picture(300, 200).withExif(place)).toBuffer();
    expect(factsOf(bytes.subarray(0, bytes.length - 20)).whole).toBe(false);
  });

  it('pictures that play one after the other', async () => {
    const frames = await picture(60, 80).raw().toBuffer();
    const raw = { width: 60, height: 80, channels: 3 as const, pageHeight: 40 };
    // Two different frames: equal ones would be joined.
    frames.fill(9, 0, frames.length / 2);
    const webp = await sharp(frames, { raw }).webp().toBuffer();
    expect(factsOf(webp)).toMatchObject({ kind: 'webp', animated: true, pixels: { width: 60, height: 40 } });
    const gif = await sharp(frames, { raw }).gif().toBuffer();
    expect(factsOf(gif).kind).toBe('gif');
  });

  it.each([
    ['tiff', () => picture(9, 9).tiff().toBuffer()],
    ['svg', async () => Buffer.from('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>')],
    ['text', async () => Buffer.from('a note to myself\n')],
    ['unknown', async () => Buffer.from([1, 2, 3, 200])],
    // Brands of ISO/IEC 23008-12, annex B.
    ['heic', async () => Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1')],
  ])('%s is told apart from a photograph', async (kind, bytes) => {
    expect(factsOf(await bytes()).kind).toBe(kind);
  });

  it('never fails, whatever the bytes', async () => {
    const starts = await Promise.all(
      Object.values(encoders).map(encode => encode(picture(20, 20).withExif(place)).toBuffer()),
    );
    const damaged = fc
      .tuple(
        fc.constantFrom(...starts),
        fc.array(fc.tuple(fc.nat(400), fc.nat(255)), { maxLength: 30 }),
        fc.nat(1500),
      )
      .map(([start, changes, length]) => {
        const bytes = Uint8Array.from(start.subarray(0, length));
        for (const [at, value] of changes) if (at < bytes.length) bytes[at] = value;
        return bytes;
      });
    fc.assert(
      fc.property(fc.oneof(damaged, fc.uint8Array({ maxLength: 300 })), bytes => {
        expect(factsOf(bytes).size).toBe(bytes.length);
      }),
      { seed: 6, numRuns: 400 },
    );
  });
});
