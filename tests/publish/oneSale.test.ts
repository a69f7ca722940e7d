/** A yard large enough for workers, where little has changed: what is made anew and what is taken from the site before make the site of a whole build. */

import {
  appendFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WORTH_WORKERS } from '../../src/build/pool.ts';
import { buildsAlone } from '../buildsAlone.ts';
import { buildYard, fingerprintOf, writeSmallYard } from './smallYard.ts';

buildsAlone();

const keptBundles = resolve('.cache/assets');
const lots = WORTH_WORKERS;
let scratch: string;
let content: string;
let out: string;
let whole: string;
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-sale-'));
  content = join(scratch, 'content');
  out = join(scratch, 'out');
  whole = join(scratch, 'whole');
  writeSmallYard(content, lots);
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function build(to: string, ...words: string[]) {
  const { stdout, stderr, status } = buildYard(content, to, '--leave-list', ...words);
  expect(status, stderr).toBe(0);
  const [, made, unchanged] = /Built (\d+) files(?:, (\d+) unchanged ones kept)?/.exec(stdout) ?? [];
  return { made: Number(made), unchanged: Number(unchanged ?? 0) };
}

/** The bundle that was made last, and the files in it. */
function keptFiles(): string[] {
  return readdirSync(keptBundles, { recursive: true, encoding: 'utf8' });
}

describe('publishing one sale of a large yard', () => {
  it('makes little, takes the rest, mends what was touched, and gives the site of a whole build', () => {
    expect(build(out).unchanged).toBe(0);
    const walk = join(content, 'walks/2026-11-18.csv');
    const before = readFileSync(walk, 'utf8');
    writeFileSync(
      walk,
      before.replace(/^(m\d+),([1-9]\d*),/m, (_, lot, left) => `${lot},${Number(left) - 1},`),
    );
    expect(readFileSync(walk, 'utf8')).not.toBe(before);
    appendFileSync(join(out, 'lots/m00300/index.html'), 'scribbled on');
    const { made, unchanged } = build(out);
    expect(unchanged).toBeGreaterThan(lots * 1.8);
    expect(made).toBeLessThan(lots * 0.3);
    build(whole, '--afresh');
    expect(fingerprintOf(out)).toEqual(fingerprintOf(whole));
  });

  it('does so too where styles and scripts are kept no more, or were cut short, and keeps no page with them', () => {
    rmSync(keptBundles, { recursive: true, force: true });
    appendFileSync(join(out, 'lots/m00300/index.html'), 'scribbled on');
    expect(build(out).made).toBe(1);
    const kept = keptFiles();
    expect(kept.some(name => name.endsWith('.css'))).toBe(true);
    expect(kept.filter(name => name.endsWith('.html'))).toEqual([]);
    for (const name of kept.filter(file => file.endsWith('.css'))) truncateSync(join(keptBundles, name), 10);
    build(out, '--base', '/orchard/');
    build(out);
    expect(fingerprintOf(out)).toEqual(fingerprintOf(whole));
  });
});
