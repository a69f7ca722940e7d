/** The list of addresses over publications, looks at other days, and its loss. */

import { spawn, spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildsAlone } from '../buildsAlone.ts';
import { commitAll, edit, startRepository } from '../commands/gitYard.ts';
import { buildScript, fingerprintOf, smallYardDay, writeSmallYard } from './smallYard.ts';

buildsAlone();

const root = resolve(import.meta.dirname, '../..');
const script = join(root, 'scripts/published.ts');
let scratch: string;
let content: string;
let list: string;
let log: string;
let out: string;
beforeAll(() => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-list-'));
  content = join(scratch, 'content');
  list = join(content, 'addresses.csv');
  log = join(content, 'changes.jsonl');
  out = join(scratch, 'out');
  writeSmallYard(content, 4);
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function run(file: string, words: string[], env: NodeJS.ProcessEnv = {}) {
  return spawnSync(process.execPath, [file, ...words], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, CONTENT_DIR: content, OUT_DIR: out, AS_OF: '', ...env },
  });
}
const build = (words: string[] = [], env: NodeJS.ProcessEnv = {}) => run(buildScript, words, env);
const listed = () => readFileSync(list, 'utf8');

describe('the list of addresses', () => {
  it('is begun by the first publication, of the day of publication, and laid into the site', () => {
    const { status, stderr } = build();
    expect(status, stderr).toBe(0);
    const days = new Set(
      listed()
        .trim()
        .split('\n')
        .slice(1)
        .map(line => line.split(',')[1]),
    );
    expect([...days]).toEqual([smallYardDay]);
    expect(readFileSync(join(out, 'addresses.csv'), 'utf8')).toBe(listed());
  });

  it.each([
    ['a later day in AS_OF', [], { AS_OF: '2027-03-01' }],
    ['an earlier day', ['--as-of', '2026-11-01'], {}],
  ])('is left alone by %s; what is new is listed when it is published', (_, words, env) => {
    cpSync(join(content, 'guides/air-layering.md'), join(content, 'guides/another.md'));
    const before = listed();
    const look = build(words, env);
    expect(look.status, look.stderr).toBe(0);
    expect(listed()).toBe(before);
    expect(readFileSync(join(out, 'addresses.csv'), 'utf8')).toBe(before);
    rmSync(join(content, 'guides/another.md'));
  });

  it('goes on where a look has been', () => {
    cpSync(join(content, 'guides/air-layering.md'), join(content, 'guides/another.md'));
    const before = listed();
    expect(build().status).toBe(0);
    expect(listed().startsWith(before)).toBe(true);
    expect(listed().slice(before.length)).toMatch(/^\/guides\/another\/,2026-11-25,$/m);
  });

  it('is never begun anew when it is lost, and is put back from the site', () => {
    const before = listed();
    const online = fingerprintOf(out);
    rmSync(list);
    const { status, stderr } = build();
    expect(status).toBe(1);
    expect(stderr).toContain('addresses.csv is missing');
    expect(stderr).toContain(`npm run published -- add ${out}`);
    expect(stderr).not.toMatch(/\n\s+at /);
    expect(existsSync(list)).toBe(false);
    expect(fingerprintOf(out)).toEqual(online);
    // A list of nothing is as good as none.
    writeFileSync(list, '');
    expect(build().status).toBe(1);
    expect(run(script, ['add', out]).status).toBe(0);
    expect(listed()).toBe(before);
    expect(build().status).toBe(0);
    expect(fingerprintOf(out)).toEqual(online);
  });

  it('comes with a log of what was told, which is missed alike and put back from the site', () => {
    const told = readFileSync(log, 'utf8');
    expect(readFileSync(join(out, 'changes.jsonl'), 'utf8')).toBe(told);
    rmSync(log);
    const { status, stderr } = build();
    expect(status).toBe(1);
    expect(stderr).toContain('changes.jsonl is missing: the feeds would list once more');
    expect(stderr).toContain(`npm run published -- add ${out}`);
    expect(existsSync(log)).toBe(false);
    expect(run(script, ['add', out]).status).toBe(0);
    expect(readFileSync(log, 'utf8')).toBe(told);
  });

  it('is missed where the last commit has it, and begun by who asks for it', () => {
    const yard = join(scratch, 'yard');
    startRepository(yard);
    cpSync(content, join(yard, 'content'), { recursive: true });
    commitAll(yard, 'Yard');
    rmSync(join(yard, 'content/addresses.csv'));
    const where = { CONTENT_DIR: join(yard, 'content'), OUT_DIR: join(yard, 'site') };
    const { status, stderr } = build([], where);
    expect(status).toBe(1);
    expect(stderr).toMatch(/git restore \S*addresses\.csv/);
    expect(run(script, ['start'], where).status).toBe(0);
    expect(readFileSync(join(yard, 'content/addresses.csv'), 'utf8')).toBe('address,since,leads_to\n');
    expect(run(script, ['start']).stderr).toContain('has lines already');
  });
});

describe('taking a lost list back from the site that is online', () => {
  let server: Server;
  let online: Record<string, string>;
  beforeAll(async () => {
    server = createServer((request, response) => {
      const body = online[request.url ?? ''];
      response.statusCode = body === undefined ? 404 : 200;
      response.end(body ?? 'nothing here');
    });
    await new Promise<void>(done => server.listen(0, '127.0.0.1', done));
    const { port } = server.address() as AddressInfo;
    edit(
      content,
      'yard.yaml',
      /^address: .*$/m.exec(readFileSync(join(content, 'yard.yaml'), 'utf8'))![0],
      `address: http://127.0.0.1:${port}`,
    );
  });
  afterAll(() => server.close());

  /** Not waited for in this process, which has to answer it. */
  async function restore(...words: string[]) {
    const child = spawn(process.execPath, [script, 'restore', ...words], {
      cwd: root,
      env: { ...process.env, CONTENT_DIR: content },
    });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.on('data', text => {
        said += text;
      });
    }
    const status = await new Promise(done => child.on('close', done));
    return { status, said };
  }

  it('takes it where the site has it, and does nothing where it is there', async () => {
    const before = listed();
    online = { '/orchard/addresses.csv': before };
    rmSync(list);
    const { status, said } = await restore('--base', '/orchard/');
    expect(said).toMatch(/was missing\. \d+ lines were taken back/);
    expect(status).toBe(0);
    expect(listed()).toBe(before);
    online = {};
    expect(await restore()).toMatchObject({ status: 0, said: expect.stringMatching(/is there/) });
  });

  it('takes the log of changes as well, and no page of the host in its stead', async () => {
    const told = readFileSync(log, 'utf8');
    rmSync(log);
    online = { '/changes.jsonl': '<!doctype html>' };
    expect((await restore()).status).toBe(0);
    expect(existsSync(log)).toBe(false);
    online = { '/changes.jsonl': told };
    expect(await restore()).toMatchObject({
      status: 0,
      said: expect.stringMatching(/It was taken back from/),
    });
    expect(readFileSync(log, 'utf8')).toBe(told);
  });

  it('refuses where a yard is online without it or the host cannot be asked, and lets a first publication begin it', async () => {
    const before = listed();
    rmSync(list);
    online = { '/stock.json': '{"lots":[]}' };
    expect(await restore()).toMatchObject({ status: 2, said: expect.stringMatching(/does not carry it/) });
    // A host that answers everything with a page of its own.
    online = { '/addresses.csv': '<!doctype html>', '/stock.json': '<!doctype html>' };
    expect(await restore()).toMatchObject({
      status: 0,
      said: expect.stringMatching(/Nothing was published/),
    });
    server.close();
    server.closeAllConnections();
    expect(await restore()).toMatchObject({ status: 2, said: expect.stringMatching(/could not be asked/) });
    expect(existsSync(list)).toBe(false);
    writeFileSync(list, before);
  });
});
