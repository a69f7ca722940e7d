import { spawnSync } from 'node:child_process';
import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { changeTogether, type FileChange, settleFiles } from './filesTogether.ts';

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-together-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** A folder with a file that gets another name, a link to a file that does, a text that changes, and a private file elsewhere. */
function yardIn(name: string) {
  const folder = join(scratch, name);
  const [content, secret] = [join(folder, 'content'), join(folder, 'secret')];
  mkdirSync(join(content, 'shelf'), { recursive: true });
  mkdirSync(secret);
  writeFileSync(join(content, 'a.md'), 'old a');
  writeFileSync(join(content, 'shelf/b.md'), 'old b');
  symlinkSync('shelf/b.md', join(content, 'b.md'));
  writeFileSync(join(content, 'list.csv'), 'old list');
  writeFileSync(join(secret, 'a.yaml'), 'old secret', { mode: 0o600 });
  const changes: FileChange[] = [
    { path: join(content, 'a.md'), newPath: join(content, 'aa.md'), text: 'new a' },
    { path: join(content, 'b.md'), newPath: join(content, 'bb.md'), text: 'new b' },
    { path: join(content, 'list.csv'), newPath: join(content, 'list.csv'), text: 'new list' },
    { path: join(content, 'made.csv'), newPath: join(content, 'made.csv'), text: 'new made' },
    { path: join(secret, 'a.yaml'), newPath: join(secret, 'aa.yaml'), text: 'new secret' },
  ];
  return { folder, content, changes };
}

function filesIn(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  const files = entries
    .filter(entry => !entry.isDirectory())
    .map(entry => join(entry.parentPath, entry.name));
  return Object.fromEntries(
    files
      .sort()
      .map(path => [
        path.slice(folder.length + 1),
        lstatSync(path).isSymbolicLink() ? `to ${readlinkSync(path)}` : readFileSync(path, 'utf8'),
      ]),
  );
}

const before = {
  'content/a.md': 'old a',
  'content/b.md': 'to shelf/b.md',
  'content/list.csv': 'old list',
  'content/shelf/b.md': 'old b',
  'secret/a.yaml': 'old secret',
};
const after = {
  'content/aa.md': 'new a',
  'content/bb.md': 'to shelf/b.md',
  'content/list.csv': 'new list',
  'content/made.csv': 'new made',
  'content/shelf/b.md': 'new b',
  'secret/aa.yaml': 'new secret',
};

it('follows links, keeps who may read a file, and leaves nothing behind', async () => {
  const { folder, content, changes } = yardIn('plain');
  expect(filesIn(folder)).toEqual(before);
  await changeTogether(content, changes);
  expect(filesIn(folder)).toEqual(after);
  expect(statSync(join(folder, 'secret/aa.yaml')).mode & 0o777).toBe(0o600);
  expect(await settleFiles(content)).toBeNull();
});

it('leaves all as it was when a file cannot be written', async () => {
  const { folder, content, changes } = yardIn('refused');
  const impossible = { path: join(content, 'a.md/x'), newPath: join(content, 'a.md/x'), text: '' };
  await expect(changeTogether(content, [...changes, impossible])).rejects.toThrow(/EEXIST|ENOTDIR/);
  expect(filesIn(folder)).toEqual(before);
  expect(await settleFiles(content)).toBeNull();
});

/** Ends the process before its n-th change of the disk. */
const killer = (n: number) => `
import fs from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';
let left = ${n};
for (const name of ['writeFile', 'rename', 'rm', 'chmod', 'mkdir', 'link']) {
  const own = fs[name];
  fs[name] = async (...words) => {
    if (left === 0) process.kill(process.pid, 'SIGKILL');
    left -= 1;
    return own(...words);
  };
}
syncBuiltinESMExports();`;

function killedBefore(n: number, content: string, changes: readonly FileChange[]): boolean {
  const program = `
    const { changeTogether } = await import(${JSON.stringify(join(import.meta.dirname, 'filesTogether.ts'))});
    await changeTogether(${JSON.stringify(content)}, ${JSON.stringify(changes)});`;
  const preload = `data:text/javascript,${encodeURIComponent(killer(n))}`;
  const { signal, status, stderr } = spawnSync(
    process.execPath,
    ['--import', preload, '--input-type=module', '-e', program],
    { encoding: 'utf8' },
  );
  expect(signal === 'SIGKILL' || status === 0, stderr).toBe(true);
  return signal === 'SIGKILL';
}

it('killed before any of its steps, ends in the files of before or in those of after', async () => {
  const seen = new Set<string | null>();
  let n = 0;
  for (; ; n += 1) {
    const { folder, content, changes } = yardIn(`killed-${n}`);
    const wasKilled = killedBefore(n, content, changes);
    const settled = await settleFiles(content);
    expect(filesIn(folder), `killed before step ${n}`).toEqual(
      settled === 'finished' || 'content/aa.md' in filesIn(folder) ? after : before,
    );
    expect(await settleFiles(content)).toBeNull();
    seen.add(settled);
    if (!wasKilled) break;
  }
  // Five files are written and placed, three get another name.
  expect(n).toBeGreaterThan(13);
  expect([...seen].sort()).toEqual(['finished', null, 'undone'].sort());
});
