/** Drawing the pictures of the demonstration yard where others may lie. */

import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';

const root = join(import.meta.dirname, '../..');
const out = mkdtempSync(join(tmpdir(), 'leafdrop-pictures-'));
afterAll(() => rmSync(out, { recursive: true, force: true }));

const draw = (...words: string[]) =>
  spawnSync(process.execPath, ['scripts/demo-photos.ts', '--out', out, ...words], {
    cwd: root,
    encoding: 'utf8',
  });

test('a picture of somebody else stays, and so does all else, unless it is to be replaced', () => {
  const own = join(out, 'potted-whip.jpg');
  writeFileSync(own, 'a photograph of mine');
  const { status, stderr } = draw();
  expect(status).toBe(2);
  expect(stderr).toContain(`${own} would be overwritten`);
  expect(readdirSync(out)).toEqual(['potted-whip.jpg']);
  expect(readFileSync(own, 'utf8')).toBe('a photograph of mine');

  expect(draw('--replace').status).toBe(0);
  const drawn = readFileSync(own);
  expect(readdirSync(out).length).toBeGreaterThan(5);
  // Its own pictures it knows by their bytes.
  expect(draw().status).toBe(0);
  expect(readFileSync(own).equals(drawn)).toBe(true);
});
