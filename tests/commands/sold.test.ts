/** Commands that change records, as the grower meets them. */

import { spawn, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  chmodSync,
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { yardsFolder } from '../yards/loadYard.ts';

const root = join(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-sold-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const content = join(scratch, 'content');
const env = { ...process.env, CONTENT_DIR: content, PRIVATE_DIR: '' };

beforeEach(() => {
  rmSync(content, { recursive: true, force: true });
  cpSync(join(yardsFolder, 'base/content'), content, { recursive: true });
  appendFileSync(join(content, 'yard.yaml'), 'fixed_day: 2026-11-25\n');
});

function run(name: string, ...words: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [`scripts/${name}.ts`, ...words], {
    cwd: root,
    encoding: 'utf8',
    env,
  });
  return { status, stdout, stderr };
}

/** Every file of the content with its text. */
function state(): Record<string, string> {
  const names = readdirSync(content, { recursive: true, encoding: 'utf8', withFileTypes: true }).filter(
    each => each.isFile(),
  );
  return Object.fromEntries(
    names.map(each => [
      join(each.parentPath, each.name),
      readFileSync(join(each.parentPath, each.name), 'latin1'),
    ]),
  );
}

const today = join(content, 'walks/2026-11-25.csv');

test('a sale is shown, written, and taken back', () => {
  const before = state();
  const shown = run('sold', 'bellwether-2601', '2', '--to', 'Marked Buyer', '--show');
  expect(shown.status).toBe(0);
  expect(shown.stdout).toMatch(
    /^Would be written\. 2 plants of bellwether-2601 sold on November 25, 2026; 10 left\./,
  );
  expect(state()).toEqual(before);

  const sold = run('sold', 'bellwether-2601', '2', '--to', 'Marked Buyer');
  expect(sold).toMatchObject({ status: 0, stderr: '' });
  expect(sold.stdout).toContain('+ bellwether-2601,10');
  expect(sold.stdout).toContain('To take it back: npm run undo');
  expect(readFileSync(today, 'utf8')).toBe('lot,left\nbellwether-2601,10\n');
  const named = Object.entries(state()).filter(([, text]) => text.includes('Marked Buyer'));
  expect(named.map(([path]) => path)).toEqual([join(content, 'private/sales.csv')]);

  expect(run('undo')).toMatchObject({ status: 0 });
  expect(state()).toEqual(before);
  expect(run('undo')).toMatchObject({ status: 2, stderr: 'leafdrop: there is nothing to take back.\n' });
});

test('what was changed since is not taken back', () => {
  run('sold', 'bellwether-2601', '2');
  appendFileSync(today, 'inkpot-2501,5\n');
  const text = readFileSync(today, 'utf8');
  expect(run('undo').stderr).toMatch(/was changed since, so nothing is taken back/);
  expect(readFileSync(today, 'utf8')).toBe(text);
});

test('what cannot be is refused in one line, and no file is touched', () => {
  const before = state();
  for (const [words, said] of [
    [['inkpot-2501', '9'], /only 5 are left/],
    [['inkpot-25', '1'], /there is no lot "inkpot-25"\. Did you mean "inkpot-2501"\?/],
    [['inkpot-2501', 'two'], /"two" is no number of plants/],
    [['inkpot-2501', '1', '--on', '2026-02-30'], /no calendar day/],
    // Counted again later: 5 were left on October 17, so 3 cannot have been left before.
    [
      ['inkpot-2501', '3', '--on', '2026-10-01'],
      /walks\/2026-10-17\.csv:3:\d+ left-rises: 5 plants left, but 3 were left on 2026-10-01/,
    ],
    [['inkpot-2501'], /how many plants/],
  ] as const) {
    const { status, stderr, stdout } = run('sold', ...words);
    expect(stderr).toMatch(said);
    expect(stderr.trim().split('\n')).toHaveLength(1);
    expect([status, stdout]).toEqual([2, '']);
  }
  expect(state()).toEqual(before);
});

test('a yard with errors, a walk with an unknown column, and a read-only walk are told and left alone', () => {
  writeFileSync(today, 'lot,left,Price\nbellwether-2601,11,45\n');
  expect(run('sold', 'bellwether-2601', '2').stderr).toMatch(
    /have 1 error already.*walks\/2026-11-25\.csv:1:10 unknown-column/,
  );
  writeFileSync(today, 'Left;LOT\r\n11;bellwether-2601\r\n');
  chmodSync(today, 0o444);
  expect(run('sold', 'bellwether-2601', '2').stderr).toMatch(
    /walks\/2026-11-25\.csv is read-only; make it writable/,
  );
  chmodSync(today, 0o640);
  expect(run('sold', 'bellwether-2601', '2').status).toBe(0);
  expect(readFileSync(today, 'utf8')).toBe('Left;LOT\r\n9;bellwether-2601\r\n');
});

test('sales at one time wait for each other, and none is lost', async () => {
  const codes = await Promise.all(
    [1, 2, 3].map(
      () =>
        new Promise(settle => {
          const child = spawn(
            process.execPath,
            ['scripts/sold.ts', 'bellwether-2601', '2', '--to', 'One of three'],
            {
              cwd: root,
              env,
              stdio: 'ignore',
            },
          );
          child.on('close', settle);
        }),
    ),
  );
  expect(codes).toEqual([0, 0, 0]);
  expect(readFileSync(today, 'utf8')).toBe('lot,left\nbellwether-2601,6\n');
  expect(readFileSync(join(content, 'private/sales.csv'), 'utf8').match(/One of three/g)).toHaveLength(3);
});

test('a sale that is killed at any moment leaves whole files', async () => {
  const original = state();
  for (const waitMs of [150, 300, 450, 600, 900]) {
    const child = spawn(process.execPath, ['scripts/sold.ts', 'bellwether-2601', '1'], {
      cwd: root,
      env,
      stdio: 'ignore',
    });
    await new Promise(settle => setTimeout(settle, waitMs));
    child.kill('SIGKILL');
    await new Promise(settle =>
      child.exitCode === null && child.signalCode === null ? child.on('close', settle) : settle(null),
    );
    for (const [path, text] of Object.entries(state())) {
      if (/\/\.[^/]*$/.test(path)) continue;
      if (path === today) expect(text).toMatch(/^lot,left\nbellwether-2601,(?:11|10|9|8|7)\n$/);
      else expect(text).toBe(original[path]);
    }
  }
  expect(run('sold', 'bellwether-2601', '1').status).toBe(0);
});
