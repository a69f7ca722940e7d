/** A small yard with names of 80 characters, of other scripts and directions, cultivars without photograph, trial or lot, and empty lists. */

import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import { buildsAlone } from '../buildsAlone.ts';
import { startBrowser } from './browser.ts';
import { pagesOf, readText } from './builtSites.ts';
import { names, writeExtremeYard } from './extremeYard.ts';
import { layoutFaults } from './layoutFaults.ts';
import { axeFindings, inTurns, watch } from './visiting.ts';

buildsAlone();

const root = resolve(import.meta.dirname, '../..');

let scratch: string;
let browser: Browser;
beforeAll(async () => {
  scratch = mkdtempSync(join(tmpdir(), 'leafdrop-extreme-'));
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
  rmSync(scratch, { recursive: true, force: true });
});

describe.each([
  ['with a few lots', 3],
  ['with nothing on the list', 0],
])('a yard of hard names %s', (_, left) => {
  let folder: string;
  let site: ServedSite;
  beforeAll(async () => {
    const content = join(scratch, `content-${left}`);
    folder = join(scratch, `site-${left}`);
    mkdirSync(content);
    writeExtremeYard(content, join(root, 'content'), left);
    const ran = spawnSync(process.execPath, [join(root, 'scripts/build.ts'), '--base', '/'], {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, CONTENT_DIR: content, OUT_DIR: folder },
    });
    if (ran.status !== 0) throw new Error(`the yard does not build:\n${ran.stderr}`);
    site = await serve(folder, '/', 0);
  });
  afterAll(() => site.stop());

  const pages = () =>
    pagesOf(folder)
      .filter(file => /^(?:index|stock|lots|cultivars|places\/asheville|compare)/.test(file))
      .map(file => file.replace(/(^|\/)index\.html$/, '$1'));

  it('is laid out without fault at any width', async () => {
    const faults: string[] = [];
    const context = await browser.newContext();
    await inTurns(pages(), 3, async path => {
      const page = await context.newPage();
      const { problems } = watch(page, site.address);
      await page.goto(site.address + path, { waitUntil: 'networkidle' });
      for (const width of [320, 768, 900, 1280]) {
        await page.setViewportSize({ width, height: 800 });
        for (const fault of await layoutFaults(page)) faults.push(`${path} ${width} px: ${fault}`);
      }
      faults.push(...problems.map(problem => `${path}: ${problem}`));
      await page.close();
    });
    await context.close();
    expect(pages().length).toBeGreaterThan(15);
    expect(faults).toEqual([]);
  });

  it('has no finding of axe-core on its lists and on the page of a name from right to left', async () => {
    const page = await browser.newPage();
    const findings: string[] = [];
    for (const path of ['', 'stock/', 'cultivars/', 'cultivars/right-to-left/']) {
      await page.goto(site.address + path);
      findings.push(...(await axeFindings(page)).map(finding => `${path}: ${finding}`));
    }
    await page.close();
    expect(findings).toEqual([]);
  });

  it('says in words that a list is empty, and only then', () => {
    expect(/No lot is on this list today/.test(readText(folder, 'stock/index.html'))).toBe(left === 0);
  });
});

describe('names from right to left', () => {
  it.each([
    ['stock/', ''],
    ['lots/x-3/', 'fig'],
    ['cultivars/right-to-left/', 'fig'],
  ])('on %s leave what follows them after them', async (path, follows) => {
    const site = await serve(join(scratch, 'site-3'), '/', 0);
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.goto(site.address + path);
    const name = page.locator(':is(h1, h3, th) bdi', { hasText: names['right-to-left'] }).first();
    // Isolated, a name takes its direction from itself and gives it to nothing else (Unicode Standard Annex 9, HTML bdi).
    expect(await name.evaluate(element => getComputedStyle(element).direction)).toBe('rtl');
    const around = name.locator('xpath=ancestor::*[self::h1 or self::h3 or self::th][1]');
    expect(await around.evaluate(element => getComputedStyle(element).direction)).toBe('ltr');
    expect((await around.textContent())!.replace(/\s+/g, ' ')).toMatch(
      new RegExp(`${names['right-to-left']} ?${follows}`),
    );
    await page.close();
    await site.stop();
  });
});
