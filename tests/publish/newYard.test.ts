/** From the demonstration to a published site of one's own, in one command. */

import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { buildsAlone } from '../buildsAlone.ts';
import { newYardFlags } from '../commands/newYardFlags.ts';

buildsAlone();

const root = join(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-new-yard-site-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

test('the yard is built, and nothing of the demonstration is on its site', () => {
  const content = join(scratch, 'content');
  const out = join(scratch, 'out');
  cpSync(join(root, 'content'), content, { recursive: true });
  const { status, stdout, stderr } = spawnSync(process.execPath, ['scripts/newYard.ts', ...newYardFlags], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, CONTENT_DIR: content, OUT_DIR: out, PRIVATE_DIR: '', AS_OF: '2026-11-25' },
  });
  expect(stderr).toMatch(/0 errors, 0 warnings/);
  expect(status).toBe(0);
  expect(stdout).toMatch(/Its site of \d{3,} files/);
  expect(readFileSync(join(out, 'index.html'), 'utf8')).toContain('Long Meadow');
  expect(readFileSync(join(out, 'lots/26-cut-01/index.html'), 'utf8')).toContain('Their Own Name');
  // A list of addresses begins with what this yard publishes.
  expect(existsSync(join(content, 'addresses.csv'))).toBe(false);
  const texts = readdirSync(out, { recursive: true, withFileTypes: true }).filter(
    each => each.isFile() && /\.(?:html|xml|json|txt|ics|csv)$/.test(each.name),
  );
  expect(texts.length).toBeGreaterThan(500);
  const left = texts.filter(each =>
    /kettlewise|Pellowin|Fenderby|wrenfoot/i.test(readFileSync(join(each.parentPath, each.name), 'utf8')),
  );
  expect(left.map(({ name }) => name)).toEqual([]);
});
