/** A yard large enough for the press, where little has changed: what the generator renders anew and what is carried over make the site of a whole build. */

import { appendFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PRINTED_FROM } from '../../src/views/printed.ts';
import { buildsAlone } from '../buildsAlone.ts';
import { buildYard, fingerprintOf, writeSmallYard } from './smallYard.ts';

buildsAlone();

const keptGenerators = resolve('.cache/generator');
const lots = PRINTED_FROM;
let scratch: string;
let content: string;
let out: string;
let whole: string;
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-carry-'));
  content = join(scratch, 'content');
  out = join(scratch, 'out');
  whole = join(scratch, 'whole');
  writeSmallYard(content, lots);
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function build(to: string, ...words: string[]) {
  const { stdout, stderr, status } = buildYard(content, to, '--leave-list', ...words);
  expect(status, stderr).toBe(0);
  const [, rendered, kept] = /Built (\d+) pages(?:, (\d+) unchanged ones kept)?/.exec(stdout) ?? [];
  return { rendered: Number(rendered), kept: Number(kept ?? 0) };
}

describe('publishing one sale of a large yard', () => {
  it('renders little, carries the rest over, mends what was touched, and gives the site of a whole build', () => {
    expect(build(out).kept).toBe(0);
    const walk = join(content, 'walks/2026-11-18.csv');
    const before = readFileSync(walk, 'utf8');
    writeFileSync(
      walk,
      before.replace(/^(m\d+),([1-9]\d*),/m, (_, lot, left) => `${lot},${Number(left) - 1},`),
    );
    expect(readFileSync(walk, 'utf8')).not.toBe(before);
    appendFileSync(join(out, 'lots/m00300/index.html'), 'scribbled on');
    const { rendered, kept } = build(out);
    expect(kept).toBeGreaterThan(lots * 0.8);
    expect(rendered).toBeLessThan(lots * 0.3);
    build(whole, '--afresh');
    expect(fingerprintOf(out)).toEqual(fingerprintOf(whole));
  });

  it('does so too where the generator has to be compiled again beside it, and keeps no page with it', () => {
    rmSync(keptGenerators, { recursive: true, force: true });
    expect(build(out).kept).toBeGreaterThan(lots);
    expect(fingerprintOf(out)).toEqual(fingerprintOf(whole));
    const kept = readdirSync(keptGenerators, { recursive: true, encoding: 'utf8' });
    expect(kept.some(name => name.endsWith('.css'))).toBe(true);
    expect(kept.filter(name => name.endsWith('.html'))).toEqual([]);
    build(out);
    expect(fingerprintOf(out)).toEqual(fingerprintOf(whole));
  });
});
