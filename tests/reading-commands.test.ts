/** `npm run check` and `npm run schemas` as the grower meets them. */

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { afterAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { staleSchemas } from '../scripts/schemas.ts';
import { rulesManual } from '../src/core/reading/manual.ts';
import { ruleIds } from '../src/core/reading/rules.ts';
import { recordSchemas } from '../src/core/reading/schemas.ts';
import { loadYard, yardsFolder } from './yards/loadYard.ts';

const root = join(import.meta.dirname, '..');
const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-check-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function check(content: string, ...words: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['scripts/check.ts', ...words], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, CONTENT_DIR: content, AS_OF: '' },
  });
  return { status, stdout, stderr };
}

function brokenCopy(): string {
  const content = join(scratch, 'broken');
  cpSync(join(yardsFolder, 'base/content'), content, { recursive: true });
  const lots = join(content, 'lots/2026-layers.yaml');
  writeFileSync(lots, readFileSync(lots, 'utf8').replace('cultivar: bellwether', 'cultivar: bellweather'));
  return content;
}

describe('npm run check', () => {
  const good = join(yardsFolder, 'base/content');

  test('ends with 0 and the counts when all is well', () => {
    const { status, stdout, stderr } = check(good, '--as-of', '2026-11-25');
    expect([status, stderr]).toEqual([0, '']);
    const [start, title, toKnow, end] = stdout.split(/\n+/);
    expect([start, title, end]).toEqual([
      'Checked as of 2026-11-25.',
      'Good to know:',
      '0 errors, 0 warnings',
    ]);
    expect(toKnow).toMatch(
      /yard\.yaml:43:1 private-in-public: costs, requests and notes of walks stand here, /,
    );
  });

  test('ends with 1 and one line per problem when something is wrong', () => {
    const content = brokenCopy();
    const { status, stdout, stderr } = check(content, '--as-of', '2026-11-25');
    expect([status, stderr]).toEqual([1, '']);
    expect(stdout).toContain(
      `${content}/lots/2026-layers.yaml:3:13 lot-cultivar: no cultivar "bellweather"; did you mean "bellwether"?`,
    );
    expect(stdout.trimEnd().split('\n').at(-1)).toBe('1 error, 0 warnings');
    const json = check(content, '--as-of', '2026-11-25', '--json');
    expect(json.status).toBe(1);
    expect(JSON.parse(json.stdout)).toMatchObject([
      { level: 'error', rule: 'lot-cultivar', line: 3, column: 13, path: '0.cultivar' },
      { level: 'info', rule: 'private-in-public', line: 43, column: 1, path: 'costs' },
    ]);
  });

  test('tells when git would take the private folder along', () => {
    const content = join(scratch, 'tracked');
    cpSync(good, content, { recursive: true });
    mkdirSync(join(content, 'private/lots'), { recursive: true });
    writeFileSync(
      join(content, 'private/lots/notes.yaml'),
      '- { lot: inkpot-2501, private_note: Two are promised. }\n',
    );
    const told = 'would publish it: add a line /';
    expect(check(content).stdout).not.toContain(told);
    spawnSync('git', ['init', '-q', content]);
    expect(check(content).stdout).toContain(told);
    writeFileSync(join(content, '.gitignore'), '/private/\n');
    expect(check(content).stdout).not.toContain(told);
  });

  test('says in one line when there is no content folder', () => {
    const { status, stdout } = check(join(scratch, 'nowhere'), '--as-of', '2026-11-25');
    expect(status).toBe(1);
    expect(stdout).toContain('content-missing: there is no content folder here, or nothing is in it;');
  });

  test.each([
    [['--bogus'], /^leafdrop: Unknown option '--bogus'[^\n]*\n$/],
    [['--as-of', '2026-02-30'], /^leafdrop: "2026-02-30" is no calendar day[^\n]*\n$/],
    [['lots'], /^leafdrop: "lots" is not understood here[^\n]*\n$/],
    [['--rules', 'lot-date'], /^leafdrop: there is no rule "lot-date"; did you mean "lot-dates"\?\n$/],
  ])('refuses %j in one line with code 2', (words, line) => {
    const { status, stdout, stderr } = check(good, ...words);
    expect([status, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(line);
  });

  test('prints the manual', () => {
    expect(check(good, '--rules').stdout).toBe(rulesManual());
    expect(check(good, '--rules', 'lot-dates').stdout).toMatch(/^## lot-dates\n/);
    expect(check(good, '--help').stdout).toContain('CONTENT_DIR');
  });
});

test('every rule has a page in the manual', () => {
  const headings = [...rulesManual().matchAll(/^## (\S+)$/gm)].map(([, id]) => id);
  expect(headings).toEqual(ruleIds);
});

describe('JSON Schemas for editors', () => {
  test('are those of the records: run npm run schemas when not', () => {
    expect(staleSchemas()).toEqual([]);
  });

  /** ajv is a second reader of JSON Schema draft-07; it must accept what the check accepts, and refuse a misspelled key. */
  const ajv = addFormats.default(new Ajv({ strict: false, allErrors: true }));
  const { files } = loadYard('base');
  const textOf = (path: string) => new TextDecoder().decode(files.find(file => file.path === path)!.bytes);
  const frontMatter = (path: string) => textOf(path).split('---\n')[1] ?? '';
  test.each([
    ['yard', textOf('yard.yaml')],
    ['species', textOf('species/fig.yaml')],
    ['cultivar', frontMatter('cultivars/bellwether.md')],
    ['lots', textOf('lots/2026-layers.yaml')],
    ['place', textOf('places/lexington-ky.yaml')],
    ['guide', frontMatter('guides/first-winter.md')],
    ['video', textOf('videos/layering.yaml')],
  ])('%s accepts a good record and refuses a misspelled key', (name, text) => {
    const validate = ajv.compile(JSON.parse(recordSchemas().get(`${name}.schema.json`)!));
    expect(validate(parse(text)) ? [] : validate.errors).toEqual([]);
    const misspelled = parse(text);
    Object.assign(Array.isArray(misspelled) ? misspelled[0] : misspelled, { misspelled: 1 });
    expect(validate(misspelled)).toBe(false);
  });
});
