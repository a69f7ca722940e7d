/** The press: the same site as the generator alone makes, whoever prints it and whatever was there before. */

import { appendFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { tellingPart } from '../../src/build/privacyScan.ts';
import { buildsAlone } from '../buildsAlone.ts';
import { buildYard, complaintsIn, fingerprintOf, writeSmallYard } from './smallYard.ts';

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
  expect(complaintsIn(stderr)).toBe('');
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
    // What only a page says: put together by the program, so it stands neither in the records nor in its sources.
    const lot = /^- lot: (\S+)/m.exec(before)![1]!;
    const page = readFileSync(join(printed, `lots/${lot}/index.html`), 'utf8');
    const description = /<meta name="description" content="([^"]+)"/.exec(page)![1]!;
    const told = tellingPart(description)!;
    const first = before.slice(0, before.indexOf('\n- ') + 1);
    writeFileSync(lots, before.replace(first, `${first}  private_note: ${JSON.stringify(told)}\n`));
    const site = fingerprintOf(printed);
    const { stderr, status } = buildYard(content, printed, '--leave-list', '--press', '--base', '/orchard/');
    expect(status).toBe(1);
    expect(stderr).toContain(`lots/${lot}/index.html would show "`);
    expect(stderr).toMatch(/which is private: it stands in private_note, \S+lots\/batch-001\.yaml:\d+\. If /);
    expect(fingerprintOf(printed)).toEqual(site);
    writeFileSync(lots, before);
  });
});
