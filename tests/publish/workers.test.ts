/** Prerender workers: the same files whoever makes them, and a clear end where one fails. */

import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { FinishedFile } from '../../src/build/finishedSite.ts';
import type { MakerInput } from '../../src/build/make.ts';
import { makeAll } from '../../src/build/pool.ts';
import { assembled, changeHistory, loadContent } from '../../src/content.ts';
import type { Catalogue } from '../../src/core/catalogue.ts';
import type { Page } from '../../src/site/page.ts';
import type { Route } from '../../src/site/route.ts';
import { routesOf } from '../../src/site/routes.ts';
import { siteForTests } from '../siteForTests.ts';
import { fingerprintOf, writeSmallYard } from './smallYard.ts';

let scratch: string;
let content: string;
let input: MakerInput;
let routes: Map<string, Route>;
beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-workers-'));
  content = join(scratch, 'content');
  writeSmallYard(content);
  const loaded = await assembled(await loadContent({ dir: content, asOf: '2026-11-25' }));
  const site = siteForTests(loaded.catalogue, '/orchard/', changeHistory(loaded).events);
  input = { site, built: '', secrets: { notes: [], content, shownContent: 'content' } };
  routes = routesOf(site);
});
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

function inputFor(folder: string, rest: Partial<MakerInput> = {}): MakerInput {
  const built = join(scratch, folder);
  mkdirSync(built);
  return { ...input, built, ...rest };
}

describe('prerender workers', () => {
  it('make, byte for byte, what one thread makes', async () => {
    const files = [...routes.keys()];
    const alone = await makeAll(inputFor('alone'), routes, files, 0);
    const shared = await makeAll(inputFor('shared'), routes, files, 2);
    const written = fingerprintOf(join(scratch, 'alone'));
    const countOf = (pattern: RegExp) => Object.keys(written).filter(file => pattern.test(file)).length;
    expect(countOf(/^lots\//)).toBeGreaterThan(20);
    expect(countOf(/^guides\/[^/]+\/[^/]+\/index\.html$/)).toBeGreaterThan(20);
    expect(countOf(/\.ics$/)).toBeGreaterThan(10);
    expect(fingerprintOf(join(scratch, 'shared'))).toEqual(written);
    // Written at different times.
    const known = (finished: FinishedFile[]) =>
      new Map(finished.map(({ file, stamp, page }) => [file, [stamp.split(' ')[0], page]]));
    expect(known(shared)).toEqual(known(alone));
  });

  it('refuse to publish what is private, with the file and the line of the note', async () => {
    const lot = input.site.all.lots[0]!.lot.id;
    const file = `lots/${lot}/index.html`;
    // What only a page says: put together by the program, so it stands neither in the records nor in its sources.
    const { title } = (await routes.get(file)!.make()) as Page;
    const secrets = { ...input.secrets, notes: [{ text: title!, file: 'lots/batch-001.yaml' }] };
    const files = [...routes.keys()].filter(each => each.startsWith('lots/'));
    for (const workers of [0, 2]) {
      const making = makeAll(inputFor(`private-${workers}`, { secrets }), routes, files, workers);
      await expect(making).rejects.toThrow(`${file} would show "`);
    }
  });

  it('end the build where one of them dies', async () => {
    // A worker works the routes out for itself, and cannot from this.
    const all = { ...input.site.all, places: null } as unknown as Catalogue;
    const broken = inputFor('dead', { site: { ...input.site, all } });
    await expect(makeAll(broken, routes, [...routes.keys()], 1)).rejects.toThrow(
      /^a prerender worker has died: /,
    );
  });

  it('write no file twice', async () => {
    const twice = inputFor('twice');
    await makeAll(twice, routes, ['robots.txt'], 0);
    await expect(makeAll(twice, routes, ['robots.txt'], 0)).rejects.toThrow(/EEXIST/);
  });
});
