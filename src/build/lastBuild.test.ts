import { mkdirSync, mkdtempSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { stampOf } from './finishedSite.ts';
import { linkFiles } from './lastBuild.ts';

let scratch: string;
let out: string;
const at = (file: string) => join(out, file);
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-last-'));
  out = join(scratch, 'out');
  mkdirSync(at('lots/a'), { recursive: true });
  writeFileSync(at('index.html'), 'home');
  writeFileSync(at('lots/a/index.html'), 'a lot');
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const known = (file: string) => ({ file, stamp: stampOf(at(file)), page: null });

it('takes unchanged files over as they are, folders and times included', async () => {
  const built = join(scratch, 'built');
  mkdirSync(built);
  const files = [known('index.html'), known('lots/a/index.html')];
  expect(await linkFiles(out, built, files)).toEqual(files);
  for (const { file, stamp } of files) {
    expect(stampOf(join(built, file))).toBe(stamp);
    expect(statSync(join(built, file)).ino).toBe(statSync(at(file)).ino);
  }
});

it('fails where one of them has gone meanwhile', async () => {
  const gone = { file: 'lots/b/index.html', stamp: '', page: null };
  await expect(linkFiles(out, join(scratch, 'other'), [gone])).rejects.toThrow(
    /ENOENT.*lots\/b\/index\.html/,
  );
});

it('knows a file that was touched, also where its size is the same', () => {
  const before = stampOf(at('index.html'));
  writeFileSync(at('index.html'), 'hole');
  utimesSync(at('index.html'), 1, 1_000_000_001.5);
  expect(stampOf(at('index.html'))).not.toBe(before);
  expect(stampOf(at('index.html'))).toBe('4 1000000001500');
});
