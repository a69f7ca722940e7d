/**
 * A season of publishing from a repository, as a grower commits: every address that was ever online is asked for at the end. Expected
 * outcomes are what happened in the yard, not what the program computes.
 */

import { spawnSync } from 'node:child_process';
import {
  appendFileSync,
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
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { proveSite } from '../../scripts/deployCheck.ts';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import { makeYard } from '../bench/makeYard.ts';
import { buildsAlone } from '../buildsAlone.ts';
import { commitAll, edit, git, startRepository } from '../commands/gitYard.ts';
import { buildYard, complaintsIn, fingerprintOf, smallYardDay } from './smallYard.ts';

buildsAlone();

const root = resolve(import.meta.dirname, '../..');
const demo = join(root, 'content');
const base = '/orchard/';
const guides = ['air-layering.md', 'first-48-hours.md'];
const places = ['asheville-nc.yaml', 'minneapolis-mn.yaml'];

let scratch: string;
let repository: string;
let content: string;
let out: string;
/** Every address that was ever online, from the root of the site, with the commit that it came with. */
const everOnline = new Map<string, string>();

beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-season-'));
  repository = join(scratch, 'yard');
  content = join(repository, 'content');
  out = join(scratch, 'site');
  startRepository(repository);
  mkdirSync(join(content, 'guides'), { recursive: true });
  makeYard(content, demo, { lots: 4, cultivars: 3 }, 5);
  for (const guide of guides) cpSync(join(demo, 'guides', guide), join(content, 'guides', guide));
  for (const name of readdirSync(join(content, 'places'))) {
    if (!places.includes(name)) rmSync(join(content, 'places', name));
  }
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function command(name: string, ...words: string[]) {
  return spawnSync(process.execPath, [join(root, `scripts/${name}.ts`), ...words], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, CONTENT_DIR: content, AS_OF: smallYardDay },
  });
}

/** What people subscribe to, or their browser fetches for a place it remembers. */
const keptFile = /^(?:guides\/.*\.ics|places\/.*\.json)$/;
/** Events of each calendar when it was first online. */
const firstEvents = new Map<string, string[]>();

function eventsIn(calendar: string): string[] {
  return [...calendar.replaceAll('\r\n ', '').matchAll(/^UID:(.*)\r$/gm)].map(([, uid]) => uid!);
}

/** Files of the published site that a reader can ask for by an address, pages of the framework's own making left out. */
function addressesOnline(): string[] {
  const files = Object.keys(fingerprintOf(out));
  const pages = files.filter(file => file.endsWith('index.html'));
  return [
    ...pages.map(file => `/${file.slice(0, -'index.html'.length)}`),
    ...files.filter(file => keptFile.test(file)).map(file => `/${file}`),
  ];
}

/** Commits what is in the folder, publishes it, and remembers what is online now. */
function publish(message: string): void {
  commitAll(repository, message);
  const { status, stderr } = buildYard(content, out, '--base', base);
  expect(complaintsIn(stderr)).toBe('');
  expect(status).toBe(0);
  // The list that the workflow would write back once the site is online.
  commitAll(repository, 'List the addresses published');
  for (const address of addressesOnline()) if (!everOnline.has(address)) everOnline.set(address, message);
  for (const address of everOnline.keys()) {
    if (!address.endsWith('.ics') || firstEvents.has(address)) continue;
    firstEvents.set(address, eventsIn(readFileSync(join(out, address), 'utf8')));
  }
  const listed = readFileSync(join(content, 'addresses.csv'), 'utf8').trim().split('\n').slice(1);
  for (const line of listed) {
    const address = line.split(',')[0]!;
    if (!everOnline.has(address)) everOnline.set(address, message);
  }
}

function expectRefused(line: RegExp): void {
  const online = fingerprintOf(out);
  const { status, stderr } = buildYard(content, out, '--base', base);
  expect(status).toBe(1);
  expect(stderr).toMatch(line);
  expect(stderr).not.toMatch(/\n\s+at /);
  expect(fingerprintOf(out)).toEqual(online);
}

const pageOf = (path: string) => readFileSync(join(out, path, 'index.html'), 'utf8');

describe('a season of commits', () => {
  it('is published for the first time', () => {
    publish('Open the yard');
    expect(existsSync(join(out, 'lots/m00001/index.html'))).toBe(true);
    expect([...everOnline.keys()].filter(address => address.startsWith('/go/')).length).toBeGreaterThan(5);
    expect([...everOnline.keys()].some(address => address.includes('#'))).toBe(true);
  });

  it('sells out a lot: its page stays and says so', () => {
    writeFileSync(join(content, 'walks/2026-11-24.csv'), 'lot,left\nm00001,0\n');
    const { stdout, status } = command('changes');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Sold out \(1\):\n {2}m00001 Measured Tree \d: \d+ sold$/m);
    publish('Sold at the gate');
    expect(pageOf('lots/m00001')).toMatch(/sold out/i);
  });

  it('opens a lot', () => {
    appendFileSync(
      join(content, 'lots/batch-001.yaml'),
      '- lot: m00009\n  cultivar: cultivar-2\n  method: cutting\n  started: 2026-11-20\n  raised: 8\n  forms: [dormant-pot]\n',
    );
    publish('Open the cuttings');
    expect(everOnline.get('/lots/m00009/')).toBe('Open the cuttings');
  });

  it('refuses a slip of the pen and a record that was deleted, and the site stays as it was', () => {
    edit(
      content,
      'lots/batch-001.yaml',
      'lot: m00009\n  cultivar: cultivar-2',
      'lot: m00009\n  cultivar: cultivar-22',
    );
    commitAll(repository, 'A slip of the pen');
    expectRefused(/lots\/batch-001\.yaml:\d+:\d+ lot-cultivar: no cultivar "cultivar-22"/);
    git(repository, 'revert', '--no-edit', 'HEAD');
    rmSync(join(content, 'guides/air-layering.md'));
    commitAll(repository, 'Away with the guide');
    expectRefused(/addresses\.csv:\d+.*\/guides\/air-layering\//);
    git(repository, 'revert', '--no-edit', 'HEAD');
  });

  it('renames a cultivar: its old address leads on', () => {
    const { status, stderr } = command('rename', 'cultivar', 'cultivar-1', 'morning-bench', '--yes');
    expect([status, stderr]).toEqual([0, '']);
    publish('A better name');
    expect(pageOf('cultivars/cultivar-1')).toContain(`url=${base}cultivars/morning-bench/`);
    expect(readFileSync(join(out, '_redirects'), 'utf8')).toContain(
      `${base}cultivars/cultivar-1/ ${base}cultivars/morning-bench/ 301\n`,
    );
  });

  it('renames a guide and a place: calendars and what a browser fetches for the place are served at both addresses', () => {
    for (const words of [
      ['guide', 'first-48-hours', 'the-box-is-here'],
      ['place', 'minneapolis-mn', 'twin-cities-mn'],
    ]) {
      const { status, stderr } = command('rename', ...words, '--yes');
      expect([status, stderr]).toEqual([0, '']);
    }
    publish('Better names for a guide and a place');
    expect(everOnline.get('/guides/the-box-is-here/twin-cities-mn/bare-root.ics')).toBe(
      'Better names for a guide and a place',
    );
    const [before, now] = [
      'guides/first-48-hours/minneapolis-mn/bare-root.ics',
      'guides/the-box-is-here/twin-cities-mn/bare-root.ics',
    ];
    expect(readFileSync(join(out, before), 'utf8')).toBe(readFileSync(join(out, now), 'utf8'));
    const table = readFileSync(join(out, '_redirects'), 'utf8');
    expect(table).toContain(`${base}${before} ${base}${now} 301\n`);
    expect(table).toContain(`${base}places/minneapolis-mn.json ${base}places/twin-cities-mn.json 301\n`);
  });

  it('rewords a heading: refused until it is told which part it is now, then the old link leads to it', () => {
    edit(content, 'guides/air-layering.md', '## What to expect', '## How many will root');
    commitAll(repository, 'Another heading');
    expectRefused(
      /address-part: \/guides\/air-layering\/#what-to-expect .* npm run rename -- address \/guides\/air-layering\/#what-to-expect \/guides\/air-layering\//,
    );
    const page = '/guides/air-layering/';
    const { status, stderr } = command(
      'rename',
      'address',
      `${page}#what-to-expect`,
      `${page}#how-many-will-root`,
      '--yes',
    );
    expect([status, stderr]).toEqual([0, '']);
    publish('A heading that says what comes');
    expect(pageOf('guides/air-layering')).toContain(
      '<h2 id="how-many-will-root"><span id="what-to-expect"></span>How many will root</h2>',
    );
  });

  it('retires what is left of a lot', () => {
    writeFileSync(join(content, 'walks/2026-11-25.csv'), 'lot,left,lost\nm00009,0,8\n');
    publish('The cuttings did not take');
    expect(existsSync(join(out, 'lots/m00009/index.html'))).toBe(true);
  });
});

describe('at the end of the season', () => {
  let site: ServedSite;
  beforeAll(async () => {
    site = await serve(out, base, 0);
  });
  afterAll(() => site.stop());

  /** What a reader sees who asks for an address: browsers keep the part over a redirect that names none of its own. */
  async function read(address: string): Promise<{ text: string; part: string }> {
    const [path = '', part = ''] = address.split('#');
    const answer = await fetch(new URL(path.slice(1), site.address));
    expect(answer.status, address).toBe(200);
    const text = await answer.text();
    const target = /<meta http-equiv="refresh" content="0; url=([^"]*)"/.exec(text)?.[1];
    if (target === undefined) return { text, part };
    const [onPath = '', onPart = part] = target.split('#');
    const end = await fetch(new URL(onPath, site.address));
    expect(end.status, `${address} leads to ${target}`).toBe(200);
    const there = await end.text();
    expect(there, `${address} is sent on twice`).not.toContain('http-equiv="refresh"');
    return { text: there, part: onPart };
  }

  it('every address that was ever online leads to a page, and to the part that it names', async () => {
    const dead: string[] = [];
    for (const address of everOnline.keys()) {
      const { text, part } = await read(address);
      if (part !== '' && !text.includes(`id="${part}"`)) dead.push(address);
    }
    expect(dead).toEqual([]);
    expect(everOnline.size).toBeGreaterThan(80);
    expect([...everOnline.keys()].filter(address => keptFile.test(address.slice(1))).length).toBeGreaterThan(
      10,
    );
    expect(everOnline.has('/cultivars/cultivar-1/')).toBe(true);
    expect(everOnline.has('/cultivars/morning-bench/')).toBe(true);
  });

  it('every calendar has the events it had, under the ids it had: no subscription has one twice (RFC 5545, 3.8.4.7)', async () => {
    expect(firstEvents.size).toBeGreaterThan(6);
    for (const [address, events] of firstEvents) {
      const { text } = await read(address);
      expect(eventsIn(text), address).toEqual(events);
      expect(new Set(events).size, address).toBe(events.length);
      expect(events.length, address).toBeGreaterThan(0);
    }
  });

  it('the site as it stands passes the proof', async () => {
    const address = /^address: (\S+)$/m.exec(readFileSync(join(content, 'yard.yaml'), 'utf8'))![1]!;
    expect((await proveSite(out, base, address)).faults).toEqual([]);
  });
});
