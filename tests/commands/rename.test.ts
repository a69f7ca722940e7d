/** `npm run rename` as the grower meets it. */

import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { buildsAlone } from '../buildsAlone.ts';
import { yardsFolder } from '../yards/loadYard.ts';

buildsAlone();

const root = join(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-rename-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const content = newYard('content');

function newYard(name: string): string {
  const folder = join(scratch, name);
  cpSync(join(yardsFolder, 'base/content'), folder, { recursive: true });
  appendFileSync(join(folder, 'yard.yaml'), 'fixed_day: 2026-11-25\n');
  return folder;
}

function run(script: string, words: string[], env: NodeJS.ProcessEnv, flags: string[] = []) {
  return spawnSync(process.execPath, [...flags, `scripts/${script}.ts`, ...words], {
    cwd: root,
    encoding: 'utf8',
    // A day that is looked at is none from which an address holds.
    env: { ...process.env, AS_OF: '2027-03-01', ...env },
  });
}

function rename(...words: string[]) {
  const { status, stdout, stderr } = run('rename', words, { CONTENT_DIR: content });
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

test('follows a link, and changes a private file where it lies', () => {
  const yard = newYard('linked');
  const secret = join(scratch, 'secret');
  mkdirSync(join(secret, 'cultivars'), { recursive: true });
  writeFileSync(join(secret, 'cultivars/inkpot.yaml'), 'private_note: from the old hedge\n');
  mkdirSync(join(yard, '.shelf'));
  const text = readFileSync(join(yard, 'cultivars/inkpot.md'), 'utf8');
  renameSync(join(yard, 'cultivars/inkpot.md'), join(yard, '.shelf/inkpot.md'));
  symlinkSync('../.shelf/inkpot.md', join(yard, 'cultivars/inkpot.md'));
  const where = { CONTENT_DIR: yard, PRIVATE_DIR: secret };
  const { status, stderr } = run('rename', ['cultivar', 'inkpot', 'ink-pot'], where);
  expect(status, stderr).toBe(0);
  expect(readlinkSync(join(yard, 'cultivars/ink-pot.md'))).toBe('../.shelf/inkpot.md');
  expect(readFileSync(join(yard, '.shelf/inkpot.md'), 'utf8')).toBe(text);
  expect(filesOf(secret)).toEqual(['cultivars', 'cultivars/ink-pot.yaml']);
  expect(filesOf(join(yard, 'cultivars'))).toEqual(['bellwether.md', 'ink-pot.md']);
});

test('changes nothing where a file is no text, so that nothing of it is lost', () => {
  const yard = newYard('no-text');
  const path = join(yard, 'lots/2025-grafts.yaml');
  // A letter of ISO 8859-1.
  const bytes = Buffer.concat([readFileSync(path), Buffer.from('# L\u00fccke\n', 'latin1')]);
  writeFileSync(path, bytes);
  const before = filesOf(yard);
  const { status, stderr } = run('rename', ['cultivar', 'inkpot', 'ink-pot'], { CONTENT_DIR: yard });
  expect([status, stderr]).toEqual([
    2,
    'leafdrop: content/lots/2025-grafts.yaml cannot be read; npm run check says why.\n',
  ]);
  expect(filesOf(yard)).toEqual(before);
  expect(readFileSync(path).equals(bytes)).toBe(true);
});

/** Ends the process before the second file of the content is put in place. */
const killer = `
import fs from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';
const { rename } = fs;
let placed = 0;
fs.rename = async (from, to) => {
  if (to.startsWith(process.env.CONTENT_DIR)) placed += 1;
  if (placed === 2) process.kill(process.pid, 'SIGKILL');
  return rename(from, to);
};
syncBuiltinESMExports();`;

test('killed half way, is brought to its end by the next command, whichever it is', () => {
  const yard = newYard('killed');
  const flags = ['--import', `data:text/javascript,${encodeURIComponent(killer)}`];
  const killed = run('rename', ['cultivar', 'inkpot', 'ink-pot'], { CONTENT_DIR: yard }, flags);
  expect(killed.signal, killed.stderr).toBe('SIGKILL');
  expect(existsSync(join(yard, 'cultivars/ink-pot.md'))).toBe(false);
  const check = run('check', [], { CONTENT_DIR: yard });
  expect(check.stderr).toContain('it is finished now');
  expect(check.status, check.stdout).toBe(0);
  expect(filesOf(join(yard, 'cultivars'))).toEqual(['bellwether.md', 'ink-pot.md']);
  expect(filesOf(yard).filter(name => /(?:^|\/)\./.test(name))).toEqual([]);
});
