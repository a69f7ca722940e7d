import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { clearOldPhotos } from './photos/store.ts';
import {
  encodedCopies,
  type PhotosTold,
  type PublishedPhoto,
  photo,
  photoCopy,
  publishedPhotos,
} from './photos.ts';

const cache = resolve('.cache/photos');
const before = new Set(existsSync(cache) ? readdirSync(cache) : []);
let content: string;
let published: PublishedPhoto;

function plain(width: number, height: number, background = '#7a5'): Sharp {
  return sharp({ create: { width, height, channels: 3, background } });
}

function put(name: string, bytes: Uint8Array | string): void {
  writeFileSync(join(content, 'photos', name), bytes);
}

const xmp =
  '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description xmlns:exif="http://ns.adobe.com/exif/1.0/" exif:GPSLatitude="35,34.0N" exif:GPSLongitude="83,0.0W"/></rdf:RDF></x:xmpmeta>';

/** A JPEG with an IPTC caption in Photoshop's block: segment APP13 behind the start (IPTC-IIM 4.2, data set 2:120). */
function withCaption(jpeg: Buffer): Buffer {
  const caption = Buffer.from('\x1c\x02\x78\0\x0esecret-caption', 'latin1');
  const block = Buffer.concat([
    Buffer.from('Photoshop 3.0\0' + '8BIM\x04\x04\0\0\0\0\0', 'latin1'),
    Buffer.from([caption.length]),
    caption,
    Buffer.alloc(caption.length % 2),
  ]);
  const segment = Buffer.from([0xff, 0xed, 0, block.length + 2]);
  return Buffer.concat([jpeg.subarray(0, 2), segment, block, jpeg.subarray(2)]);
}

/** A picture as a telephone writes it: lying on its side (EXIF orientation 6, turn clockwise), with a place in its EXIF and XMP. */
function fromTelephone(width: number, height: number): Promise<Buffer> {
  return plain(width, height)
    .withMetadata({ orientation: 6 })
    .withExifMerge({
      IFD0: { Artist: 'secret-artist' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '35/1 34/1 0/1' },
    })
    .withXmp(xmp)
    .jpeg()
    .toBuffer()
    .then(withCaption);
}

/** Marks of camera data as they stand in a file: EXIF (CIPA DC-008, 4.7.2), XMP (ISO 16684-1), Photoshop's block that holds IPTC, and what was planted. */
const marks = [
  'Exif\0\0',
  'http://ns.adobe.com/xap',
  'x:xmpmeta',
  'Photoshop 3.0',
  'GPSLatitude',
  'secret-artist',
  'secret-caption',
];

const copiesOf = (of: PublishedPhoto) =>
  Promise.all(of.names.map(async name => (await photoCopy(name)).bytes));

/** Mean red, green and blue of a part of a picture, 0 to 255. */
async function colorOf(
  bytes: Uint8Array,
  part?: { left: number; top: number; width: number; height: number },
) {
  const image = sharp(bytes);
  const { channels } = await sharp(await (part ? image.extract(part) : image).png().toBuffer()).stats();
  return channels.map(({ mean }) => mean);
}

function expectNear(found: number[], wanted: number[], within: number): void {
  expect(found).toHaveLength(wanted.length);
  for (const [index, value] of wanted.entries()) {
    expect(Math.abs(found[index]! - value), `${found} for ${wanted}`).toBeLessThanOrEqual(within);
  }
}

beforeAll(async () => {
  content = mkdtempSync(join(tmpdir(), 'leafdrop-photos-'));
  mkdirSync(join(content, 'photos'));
  process.env.CONTENT_DIR = content;
  put('turned.jpg', await fromTelephone(1200, 800));
  published = await photo('turned.jpg');
});

afterAll(() => {
  delete process.env.CONTENT_DIR;
  rmSync(content, { recursive: true });
  for (const name of readdirSync(cache)) {
    if (!before.has(name)) rmSync(join(cache, name), { recursive: true });
  }
});

describe('a published photograph', () => {
  it('stands upright, at no more than its own width', async () => {
    const sizes = await Promise.all((await copiesOf(published)).map(bytes => sharp(bytes).metadata()));
    expect(sizes.map(({ format, width, height }) => [format, width, height])).toEqual([
      ['heif', 800, 1200],
      ['heif', 480, 720],
      ['webp', 800, 1200],
      ['webp', 480, 720],
      ['jpeg', 800, 1200],
    ]);
    expect(sizes.map(({ orientation }) => orientation ?? 1)).toEqual([1, 1, 1, 1, 1]);
    expect([published.width, published.height]).toEqual([800, 1200]);
  });

  it('carries nothing of what the camera wrote', async () => {
    const original = readFileSync(join(content, 'photos/turned.jpg'));
    expect(marks.filter(mark => !original.includes(Buffer.from(mark, 'latin1')))).toEqual([]);
    const all = [...(await copiesOf(published)), Buffer.from(published.placeholder.split(',')[1]!, 'base64')];
    for (const bytes of all) {
      const { exif, xmp: found, iptc, icc } = await sharp(bytes).metadata();
      expect([exif, found, iptc, icc]).toEqual([undefined, undefined, undefined, undefined]);
      expect(marks.filter(mark => Buffer.from(bytes).includes(Buffer.from(mark, 'latin1')))).toEqual([]);
    }
  });

  it('comes as AVIF and WebP with a JPEG for old browsers, and a placeholder of 300 characters at most', async () => {
    expect(published.sources.map(({ type }) => type)).toEqual(['image/avif', 'image/webp']);
    expect(published.sources.map(({ variants }) => variants.map(({ width }) => width))).toEqual([
      [480, 800],
      [480, 800],
    ]);
    expect(published.fallback).toMatch(/^\/photos\/[0-9a-f]{16}-800\.jpg$/);
    const kinds = await Promise.all(published.names.map(async name => (await photoCopy(name)).type));
    expect(new Set(kinds)).toEqual(new Set(['image/avif', 'image/webp', 'image/jpeg']));
    expect(published.placeholder).toMatch(/^data:image\/webp;base64,[\w+/]{20,270}={0,2}$/);
  });

  it('is not encoded again when nothing changed, and is when its copies are lost', async () => {
    const bytes = await fromTelephone(1200, 800);
    put('same.jpg', bytes);
    const count = encodedCopies();
    expect((await photo('same.jpg')).names).toEqual(published.names);
    expect(encodedCopies()).toBe(count);
    const [key] = published.names[0]!.split('-');
    writeFileSync(join(cache, key!, '480.webp'), 'broken');
    put('again.jpg', bytes);
    expect((await photo('again.jpg')).names).toEqual(published.names);
    expect(encodedCopies()).toBe(count + 5);
  });

  it('is another one when its file is written anew', async () => {
    put('changing.jpg', await plain(60, 40).jpeg().toBuffer());
    const first = await photo('changing.jpg');
    put('changing.jpg', await plain(70, 40).jpeg().toBuffer());
    expect((await photo('changing.jpg')).names).not.toEqual(first.names);
  });

  it('smaller than the smallest width keeps its own', async () => {
    put('small.jpg', await fromTelephone(300, 200));
    const small = await photo('small.jpg');
    expect(small.sources[0]!.variants.map(({ width }) => width)).toEqual([200]);
    expect([small.width, small.height]).toEqual([200, 300]);
  });

  it.each([
    ['lying', 4000, 200, [480, 24], [1440, 72]],
    ['standing', 200, 4000, [48, 960], [144, 2880]],
  ])('%s panorama is whole', async (name, width, height, least, most) => {
    // A red end on each side: both must be there.
    const end = await plain(
      width > height ? width / 10 : width,
      width > height ? height : height / 10,
      '#d00',
    )
      .png()
      .toBuffer();
    const far = {
      input: end,
      left: width > height ? width * 0.9 : 0,
      top: width > height ? 0 : height * 0.9,
    };
    const image = plain(width, height, '#0b0').composite([{ input: end, left: 0, top: 0 }, far]);
    put(`${name}.png`, await image.png().toBuffer());
    const panorama = await photo(`${name}.png`);
    const webp = (await copiesOf(panorama)).filter((_, index) => panorama.names[index]!.endsWith('.webp'));
    const sizes = await Promise.all(webp.map(bytes => sharp(bytes).metadata()));
    expect(sizes.map(size => [size.width, size.height])).toEqual(expect.arrayContaining([least, most]));
    const [size] = sizes;
    const corner = { left: 0, top: 0, width: 8, height: 8 };
    expectNear(await colorOf(webp[0]!, corner), [221, 0, 0], 12);
    const opposite = { ...corner, left: size!.width - 8, top: size!.height - 8 };
    expectNear(await colorOf(webp[0]!, opposite), [221, 0, 0], 12);
  });
});

describe('the turn of the camera', () => {
  /**
   * How an upright picture lies in a file that states an orientation: turned clockwise, then mirrored left to right. From which sides row
   * 0 and column 0 are: EXIF 2.32 (CIPA DC-008), tag 0112.
   */
  const stored: [orientation: number, turned: number, mirrored: boolean][] = [
    [1, 0, false],
    [2, 0, true],
    [3, 180, false],
    [4, 180, true],
    [5, 90, true],
    [6, 270, false],
    [7, 270, true],
    [8, 90, false],
  ];

  it.each(stored)('orientation %i is put right', async (orientation, turned, mirrored) => {
    const patch = async (color: string, width: number, height: number) =>
      plain(width, height, color).png().toBuffer();
    const upright = await plain(96, 64, '#fff')
      .composite([
        { input: await patch('#d00', 48, 32), left: 0, top: 0 },
        { input: await patch('#0a0', 48, 32), left: 48, top: 0 },
        { input: await patch('#00d', 48, 32), left: 0, top: 32 },
      ])
      .png()
      .toBuffer();
    // In two steps: within one the library mirrors before it turns.
    const lying = sharp(await sharp(upright).rotate(turned).png().toBuffer()).flop(mirrored);
    const raw = await lying.png().toBuffer();
    put(
      `turn-${orientation}.jpg`,
      await sharp(raw).withMetadata({ orientation }).jpeg({ quality: 95 }).toBuffer(),
    );
    const of = await photo(`turn-${orientation}.jpg`);
    expect([of.width, of.height]).toEqual([96, 64]);
    const { bytes } = await photoCopy(of.fallback.slice('/photos/'.length));
    const at = (left: number, top: number) => colorOf(bytes, { left, top, width: 16, height: 10 });
    expectNear(await at(16, 10), [221, 0, 0], 16);
    expectNear(await at(64, 10), [0, 170, 0], 16);
    expectNear(await at(16, 42), [0, 0, 221], 16);
    expectNear(await at(64, 42), [255, 255, 255], 16);
  });
});

describe('colors and kinds of file', () => {
  it.each([
    [
      'cmyk.jpg',
      () => plain(64, 48, '#a08060').toColourspace('cmyk').jpeg({ quality: 95 }),
      [160, 128, 96],
      14,
    ],
    ['deep.png', () => plain(64, 48, '#c03020').toColourspace('rgb16').png(), [192, 48, 32], 4],
    ['gray.png', () => plain(64, 48, '#808080').toColourspace('b-w').png(), [128, 128, 128], 4],
    ['plain.avif', () => plain(64, 48, '#c03020').avif({ quality: 90, effort: 0 }), [192, 48, 32], 6],
    [
      'clear.png',
      () =>
        sharp({
          create: { width: 64, height: 48, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
        }).png(),
      [255, 255, 255],
      1,
    ],
  ])('%s comes out in sRGB, without transparency', async (name, make, wanted, within) => {
    put(name, await make().toBuffer());
    const of = await photo(name);
    for (const bytes of await copiesOf(of)) {
      const { space, channels, depth, hasAlpha, hasProfile } = await sharp(bytes).metadata();
      expect([space, channels, depth, hasAlpha, hasProfile]).toEqual(['srgb', 3, 'uchar', false, false]);
      expectNear(await colorOf(bytes), wanted, within);
    }
  });

  // CSS Color 4, sample code of section 18: color(display-p3 0.9176 0.2003 0.1386) is red, #f00, in sRGB.
  it('a photo in Display P3, as telephones write it, shows the colors it was taken in', async () => {
    const p3 = await plain(64, 48, '#ff0000').withIccProfile('p3').jpeg({ quality: 100 }).toBuffer();
    const stored = await sharp(p3, { ignoreIcc: true }).raw().toBuffer();
    expectNear([stored[0]!, stored[1]!, stored[2]!], [234, 51, 35], 4);
    put('p3.jpg', p3);
    for (const bytes of await copiesOf(await photo('p3.jpg'))) {
      expect((await sharp(bytes).metadata()).hasProfile).toBe(false);
      expectNear(await colorOf(bytes), [255, 0, 0], 5);
    }
  });

  it('of pictures that play, the first is shown', async () => {
    const frames = await plain(64, 96, '#c03020').raw().toBuffer();
    frames.fill(9, frames.length / 2);
    const raw = { width: 64, height: 96, channels: 3 as const, pageHeight: 48 };
    put('moving.webp', await sharp(frames, { raw }).webp({ quality: 95 }).toBuffer());
    const of = await photo('moving.webp');
    expect([of.width, of.height]).toEqual([64, 48]);
    for (const bytes of await copiesOf(of)) {
      expect((await sharp(bytes).metadata()).pages ?? 1).toBe(1);
      expectNear(await colorOf(bytes), [192, 48, 32], 8);
    }
  });
});

describe('a photograph that cannot be published', () => {
  const heic = Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'latin1');

  it.each([
    ['empty.jpg', async () => '', /^photos\/empty\.jpg: the photo is an empty file; copy it from the camera/],
    [
      'words.jpg',
      async () => 'no picture',
      /^photos\/words\.jpg: the file holds text, whatever its name says; put/,
    ],
    [
      'phone.heic',
      async () => heic,
      /^photos\/phone\.heic: this picture cannot be read \(.+\); save it again as JPEG/,
    ],
    [
      'renamed.jpg',
      async () => Buffer.from('II*\0\x08\0\0\0', 'latin1'),
      /^photos\/renamed\.jpg: the file holds a TIFF picture.+export it as JPEG/,
    ],
    [
      'drawing.png',
      async () => '<svg xmlns="http://www.w3.org/2000/svg"/>',
      /holds an SVG drawing.+export it as/,
    ],
    [
      'short.jpg',
      async () => (await fromTelephone(600, 400)).subarray(0, 2000),
      /^photos\/short\.jpg: the end of the photo is missing; copy it/,
    ],
    [
      'holed.jpg',
      async () => {
        const bytes = await fromTelephone(600, 400);
        return Buffer.concat([bytes.subarray(0, bytes.length - 900), Buffer.from([0xff, 0xd9])]);
      },
      /^photos\/holed\.jpg: this picture cannot be read \(.+\); save it again/,
    ],
    ['missing.jpg', null, /^photos\/missing\.jpg: there is no such file in /],
  ])('%s is named, with what to do', async (file, bytes, message) => {
    if (bytes) put(file, await bytes());
    await expect(photo(file)).rejects.toThrow(message);
  });

  it('all of them are named at once', async () => {
    await expect(publishedPhotos(['words.jpg', 'small.jpg', 'empty.jpg'])).rejects.toThrow(
      /^photos\/words\.jpg: .+\nphotos\/empty\.jpg: [^\n]+$/,
    );
  });
});

/** Copies that were encoded to publish these. */
async function encodedFor(files: string[], tell?: PhotosTold): Promise<number> {
  const before = encodedCopies();
  const photos = await publishedPhotos(files, tell);
  expect([...photos.keys()]).toEqual(files);
  return encodedCopies() - before;
}

describe('making copies', () => {
  it('tells how far it is and how many it encoded; on the second time none', async () => {
    put('one.png', await plain(50, 50, '#123').png().toBuffer());
    put('two.png', await plain(50, 51, '#123').png().toBuffer());
    const told: string[] = [];
    const tell = (done: number, all: number, encoded: number) => told.push(`${done}/${all} ${encoded}`);
    expect(await encodedFor(['one.png', 'two.png'], tell)).toBe(6);
    expect(told.map(line => line.split(' ')[0])).toEqual(['1/2', '2/2']);
    expect(told.at(-1)).toBe('2/2 6');
    expect(await encodedFor(['one.png', 'two.png'])).toBe(0);
  });

  it('is done again where a kept copy was cut short, altered or taken away', async () => {
    put('kept.png', await plain(50, 52, '#123').png().toBuffer());
    const { names } = await photo('kept.png');
    const [, key, file] = /^([0-9a-f]+)-(.+)$/.exec(names[0]!)!;
    const copy = join(cache, key!, file!);
    const whole = readFileSync(copy);
    const damages = [
      () => writeFileSync(copy, whole.subarray(0, 30)),
      () =>
        writeFileSync(
          copy,
          whole.map((byte, at) => (at === 40 ? byte ^ 1 : byte)),
        ),
      () => rmSync(copy),
      () => writeFileSync(join(cache, key!, 'photo.json'), '{"copies":[],"placeholder":""}'),
    ];
    for (const [at, damage] of damages.entries()) {
      damage();
      // A process asks once for a photograph; written again, it is asked for anew.
      utimesSync(join(content, 'photos/kept.png'), at, at);
      expect(await encodedFor(['kept.png'])).toBeGreaterThan(0);
      expect(readFileSync(copy)).toEqual(whole);
    }
    utimesSync(join(content, 'photos/kept.png'), 99, 99);
    expect(await encodedFor(['kept.png'])).toBe(0);
  });

  it('clears what nothing has used for a month, and nothing else', async () => {
    const [used] = published.names[0]!.split('-');
    const old = join(cache, '0123456789abcdef');
    const broken = join(cache, '0123456789abcdef.x.part');
    for (const folder of [old, broken]) mkdirSync(folder, { recursive: true });
    const now = statSync(join(cache, used!)).mtimeMs;
    const daysAgo = (days: number) => new Date(now - days * 86_400_000);
    utimesSync(old, daysAgo(29), daysAgo(29));
    utimesSync(broken, daysAgo(2), daysAgo(2));
    await clearOldPhotos(now);
    expect([existsSync(old), existsSync(broken), existsSync(join(cache, used!))]).toEqual([
      true,
      false,
      true,
    ]);
    utimesSync(old, daysAgo(31), daysAgo(31));
    await clearOldPhotos(now);
    expect([existsSync(old), existsSync(join(cache, used!))]).toEqual([false, true]);
  });

  it('of a photo of 60 million pixels takes no memory for all of them', async () => {
    // 9,000 x 6,700 pixels are 181 MB as plain RGB.
    const big = await plain(9000, 6700).withMetadata({ orientation: 6 }).jpeg({ quality: 40 }).toBuffer();
    put('big.jpg', big);
    const script = `
      const { photo } = await import(${JSON.stringify(resolve('src/photos.ts'))});
      const bare = process.resourceUsage().maxRSS;
      const { width, height } = await photo('big.jpg');
      console.log(JSON.stringify({ width, height, took: (process.resourceUsage().maxRSS - bare) / 1024 }));`;
    const ran = spawnSync(process.execPath, ['--input-type=module', '-e', script], { encoding: 'utf8' });
    expect(ran.stderr).toBe('');
    const { width, height, took } = JSON.parse(ran.stdout);
    expect([width, height]).toEqual([960, 1290]);
    // Most of it is the encoders', for pictures of 1440 pixels as for this one.
    expect(took).toBeLessThan(280);
  });
});
