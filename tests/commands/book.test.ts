/** Where the private book may be written: it names people and costs, so nowhere that is published, and nowhere that holds something else. */

import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, expect, test, vi } from 'vitest';
import { main } from '../../scripts/book.ts';
import { UsageError } from '../../scripts/command.ts';
import { yardsFolder } from '../yards/loadYard.ts';

const root = join(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-book-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const content = join(scratch, 'content');

beforeEach(() => {
  rmSync(content, { recursive: true, force: true });
  cpSync(join(yardsFolder, 'base/content'), content, { recursive: true });
  for (const [name, value] of Object.entries({
    CONTENT_DIR: content,
    OUT_DIR: join(scratch, 'site'),
    AS_OF: '2026-11-25',
  }))
    vi.stubEnv(name, value);
});

test.each([
  ['the site', join(scratch, 'site/book'), /lies in the site/],
  ['the site of the project', join(root, 'dist/book'), /lies in the site/],
  ['files that are published as they are', join(root, 'public/book'), /is not written into|lies in the site/],
  ['the records', join(content, 'book'), /is not written into/],
  ['the folder above the records', scratch, /is not written into/],
  ['the program', join(root, 'src/book-of-mine'), /is not written into/],
  ['the project', root, /is not written into/],
])('not into %s', async (_, folder, said) => {
  const told = await main(['--out', folder]).catch((problem: unknown) => problem);
  expect(told).toBeInstanceOf(UsageError);
  expect((told as UsageError).message).toMatch(said);
  expect(existsSync(join(folder, 'index.html'))).toBe(false);
});

test('a folder of its own, which others cannot look into', async () => {
  const folder = join(scratch, 'book');
  const written = vi.spyOn(process.stdout, 'write').mockReturnValue(true);
  expect(await main(['--out', folder])).toBe(0);
  expect(written.mock.calls.join('')).toContain('index.html');
  written.mockRestore();
  expect(readdirSync(folder)).toContain('index.html');
  expect(readFileSync(join(folder, 'index.html'), 'utf8')).toContain('bellwether-2601');
  if (process.platform !== 'win32') expect(statSync(folder).mode & 0o077).toBe(0);
});
