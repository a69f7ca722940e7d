/** Inputs of routes: whatever changes in the records, a file whose inputs are the same has the same bytes, since a build would take it as it is. */

import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { globalInputsOf } from '../../src/build/lastBuild.ts';
import { bytesOf } from '../../src/build/make.ts';
import { assembled, changeHistory, loadContent } from '../../src/content.ts';
import { hashOf } from '../../src/hash.ts';
import { routesOf } from '../../src/site/routes.ts';
import { siteForTests } from '../siteForTests.ts';
import { smallYardDay, writeSmallYard } from './smallYard.ts';

let scratch: string;
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-inputs-'));
  writeSmallYard(join(scratch, 'before'));
  mkdirSync(join(scratch, 'before/videos'));
  writeFileSync(
    join(scratch, 'before/videos/2026-11-walk.yaml'),
    'title: A walk\ndate: 2026-11-20\nwatch: https://video.example/walk\nchapters:\n' +
      '  - { time: "0:00", title: The first, links: [cultivar:cultivar-3] }\n' +
      '  - { time: "1:00", title: The second, links: [lot:m00002] }\n' +
      '  - { time: "2:00", title: The third, links: [guide:pruning-and-sap] }\n',
  );
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

async function filesOf(content: string) {
  const loaded = await assembled(await loadContent({ dir: content, asOf: smallYardDay }));
  const site = siteForTests(loaded.catalogue, '/', changeHistory(loaded).events);
  const files = new Map<string, { digest: string; bytes: string | null }>();
  for (const [file, { inputs, make }] of routesOf(site)) {
    const made = await make();
    files.set(file, {
      digest: hashOf(inputs()),
      bytes: made && hashOf(bytesOf(made, site).toString('latin1')),
    });
  }
  return { globalInputs: globalInputsOf('', site), files };
}

let before: ReturnType<typeof filesOf> | undefined;

const edited = (file: string, change: (text: string) => string) => (content: string) => {
  const path = resolve(content, file);
  const text = readFileSync(path, 'utf8');
  expect(change(text), `the edit of ${file}`).not.toBe(text);
  writeFileSync(path, change(text));
};
/** With what was seen of it. */
function withoutTheLastLot(content: string): void {
  edited('lots/batch-001.yaml', text => text.slice(0, text.lastIndexOf('\n- ') + 1))(content);
  for (const name of readdirSync(join(content, 'walks'))) {
    const path = join(content, 'walks', name);
    writeFileSync(path, readFileSync(path, 'utf8').replace(/^m00030,.*\n/m, ''));
  }
}
const walk = 'walks/2026-11-18.csv';
const cultivar = 'cultivars/cultivar-3.md';

describe('a file with the inputs of before has the bytes of before', () => {
  it.each([
    ['a tree is sold', edited(walk, text => text.replace(/^(m\d+),([1-9]\d*),/m, '$1,0,'))],
    ['everything is sold', edited(walk, text => text.replaceAll(/^(m\d+),\d+,/gm, '$1,0,'))],
    ['leaves are seen', edited(walk, text => text.replaceAll('bare,brown', 'full,green'))],
    ['a lot is gone', withoutTheLastLot],
    ['a cultivar has another name', edited(cultivar, text => text.replace('Measured Tree 3', 'Renamed'))],
    [
      'a cultivar has larger fruit of another color',
      edited(cultivar, text =>
        text.replace(/skin: \w+/, 'skin: black').replace(/length_mm: \d+/, 'length_mm: 61'),
      ),
    ],
    [
      'a cultivar ripens otherwise',
      edited(cultivar, text =>
        text.replace(/ripening: (\w+)/, (_, now) => `ripening: ${now === 'late' ? 'early' : 'late'}`),
      ),
    ],
    [
      'a cultivar is raised no more',
      edited(cultivar, text => text.replace('offered:', 'retired: 2026-11-01\noffered:')),
    ],
    ['more is written about a cultivar', edited(cultivar, text => `${text}\nMore about it.\n`)],
  ])('%s', async (name, edit) => {
    before ??= filesOf(join(scratch, 'before'));
    const content = join(scratch, name.replaceAll(' ', '-'));
    cpSync(join(scratch, 'before'), content, { recursive: true });
    edit(content);
    const [old, now] = [await before, await filesOf(content)];
    expect(now.globalInputs).toBe(old.globalInputs);
    const both = [...now.files].flatMap(([file, made]) => {
      const was = old.files.get(file);
      return was === undefined ? [] : [{ file, was, made }];
    });
    const changed = both.filter(({ was, made }) => was.bytes !== made.bytes);
    expect(changed.length).toBeGreaterThan(0);
    expect(both.filter(({ was, made }) => was.digest === made.digest).length).toBeGreaterThan(50);
    expect(changed.filter(({ was, made }) => was.digest === made.digest).map(({ file }) => file)).toEqual([]);
  });
});
