/** A page that a yard adds to `src/pages/`: built with the rest, in the sitemap and the list of addresses; its mistakes end the build. */

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { complaintsIn, fingerprintOf, smallYardDay, writeSmallYard } from './smallYard.ts';

const root = resolve(import.meta.dirname, '../..');
const program = [
  'src',
  'scripts',
  'public',
  'astro.config.mjs',
  'tsconfig.json',
  'package.json',
  'package-lock.json',
];
let project: string;
let content: string;
let out: string;

beforeAll(() => {
  project = mkdtempSync(join(tmpdir(), 'leafdrop-own-'));
  for (const name of program) cpSync(join(root, name), join(project, name), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(project, 'node_modules'));
  content = join(project, 'content');
  out = join(project, 'dist');
  writeSmallYard(content);
  // As it is published: a site that is only looked at lists no address.
  const yard = join(content, 'yard.yaml');
  const settings = readFileSync(yard, 'utf8').replace(/^fixed_day:.*\n/m, '');
  // No towns: this project has kept none yet, and making them takes the better part of a minute.
  writeFileSync(yard, `${settings}fixed_day: ${smallYardDay}\ntowns:\n  look_up: false\n`);
  mkdirSync(join(project, 'src/pages'), { recursive: true });
  cpSync(join(root, 'tests/ownPage/every-lot.astro.txt'), join(project, 'src/pages/every-lot.astro'));
});
afterAll(() => rmSync(project, { recursive: true, force: true }));

function build() {
  return spawnSync(process.execPath, [join(project, 'scripts/build.ts'), '--base', '/orchard/'], {
    cwd: project,
    encoding: 'utf8',
    env: { ...process.env, CONTENT_DIR: content, OUT_DIR: out },
  });
}

describe('a page that a yard adds', () => {
  it('asks the typed collections, and is in the sitemap and the list of addresses', () => {
    const { stderr, status } = build();
    expect(complaintsIn(stderr)).toBe('');
    expect(status).toBe(0);
    const page = readFileSync(join(out, 'every-lot/index.html'), 'utf8');
    expect(page).toContain('<a href="/orchard/lots/m00001/">');
    expect(page.match(/<li><a href="\/orchard\/lots\//g)).toHaveLength(30);
    expect(page).toContain('<footer class="foot">');
    const canonical = /<link rel="canonical" href="([^"]+)"/.exec(page)![1]!;
    expect(canonical).toMatch(/^https:\/\/[^/]+\/orchard\/every-lot\/$/);
    expect(readFileSync(join(out, 'sitemap-1.xml'), 'utf8')).toContain(`<loc>${canonical}</loc>`);
    expect(readFileSync(join(content, 'addresses.csv'), 'utf8')).toContain('/every-lot/,');
  });

  it('ends the build where it has an error, or the address of another page, and leaves the site as it was', () => {
    const before = fingerprintOf(out);
    const refusals: [string, string, RegExp][] = [
      ['wrong.astro', '---\nthrow new Error("no such tree");\n---\n<p>x</p>', /no such tree/],
      [
        'stock/index.astro',
        '<p>mine</p>',
        /a page of src\/pages\/ makes stock\/index\.html, and the program/,
      ],
    ];
    for (const [name, source, said] of refusals) {
      const path = join(project, 'src/pages', name);
      mkdirSync(join(path, '..'), { recursive: true });
      writeFileSync(path, source);
      const { stderr, status } = build();
      rmSync(path);
      expect(stderr).toMatch(said);
      expect(stderr).not.toMatch(/\n\s+at /);
      expect(status).toBe(1);
      expect(fingerprintOf(out)).toEqual(before);
    }
  });
});
