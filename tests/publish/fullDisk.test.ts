/** A full disk, wherever a build meets it: one plain sentence, the site and the list as they were, and nothing left behind. */

import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isDiskFull } from '../../src/build/fullDisk.ts';
import { buildsAlone } from '../buildsAlone.ts';
import { buildScript, buildYard, fingerprintOf, smallYardDay, writeSmallYard } from './smallYard.ts';

buildsAlone();

const root = resolve(import.meta.dirname, '../..');
const preload = pathToFileURL(join(import.meta.dirname, 'fullDisk.mjs')).href;
let scratch: string;
let content: string;
let out: string;
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-full-'));
  content = join(scratch, 'content');
  out = join(scratch, 'out');
  writeSmallYard(content, 4);
  expect(buildYard(content, out).status).toBe(0);
  // So that there is something to list.
  const list = join(content, 'addresses.csv');
  writeFileSync(list, readFileSync(list, 'utf8').replace(/^\/cultivars\/.*\n/gm, ''));
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const namesIn = (folder: string) => (existsSync(folder) ? readdirSync(folder).sort() : []);

/** What may not change: the site, what stands beside it, the records, and the folders a build works in. */
const stateOf = () => ({
  site: fingerprintOf(out),
  beside: namesIn(scratch),
  records: fingerprintOf(content),
  ownPages: namesIn(join(root, '.build/own-pages')),
  aside: namesIn(join(root, '.cache/assets')).filter(name => name.startsWith('.')),
  lists: namesIn(join(root, '.cache/pages')).filter(name => name.startsWith('.')),
  locks: namesIn(join(root, '.build')).filter(name => name.startsWith('build.lock')),
});

describe('a full disk', () => {
  it.each([
    ['while pages are written', '-building-', 30, []],
    ['at the search index', 'pagefind', 2, []],
    ['while styles and scripts are bundled', 'assets.json', 0, ['--afresh']],
    ['at the results that are kept', '.cache/results', 1, ['--afresh']],
    ['at what is known of the pages', '.cache/pages', 0, []],
    ['at the list of addresses', '.addresses.csv-', 0, []],
    ['at the lock', 'build.lock', 0, []],
  ])('%s', (_, at, after, words) => {
    const before = stateOf();
    const { stderr, status } = spawnSync(process.execPath, ['--import', preload, buildScript, ...words], {
      cwd: root,
      encoding: 'utf8',
      env: {
        ...process.env,
        CONTENT_DIR: content,
        OUT_DIR: out,
        AS_OF: smallYardDay,
        FULL_AT: at,
        FULL_AFTER: String(after),
      },
    });
    // Remarks on the records may come before.
    expect(stderr.split('\n').filter(line => line.startsWith('leafdrop:'))).toEqual([
      'leafdrop: the disk is full, so nothing was published and the site is as it was. Make room, and build again.',
    ]);
    expect(stderr).not.toMatch(/ENOSPC|\n\s+at /);
    expect(status).toBe(1);
    expect(stateOf()).toEqual(before);
  });

  it('is told from other problems', () => {
    expect(isDiskFull(new Error('ENOSPC: no space left on device, write'))).toBe(true);
    expect(isDiskFull(Object.assign(new Error('write failed'), { code: 'ENOSPC' }))).toBe(true);
    expect(isDiskFull('Error: No space left on device (os error 28)')).toBe(true);
    expect(isDiskFull(new Error('EACCES: permission denied'), [tmpdir()])).toBe(false);
  });
});
