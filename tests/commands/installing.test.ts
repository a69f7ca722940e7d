/**
 * Installing, tried on projects with a handful of packages and a stand-in for npm that copies nothing from the network: it makes the
 * folders one by one and writes the list of what is installed as its last step, as npm does (checked against npm 11 by hand). Where a
 * test looks at it half-way, it stops before the second package until it is let go.
 */

import { spawn } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, describe, expect, it } from 'vitest';
import { withInstallLock } from '../../scripts/installLock.mjs';

const root = resolve(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-installing-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

interface Locked {
  version: string;
  integrity: string;
  dev?: true;
  optional?: true;
  os?: string[] | string;
  cpu?: string[];
  bin?: Record<string, string>;
}

const ofPackage = (version: string, more: Partial<Locked> = {}): Locked => ({
  version,
  integrity: `sha512-${version}`,
  ...more,
});

const here = { os: process.platform, cpu: [process.arch] };

const packages: Record<string, Locked> = {
  'node_modules/renders': ofPackage('1.0.0', { bin: { renders: 'bin/renders.js' } }),
  'node_modules/reads': ofPackage('2.0.0'),
  'node_modules/reads/node_modules/renders': ofPackage('0.9.0'),
  'node_modules/built-for-here': ofPackage('1.0.0', { optional: true, ...here }),
  'node_modules/built-for-another': ofPackage('1.0.0', {
    optional: true,
    os: ['!linux', '!darwin', '!win32'],
  }),
  'node_modules/@proves/all': ofPackage('3.0.0', { dev: true }),
};
const building = Object.keys(packages).filter(
  folder => !packages[folder]!.dev && !folder.endsWith('another'),
);
const everything = [...building, 'node_modules/@proves/all'];

/** Does what npm does with `ci` and `install`, and writes down with which words it was called. */
const standInForNpm = `
import { appendFileSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
const words = process.argv.slice(2);
appendFileSync('npm-calls.txt', words.join(' ') + '\\n');
if (process.env.NPM_FAILS) process.exit(1);
const locked = JSON.parse(readFileSync('package-lock.json', 'utf8')).packages;
if (words[0] === 'ci') rmSync('node_modules', { recursive: true, force: true });
const installed = {};
for (const [folder, entry] of Object.entries(locked)) {
  if (folder === '' || (entry.dev && words.includes('--omit=dev'))) continue;
  if (folder.endsWith('another') || folder.endsWith(process.env.NPM_LEAVES_OUT)) continue;
  installed[folder] = entry;
  if (existsSync(join(folder, 'package.json'))) continue;
  mkdirSync(folder, { recursive: true });
  while (process.env.NPM_STOPS && Object.keys(installed).length === 2 && !existsSync('let-go')) await pause(10);
  for (const file of ['package.json', ...Object.values(entry.bin ?? {})]) {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), '{}');
  }
}
writeFileSync('node_modules/.package-lock.json', JSON.stringify({ packages: installed }));
`;

interface Ran {
  code: number | null;
  said: string;
}

interface Started {
  kill(signal: NodeJS.Signals): void;
  /** What it has said so far. */
  said(): string;
  ended: Promise<Ran>;
}

interface Project {
  folder: string;
  start(command: string, env?: Record<string, string>): Started;
  run(command: string, env?: Record<string, string>): Promise<Ran>;
  /** The words of each call of npm so far. */
  calls(): string[];
  installed(): string[];
  /** Lets an npm that has stopped half-way go on. */
  letGo(): void;
  lock: string;
}

let projects = 0;

/** A project fresh from its repository, with the launcher of this one. */
function freshProject(): Project {
  projects += 1;
  const folder = join(scratch, String(projects));
  mkdirSync(join(folder, 'scripts'), { recursive: true });
  for (const file of ['launch.mjs', 'packages.mjs', 'installLock.mjs']) {
    cpSync(join(root, 'scripts', file), join(folder, 'scripts', file));
  }
  for (const command of ['build', 'check', 'test']) {
    writeFileSync(join(folder, 'scripts', `${command}.ts`), `console.log('ran ${command}');\n`);
  }
  writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
  writeFileSync(join(folder, 'package-lock.json'), JSON.stringify({ packages: { '': {}, ...packages } }));
  mkdirSync(join(folder, 'npm'));
  writeFileSync(join(folder, 'npm/npm-cli.js'), standInForNpm);
  function start(command: string, env: Record<string, string> = {}): Started {
    const child = spawn(process.execPath, [join(folder, 'scripts/launch.mjs'), command], {
      cwd: folder,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, npm_execpath: join(folder, 'npm/npm-cli.js'), ...env },
    });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', part => {
        said += part;
      });
    }
    return {
      kill: signal => child.kill(signal),
      said: () => said,
      ended: new Promise(settle => child.on('close', code => settle({ code, said }))),
    };
  }
  return {
    folder,
    start,
    run: (command, env) => start(command, env).ended,
    calls: () => {
      const file = join(folder, 'npm-calls.txt');
      return existsSync(file) ? readFileSync(file, 'utf8').trim().split('\n') : [];
    },
    installed: () => Object.keys(packages).filter(path => existsSync(join(folder, path, 'package.json'))),
    letGo: () => writeFileSync(join(folder, 'let-go'), ''),
    lock: join(folder, '.build/install.lock'),
  };
}

/** What npm does when a person runs it, not the launcher. */
async function npmByHand({ folder }: Project, ...words: string[]): Promise<void> {
  const npm = spawn(process.execPath, [join(folder, 'npm/npm-cli.js'), ...words], { cwd: folder });
  await new Promise(settle => npm.on('close', settle));
  rmSync(join(folder, 'npm-calls.txt'));
}

/** Waits for something another process does. */
async function until(happened: () => boolean): Promise<void> {
  while (!happened()) await pause(10);
}

describe('what is installed', () => {
  it('is what building needs, once', async () => {
    const project = freshProject();
    const first = await project.run('build');
    expect(first.said).toContain('ran build');
    expect(project.installed()).toEqual(building);
    expect((await project.run('check')).said).toBe('ran check\n');
    expect(project.calls()).toHaveLength(1);
    expect(project.calls()[0]).toMatch(/^ci --omit=dev --include=optional /);
  });

  it('is all of it for the tests, also where the machine is set up to leave them out', async () => {
    const project = freshProject();
    await project.run('test', { NODE_ENV: 'production' });
    expect(project.installed()).toEqual(everything);
    expect(project.calls()[0]).toContain('ci --include=dev');
  });

  it('is added to for the tests, and nothing is taken away from a command that runs meanwhile', async () => {
    const project = freshProject();
    await project.run('build');
    writeFileSync(join(project.folder, 'node_modules/renders/in-use.txt'), '');
    await project.run('test');
    expect(project.calls()[1]).toMatch(/^install --no-save --include=dev/);
    expect(project.installed()).toEqual(everything);
    expect(existsSync(join(project.folder, 'node_modules/renders/in-use.txt'))).toBe(true);
    expect((await project.run('build')).said).toBe('ran build\n');
  });

  it('is recognized when a person ran npm ci', async () => {
    const project = freshProject();
    await npmByHand(project, 'ci');
    expect((await project.run('test')).said).toBe('ran test\n');
    expect((await project.run('build')).said).toBe('ran build\n');
    expect(project.calls()).toEqual([]);
  });

  it('is recognized for building when a person ran npm ci --omit=dev', async () => {
    const project = freshProject();
    await npmByHand(project, 'ci', '--omit=dev');
    expect((await project.run('build')).said).toBe('ran build\n');
    await project.run('test');
    expect(project.calls()).toHaveLength(1);
  });

  it('follows the lock file, and who has the packages of the tests keeps them', async () => {
    const project = freshProject();
    await npmByHand(project, 'ci');
    const changed = { ...packages, 'node_modules/reads': ofPackage('2.0.1') };
    writeFileSync(join(project.folder, 'package-lock.json'), JSON.stringify({ packages: changed }));
    await project.run('build');
    expect(project.calls()).toHaveLength(1);
    expect(project.calls()[0]).toMatch(/^ci --include=dev/);
  });
});

const stops = { NPM_STOPS: 'yes' };
const isWaiting = (command: Started) => command.said().includes('Waiting for another command that installs');

describe('two commands at once on a fresh clone', () => {
  it('install once, and all run', async () => {
    const project = freshProject();
    const commands = ['build', 'check', 'check'].map(command => project.start(command, stops));
    await until(() => commands.filter(isWaiting).length === 2);
    project.letGo();
    const ran = await Promise.all(commands.map(({ ended }) => ended));
    expect(ran.map(({ code }) => code)).toEqual([0, 0, 0]);
    expect(project.calls()).toHaveLength(1);
    expect(existsSync(project.lock)).toBe(false);
  });

  it('install what each needs, one after the other', async () => {
    const project = freshProject();
    const commands = ['build', 'test'].map(command => project.start(command, stops));
    await until(() => commands.some(isWaiting));
    project.letGo();
    const ran = await Promise.all(commands.map(({ ended }) => ended));
    expect(ran.map(({ code }) => code)).toEqual([0, 0]);
    expect(project.installed()).toEqual(everything);
  });
});

/** Numbers of the launcher and of the npm it runs, as the lock tells them. */
function holders({ lock }: Project): number[] {
  try {
    return JSON.parse(readFileSync(lock, 'utf8')).pids;
  } catch {
    return [];
  }
}

const isHalfWay = (project: Project) => holders(project).length === 2 && project.installed().length === 1;

describe('a half-finished install', () => {
  it('is mended by the next command after everything was killed', async () => {
    const project = freshProject();
    const killed = project.start('build', stops);
    await until(() => isHalfWay(project));
    for (const pid of holders(project)) process.kill(pid, 'SIGKILL');
    await killed.ended;
    expect((await project.run('build')).said).toContain('ran build');
    expect(project.installed()).toEqual(building);
    expect(project.calls().at(-1)).toMatch(/^ci /);
  });

  it('is left to finish when only the launcher was killed', async () => {
    const project = freshProject();
    const killed = project.start('build', stops);
    await until(() => isHalfWay(project));
    killed.kill('SIGKILL');
    const next = project.start('build');
    await until(() => isWaiting(next));
    project.letGo();
    expect((await next.ended).said).toContain('ran build');
    expect(project.calls()).toHaveLength(1);
  });

  it('ends with the command that is told to stop', async () => {
    const project = freshProject();
    const stopped = project.start('build', stops);
    await until(() => isHalfWay(project));
    const [, npm] = holders(project);
    stopped.kill('SIGTERM');
    expect((await stopped.ended).code).toBe(143);
    expect(() => process.kill(npm!, 0)).toThrow('ESRCH');
    expect(existsSync(project.lock)).toBe(false);
  });

  it('of a person is noticed: a list that is missing, a package half there, a program that is not', async () => {
    const project = freshProject();
    await project.run('build');
    for (const damage of [
      '.package-lock.json',
      'reads/package.json',
      'renders/bin/renders.js',
      'built-for-here',
    ]) {
      rmSync(join(project.folder, 'node_modules', damage), { recursive: true });
      expect((await project.run('check')).said, damage).toContain('ran check');
      expect(existsSync(join(project.folder, 'node_modules', damage)), damage).toBe(true);
      expect(project.calls().at(-1), damage).toMatch(damage === 'built-for-here' ? /^install/ : /^ci/);
    }
    expect(project.calls()).toHaveLength(5);
  });

  it('is not added to where a part of a missing package is there', async () => {
    const project = freshProject();
    await project.run('build');
    mkdirSync(join(project.folder, 'node_modules/@proves/all'), { recursive: true });
    await project.run('test');
    expect(project.calls()[1]).toMatch(/^ci /);
  });

  it('that npm calls whole is told, and not tried again by each command where a build for this machine is left out', async () => {
    const project = freshProject();
    const leftOut = { NPM_LEAVES_OUT: 'built-for-here' };
    const first = await project.run('build', leftOut);
    expect(first.said).toContain('npm has left out node_modules/built-for-here.');
    expect(first.said).toContain('ran build');
    expect((await project.run('build', leftOut)).said).toBe('ran build\n');
    const needed = freshProject();
    const refused = await needed.run('build', { NPM_LEAVES_OUT: 'reads' });
    expect(refused.code).toBe(1);
    expect(refused.said).toContain('npm reported no error but has not installed node_modules/reads.');
  });
});

describe('the lock', () => {
  it('is taken over once nobody touches it, though another process has the number of its holder', async () => {
    const lock = join(scratch, 'left-behind.lock');
    writeFileSync(lock, JSON.stringify({ host: hostname(), pids: [process.pid] }));
    let waited = 0;
    const onWait = () => {
      waited += 1;
    };
    expect(await withInstallLock(lock, onWait, async () => 'worked', { untouchedMs: 500 })).toBe('worked');
    expect(waited).toBe(1);
    expect(existsSync(lock)).toBe(false);
  });

  it('is touched by its holder, so a long install keeps it', async () => {
    const lock = join(scratch, 'held.lock');
    const order: string[] = [];
    const first = withInstallLock(
      lock,
      () => undefined,
      async () => {
        await until(() => order.includes('waits'));
        const { mtimeMs } = statSync(lock);
        await until(() => statSync(lock).mtimeMs > mtimeMs);
        order.push('first');
      },
    );
    const second = withInstallLock(
      lock,
      () => order.push('waits'),
      async () => {
        order.push('second');
      },
    );
    await Promise.all([first, second]);
    expect(order).toEqual(['waits', 'first', 'second']);
  });

  it('is held by one of many that find it left behind', async () => {
    const lock = join(scratch, 'many.lock');
    writeFileSync(lock, JSON.stringify({ host: hostname(), pids: [2 ** 22 + 1] }));
    let holding = 0;
    await Promise.all(
      Array.from({ length: 20 }, () =>
        withInstallLock(
          lock,
          () => undefined,
          async () => {
            holding += 1;
            expect(holding).toBe(1);
            await pause(1);
            holding -= 1;
          },
        ),
      ),
    );
  });
});

describe('what goes wrong is told in a line', () => {
  it('npm fails', async () => {
    const project = freshProject();
    const ran = await project.run('build', { NPM_FAILS: 'yes' });
    expect(ran.code).toBe(1);
    expect(ran.said).toContain('leafdrop: the packages could not be installed; see the lines above.');
    expect(existsSync(join(project.folder, '.build/install.lock'))).toBe(false);
  });

  it('the lock file is damaged', async () => {
    const project = freshProject();
    writeFileSync(join(project.folder, 'package-lock.json'), '{ "packages": {');
    const ran = await project.run('build');
    expect(ran).toEqual({
      code: 1,
      said: 'leafdrop: package-lock.json is missing or damaged; get it back from the repository.\n',
    });
  });
});
