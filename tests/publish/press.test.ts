/** The press: the same site as the generator alone makes, whoever prints it and whatever was there before. */

import { appendFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildsAlone } from '../buildsAlone.ts';
import { buildYard, fingerprintOf, writeSmallYard } from './smallYard.ts';

buildsAlone();

let scratch: string;
let content: string;
let printed: string;
let rendered: string;
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-press-'));
  content = join(scratch, 'content');
  printed = join(scratch, 'printed');
  rendered = join(scratch, 'rendered');
  writeSmallYard(content);
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function build(out: string, ...words: string[]): string {
  const { stdout, stderr, status } = buildYard(content, out, '--leave-list', ...words);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return stdout;
}

describe('the press', () => {
  it('prints, byte for byte, what the generator renders, also below a base path', () => {
    const cultivar = join(content, 'cultivars/cultivar-1.md');
    writeFileSync(
      cultivar,
      readFileSync(cultivar, 'utf8').replace(/^name: .*$/m, `name: "Pêche & 'Plum' <x>"`),
    );
    const said = [build(printed, '--press', '--base', '/orchard/'), build(rendered, '--base', '/orchard/')];
    expect(said[0]!.replace(printed, '')).toBe(said[1]!.replace(rendered, ''));
    const site = fingerprintOf(rendered);
    const countOf = (files: RegExp) => Object.keys(site).filter(file => files.test(file)).length;
    expect(countOf(/^lots\//)).toBeGreaterThan(20);
    expect(countOf(/^guides\/[^/]+\/[^/]+\/index\.html$/)).toBeGreaterThan(20);
    expect(countOf(/^guides\/[^/]+\/[^/]+\.ics$/)).toBeGreaterThan(10);
    expect(countOf(/^guides\/[^/]+\/[^/]+\/[^/]+\.ics$/)).toBeGreaterThan(5);
    expect(fingerprintOf(printed)).toEqual(site);
  });

  it('takes what is unchanged from the site before, and mends what was touched', () => {
    const touched = 'cultivars/cultivar-3/index.html';
    appendFileSync(join(printed, touched), 'scribbled on');
    const walk = join(content, 'walks/2026-11-18.csv');
    writeFileSync(walk, readFileSync(walk, 'utf8').replace(/^(m\d+),([1-9]\d*),/m, '$1,0,'));
    const said = build(printed, '--press', '--base', '/orchard/');
    build(rendered, '--afresh', '--base', '/orchard/');
    expect(Number(/, (\d+) unchanged ones kept/.exec(said)?.[1])).toBeGreaterThan(20);
    expect(fingerprintOf(printed)).toEqual(fingerprintOf(rendered));
  });

  it('refuses to print what is private', () => {
    const lots = join(content, 'lots/batch-001.yaml');
    const before = readFileSync(lots, 'utf8');
    const told = 'Kept back for the neighbours in the lane';
    const first = before.slice(0, before.indexOf('\n- ') + 1);
    writeFileSync(lots, before.replace(first, `${first}  note: ${told}\n  private_note: ${told}\n`));
    const site = fingerprintOf(printed);
    const { stderr, status } = buildYard(content, printed, '--leave-list', '--press', '--base', '/orchard/');
    expect(status).toBe(1);
    expect(stderr).toContain(`would show "${told}", which is private`);
    expect(fingerprintOf(printed)).toEqual(site);
    writeFileSync(lots, before);
  });
});
