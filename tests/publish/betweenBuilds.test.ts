/** What may come between two builds: a change of the program, a cache cut short, a second build at the same time. In a project of its own, with its own caches. */

import { spawn } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
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

async function build(to = out) {
  const child = spawn(process.execPath, ['scripts/build.ts', '--leave-list'], {
    cwd: project,
    env: { ...process.env, CONTENT_DIR: join(project, 'content'), OUT_DIR: to, AS_OF: smallYardDay },
  });
  const [stdout, stderr, code] = await Promise.all([
    text(child.stdout),
    text(child.stderr),
    new Promise(done => child.on('close', done)),
  ]);
  expect(code, stderr).toBe(0);
  const [, made, unchanged] = /Built (\d+) files(?:, (\d+) unchanged ones kept)?/.exec(stdout) ?? [];
  return { made: Number(made), unchanged: Number(unchanged ?? 0), said: complaintsIn(stderr) };
}

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

describe('between two builds', () => {
  it('nothing has changed: every page is taken as it is', async () => {
    const { made, unchanged } = await build();
    expect(made).toBe(0);
    expect(unchanged).toBeGreaterThan(100);
    expect(fingerprintOf(out)).toEqual(first);
  });

  it.each(['pages', 'search', 'results', 'assets'])('the cache of %s was cut short', async name => {
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
    const [one, two, three] = await Promise.all([build(), build(), build(other)]);
    expect([one, two, three].filter(({ said }) => said.includes('Another build is under way')).length).toBe(
      2,
    );
    expect(fingerprintOf(out)).toEqual(first);
    expect(fingerprintOf(other)).toEqual(first);
    expect(readdirSync(project).filter(name => name.startsWith('.out-building'))).toEqual([]);
  });
});
