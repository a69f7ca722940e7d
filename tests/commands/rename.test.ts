/** `npm run rename` as the grower meets it. */

import { spawnSync } from 'node:child_process';
import { appendFileSync, cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { buildsAlone } from '../buildsAlone.ts';
import { yardsFolder } from '../yards/loadYard.ts';

buildsAlone();

const root = join(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-rename-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const content = join(scratch, 'content');
cpSync(join(yardsFolder, 'base/content'), content, { recursive: true });
appendFileSync(join(content, 'yard.yaml'), 'fixed_day: 2026-11-25\n');

function rename(...words: string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['scripts/rename.ts', ...words],
    // A day that is looked at is none from which an address holds.
    { cwd: root, encoding: 'utf8', env: { ...process.env, CONTENT_DIR: content, AS_OF: '2027-03-01' } },
  );
  return { status, stdout, stderr };
}

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
}

test('shows, then renames, then refuses to do it again', () => {
  const before = filesOf(content);
  const shown = rename('cultivar', 'inkpot', 'ink-pot', '--show');
  expect(shown).toEqual({
    status: 0,
    stdout: `These would change:
  ${content}/addresses.csv
  ${content}/cultivars/inkpot.md becomes ${content}/cultivars/ink-pot.md
  ${content}/lots/2025-grafts.yaml
  with 1 new line in ${content}/addresses.csv
Readers go on seeing the name Inkpot; to change that too, edit name: in ${content}/cultivars/ink-pot.md
`,
    stderr: '',
  });
  expect(filesOf(content)).toEqual(before);

  expect(rename('cultivar', 'inkpot', 'ink-pot')).toEqual({
    ...shown,
    stdout: shown.stdout.replace('These would change', 'Changed'),
  });
  expect(existsSync(join(content, 'cultivars/inkpot.md'))).toBe(false);
  expect(readFileSync(join(content, 'addresses.csv'), 'utf8')).toBe(
    'address,since,leads_to\n/cultivars/inkpot/,2026-11-25,/cultivars/ink-pot/\n',
  );
  expect(filesOf(content)).toHaveLength(before.length + 1);

  const again = rename('cultivar', 'inkpot', 'ink');
  expect(again.status).toBe(2);
  expect(again.stderr).toBe('leafdrop: there is no cultivar "inkpot"; did you mean "ink-pot"?\n');
});

test('says what is missing in the words', () => {
  expect(rename('cultivr', 'a', 'b').stderr).toContain('Did you mean "cultivar"?');
  expect(rename('lot', 'a').stderr).toContain('npm run rename -- lot OLD NEW');
});
