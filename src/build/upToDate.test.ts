import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openContent } from '../content.ts';
import { inputDigest, siteDigest } from './upToDate.ts';

let dir: string;
const at = (file: string) => join(dir, file);
beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'leafdrop-up-to-date-'));
  mkdirSync(at('photos'));
  mkdirSync(at('lots'));
  writeFileSync(at('yard.yaml'), 'name: A yard\n');
  writeFileSync(at('lots/2026.yaml'), '[]\n');
  writeFileSync(at('photos/a.jpg'), 'no picture');
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

const settings = { program: 'p', base: '/', leaveList: false, preview: false };
const opened = () => openContent({ dir, asOf: '2026-11-25' });
const now = async () => inputDigest(settings, await opened());

describe('the digest of everything a site is made from', () => {
  it('differs with every byte, name, photograph, day and setting', async () => {
    const seen = new Set([await now()]);
    expect(seen).toContain(await now());
    const content = await opened();
    for (const other of [{ program: 'q' }, { base: '/orchard/' }, { leaveList: true }, { preview: true }])
      seen.add(inputDigest({ ...settings, ...other }, content));
    seen.add(inputDigest(settings, await openContent({ dir, asOf: '2026-11-26' })));
    seen.add(inputDigest(settings, { ...content, publishedOn: '2026-11-24' as typeof content.asOf }));
    for (const [file, text] of [
      ['yard.yaml', 'name: A yarn\n'],
      ['lots/2026.yaml', '[] \n'],
      ['lots/2027.yaml', '[]\n'],
      ['photos/a.jpg', 'no picture at all'],
      ['photos/b.jpg', 'no picture'],
    ] as const) {
      writeFileSync(at(file), text);
      seen.add(await now());
    }
    rmSync(at('lots/2027.yaml'));
    mkdirSync(at('lots/2027.yaml'));
    seen.add(await now());
    expect(seen.size).toBe(13);
  });

  it('is that of the files as a build has written them', async () => {
    const written = [{ path: 'addresses.csv', text: 'address,since,leads_to\n' }];
    const told = inputDigest(settings, await opened(), written);
    expect(told).not.toBe(await now());
    for (const { path, text } of written) writeFileSync(at(path), text);
    expect(await now()).toBe(told);
  });
});

it('the digest of a site differs with every name, size and time', () => {
  const seen = new Set([siteDigest(dir)]);
  expect(seen).toContain(siteDigest(dir));
  for (const [name, text, seconds] of [
    ['new.txt', 'a', 1],
    ['new.txt', 'ab', 1],
    ['new.txt', 'ab', 2],
    ['newer.txt', '', 1],
  ] as const) {
    writeFileSync(at(name), text);
    utimesSync(at(name), seconds, seconds);
    seen.add(siteDigest(dir));
  }
  expect(seen.size).toBe(5);
});
