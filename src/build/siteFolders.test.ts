import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { clearLeftovers, newBuildingFolder } from './siteFolders.ts';
import { markFile, writeMark } from './siteMark.ts';

const mark = { yard: 'Bench', address: 'https://bench.example' };

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-folders-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

it('builds in an empty folder, also where a killed build of the same process number has left its own', async () => {
  const built = await newBuildingFolder(join(scratch, 'dist'), mark);
  writeFileSync(join(built, 'index.html'), 'yesterday');
  expect(await newBuildingFolder(join(scratch, 'dist'), mark)).toBe(built);
  expect(readdirSync(built)).toEqual([markFile]);
});

it('puts a site back beside a folder that goes in the moment it is looked at, as when a swap outlives its build', () => {
  // Above the largest number a process can have on Linux (PID_MAX_LIMIT, proc(5)).
  const [first, second] = ['4194305', '4194306'];
  const out = join(scratch, 'site');
  // Listed, and gone when it is opened.
  symlinkSync(join(scratch, 'nowhere'), join(scratch, `.site-old-${first}`));
  mkdirSync(join(scratch, `.site-old-${second}`));
  writeMark(join(scratch, `.site-old-${second}`), mark);
  clearLeftovers(out);
  expect(existsSync(join(out, markFile))).toBe(true);
});
