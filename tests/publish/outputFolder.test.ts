/** Where a site may go: whatever a build is pointed at, nothing is lost that it did not make itself. */

import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { assertReplaceable, outputFolder } from '../../src/build/outputFolder.ts';
import { markFile, readMark, removeSite, writeMark } from '../../src/build/siteMark.ts';
import { buildYard, complaintsIn, writeSmallYard } from './smallYard.ts';

const root = resolve(import.meta.dirname, '../..');
const yard = { yard: 'Kettlewise Hollow', address: 'https://kettlewise.example' };

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-output-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

/** A project with its records, in a home folder, beside other folders. */
function around() {
  const home = mkdtempSync(join(scratch, 'home-'));
  const project = join(home, 'site');
  const content = join(project, 'content');
  mkdirSync(join(content, 'photos'), { recursive: true });
  mkdirSync(join(project, '.git/objects'), { recursive: true });
  mkdirSync(join(home, 'records/lots'), { recursive: true });
  return { home, project, at: { root: project, content: [content, join(home, 'records')], home } };
}

describe('a place that no site is built into', () => {
  const { home, project, at } = around();

  it.each([
    ['the project', project, 'is the project itself'],
    ['the folder that holds the project', home, 'holds the folder of your records'],
    ['the top of the disk', '/', 'holds the folder of your records'],
    ['the records', join(project, 'content'), 'is the folder of your records'],
    ['a new folder in the records', join(project, 'content/dist'), 'lies in the folder of your records'],
    ['the photographs', join(project, 'content/photos'), 'lies in the folder of your records'],
    ['records elsewhere', join(home, 'records'), 'is the folder of your records'],
    ['the git folder', join(project, '.git'), 'lies in .git, which belongs to the program'],
    ['a folder in the git folder', join(project, '.git/site'), 'lies in .git, which belongs to the program'],
    [
      'the git folder of another project',
      join(home, 'other/.git/site'),
      'lies in the folder where git keeps its versions',
    ],
    ['the program', join(project, 'src/site'), 'lies in src, which belongs to the program'],
    ['its packages', join(project, 'node_modules'), 'lies in node_modules, which belongs to the program'],
    [
      'what is laid into every site',
      join(project, 'public/site'),
      'lies in public, which belongs to the program',
    ],
    [
      'what is kept between builds',
      join(project, '.cache/site'),
      'lies in .cache, which belongs to the program',
    ],
  ])('%s', (_, asked, why) => {
    expect(() => outputFolder(asked, at)).toThrow(
      `no site is built into ${asked}: it ${why}. Name an empty folder`,
    );
  });

  it('the home folder, and what holds it', () => {
    const apart = {
      ...at,
      root: join(scratch, 'p'),
      content: [join(scratch, 'p/content')],
      home: join(scratch, 'all/home/ann'),
    };
    for (const each of [apart.root, apart.home]) mkdirSync(each, { recursive: true });
    expect(() => outputFolder(join(scratch, 'all/home/ann'), apart)).toThrow('it is your home folder');
    expect(() => outputFolder(join(scratch, 'all'), apart)).toThrow('it holds your home folder');
    expect(outputFolder(join(scratch, 'all/home/ann/www'), apart)).toBe(join(scratch, 'all/home/ann/www'));
  });

  it('any of them, by way of a link', () => {
    symlinkSync(join(project, 'content'), join(home, 'link'));
    expect(() => outputFolder(join(home, 'link'), at)).toThrow('is the folder of your records');
    expect(() => outputFolder(join(home, 'link/new'), at)).toThrow('lies in the folder of your records');
    symlinkSync(join(home, 'nowhere'), join(home, 'broken'));
    expect(() => outputFolder(join(home, 'broken'), at)).toThrow('is a link that leads nowhere');
  });

  it('a file, and the top of another disk', () => {
    writeFileSync(join(home, 'thesis.doc'), 'words');
    expect(() => outputFolder(join(home, 'thesis.doc'), at)).toThrow('is a file, not a folder');
    if (existsSync('/proc/self/mountinfo')) {
      expect(() => outputFolder('/proc', at)).toThrow('is where a disk of its own begins');
    }
  });

  it('but those beside them whose paths begin alike, and those a link leads to, are taken', () => {
    for (const fine of [
      'site-www',
      'site/dist',
      'site/contents',
      'site/.build/test',
      'records-2',
      'new/deep',
    ]) {
      expect(outputFolder(join(home, fine), at)).toBe(join(home, fine));
    }
    mkdirSync(join(home, 'www'));
    symlinkSync(join(home, 'www'), join(home, 'public-site'));
    expect(outputFolder(join(home, 'public-site'), at)).toBe(join(home, 'www'));
  });
});

describe('a folder that is there', () => {
  let out: string;
  beforeEach(() => {
    out = mkdtempSync(join(scratch, 'out-'));
  });

  it('is replaced when it is empty, or holds an earlier site of the same yard, whose name or address may have changed', () => {
    const check = (of = yard) => assertReplaceable(out, of, false);
    expect(() => assertReplaceable(join(out, 'none'), yard, false)).not.toThrow();
    expect(() => check()).not.toThrow();
    writeMark(out, yard);
    writeFileSync(join(out, 'index.html'), 'a site');
    expect(() => check()).not.toThrow();
    expect(() => check({ ...yard, yard: 'Another name' })).not.toThrow();
    expect(() => check({ ...yard, address: 'https://own-domain.example' })).not.toThrow();
    expect(() => check({ yard: 'Another yard', address: 'https://another.example' })).toThrow(
      'it holds the site of another yard, Kettlewise Hollow',
    );
    expect(() =>
      assertReplaceable(out, { yard: 'Another yard', address: 'https://another.example' }, true),
    ).not.toThrow();
  });

  it('is known by its stock.json where it was built before there were marks', () => {
    writeFileSync(
      join(out, 'stock.json'),
      '{"version":1,"asOf":"2026-11-25","yard":"Kettlewise \\"Hollow\\"","lots":[]}',
    );
    expect(readMark(out)).toEqual({ yard: 'Kettlewise "Hollow"', address: null });
    expect(() => assertReplaceable(out, { ...yard, yard: 'Kettlewise "Hollow"' }, false)).not.toThrow();
  });

  it.each([
    ['anything else', 'thesis.doc', 'words'],
    ['a hidden file', '.notes', 'words'],
    ['a site of another make', 'index.html', '<html>'],
    ['a mark that was cut short', markFile, '{"about":'],
    ['figures of somebody else', 'stock.json', '{"shares":[1,2,3]}'],
  ])('is refused when it holds %s', (_, name, text) => {
    writeFileSync(join(out, name), text);
    expect(() => assertReplaceable(out, yard, true)).toThrow(
      'it is not empty, and what is in it was not made by a build',
    );
  });

  it('is refused when it is a git repository, marked or not', () => {
    writeMark(out, yard);
    mkdirSync(join(out, '.git'));
    expect(() => assertReplaceable(out, yard, true)).toThrow('it holds a git repository');
  });

  it('is removed with its mark last', () => {
    writeMark(out, yard);
    mkdirSync(join(out, 'lots/a'), { recursive: true });
    writeFileSync(join(out, 'lots/a/index.html'), 'a');
    removeSite(out);
    expect(existsSync(out)).toBe(false);
    removeSite(out);
  });
});

describe('the build command', () => {
  let content: string;
  beforeAll(() => {
    content = join(scratch, 'yard/content');
    writeSmallYard(content, 3);
  });

  const refusals: [string, () => string, RegExp][] = [
    ['a folder with a thesis', () => join(scratch, 'p'), /not empty.+Name an empty folder/s],
    ['the records', () => content, /is the folder of your records/],
    ['what holds the records', () => join(scratch, 'yard'), /holds the folder of your records/],
    ['the project', () => root, /is the project itself/],
    ['.', () => '.', /is the project itself/],
  ];
  it.each(refusals)('refuses %s in one line, and touches nothing', (_, folder, why) => {
    mkdirSync(join(scratch, 'p'), { recursive: true });
    writeFileSync(join(scratch, 'p/thesis.doc'), 'ten years of work');
    const before = readdirSync(scratch, { recursive: true }).sort();
    const { status, stderr } = buildYard(content, folder(), '--leave-list');
    expect(status).toBe(2);
    expect(stderr).toMatch(why);
    expect(complaintsIn(stderr).trim().split('\n')).toHaveLength(1);
    expect(readdirSync(scratch, { recursive: true }).sort()).toEqual(before);
    expect(readFileSync(join(scratch, 'p/thesis.doc'), 'utf8')).toBe('ten years of work');
  });
});
