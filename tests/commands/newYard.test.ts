/** A yard of one's own in place of the demonstration. */

import { spawn, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { afterAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { UsageError } from '../../scripts/command.ts';
import { filesOf, main } from '../../scripts/newYard.ts';
import { settleFiles } from '../../src/build/filesTogether.ts';
import { readContentFiles } from '../../src/contentFolder.ts';
import { day } from '../../src/core/days.ts';
import { demonstrationAddress, leftOfDemonstration } from '../../src/core/reading/demonstration.ts';
import { readRecords } from '../../src/core/reading/read.ts';
import { guideFor } from '../../src/core/recording/guideParts.ts';
import { newYardFlags } from './newYardFlags.ts';
import { type Answer, typist } from './typist.ts';

const root = join(import.meta.dirname, '../..');
const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-new-yard-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));
const content = join(scratch, 'content');
const env = { ...process.env, CONTENT_DIR: content, PRIVATE_DIR: '', AS_OF: '2026-11-25' };

beforeEach(() => {
  for (const [name, value] of Object.entries({ CONTENT_DIR: content, PRIVATE_DIR: '', AS_OF: '2026-11-25' }))
    vi.stubEnv(name, value);
  rmSync(content, { recursive: true, force: true });
  cpSync(join(root, 'content'), content, { recursive: true });
});

const script = join(root, 'scripts/newYard.ts');
const run = (...words: string[]) =>
  spawnSync(process.execPath, [script, ...words], { cwd: root, encoding: 'utf8', env });

/** Every file with its bytes, by its path. */
function state(): Map<string, string> {
  const entries = readdirSync(content, { recursive: true, withFileTypes: true }).filter(each =>
    each.isFile(),
  );
  return new Map(
    entries
      .map(each => join(each.parentPath, each.name))
      .sort()
      .map(path => [relative(content, path), readFileSync(path, 'latin1')]),
  );
}

async function problems(): Promise<string[]> {
  const { files, photos } = await readContentFiles(content);
  const { diagnostics } = readRecords(files, { asOf: day('2026-11-25'), photos });
  return diagnostics.map(({ rule }) => rule);
}

describe('by flags', () => {
  test('nothing of the demonstration is left, and the check finds nothing wrong', async () => {
    const { status, stdout, stderr } = run(...newYardFlags, '--no-build');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Long Meadow is in .*content\/, at Lexington Bluegrass\./);
    expect(stdout).toContain('What next');
    const files = [...state().keys()];
    expect(files.filter(path => !/^(?:places|guides)\//.test(path))).toEqual([
      'README.md',
      'cultivars/their-own-name.md',
      'lots/2026-cuttings.yaml',
      'species/fig.yaml',
      'species/mulberry.yaml',
      'yard.yaml',
    ]);
    expect(files.length).toBeGreaterThan(80);
    const all = [...state()].map(([path, text]) => (path === 'README.md' ? '' : text)).join('\n');
    expect(all).not.toMatch(/kettlewise|Pellowin|Fenderby|wrenfoot|fixed_day/i);
    expect(await problems()).toEqual(['costs-missing']);
  });

  test('what is missing or wrong is told in one line, and nothing is touched', async () => {
    const before = state();
    const without = (flag: string) => {
      const at = newYardFlags.indexOf(flag);
      return newYardFlags.filter((_, index) => index !== at && index !== at + 1);
    };
    const withOther = (flag: string, value: string) => [...without(flag), flag, value];
    for (const [words, said] of [
      [without('--price'), /give --price too/],
      [without('--skin'), /give --skin too/],
      [withOther('--price', '30,5'), /--price "30,5" will not do\. A price such as 30/],
      [withOther('--place', '00000'), /there is no ZIP code 00000/],
      [withOther('--place', 'Nowhere at all'), /No station is called "Nowhere at all"/],
      [withOther('--species', 'figs'), /"figs" is no species.*did you mean "fig"/],
      [withOther('--containers', '#4'), /--containers "#4" will not do\. A pot such as #1/],
      [withOther('--flavor', 'toffe'), /there is no flavor class "toffe"\. Did you mean "toffee"/],
      [withOther('--started', '2027-03-02'), /later-than-day/],
      [[...newYardFlags, 'loose'], /"loose" is not understood here/],
    ] as const) {
      const told = await main([...words, '--no-build']).then(
        () => 'nothing',
        (problem: unknown) => (problem instanceof UsageError ? problem.message : String(problem)),
      );
      expect(told).toMatch(said);
      expect(told.split('\n')).toHaveLength(1);
    }
    expect(state()).toEqual(before);
    expect(run(...newYardFlags, '--show').stdout).toMatch(/^Would be written/);
    expect(state()).toEqual(before);
  });

  test('a yard of somebody, private files and an unsaved change are left alone', () => {
    run(...newYardFlags, '--no-build');
    const own = state();
    expect(run(...newYardFlags, '--no-build').stderr).toMatch(
      /files that are not the demonstration, so nothing was changed/,
    );
    expect(state()).toEqual(own);

    rmSync(content, { recursive: true });
    cpSync(join(root, 'content'), content, { recursive: true });
    const git = (...words: string[]) =>
      spawnSync('git', ['-C', content, '-c', 'user.name=A', '-c', 'user.email=a@b.example', ...words]);
    git('init', '-q');
    git('add', '.');
    git('commit', '-qm', 'The demonstration');
    const lots = join(content, 'lots/2026-layers.yaml');
    writeFileSync(lots, `${readFileSync(lots, 'utf8')}# mine\n`);
    expect(run(...newYardFlags, '--no-build').stderr).toMatch(
      /you have changed lots\/2026-layers\.yaml in .* Add --replace/,
    );
    mkdirSync(join(content, 'private'));
    writeFileSync(join(content, 'private/sales.csv'), 'day,lot,plants\n');
    expect(run(...newYardFlags, '--no-build', '--replace').stderr).toMatch(/private is not empty/);
    rmSync(join(content, 'private'), { recursive: true });
    expect(run(...newYardFlags, '--no-build', '--replace').status).toBe(0);
    expect(existsSync(lots)).toBe(false);
  });

  test('an empty folder elsewhere is filled', async () => {
    rmSync(content, { recursive: true });
    expect(run(...newYardFlags, '--no-build')).toMatchObject({ status: 0, stderr: '' });
    expect(await problems()).toEqual(['costs-missing']);
  });
});

test('killed at any moment, it leaves the demonstration whole or the yard whole', async () => {
  const before = state();
  expect(run(...newYardFlags, '--no-build').status).toBe(0);
  const after = state();
  const visible = () => new Map([...state()].filter(([path]) => !/(?:^|\/)\./.test(path)));
  const ends = { before: 0, after: 0 };
  // Most of the time goes to reading; the files change in the last moments, which the short steps fall into.
  const started = Date.now();
  rmSync(content, { recursive: true });
  cpSync(join(root, 'content'), content, { recursive: true });
  run(...newYardFlags, '--no-build');
  const wholeMs = Date.now() - started;
  for (let step = 1; step <= 6; step += 1) {
    rmSync(content, { recursive: true });
    cpSync(join(root, 'content'), content, { recursive: true });
    const child = spawn(process.execPath, [script, ...newYardFlags, '--no-build'], {
      cwd: root,
      env,
      stdio: 'ignore',
    });
    const closed = new Promise(settle => child.on('close', settle));
    await new Promise(settle => setTimeout(settle, wholeMs * (0.55 + step / 12)));
    child.kill('SIGKILL');
    await closed;
    await settleFiles(content);
    const left = visible();
    const whole = left.get('yard.yaml') === after.get('yard.yaml') ? 'after' : 'before';
    ends[whole] += 1;
    expect(left).toEqual(whole === 'after' ? after : before);
  }
  expect(ends.before + ends.after).toBe(6);
}, 300_000);

describe('by questions', () => {
  const answers: readonly (readonly [RegExp, Answer])[] = [
    [/yard called/, 'Long Meadow'],
    [/Where is it/, '28801'],
    [/speaks for it best/, undefined],
    [/web address/, 'https://meadow.example'],
    [/mail address/, 'trees@meadow.example'],
    [/time zone/, 'America/New_York'],
    [/currency/, undefined],
    [/species do you raise/, ['fig', 'jujube']],
    [/forms do you sell/, ['dormant-pot', 'bare-root']],
    [/which pots/, ['SP4', '#1']],
    [/days do parcels leave/, undefined],
    [/days is a parcel/, undefined],
    [/do you not send/, 'California'],
    [/cost\?/, '32'],
    [/Its name/, 'Their Own Name'],
    [/Length of the fruit/, '40'],
    [/Greatest width/, '36'],
    [/mother plants/, '3'],
    [/come from/, undefined],
    [/How were they raised/, 'cutting'],
    [/Started on/, '2026-03-02'],
    [/How many plants/, '24'],
    [/which pot\?/, 'SP4'],
  ];
  const answer = (question: string): Answer => answers.find(([words]) => words.test(question))?.[1];

  test('the prompts themselves give a yard without errors, in some dozens of keys', async () => {
    const { files } = await readContentFiles(join(root, 'content'));
    const shipped = new Map(
      files
        .filter(({ path }) => /^(?:species|places|guides)\//.test(path))
        .map(({ path, bytes }) => [path, new TextDecoder().decode(bytes)]),
    );
    const grower = typist(answer);
    const yard = await filesOf({}, grower.ask, shipped, day('2026-11-25'));
    const text = (path: string) => yard.files.find(each => each.path === path)?.text;
    // The reference climate that is shipped for the nearest station.
    expect(text('yard.yaml')).toMatch(/^home: asheville-nc$/m);
    expect(text('yard.yaml')).toContain('  base:\n    fig: 32\n    jujube: 32\n');
    expect(text('lots/2026-cuttings.yaml')).toContain('forms: [dormant-pot, bare-root]');
    expect(text('cultivars/their-own-name.md')).toContain('length_mm: 40');
    expect(text('species/jujube.yaml')).toBeDefined();
    expect(text('species/mulberry.yaml')).toBeUndefined();
    expect(grower.questions()).toBeLessThan(45);
    expect(grower.keys()).toBeLessThan(450);
  });
});

test('files of the demonstration that stay behind in another yard are known, and its places and guides are not', () => {
  const left = [...state()].flatMap(([path, text]) =>
    path === 'README.md' ||
    path.startsWith('photos/') ||
    leftOfDemonstration(path, text, 'https://own.example') === null
      ? []
      : [path],
  );
  expect(left).toEqual(
    expect.arrayContaining(['addresses.csv', 'changes.jsonl', 'temperatures.csv', 'yard.yaml']),
  );
  expect(left.filter(path => path.startsWith('cultivars/')).length).toBeGreaterThan(20);
  expect(left.filter(path => /^(?:places|guides|species)\//.test(path))).toEqual([]);
  expect(
    [...state()].filter(([path, text]) => leftOfDemonstration(path, text, demonstrationAddress)),
  ).toEqual([]);
});

test('a guide loses the parts for other species, and nothing else', () => {
  const text =
    'One\n\n::::part{species="fig"}\nA\n:::part{winter="mild"}\nB\n:::\n::::\n\n:::part{species="fig jujube"}\nC\n:::\n\nEnd\n';
  expect(guideFor(text, ['fig', 'jujube'])).toBe(text);
  expect(guideFor(text, ['jujube'])).toBe('One\n\n:::part{species="jujube"}\nC\n:::\n\nEnd\n');
});
