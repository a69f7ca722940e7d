/** What may come between two builds: a change of the program, a cache cut short, a second build at the same time. In a project of its own, with its own caches. */

import { spawn } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { text } from 'node:stream/consumers';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { complaintsIn, fingerprintOf, smallYardDay, writeSmallYard } from './smallYard.ts';

const root = resolve(import.meta.dirname, '../..');
let project: string;
let out: string;
let first: Record<string, string>;

interface Builds {
  to?: string;
  words?: readonly string[];
  day?: string;
}

async function build({ to = out, words = ['--leave-list'], day = smallYardDay }: Builds = {}) {
  const child = spawn(process.execPath, ['scripts/build.ts', ...words], {
    cwd: project,
    env: { ...process.env, CONTENT_DIR: join(project, 'content'), OUT_DIR: to, AS_OF: day },
  });
  const [stdout, stderr, code] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    new Promise(done => child.on('close', done)),
  ]);
  expect(code, stderr).toBe(0);
  const [, made, unchanged] = /Built (\d+) files(?:, (\d+) unchanged ones kept)?/.exec(stdout) ?? [];
  return { made: Number(made), unchanged: Number(unchanged ?? 0), said: complaintsIn(stderr), stderr };
}

/** Takes away what says that there is nothing to build. */
function forgetBuild(): void {
  rmSync(join(project, '.cache/builds'), { recursive: true });
}

/** Tells one folder from another put in its place. */
const folderId = () => statSync(out).ino;

beforeAll(async () => {
  project = mkdtempSync(join(tmpdir(), 'leafdrop-between-'));
  out = join(project, 'out');
  for (const name of [
    'src',
    'scripts',
    'public',
    'package.json',
    'package-lock.json',
    'astro.config.mjs',
    'tsconfig.json',
  ])
    cpSync(join(root, name), join(project, name), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(project, 'node_modules'));
  writeSmallYard(join(project, 'content'));
  await build();
  first = fingerprintOf(out);
});
afterAll(() => rmSync(project, { recursive: true, force: true }));

function replaceByLink(path: string): void {
  renameSync(path, join(project, 'elsewhere.html'));
  symlinkSync(join(project, 'elsewhere.html'), path);
}

describe('between two builds', () => {
  it('nothing has changed: the site stays where it is, and warnings are told again', async () => {
    const before = folderId();
    const { made, unchanged, stderr } = await build();
    expect(made).toBe(0);
    expect(unchanged).toBeGreaterThan(100);
    expect(stderr).toContain('private-in-public');
    expect(folderId()).toBe(before);
    expect(fingerprintOf(out)).toEqual(first);
  });

  it('nothing has changed but that is not known: every page is taken as it is', async () => {
    const before = folderId();
    forgetBuild();
    const { made, unchanged } = await build();
    expect(made).toBe(0);
    expect(unchanged).toBeGreaterThan(100);
    expect(folderId()).not.toBe(before);
    expect(fingerprintOf(out)).toEqual(first);
  });

  it.each([
    ['written to', () => appendFileSync(join(out, 'stock/index.html'), 'scribbled on'), 1],
    ['taken away', () => rmSync(join(out, 'stock/index.html')), 1],
    ['put there by somebody else', () => writeFileSync(join(out, 'stock/notes.txt'), 'mine'), 0],
    ['that is no page written to', () => appendFileSync(join(out, '_redirects'), '/a /b\n'), 0],
    ['replaced by a link', () => replaceByLink(join(out, 'stock/index.html')), 1],
  ])('a file of the site was %s: it is as it was before', async (_, touch, made) => {
    const before = folderId();
    touch();
    expect((await build()).made).toBe(made);
    expect(folderId()).not.toBe(before);
    expect(fingerprintOf(out)).toEqual(first);
  });

  it('another day has come, or another base path is asked for: all is made anew', async () => {
    for (const other of [{ day: '2026-11-26' }, { words: ['--leave-list', '--base', '/orchard/'] }]) {
      expect((await build(other)).unchanged).toBe(0);
      expect(fingerprintOf(out)).not.toEqual(first);
      expect((await build()).unchanged).toBe(0);
      expect(fingerprintOf(out)).toEqual(first);
    }
  });

  it('a record was changed and changed back: the site follows both times', async () => {
    const walk = join(project, 'content/walks/2026-11-18.csv');
    const before = readFileSync(walk, 'utf8');
    writeFileSync(walk, before.replace(/^(m\d+),([1-9]\d*),/m, '$1,0,'));
    expect((await build()).made).toBeGreaterThan(0);
    expect(fingerprintOf(out)).not.toEqual(first);
    writeFileSync(walk, before);
    await build();
    expect(fingerprintOf(out)).toEqual(first);
  });

  it('the build has listed new addresses and changes itself: that is no change, and the site is that of a build of everything', async () => {
    const kept = join(project, 'kept');
    cpSync(join(project, 'content'), kept, { recursive: true });
    await build({ words: [] });
    expect(readFileSync(join(project, 'content/addresses.csv'), 'utf8').split('\n').length).toBeGreaterThan(
      50,
    );
    const [before, published] = [folderId(), fingerprintOf(out)];
    expect((await build({ words: [] })).made).toBe(0);
    expect(folderId()).toBe(before);
    const whole = join(project, 'whole');
    await build({ to: whole, words: ['--afresh'] });
    expect(published).toEqual(fingerprintOf(whole));
    rmSync(join(project, 'content'), { recursive: true });
    cpSync(kept, join(project, 'content'), { recursive: true });
    rmSync(out, { recursive: true });
    await build();
    expect(fingerprintOf(out)).toEqual(first);
  });

  it.each(['builds', 'pages', 'search', 'results', 'assets'])('the cache of %s was cut short', async name => {
    if (name !== 'builds') forgetBuild();
    const folder = join(project, '.cache', name);
    const kept = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map(file => join(folder, file))
      .filter(file => statSync(file).isFile());
    expect(kept.length).toBeGreaterThan(0);
    for (const file of kept) truncateSync(file, Math.floor(statSync(file).size / 2));
    await build();
    expect(fingerprintOf(out)).toEqual(first);
  });

  it('the program has changed: no page of the old one is left', async () => {
    const layout = join(project, 'src/site/layout.ts');
    const before = readFileSync(layout, 'utf8');
    writeFileSync(layout, before.replace('<html lang="', '<html data-changed lang="'));
    expect(readFileSync(layout, 'utf8')).not.toBe(before);
    expect((await build()).unchanged).toBe(0);
    const pages = Object.keys(fingerprintOf(out)).filter(file => file.endsWith('.html'));
    const old = pages.filter(file => readFileSync(join(out, file), 'utf8').includes('<html lang="'));
    // Pages that only send readers on have no layout.
    expect(
      old.filter(file => !readFileSync(join(out, file), 'utf8').includes('http-equiv="refresh"')),
    ).toEqual([]);
    writeFileSync(layout, before);
    expect((await build()).unchanged).toBe(0);
    expect(fingerprintOf(out)).toEqual(first);
  });

  it('there are none: two at once make the same whole site, one after the other', async () => {
    mkdirSync(join(project, 'other'));
    const other = join(project, 'other/out');
    const [one, two, three] = await Promise.all([build(), build(), build({ to: other })]);
    expect([one, two, three].filter(({ said }) => said.includes('Another build is under way')).length).toBe(
      2,
    );
    expect(fingerprintOf(out)).toEqual(first);
    expect(fingerprintOf(other)).toEqual(first);
    expect(readdirSync(project).filter(name => name.startsWith('.out-building'))).toEqual([]);
  });
});
