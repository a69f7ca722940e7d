import { mkdirSync, mkdtempSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type PublishedPhoto, photo, photoCopy } from './photos.ts';

let content: string;
let published: PublishedPhoto;
const cached = (name: string) => resolve('.cache/photos', name);

/** A picture as a telephone writes it: lying on its side (EXIF orientation 6, turn clockwise), with a place in its EXIF. */
function fromTelephone(width: number, height: number): Promise<Buffer> {
  return sharp({ create: { width, height, channels: 3, background: '#7a5' } })
    .withMetadata({ orientation: 6 })
    .withExifMerge({ IFD0: { Artist: 'secret-artist' }, IFD3: { GPSLatitude: '35/1 34/1 0/1' } })
    .jpeg()
    .toBuffer();
}

beforeAll(async () => {
  content = mkdtempSync(join(tmpdir(), 'leafdrop-photos-'));
  mkdirSync(join(content, 'photos'));
  process.env.CONTENT_DIR = content;
  writeFileSync(join(content, 'photos/turned.jpg'), await fromTelephone(1200, 800));
  writeFileSync(join(content, 'photos/small.jpg'), await fromTelephone(300, 200));
  const whole = await fromTelephone(600, 400);
  writeFileSync(join(content, 'photos/cut-short.jpg'), whole.subarray(0, whole.length / 2));
  writeFileSync(join(content, 'photos/words.jpg'), 'no picture at all');
  writeFileSync(join(content, 'photos/phone.heic'), 'whatever a telephone writes');
  published = await photo('turned.jpg');
});

afterAll(() => {
  delete process.env.CONTENT_DIR;
  rmSync(content, { recursive: true });
  for (const name of published.names) rmSync(cached(name));
});

describe('a published photograph', () => {
  it('stands upright, at no more than its own width', async () => {
    expect(published.names.length).toBe(3);
    for (const name of published.names) {
      const { bytes } = await photoCopy(name);
      const { width, height, orientation } = await sharp(bytes).metadata();
      expect([width, height, orientation]).toEqual([480, 720, undefined]);
    }
    expect([published.width, published.height]).toEqual([480, 720]);
  });

  it('carries nothing of what the camera wrote', async () => {
    const original = await sharp(join(content, 'photos/turned.jpg')).metadata();
    expect(original.exif).toBeDefined();
    for (const name of published.names) {
      const { bytes } = await photoCopy(name);
      const { exif, xmp, iptc } = await sharp(bytes).metadata();
      expect([exif, xmp, iptc]).toEqual([undefined, undefined, undefined]);
      expect(Buffer.from(bytes).includes('secret-artist')).toBe(false);
    }
  });

  it('comes as AVIF and WebP with a JPEG for old browsers', async () => {
    expect(published.sources.map(({ type }) => type)).toEqual(['image/avif', 'image/webp']);
    expect(published.fallback).toMatch(/^\/photos\/[0-9a-f]{16}-480\.jpg$/);
    const kinds = await Promise.all(published.names.map(async name => (await photoCopy(name)).type));
    expect(kinds).toEqual(['image/avif', 'image/webp', 'image/jpeg']);
  });

  it('is not encoded again when nothing changed', async () => {
    const long = new Date('2001-01-01');
    for (const name of published.names) utimesSync(cached(name), long, long);
    writeFileSync(join(content, 'photos/same.jpg'), await fromTelephone(1200, 800));
    expect((await photo('same.jpg')).names).toEqual(published.names);
    for (const name of published.names) expect(statSync(cached(name)).mtime).toEqual(long);
  });

  it('smaller than the smallest width keeps its own', async () => {
    const small = await photo('small.jpg');
    expect([small.width, small.height]).toEqual([200, 300]);
    for (const name of small.names) rmSync(cached(name));
  });
});

describe('a photograph that cannot be published', () => {
  it.each([
    ['cut-short.jpg', /^photos\/cut-short\.jpg: this picture cannot be read \(.+\); save it again/],
    ['words.jpg', /^photos\/words\.jpg: this picture cannot be read \(.+\); save it again/],
    ['phone.heic', /^photos\/phone\.heic: HEIC pictures cannot be read; save it as JPEG/],
    ['missing.jpg', /^photos\/missing\.jpg: there is no such file in /],
  ])('%s is named, with what to do', async (file, message) => {
    await expect(photo(file)).rejects.toThrow(message);
  });
});
