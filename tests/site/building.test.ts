/** What building promises: the same bytes for the same content and day, and an untouched site when something is wrong. */

import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { appendFileSync, cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildsAlone } from '../buildsAlone.ts';
import { complaintsIn } from '../publish/smallYard.ts';
import { builtSites, filesOf, readText } from './builtSites.ts';

buildsAlone();

const root = resolve(import.meta.dirname, '../..');

function runScript(name: string, words: readonly string[], env: Record<string, string>) {
  return spawnSync(process.execPath, [join(root, `scripts/${name}.ts`), ...words], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
}

/** Path and hash of every file of a folder. */
function fingerprint(folder: string): string[] {
  return filesOf(folder).map(
    path =>
      `${path} ${createHash('sha256')
        .update(readFileSync(join(folder, path)))
        .digest('hex')}`,
  );
}

let scratch: string;
let content: string;
let out: string;
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-site-'));
  content = join(scratch, 'content');
  out = join(scratch, 'out');
  cpSync(join(root, 'content'), content, { recursive: true });
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

describe('building', () => {
  it('gives the same bytes again from the same content in another folder', () => {
    const ran = runScript('build', [], { CONTENT_DIR: content, OUT_DIR: out });
    expect(complaintsIn(ran.stderr)).not.toMatch(/rror/);
    expect(ran.status).toBe(0);
    expect(fingerprint(out)).toEqual(fingerprint(builtSites.atRoot.folder));
  });

  it('leaves the site as it was when a record is wrong, and says where', () => {
    const before = fingerprint(out);
    const lots = filesOf(join(content, 'lots'))[0]!;
    const good = readText(join(content, 'lots'), lots);
    writeFileSync(join(content, 'lots', lots), good.replace(/cultivar: (\S+)/, 'cultivar: no-such-tree'));
    const ran = runScript('build', [], { CONTENT_DIR: content, OUT_DIR: out });
    writeFileSync(join(content, 'lots', lots), good);
    expect(ran.status).toBe(1);
    expect(ran.stderr).toMatch(new RegExp(`lots/${lots}:\\d+:\\d+ lot-cultivar: no cultivar "no-such-tree"`));
    expect(ran.stderr).not.toMatch(/\n\s+at /);
    expect(fingerprint(out)).toEqual(before);
  });

  it('never publishes what is private', () => {
    const marker = 'keep-this-between-us-4711';
    const lots = filesOf(join(content, 'lots'))[0]!;
    const good = readText(join(content, 'lots'), lots);
    writeFileSync(
      join(content, 'lots', lots),
      good.replace(
        /^( *)(raised: .*)$/m,
        (_, indent, raised) => `${indent}${raised}\n${indent}private_note: ${marker}`,
      ),
    );
    const yard = readText(content, 'yard.yaml');
    appendFileSync(
      join(content, 'yard.yaml'),
      yard.includes('private_note') ? '' : `\nprivate_note: ${marker}\n`,
    );
    const ran = runScript('build', [], { CONTENT_DIR: content, OUT_DIR: out });
    // A long build tells how far it has come; nothing else is said.
    expect(complaintsIn(ran.stderr).replace(/^ {2}\d+ pages \.\.\.\n/gm, '')).toBe('');
    expect(ran.status).toBe(0);
    expect(readText(join(content, 'lots'), lots)).toContain(marker);
    const leaks = filesOf(out).filter(path => readFileSync(join(out, path)).includes(marker));
    expect(leaks).toEqual([]);
    const costs = /space_week|fee_share|sell_through|"requests"|costFloor/;
    const tells = filesOf(out).filter(
      path => /\.(?:html|json|js|txt|xml)$/.test(path) && costs.test(readText(out, path)),
    );
    expect(tells).toEqual([]);
  });

  it('refuses a content folder that is not there in one line', () => {
    const ran = runScript('build', [], { CONTENT_DIR: join(scratch, 'nowhere'), OUT_DIR: out });
    expect(ran.status).toBe(1);
    expect(ran.stderr).toMatch(/nowhere/);
    expect(ran.stderr).not.toMatch(/\n\s+at /);
  });
});
