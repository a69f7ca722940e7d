/** A visitor's paths through the built site, in a browser: searching, with and without scripts. */

import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import { startBrowser } from './browser.ts';
import { builtSites, readText } from './builtSites.ts';
import { watch } from './visiting.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

/** Opens a page and collects everything that went wrong while it loaded. */
async function visit(
  address: string,
  options: BrowserContextOptions,
  look: (page: Page) => Promise<void>,
): Promise<string[]> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const { problems } = watch(page, address);
  await page.goto(address, { waitUntil: 'networkidle' });
  await look(page);
  await context.close();
  return problems;
}

describe.each(Object.entries(builtSites))('the site %s', (_, { folder, base }) => {
  let site: ServedSite;
  beforeAll(async () => {
    site = await serve(folder, base, 0);
  });
  afterAll(() => site.stop());

  it('finds a cultivar by its name in the search box', async () => {
    const [name] = JSON.parse(readText(folder, 'cultivars.json')).cultivars.map(
      (found: { name: string }) => found.name,
    );
    const problems = await visit(site.address, {}, async page => {
      await page.goto(`${site.address}search/?q=${encodeURIComponent(name)}`, { waitUntil: 'networkidle' });
      const results = page.locator('main a', { hasText: name });
      await results.first().waitFor();
      const target = await results.first().getAttribute('href');
      const opened = await page.goto(new URL(target!, site.address).href);
      expect(opened!.status()).toBe(200);
      expect(await page.locator('h1').textContent()).toContain(name);
    });
    expect(problems).toEqual([]);
  });

  it('says without scripts that search needs them, and leads on to the lists', async () => {
    await visit(`${site.address}search/`, { javaScriptEnabled: false }, async page => {
      const text = await page.locator('main').textContent();
      expect(text).toMatch(/script/i);
      expect(await page.locator(`main a[href="${base}stock/"]`).count()).toBeGreaterThan(0);
    });
  });
});
