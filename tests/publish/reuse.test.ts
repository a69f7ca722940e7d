/** Unchanged files: the bytes that a build of everything would give, after every kind of change. */

import { appendFileSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildsAlone } from '../buildsAlone.ts';
import { buildYard, complaintsIn, fingerprintOf, writeSmallYard } from './smallYard.ts';

buildsAlone();

let scratch: string;
let content: string;
let out: string;
let all: string;

beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-reuse-'));
  content = join(scratch, 'content');
  out = join(scratch, 'out');
  all = join(scratch, 'all');
  writeSmallYard(content);
  const { status, stderr } = buildYard(content, out);
  expect(complaintsIn(stderr)).toBe('');
  expect(status).toBe(0);
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function edit(file: string, change: (text: string) => string): void {
  const path = join(content, file);
  const before = readFileSync(path, 'utf8');
  const after = change(before);
  expect(after, `the edit of ${file}`).not.toBe(before);
  writeFileSync(path, after);
}

/** Builds on top of what is published, and says how many files were taken from it. */
function reusedIn(...words: string[]): number {
  const { stdout, stderr, status } = buildYard(content, out, ...words);
  expect(complaintsIn(stderr)).toBe('');
  expect(status).toBe(0);
  return Number(/, (\d+) unchanged ones kept/.exec(stdout)?.[1] ?? 0);
}

describe('files taken from the site before', () => {
  it('are those of a build of everything, after a sale, a new lot and more written about a cultivar', () => {
    edit('walks/2026-11-18.csv', text =>
      text.replace(/^(m\d+),(\d+),/m, (_, lot, left) => `${lot},${Math.max(0, Number(left) - 1)},`),
    );
    // Touched by hand: made again, and so mended.
    appendFileSync(join(out, 'cultivars/cultivar-3/index.html'), 'scribbled on');
    const files = Object.keys(fingerprintOf(out));
    const reused = reusedIn();
    expect(reused).toBeGreaterThan(files.length / 2);
    expect(reused).toBeLessThan(files.length);

    edit('cultivars/cultivar-2.md', text => text.replace('made to be measured', 'with a longer story'));
    const lots = readFileSync(join(content, 'lots/batch-001.yaml'), 'utf8');
    const first = lots.slice(0, lots.indexOf('\n- ') + 1);
    edit('lots/batch-001.yaml', text => `${text}${first.replace('m00001', 'm99999')}`);
    // What the first build took over and the second took again is compared too.
    expect(reusedIn()).toBeGreaterThan(20);
    expect(buildYard(content, all, '--afresh').status).toBe(0);
    expect(fingerprintOf(out)).toEqual(fingerprintOf(all));
  });

  it('are none on another day, which every page shows', () => {
    expect(reusedIn('--as-of', '2026-11-26')).toBe(0);
  });
});
