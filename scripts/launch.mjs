/**
 * The one door to every command: `node scripts/launch.mjs NAME ...arguments`.
 * Plain JavaScript for any Node from 20 up. It installs what is missing, finds a Node new enough for the rest
 * (this one, or the one that came with the packages), and runs `scripts/NAME.ts` with it.
 */

import { spawn, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { constants } from 'node:os';
import { basename, delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { withInstallLock } from './installLock.mjs';
import { acceptLeftOut, comparePackages, npmWords } from './packages.mjs';

/** Runs TypeScript directly and is what the site generator and the tests ask for. */
const neededNode = [24, 8, 0];
/** The launcher itself needs no more than this. */
const oldestNode = 20;
/** Commands that use packages which building does without. */
const needTestPackages = ['test', 'bench'];

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const modules = join(root, 'node_modules');
/** The Node among the packages, on the platforms that have one. */
const bundledNode = `node_modules/node-${process.platform === 'win32' ? 'win' : process.platform}-${process.arch}`;

/** Says what is wrong in one line and ends. */
function refuse(message) {
  process.stderr.write(`leafdrop: ${message}\n`);
  process.exit(1);
}

function say(message) {
  process.stderr.write(`${message}\n`);
}

function isNewEnough(version) {
  const parts = version.split('.').map(Number);
  for (let index = 0; index < neededNode.length; index += 1) {
    const difference = (parts[index] ?? 0) - neededNode[index];
    if (difference !== 0) return difference > 0;
  }
  return true;
}

/** The npm that started this, or the one on the PATH. Another package manager does not read package-lock.json. */
function startNpm(words) {
  const running = process.env.npm_execpath;
  const options = { cwd: root, stdio: ['ignore', 2, 2] };
  if (running && /^npm(?:-cli)?\.[cm]?js$/.test(basename(running))) {
    return spawn(process.execPath, [running, ...words], options);
  }
  const onWindows = process.platform === 'win32';
  return spawn(onWindows ? 'npm.cmd' : 'npm', words, { ...options, shell: onWindows });
}

/** Runs npm until it has ended, also where this command is told to stop, so that nothing goes on behind its back. Its exit code. */
async function runNpm(words, onStart) {
  const npm = startNpm(words);
  if (npm.pid) onStart(npm.pid);
  let stoppedBy = null;
  const stop = signal => {
    stoppedBy = signal;
    npm.kill(signal);
  };
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'];
  for (const signal of signals) process.on(signal, stop);
  const code = await new Promise(settle => {
    npm.on('error', () => settle(1));
    npm.on('close', status => settle(status ?? 1));
  });
  for (const signal of signals) process.off(signal, stop);
  return stoppedBy ? 128 + constants.signals[stoppedBy] : code;
}

/** Installs what a command needs and is missing; another command that installs is waited for. */
async function installWhatIsMissing(withTests) {
  const asked = { withTests, platform: process.platform, arch: process.arch };
  const compare = () => comparePackages(root, asked);
  if (compare().missing.length === 0) return;
  const lock = join(root, '.build/install.lock');
  const onWait = () =>
    say(`Waiting for another command that installs packages (if there is none, delete ${lock}) ...`);
  const failed = await withInstallLock(lock, onWait, async alsoRuns => {
    const before = compare();
    if (before.missing.length === 0) return null;
    say(
      before.canAdd
        ? 'Adding packages that are missing (once, about half a minute) ...'
        : 'Installing packages (once, about a minute) ...',
    );
    const code = await runNpm(npmWords(before, withTests), alsoRuns);
    if (code > 128) return { code };
    if (code !== 0) return { code: 1, why: 'the packages could not be installed; see the lines above.' };
    const indispensable = isNewEnough(process.versions.node) ? [] : [bundledNode];
    const { leftOut, stillMissing } = acceptLeftOut(root, compare().missing, indispensable);
    if (leftOut.length > 0) {
      say(`npm has left out ${leftOut.join(', ')}. If something fails for want of it, run: npm ci`);
    }
    if (stillMissing.length === 0) return null;
    const why = `npm reported no error but has not installed ${stillMissing.slice(0, 3).join(', ')}.`;
    const remedy = 'Is the registry within reach? Then try again; "npm ci" shows what npm says about it.';
    return { code: 1, why: `${why} ${remedy}` };
  });
  if (failed?.why) refuse(failed.why);
  if (failed) process.exit(failed.code);
}

/** Path of a Node that is new enough. */
function findNode() {
  if (isNewEnough(process.versions.node)) return process.execPath;
  const binary = process.platform === 'win32' ? 'node.exe' : 'node';
  const bundled = [`bin/${binary}`, binary]
    .map(path => join(root, bundledNode, path))
    .find(path => existsSync(path));
  if (bundled) return bundled;
  return refuse(
    `this machine runs Node ${process.versions.node}, and no newer one comes with the packages for ` +
      `${process.platform} ${process.arch}. Install Node ${neededNode.join('.')} or newer from nodejs.org and try again.`,
  );
}

if (Number(process.versions.node.split('.')[0]) < oldestNode) {
  refuse(`this machine runs Node ${process.versions.node}; Node ${oldestNode} or newer is needed.`);
}
const [name, ...words] = process.argv.slice(2);
if (!name || !/^[a-z-]+$/i.test(name)) refuse('say which command to run, such as: npm run check');
const script = join(root, 'scripts', `${name}.ts`);
if (!existsSync(script)) refuse(`there is no command "${name}".`);
try {
  await installWhatIsMissing(needTestPackages.includes(name));
} catch (problem) {
  refuse(problem.message);
}
const node = findNode();
/**
 * By itself Node lets garbage grow to several times what is in use. Building thousands of pages, these keep the memory a quarter lower at
 * hardly any cost. Processes that are forked inherit them.
 */
const sparing = ['--max-semi-space-size=8', '--heap-growing-percent=40'];
const ran = spawnSync(node, ['--disable-warning=ExperimentalWarning', ...sparing, script, ...words], {
  cwd: root,
  stdio: 'inherit',
  env: {
    ...process.env,
    ASTRO_TELEMETRY_DISABLED: '1',
    // Node keeps compiled modules there: a check starts in three quarters of the time.
    NODE_COMPILE_CACHE: process.env.NODE_COMPILE_CACHE ?? join(root, '.cache/compiled'),
    PATH: [dirname(node), join(modules, '.bin'), process.env.PATH ?? ''].join(delimiter),
  },
});
process.exit(ran.status ?? 1);
