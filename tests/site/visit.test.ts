/** A visitor's paths through the built site, in a browser: reading at any width, searching, with and without scripts. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import { startBrowser } from './browser.ts';
import { builtSites, pagesOf, readText } from './builtSites.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await startBrowser();
});
afterAll(() => browser.close());

interface StockFile {
  lots: { lot: string; cultivar: string; forms: { state: string }[] }[];
}

/** One page of each kind. */
function pageKinds(folder: string): string[] {
  const { lots } = JSON.parse(readText(folder, 'stock.json')) as StockFile;
  const ready = lots.find(({ forms }) => forms.some(({ state }) => state === 'ready'))!;
  const fixed = [
    '',
    'stock/',
    'cultivars/',
    'places/',
    'guides/first-48-hours/',
    'guides/overwintering-pot/minneapolis-mn/',
    'how-we-know/',
    'ordering/',
    'search/',
    'compare/',
    'compare/species/fig/',
    '404.html',
  ];
  const places = pagesOf(folder)
    .filter(page => page.startsWith('places/'))
    .slice(0, 2);
  return [
    ...fixed,
    `lots/${ready.lot}/`,
    `cultivars/${ready.cultivar}/`,
    ...places.map(page => page.replace(/index\.html$/, '')),
  ];
}

/** Opens a page and collects everything that went wrong while it loaded. */
async function visit(
  address: string,
  options: BrowserContextOptions,
  look: (page: Page) => Promise<void>,
): Promise<string[]> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const problems: string[] = [];
  const { origin } = new URL(address);
  page.on('console', message => {
    if (message.type() === 'error' || message.type() === 'warning')
      problems.push(`console: ${message.text()}`);
  });
  page.on('pageerror', error => problems.push(`script: ${error.message}`));
  page.on('requestfailed', request => problems.push(`failed: ${request.url()}`));
  page.on('request', request => {
    if (!request.url().startsWith(origin) && !request.url().startsWith('data:'))
      problems.push(`elsewhere: ${request.url()}`);
  });
  page.on('response', response => {
    if (response.status() >= 400 && !address.endsWith('404.html'))
      problems.push(`${response.status()}: ${response.url()}`);
  });
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

  it('reads at 320 and 1280 px without sideways scrolling, errors or strangers', async () => {
    for (const path of pageKinds(folder)) {
      for (const width of [320, 1280]) {
        const problems = await visit(
          site.address + path,
          { viewport: { width, height: 800 } },
          async page => {
            const overflow = await page.evaluate(
              () => document.documentElement.scrollWidth - window.innerWidth,
            );
            expect(overflow, `${path} at ${width} px`).toBeLessThanOrEqual(0);
          },
        );
        expect(problems, `${path} at ${width} px`).toEqual([]);
      }
    }
  });

  it('finds a cultivar by its name in the search box', async () => {
    const [name] = JSON.parse(readText(folder, 'cultivars.json')).cultivars.map(
      (found: { name: string }) => found.name,
    );
    const problems = await visit(site.address, {}, async page => {
      await page.goto(`${site.address}search/?q=${encodeURIComponent(name)}`, { waitUntil: 'networkidle' });
      const results = page.locator('main a', { hasText: name });
      await results.first().waitFor({ timeout: 30_000 });
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

describe('accessibility (axe-core, WCAG 2.2 AA)', () => {
  let site: ServedSite;
  beforeAll(async () => {
    site = await serve(builtSites.atRoot.folder, '/', 0);
  });
  afterAll(() => site.stop());

  it.each(['light', 'dark'] as const)('finds nothing on any page kind in %s', async colorScheme => {
    for (const path of pageKinds(builtSites.atRoot.folder)) {
      await visit(site.address + path, { colorScheme, bypassCSP: true }, async page => {
        await page.addScriptTag({ content: axeSource });
        const { violations } = await page.evaluate(async () => {
          const { axe } = window as unknown as {
            axe: {
              run: (options: object) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
            };
          };
          return axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
        });
        expect(violations.map(({ id, nodes }) => `${path} ${id}: ${nodes[0]?.html}`)).toEqual([]);
      });
    }
  });
});
