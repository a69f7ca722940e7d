import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { newBuildingFolder } from './siteFolders.ts';
import { markFile } from './siteMark.ts';

const mark = { yard: 'Bench', address: 'https://bench.example' };

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-folders-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

it('builds in an empty folder, also where a killed build of the same process number has left its own', async () => {
  const built = await newBuildingFolder(join(scratch, 'dist'), mark);
  writeFileSync(join(built, 'index.html'), 'yesterday');
  expect(await newBuildingFolder(join(scratch, 'dist'), mark)).toBe(built);
  expect(readdirSync(built)).toEqual([markFile]);
});
