/** `npm run changes` as the grower meets it, in repositories made for the test. */

import { appendFileSync, cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { main } from '../../scripts/changes.ts';
import { endPlainly } from '../../scripts/command.ts';
import { yardsFolder } from '../yards/loadYard.ts';
import { commitAll, edit, git, startRepository } from './gitYard.ts';

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-changes-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

let repository: string;
let content: string;
let count = 0;

/** Runs the command in this process, as `endPlainly` would for a person. */
async function changes(words: string[] = [], env: Record<string, string> = {}) {
  const said = { stdout: '', stderr: '' };
  for (const [name, value] of Object.entries({ CONTENT_DIR: content, AS_OF: '', ...env }))
    vi.stubEnv(name, value);
  for (const stream of ['stdout', 'stderr'] as const) {
    vi.spyOn(process[stream], 'write').mockImplementation(text => {
      said[stream] += text;
      return true;
    });
  }
  const status = await endPlainly(() => main(['--as-of', '2026-11-25', ...words])).finally(() => {
    vi.restoreAllMocks();
    vi.unstubAllEnvs();
  });
  return { status, ...said };
}

function copyYard(to: string): void {
  cpSync(join(yardsFolder, 'base/content'), to, { recursive: true });
}

beforeEach(() => {
  count += 1;
  repository = join(scratch, `yard-${count}`);
  content = join(repository, 'the yard');
  startRepository(repository);
  copyYard(content);
});

const sale = '\nlot,left\nbellwether-2601,9\ninkpot-2501,0\n'.trimStart();

describe('npm run changes', () => {
  beforeEach(() => commitAll(repository, 'Open the yard'));

  it('says that nothing changed', async () => {
    const { status, stdout, stderr } = await changes();
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toMatch(/^Compared with [0-9a-f]{7,} of \d{4}-\d\d-\d\d, "Open the yard"\./);
    expect(stdout).toContain('Both computed for November 25, 2026.');
    expect(stdout.trimEnd().split('\n').at(-1)).toBe('No file differs.');
  });

  it('tells a walk that is not committed yet, most important first', async () => {
    writeFileSync(join(content, 'walks/2026-11-20.csv'), sale);
    const { status, stdout } = await changes();
    expect(status).toBe(0);
    expect(stdout).toContain('Sold out (1):\n  inkpot-2501 Inkpot: 5 sold\n');
    expect(stdout).toContain('  bellwether-2601 Bellwether: 12 to 9 (3 sold)\n');
    expect(stdout).toContain('Files (1):\n  new: walks/2026-11-20.csv\n');
    expect(stdout.indexOf('Sold out')).toBeLessThan(stdout.indexOf('Counts'));
    const { comparison } = JSON.parse((await changes(['--json'])).stdout);
    expect(comparison.soldOut).toEqual([
      { lot: 'inkpot-2501', cultivar: 'Inkpot', from: 5, to: 0, sold: 5, lost: 0, returned: 0 },
    ]);
  });

  it('compares with any version, and the days in between when asked', async () => {
    writeFileSync(join(content, 'walks/2026-11-20.csv'), sale);
    commitAll(repository, 'Sold');
    expect((await changes()).stdout).toContain('No file differs.');
    expect((await changes(['--against', 'HEAD~1'])).stdout).toContain('inkpot-2501 Inkpot: 5 sold');
    const days = (await changes(['--as-of-before', '2026-10-20'])).stdout;
    expect(days).toContain('Before computed for October 20, 2026, after for November 25, 2026.');
    expect(days).toContain('inkpot-2501 Inkpot: 5 sold');
  });

  it('lists errors, ends with 1, and still tells the rest', async () => {
    edit(
      content,
      'lots/2026-layers.yaml',
      'cultivar: bellwether\n  method: air',
      'cultivar: belwether\n  method: air',
    );
    writeFileSync(join(content, 'walks/2026-11-20.csv'), sale);
    const { status, stdout, stderr } = await changes();
    expect([status, stderr]).toEqual([1, '']);
    expect(stdout).toMatch(/1 error: this cannot be published\./);
    expect(stdout).toMatch(/lots\/2026-layers\.yaml:3:13 lot-cultivar: no cultivar "belwether"/);
    expect(stdout).toContain('To show the rest, lots/2026-layers.yaml is taken as before.');
    expect(stdout).toContain('inkpot-2501 Inkpot: 5 sold');
    expect(stdout).not.toMatch(/\n\s+at /);
  });

  it('compares only files with a version that does not pass the check', async () => {
    edit(content, 'walks/2026-10-17.csv', 'bellwether-2602', 'bellwether-2692');
    commitAll(repository, 'A slip of the pen');
    edit(content, 'walks/2026-10-17.csv', 'bellwether-2692', 'bellwether-2602');
    const { status, stdout } = await changes();
    expect(status).toBe(0);
    expect(stdout).toContain('The earlier version does not pass the check (1 error)');
    expect(stdout).toContain('changed: walks/2026-10-17.csv');
  });

  it('writes Markdown in which what was typed stays text', async () => {
    edit(content, 'cultivars/bellwether.md', 'name: Bellwether', "name: 'Bell <img src=x> [a](b) @you'");
    writeFileSync(join(content, 'walks/2026-11-20.csv'), sale);
    const { stdout } = await changes(['--markdown']);
    expect(stdout).toMatch(/^## What this changes on the site\n/);
    expect(stdout).toMatch(/^### Sold out \(1\)$/m);
    expect(stdout).not.toMatch(/<img|\]\(b|@you/);
  });

  it('reads a content folder that is the repository itself, and one below a hook of another', async () => {
    const own = join(scratch, `own-${count}`);
    startRepository(own);
    copyYard(own);
    commitAll(own, 'Start');
    const env = { CONTENT_DIR: own, GIT_DIR: join(repository, '.git') };
    expect((await changes([], env)).stdout).toContain('No file differs.');
  });

  it('takes all for new when the folder was not there', async () => {
    const other = join(repository, 'second');
    copyYard(other);
    const { stdout, status } = await changes([], { CONTENT_DIR: other });
    expect(status).toBe(0);
    expect(stdout).toContain('Lots opened (3):');
  });
});

describe('what is in the way is told in one line with code 2', () => {
  const refused = async (words: string[], env: Record<string, string>, line: RegExp) => {
    const { status, stdout, stderr } = await changes(words, env);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(line);
    expect(stderr.trimEnd()).not.toContain('\n');
  };

  it('no git on this machine', async () => {
    await refused([], { PATH: join(scratch, 'nowhere') }, /git is not installed here/);
  });

  it('no repository', async () => {
    const loose = mkdtempSync(join(tmpdir(), 'leafdrop-loose-'));
    copyYard(loose);
    await refused([], { CONTENT_DIR: loose, GIT_CEILING_DIRECTORIES: tmpdir() }, /is in no git repository/);
    rmSync(loose, { recursive: true, force: true });
  });

  it('no commit yet', () => refused([], {}, /nothing has been committed here yet/));

  it('a version that is not there, or is no version', async () => {
    commitAll(repository, 'Start');
    await refused(['--against', 'spring'], {}, /there is no version "spring" here; give a branch/);
    await refused(['--against=--all'], {}, /there is no version "--all" here/);
    await refused(['--markdown', '--json'], {}, /give --markdown or --json, not both/);
  });

  it('a shallow history, with how to deepen it', async () => {
    commitAll(repository, 'Start');
    appendFileSync(join(content, 'guides/first-winter.md'), '\nOne more line.\n');
    commitAll(repository, 'More');
    const shallow = join(scratch, `shallow-${count}`);
    git(scratch, 'clone', '--quiet', '--depth', '1', `file://${repository}`, shallow);
    const env = { CONTENT_DIR: join(shallow, 'the yard') };
    expect((await changes([], env)).stdout).toContain('No file differs.');
    await refused(
      ['--against', 'HEAD~1'],
      env,
      /only the newest part of the history is here.*git fetch --unshallow/,
    );
  });

  it('a content folder that is not there is an error of the content', async () => {
    commitAll(repository, 'Start');
    mkdirSync(join(repository, 'empty'));
    const { status, stdout } = await changes([], { CONTENT_DIR: join(repository, 'empty') });
    expect(status).toBe(1);
    expect(stdout).toContain('content-missing');
  });
});
