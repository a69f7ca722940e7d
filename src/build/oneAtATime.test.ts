/** The lock: held by one, left by the dead, and never by a process that only has the number of its holder. */

import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Writable } from 'node:stream';
import { afterAll, describe, expect, it } from 'vitest';
import { oneAtATime } from './oneAtATime.ts';
import { markOf, presenceOf } from './processMark.ts';

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-lock-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const moduleUrl = JSON.stringify(new URL('oneAtATime.ts', import.meta.url).href);
const onLinux = existsSync('/proc/self/stat');

/** Takes a lock and says whether there was a wait. */
async function waitedFor(lock: string): Promise<boolean> {
  let waited = false;
  await oneAtATime(
    lock,
    () => {
      waited = true;
    },
    async () => undefined,
  );
  return waited;
}

describe('a lock', () => {
  it('is held by one at a time, and gone afterwards', async () => {
    const lock = join(scratch, 'own/a.lock');
    let inside = 0;
    const most: number[] = [];
    const job = async () => {
      inside += 1;
      most.push(inside);
      await new Promise(done => setTimeout(done, 5));
      inside -= 1;
    };
    await Promise.all(Array.from({ length: 5 }, () => oneAtATime(lock, () => {}, job)));
    expect(most).toEqual([1, 1, 1, 1, 1]);
    expect(readdirSync(join(scratch, 'own'))).toEqual([]);
  });

  it('is given back when the work fails', async () => {
    const lock = join(scratch, 'failing.lock');
    const work = oneAtATime(
      lock,
      () => {},
      () => Promise.reject(new Error('no')),
    );
    await expect(work).rejects.toThrow('no');
    expect(existsSync(lock)).toBe(false);
  });

  it('of a process that was killed is taken over by one of those who wait', async () => {
    const lock = join(scratch, 'killed.lock');
    const program = `const { oneAtATime } = await import(${moduleUrl});
      await oneAtATime(${JSON.stringify(lock)}, () => {}, () => new Promise(() => { console.log('held'); setInterval(() => {}, 1000); }));`;
    const holder = spawn(process.execPath, ['--input-type=module', '-e', program]);
    await once(holder.stdout, 'data');
    holder.kill('SIGKILL');
    await once(holder, 'exit');
    let inside = 0;
    let most = 0;
    const enter = () =>
      oneAtATime(
        lock,
        () => {},
        async () => {
          inside += 1;
          most = Math.max(most, inside);
          await new Promise(done => setTimeout(done, 20));
          inside -= 1;
        },
      );
    await Promise.all([enter(), enter(), enter()]);
    expect(most).toBe(1);
  });

  it.runIf(onLinux)('whose process number was given to another process is not waited for', async () => {
    const lock = join(scratch, 'number.lock');
    // This very process has the number, and was started at another time.
    const holder = { ...markOf(process.pid), started: '1', token: 'earlier' };
    writeFileSync(lock, JSON.stringify(holder));
    expect(presenceOf(holder)).toBe('gone');
    await waitedFor(lock);
    expect(existsSync(lock)).toBe(false);
  });

  it.runIf(onLinux)(
    'of a process that has ended, and that nobody has asked about, is not waited for',
    async () => {
      // The shell's child ends when it is let go; the shell becomes a program that never asks how that went.
      const shell = spawn('sh', ['-c', 'cat <&3 >&2 & echo $!; exec 3<&-; exec sleep 600'], {
        stdio: ['ignore', 'pipe', 'ignore', 'pipe'],
      });
      const [said] = await once(shell.stdout!, 'data');
      const child = markOf(Number(said));
      expect(presenceOf(child)).toBe('running');
      (shell.stdio[3] as Writable).end();
      await expect.poll(() => presenceOf(child)).toBe('gone');
      expect(() => process.kill(child.pid, 0)).not.toThrow();
      shell.kill('SIGKILL');
    },
  );

  it.concurrent('of another machine, of an earlier run of this one, or that a power cut has emptied, is taken over when nobody touches it', async () => {
    const left = {
      'machine.lock': JSON.stringify({ ...markOf(process.pid), machine: 'elsewhere', token: 'there' }),
      'empty.lock': '',
      'number-only.lock': String(process.pid),
    };
    await Promise.all(
      Object.entries(left).map(async ([name, text]) => {
        const lock = join(scratch, name);
        writeFileSync(lock, text);
        expect(await waitedFor(lock)).toBe(true);
        expect(existsSync(lock)).toBe(false);
      }),
    );
  });

  it.concurrent('of another machine is left to its holder as long as that touches it', async () => {
    const lock = join(scratch, 'beating.lock');
    const text = JSON.stringify({ ...markOf(process.pid), machine: 'elsewhere', token: 'there' });
    writeFileSync(lock, text);
    const beat = setInterval(() => writeFileSync(lock, text), 500);
    const waiting = waitedFor(lock);
    const first = await Promise.race([
      waiting.then(() => 'taken'),
      new Promise(done => setTimeout(done, 20_000)).then(() => 'left'),
    ]);
    expect(first).toBe('left');
    expect(readFileSync(lock, 'utf8')).toBe(text);
    clearInterval(beat);
    rmSync(lock);
    await waiting;
  });

  it('is touched by its holder while that computes', async () => {
    const lock = join(scratch, 'busy.lock');
    const program = `const { oneAtATime } = await import(${moduleUrl});
      const { statSync } = await import('node:fs');
      const lock = ${JSON.stringify(lock)};
      const touched = await oneAtATime(lock, () => {}, async () => {
        const seen = new Set();
        while (seen.size < 2) seen.add(statSync(lock).mtimeMs);
        return seen.size;
      });
      console.log(touched);`;
    const { stdout } = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
      encoding: 'utf8',
    });
    expect(Number(stdout)).toBeGreaterThan(1);
  });
});
