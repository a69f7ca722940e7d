/** The publishing workflow: what it may do, in what order, and that its commands are there. Its last step is run on repositories made here. */

import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join, resolve } from 'node:path';
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
  outputs?: Record<string, string>;
  steps: Step[];
}

const written = readFileSync(join(root, '.github/workflows/publish.yml'), 'utf8');
const workflow = parse(written) as {
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
    expect(new Set(named)).toEqual(new Set(['changes', 'check', 'build', 'deploy:check', 'published']));
    expect(named.filter(name => !(name in scripts))).toEqual([]);
  });

  it('takes every action from one maker, pinned by commit, with its version beside it', () => {
    const all = Object.values(jobs).flatMap(usesOf);
    expect(all.filter(uses => !/^actions\/[a-z-]+(?:\/[a-z]+)?@[0-9a-f]{40}$/.test(uses))).toEqual([]);
    const versions = [...written.matchAll(/uses: (\S+) # v\d+\.\d+\.\d+$/gm)].map(([, uses]) => uses);
    expect(versions).toEqual(all);
    // One commit of each; those of one repository share it.
    const repositories = new Map(
      all.map(uses => [uses.split('@')[0]!.split('/', 2).join('/'), uses.split('@')[1]]),
    );
    expect(new Set(all.map(uses => uses.split('@')[1])).size).toBe(repositories.size);
  });

  it('finds in a proposal what main has saved: the same paths, and keys that begin alike', () => {
    const caches = Object.values(jobs).flatMap(({ steps }) =>
      steps.filter(({ uses }) => uses?.includes('actions/cache/')),
    );
    expect(caches).toHaveLength(3);
    // A cache is found by its paths as much as by its key: https://github.com/actions/cache, "Cache version".
    expect(new Set(caches.map(({ with: how }) => how!.path)).size).toBe(1);
    const save = caches.find(({ uses }) => uses!.includes('/save'))!;
    for (const { with: how } of caches.filter(cache => cache !== save)) {
      expect(String(save.with!.key).startsWith(String(how!['restore-keys']))).toBe(true);
    }
  });

  it('leaves installing to the first command of a job, and installs nothing where it may write', () => {
    const runs = Object.values(jobs).flatMap(runsOf);
    expect(runs.filter(run => /\bnpm (?:ci|i|install)\b/.test(run))).toEqual([]);
    expect(runsOf(jobs['list-addresses']!).filter(run => /\bnp[mx]\b/.test(run))).toEqual([]);
  });

  it('can be run again as a whole: what it hands on is named after the attempt', () => {
    const uploads = jobs.build!.steps.filter(({ uses }) => uses?.includes('upload-'));
    expect(uploads.map(({ with: how }) => how!.name)).toEqual(Object.values(jobs.build!.outputs!));
    for (const { with: how } of uploads)
      expect(String(how!.name)).toMatch(/-\$\{\{ github\.run_attempt \}\}$/);
    const taken = [...jobs.deploy!.steps, ...jobs['list-addresses']!.steps].flatMap(
      ({ with: how }) => how?.artifact_name ?? (how?.path ? how.name : undefined) ?? [],
    );
    expect(taken).toEqual(
      Object.keys(jobs.build!.outputs!).map(name => `\${{ needs.build.outputs.${name} }}`),
    );
  });

  it('fails where the list of addresses is lost', () => {
    const steps = Object.values(jobs).flatMap(job => job.steps);
    expect(steps.filter(step => 'continue-on-error' in step)).toEqual([]);
    const kept = steps.find(({ with: how }) => String(how?.path).startsWith('content/addresses.csv'))!;
    expect(kept.with!['if-no-files-found']).toBe('error');
    const order = runsOf(jobs.build!);
    expect(order.findIndex(run => run.includes('published -- restore'))).toBeLessThan(
      order.findIndex(run => run.includes('npm run build')),
    );
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
    // The program as a checkout has it: without packages.
    for (const part of ['scripts', 'src/core', 'src/files.ts', 'src/build', 'package.json']) {
      cpSync(join(root, part), join(home, part), { recursive: true });
    }
    commitAll(home, 'The program');
    git(scratch, 'clone', '--quiet', home, work);
    mkdirSync(join(temp, 'published'), { recursive: true });
    if (published !== null) writeFileSync(join(temp, 'published/addresses.csv'), published);
    const run = () =>
      spawnSync('bash', ['-e', '-o', 'pipefail', '-c', script], {
        cwd: work,
        encoding: 'utf8',
        env: {
          ...process.env,
          CONTENT_DIR: undefined,
          PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH}`,
          RUNNER_TEMP: temp,
          PAUSE_SECONDS: '0',
          GIT_CONFIG_GLOBAL: '/dev/null',
        },
      });
    return { home, work, temp, run, list: () => git(home, 'show', 'main:content/addresses.csv') };
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
    expect(git(yard.home, 'rev-list', '--count', 'main')).toBe('3');
  });

  it('adds nothing where addresses were renamed, and nothing is new', () => {
    const demo = readFileSync(join(root, 'content/addresses.csv'), 'utf8');
    expect(demo).toContain('/cultivars/wren-foot/,2026-02-10,/cultivars/wrenfoot/');
    const yard = prepare(demo, demo);
    expect(yard.run().status).toBe(0);
    expect(git(yard.home, 'rev-list', '--count', 'main')).toBe('2');
  });

  it('lists the addresses of two days, of a rename between them, and of a run after a failed one', () => {
    const yard = prepare(`${header}/lots/a/,2026-01-01,\n`, null);
    const publish = (list: string) => {
      writeFileSync(join(yard.temp, 'published/addresses.csv'), list);
      const { status, stderr } = yard.run();
      expect(status, stderr).toBe(0);
    };
    publish(`${header}/lots/a/,2026-01-01,\n/lots/b/,2026-02-02,\n`);
    const renamed = `${yard.list()}\n/lots/b/,2026-02-03,/lots/c/\n`;
    git(yard.home, 'reset', '--quiet', '--hard');
    writeFileSync(join(yard.home, 'content/addresses.csv'), renamed);
    commitAll(yard.home, 'Rename b');
    publish(`${renamed}/lots/c/,2026-02-03,\n`);
    publish(`${renamed}/lots/c/,2026-02-04,\n`);
    expect(yard.list()).toBe(`${renamed}/lots/c/,2026-02-03,`);
  });

  it('starts the list, and mends a missing line end', () => {
    const fresh = prepare(null, `${header}/,2026-02-02,\n`);
    expect(fresh.run().status).toBe(0);
    expect(fresh.list()).toBe(`${header}/,2026-02-02,`);
    const open = prepare(`${header}/,2026-01-01,`, `${header}/,2026-01-01,\n/lots/a/,2026-02-02,\n`);
    expect(open.run().status).toBe(0);
    expect(open.list()).toBe(`${header}/,2026-01-01,\n/lots/a/,2026-02-02,`);
  });

  it.each([
    ['is missing', null, /there is no .*addresses\.csv/],
    ['is empty', header, /the published list is empty/],
    ['was cut off', `${header}/lots/a/,2026-0`, /line 2 is no line of an address list/],
  ])('fails, and changes nothing, where the published list %s', (_, published, said) => {
    const yard = prepare(`${header}/lots/a/,2026-01-01,\n`, published);
    const { status, stderr } = yard.run();
    expect(status).not.toBe(0);
    expect(stderr).toMatch(said);
    expect(git(yard.home, 'rev-list', '--count', 'main')).toBe('2');
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
