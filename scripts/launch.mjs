/**
 * The one door to every command: `node scripts/launch.mjs NAME ...arguments`.
 * Plain JavaScript for any Node from 20 up. It installs what is missing, finds a Node new enough for the rest
 * (this one, or the one that came with the packages), and runs `scripts/NAME.ts` with it.
 */

import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Runs TypeScript directly and is what the site generator and the tests ask for. */
const neededNode = [24, 8, 0];
/** The launcher itself needs no more than this. */
const oldestNode = 20;

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const modules = join(root, 'node_modules');
const stamp = join(modules, '.leafdrop-lock');

/** Says what is wrong in one line and ends. */
function refuse(message) {
  process.stderr.write(`leafdrop: ${message}\n`);
  process.exit(1);
}

function isNewEnough(version) {
  const parts = version.split('.').map(Number);
  for (let index = 0; index < neededNode.length; index += 1) {
    const difference = (parts[index] ?? 0) - neededNode[index];
    if (difference !== 0) return difference > 0;
  }
  return true;
}

/** Which package lists the installed packages must match: the lock file decides. */
function lockHash() {
  return createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
}

/** Runs `npm ci` unless the installed packages already are those of the lock file. */
function installWhatIsMissing() {
  const hash = lockHash();
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return;
  process.stderr.write('Installing packages (once, about a minute) ...\n');
  const npm = process.env.npm_execpath;
  const words = ['ci', '--no-audit', '--no-fund', '--loglevel=error'];
  const installed = npm
    ? spawnSync(process.execPath, [npm, ...words], { cwd: root, stdio: ['ignore', 2, 2] })
    : spawnSync(process.platform === 'win32' ? 'npm.cmd' : 'npm', words, {
        cwd: root,
        stdio: ['ignore', 2, 2],
        shell: process.platform === 'win32',
      });
  if (installed.status !== 0) refuse('the packages could not be installed; see the lines above.');
  writeFileSync(stamp, hash);
}

/** Path of a Node that is new enough. */
function findNode() {
  if (isNewEnough(process.versions.node)) return process.execPath;
  const platform = process.platform === 'win32' ? 'win' : process.platform;
  const binary = process.platform === 'win32' ? 'node.exe' : 'node';
  const folder = join(modules, `node-${platform}-${process.arch}`);
  const bundled = [join(folder, 'bin', binary), join(folder, binary)].find(path => existsSync(path));
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
installWhatIsMissing();
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
