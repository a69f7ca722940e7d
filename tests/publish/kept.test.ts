/** What is kept between builds: never older than the code that makes it, never cut or altered, and not taken by a build afresh. */

import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { hashOfModule, signed, unsigned } from '../../src/files.ts';

const root = resolve(import.meta.dirname, '../..');
let project: string;

beforeAll(() => {
  project = mkdtempSync(join(tmpdir(), 'leafdrop-kept-'));
  for (const name of ['src', 'package.json', 'package-lock.json'])
    cpSync(join(root, name), join(project, name), { recursive: true });
});
afterAll(() => rmSync(project, { recursive: true, force: true }));
beforeEach(() => rmSync(join(project, '.cache'), { recursive: true, force: true }));

/** Asks a process of the project for a result of a kind, and says what came and whether it was computed for it. */
function ask(kind: string, env: Record<string, string> = {}): string {
  const program = `
    const { rememberResult } = await import(${JSON.stringify(join(project, 'src/resultStore.ts'))});
    let computed = 'taken';
    const result = await rememberResult(${JSON.stringify(kind)}, { place: 'a' }, () => {
      computed = 'computed';
      return { answer: [1, 2, 3] };
    });
    process.stdout.write(JSON.stringify(result) + ' ' + computed);`;
  const ran = spawnSync(process.execPath, ['--input-type=module', '-e', program], {
    cwd: project,
    encoding: 'utf8',
    env: { ...process.env, ...env },
  });
  expect(ran.stderr).toBe('');
  return ran.stdout;
}

const taken = '{"answer":[1,2,3]} taken';
const computed = '{"answer":[1,2,3]} computed';

/** The one file kept of a kind. */
function keptFile(kind: string): string {
  const folder = join(project, '.cache/results', kind);
  return join(folder, readdirSync(folder)[0]!);
}

describe('a kept result', () => {
  it.each([
    ['outlook', 'src/outlooks.ts'],
    ['outlook', 'src/core/match/match.ts'],
    ['outlook', 'src/core/climate/weatherYears.ts'],
    ['care', 'src/careYears.ts'],
    ['care', 'src/core/care/careYear.ts'],
    ['climate', 'src/content.ts'],
    ['climate', 'src/core/climate/summary.ts'],
    ['evidence', 'src/core/evidence/evidence.ts'],
    ['outlook', 'package-lock.json'],
  ])('of kind %s is made anew when %s has changed', (kind, file) => {
    expect(ask(kind)).toBe(computed);
    expect(ask(kind)).toBe(taken);
    const before = readFileSync(join(project, file), 'utf8');
    writeFileSync(join(project, file), `${before}\n`);
    expect(ask(kind)).toBe(computed);
    writeFileSync(join(project, file), before);
    expect(ask(kind)).toBe(taken);
  });

  it.each([
    ['cut short', (file: string) => truncateSync(file, 60)],
    ['emptied', (file: string) => truncateSync(file)],
    ['longer than it was', (file: string) => appendFileSync(file, 'x')],
    [
      'altered in one number',
      (file: string) => {
        const bytes = readFileSync(file);
        bytes[bytes.length - 3] = bytes[bytes.length - 3]! ^ 2;
        writeFileSync(file, bytes);
      },
    ],
  ])('that was %s is made anew', (_, damage) => {
    ask('care');
    damage(keptFile('care'));
    expect(ask('care')).toBe(computed);
    expect(ask('care')).toBe(taken);
  });

  it('is not taken by a build afresh, which takes what it has kept itself', () => {
    expect(ask('care')).toBe(computed);
    const later = { LEAFDROP_KEPT_SINCE: String(Date.now() + 1000) };
    expect(ask('care', later)).toBe(computed);
    const earlier = { LEAFDROP_KEPT_SINCE: String(Date.now() - 60_000) };
    expect(ask('care', earlier)).toBe(taken);
  });
});

describe('the hash of a module', () => {
  it('changes with every file it imports, whichever way, and with no other', async () => {
    const at = (name: string) => join(project, name);
    writeFileSync(at('a.ts'), "import { b } from './b.ts';\nexport const load = () => import('./d.ts');\n");
    writeFileSync(at('b.ts'), "export * from './c.ts';\nimport './a.ts';\n");
    for (const name of ['c.ts', 'd.ts', 'e.ts']) writeFileSync(at(name), 'export const b = 1;\n');
    const before = await hashOfModule(at('a.ts'));
    expect(await hashOfModule(at('a.ts'))).toBe(before);
    appendFileSync(at('e.ts'), '// not imported\n');
    expect(await hashOfModule(at('a.ts'))).toBe(before);
    const seen = new Set([before]);
    for (const name of ['a.ts', 'b.ts', 'c.ts', 'd.ts']) {
      appendFileSync(at(name), '// changed\n');
      seen.add(await hashOfModule(at('a.ts')));
    }
    expect(seen.size).toBe(5);
  });
});

describe('bytes behind their hash', () => {
  it('come back as they were, or not at all', () => {
    for (const text of ['', 'x', 'two\nlines\n']) expect(unsigned(signed(text))?.toString()).toBe(text);
    const kept = signed('what was written');
    for (let end = 0; end < kept.length; end += 1) expect(unsigned(kept.subarray(0, end))).toBeNull();
  });
});
