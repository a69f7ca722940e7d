/** The publishing workflow: what it may do, in what order, and that its commands are there. Its last step is run on repositories made here. */

import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { commitAll, git, startRepository } from '../commands/gitYard.ts';

const root = resolve(import.meta.dirname, '../..');

interface Step {
  name?: string;
  uses?: string;
  run?: string;
  with?: Record<string, unknown>;
  if?: string;
}
interface Job {
  if?: string;
  needs?: string | string[];
  permissions?: Record<string, string>;
  steps: Step[];
}

const workflow = parse(readFileSync(join(root, '.github/workflows/publish.yml'), 'utf8')) as {
  on: Record<string, unknown>;
  permissions: Record<string, string>;
  concurrency: Record<string, string>;
  jobs: Record<string, Job>;
};
const { jobs } = workflow;
const usesOf = ({ steps }: Job) => steps.flatMap(({ uses }) => uses ?? []);
const runsOf = ({ steps }: Job) => steps.flatMap(({ run }) => run ?? []);

describe('the publishing workflow', () => {
  it('runs for main, for proposals, every day and by hand', () => {
    expect(Object.keys(workflow.on).sort()).toEqual([
      'pull_request',
      'push',
      'schedule',
      'workflow_dispatch',
    ]);
    expect(workflow.on.push).toEqual({ branches: ['main'] });
    const [{ cron }] = workflow.on.schedule as [{ cron: string }];
    expect(cron).toMatch(/^\d{1,2} \d{1,2} \* \* \*$/);
    // From 4 to 9 in the morning between New York (UTC-5) and Los Angeles (UTC-8) is 9 to 17 UTC; never on the full hour.
    const [minute, hour] = cron.split(' ').map(Number);
    expect(minute).toBeGreaterThan(0);
    expect(hour).toBeGreaterThanOrEqual(7);
    expect(hour).toBeLessThanOrEqual(12);
  });

  it('may write only where a job says so, and a proposal nowhere', () => {
    expect(workflow.permissions).toEqual({ contents: 'read' });
    expect(
      Object.fromEntries(Object.entries(jobs).map(([name, { permissions }]) => [name, permissions])),
    ).toEqual({
      propose: undefined,
      build: { contents: 'read', pages: 'read' },
      deploy: { pages: 'write', 'id-token': 'write' },
      'list-addresses': { contents: 'write' },
    });
    // pull_request_target would run a stranger's proposal with the rights of the repository.
    expect(JSON.stringify(workflow)).not.toMatch(/pull_request_target|secrets\./);
  });

  it('puts a site online only after it was built and proved, and lists addresses only after that', () => {
    expect(jobs.deploy!.needs).toBe('build');
    expect(jobs['list-addresses']!.needs).toEqual(['build', 'deploy']);
    expect(jobs.build!.if).toContain("github.event_name != 'pull_request'");
    expect(jobs.propose!.if).toBe("github.event_name == 'pull_request'");
    const order = jobs.build!.steps.map(({ run, uses }) => run ?? uses ?? '');
    const at = (piece: string) => order.findIndex(text => text.includes(piece));
    expect(at('npm run build')).toBeLessThan(at('npm run deploy:check'));
    expect(at('npm run deploy:check')).toBeLessThan(at('upload-pages-artifact'));
    expect(at('cache/restore')).toBeLessThan(at('npm run build'));
    expect(usesOf(jobs.propose!).some(uses => /pages|upload|cache\/save/.test(uses))).toBe(false);
    for (const { steps } of [jobs.build!, jobs.deploy!]) {
      expect(steps.some(step => 'continue-on-error' in step || step.if !== undefined)).toBe(false);
    }
  });

  it('never runs two publications at once, and cuts none off', () => {
    expect(workflow.concurrency.group).toContain("|| 'publish'");
    expect(workflow.concurrency['cancel-in-progress']).toMatch(
      /^\$\{\{ github\.event_name == 'pull_request' \}\}$/,
    );
  });

  it('runs only commands that package.json has', () => {
    const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const named = Object.values(jobs).flatMap(job =>
      runsOf(job).flatMap(run =>
        [...run.matchAll(/npm run (?:--silent )?([\w:-]+)/g)].map(([, name]) => name!),
      ),
    );
    expect(new Set(named)).toEqual(new Set(['changes', 'check', 'build', 'deploy:check']));
    expect(named.filter(name => !(name in scripts))).toEqual([]);
  });

  it('takes every action from one maker, by its major version', () => {
    const all = Object.values(jobs).flatMap(usesOf);
    expect(all.filter(uses => !/^actions\/[a-z-]+(?:\/[a-z]+)?@v\d+$/.test(uses))).toEqual([]);
    // One version of each.
    expect(new Set(all).size).toBe(new Set(all.map(uses => uses.split('@')[0])).size);
  });

  it('is written so that no text from outside becomes part of a command', () => {
    const runs = Object.values(jobs).flatMap(runsOf);
    expect(runs.filter(run => run.includes('${{'))).toEqual([]);
  });
});

describe('the step that lists the addresses', () => {
  const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-list-'));
  afterAll(() => rmSync(scratch, { recursive: true, force: true }));
  const script = jobs['list-addresses']!.steps.find(({ name }) => name === 'Commit the list')!.run!;
  let count = 0;

  /** A repository to push to, and a copy of it to work in, as the job finds them. */
  function prepare(list: string | null, published: string | null) {
    count += 1;
    const [home, work, temp] = ['home', 'work', 'temp'].map(name => join(scratch, `${name}-${count}`)) as [
      string,
      string,
      string,
    ];
    startRepository(home);
    mkdirSync(join(home, 'content'));
    writeFileSync(join(home, 'content/yard.yaml'), 'name: Bench\n');
    if (list !== null) writeFileSync(join(home, 'content/addresses.csv'), list);
    commitAll(home, 'Start');
    git(home, 'config', 'receive.denyCurrentBranch', 'ignore');
    git(scratch, 'clone', '--quiet', home, work);
    mkdirSync(join(temp, 'published'), { recursive: true });
    if (published !== null) writeFileSync(join(temp, 'published/addresses.csv'), published);
    const run = () =>
      spawnSync('bash', ['-e', '-o', 'pipefail', '-c', script], {
        cwd: work,
        encoding: 'utf8',
        env: { ...process.env, RUNNER_TEMP: temp, PAUSE_SECONDS: '0', GIT_CONFIG_GLOBAL: '/dev/null' },
      });
    return { home, work, run, list: () => git(home, 'show', 'main:content/addresses.csv') };
  }

  const header = 'address,since,leads_to\n';

  it('adds what is new and keeps what is there', () => {
    const yard = prepare(
      `${header}/lots/a/,2026-01-01,\n`,
      `${header}/lots/a/,2026-02-02,\n/lots/b/,2026-02-02,\n`,
    );
    expect(yard.run().status).toBe(0);
    expect(yard.list()).toBe(`${header}/lots/a/,2026-01-01,\n/lots/b/,2026-02-02,`);
    expect(yard.run().status).toBe(0);
    expect(git(yard.home, 'rev-list', '--count', 'main')).toBe('2');
  });

  it('starts the list, mends a missing line end, and leaves all alone without a list', () => {
    const fresh = prepare(null, `${header}/,2026-02-02,\n`);
    expect(fresh.run().status).toBe(0);
    expect(fresh.list()).toBe(`${header}/,2026-02-02,`);
    const open = prepare(`${header}/,2026-01-01,`, `${header}/,2026-01-01,\n/lots/a/,2026-02-02,\n`);
    expect(open.run().status).toBe(0);
    expect(open.list()).toBe(`${header}/,2026-01-01,\n/lots/a/,2026-02-02,`);
    const none = prepare(null, null);
    expect(none.run().status).toBe(0);
    expect(git(none.home, 'rev-list', '--count', 'main')).toBe('1');
  });

  it('takes the newest main when somebody was faster', () => {
    const yard = prepare(`${header}/,2026-01-01,\n`, `${header}/,2026-01-01,\n/lots/b/,2026-02-02,\n`);
    // Before the first push goes out, somebody else's commit with a line of its own arrives.
    const hook = join(yard.work, '.git/hooks/pre-push');
    const other = join(scratch, 'other');
    git(scratch, 'clone', '--quiet', yard.home, other);
    writeFileSync(join(other, 'content/addresses.csv'), `${header}/,2026-01-01,\n/lots/c/,2026-02-01,\n`);
    commitAll(other, 'Another line');
    mkdirSync(join(yard.work, '.git/hooks'), { recursive: true });
    writeFileSync(
      hook,
      `#!/bin/sh\nunset GIT_DIR GIT_WORK_TREE GIT_INDEX_FILE\ngit -C '${other}' push --quiet origin HEAD:main 2>/dev/null\nexit 0\n`,
    );
    chmodSync(hook, 0o755);
    expect(yard.run().status).toBe(0);
    expect(yard.list()).toBe(`${header}/,2026-01-01,\n/lots/c/,2026-02-01,\n/lots/b/,2026-02-02,`);
  });

  it('is helped by git, which keeps the lines of both sides when copies are merged', () => {
    const { home } = prepare(`${header}/,2026-01-01,\n`, null);
    writeFileSync(join(home, '.gitattributes'), readFileSync(join(root, '.gitattributes')));
    commitAll(home, 'Attributes');
    git(home, 'switch', '--quiet', '--create', 'proposal');
    writeFileSync(join(home, 'content/addresses.csv'), `${header}/,2026-01-01,\n/lots/b/,2026-02-02,\n`);
    commitAll(home, 'b');
    git(home, 'switch', '--quiet', 'main');
    writeFileSync(join(home, 'content/addresses.csv'), `${header}/,2026-01-01,\n/lots/c/,2026-02-02,\n`);
    commitAll(home, 'c');
    git(home, 'merge', '--quiet', '--no-edit', 'proposal');
    const lines = readFileSync(join(home, 'content/addresses.csv'), 'utf8').trim().split('\n');
    expect(lines.slice(0, 2)).toEqual([header.trim(), '/,2026-01-01,']);
    expect(lines.slice(2).sort()).toEqual(['/lots/b/,2026-02-02,', '/lots/c/,2026-02-02,']);
  });
});
