/** Comparing cultivars in a browser: what the address says, from the keyboard, and with scripts off. Plates in the page are as large as the fruit. */

import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import type { CultivarsFile } from '../../src/outputs/cultivarsFile.ts';
import { startBrowser } from './browser.ts';
import { builtSites, filesOf, readText } from './builtSites.ts';

const { folder, base } = builtSites.belowBase;
const { cultivars } = JSON.parse(readText(folder, 'cultivars.json')) as CultivarsFile;
/** Of four shapes, the last with the others' ids in front, so that the order of the address shows. */
const four = cultivars
  .filter((each, at) => cultivars.findIndex(other => other.fruit.shape === each.fruit.shape) === at)
  .slice(0, 4);
const ids = four.map(({ id }) => id);

let browser: Browser;
let site: ServedSite;
beforeAll(async () => {
  browser = await startBrowser();
  site = await serve(folder, base, 0);
});
/** What went wrong on the pages of a test. */
const problems: string[] = [];
afterEach(() => expect(problems.splice(0)).toEqual([]));
afterAll(async () => {
  await browser.close();
  await site.stop();
});

async function open(
  path: string,
  options: { javaScriptEnabled?: boolean; width?: number } = {},
): Promise<Page> {
  const { width = 1280, ...rest } = options;
  const context = await browser.newContext({ viewport: { width, height: 900 }, ...rest });
  const page = await context.newPage();
  page.on('pageerror', problem => problems.push(problem.message));
  page.on('console', message => {
    if (message.type() === 'error') problems.push(message.text());
  });
  await page.goto(site.address + path, { waitUntil: 'networkidle' });
  return page;
}

const heads = (page: Page) => page.locator('.side-by-side thead a').allInnerTexts();

describe('comparing', () => {
  it('shows the cultivars of the address in its order, at most four, and leaves unknown ones out', async () => {
    const page = await open(`compare/?c=no-such-tree,${ids.join(',')},${cultivars.at(-1)!.id}`);
    expect(await heads(page)).toEqual(four.map(({ name }) => name));
    expect(await page.locator('[data-compare] button').isDisabled()).toBe(true);
    await page.context().close();
  });

  it('draws all plates to one scale', async () => {
    const page = await open(`compare/?c=${ids.join(',')}`);
    const outlines = await page.evaluate(() =>
      [...document.querySelectorAll('.side-by-side svg.plate')].map(plate => {
        const whole = plate.querySelector('g')!.getBoundingClientRect();
        const bar = plate.querySelector('.bar')!.getBoundingClientRect();
        return { width: whole.width, bar: bar.width };
      }),
    );
    expect(outlines).toHaveLength(4);
    for (const { bar } of outlines) expect(Math.abs(bar - outlines[0]!.bar)).toBeLessThan(1);
    outlines.forEach(({ width, bar }, at) => {
      const mm = (width / bar) * 10;
      // Lines have a width of their own, stalks and lobes may reach a little beyond the fruit.
      expect(mm / four[at]!.fruit.widthMm, four[at]!.id).toBeGreaterThan(0.95);
      expect(mm / four[at]!.fruit.widthMm, four[at]!.id).toBeLessThan(1.25);
    });
    await page.context().close();
  });

  it('adds and removes from the keyboard and keeps the choice in the address', async () => {
    const page = await open('compare/');
    expect(await page.locator('[data-compare-status]').textContent()).toMatch(/up to 4/);
    await page.locator('#pick').focus();
    await page.keyboard.type(cultivars[1]!.name);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await page.locator('.side-by-side').waitFor();
    expect(new URL(page.url()).searchParams.get('c')).toBe(cultivars[1]!.id);
    expect(await heads(page)).toEqual([cultivars[1]!.name]);
    await page.locator('.side-by-side button').focus();
    await page.keyboard.press('Enter');
    await page.locator('.side-by-side').waitFor({ state: 'detached' });
    expect(new URL(page.url()).search).toBe('');
    await page.context().close();
  });

  it('marks the rows that differ and only those', async () => {
    const page = await open(`compare/?c=${ids.slice(0, 2).join(',')}`);
    const rows = await page.locator('.side-by-side tbody tr').evaluateAll(all =>
      all.slice(2).map(row => ({
        marked: row.querySelector('th .differs') !== null,
        values: [...row.querySelectorAll('td')].map(cell => cell.textContent),
      })),
    );
    expect(rows.length).toBeGreaterThan(10);
    for (const { marked, values } of rows) expect(marked).toBe(new Set(values).size > 1);
    await page.locator('[data-compare-only]').check();
    const shown = await page
      .locator('.side-by-side tbody tr:visible')
      .evaluateAll(all => all.slice(2).map(row => row.querySelector('th .differs') !== null));
    expect(shown).toEqual(rows.filter(({ marked }) => marked).map(() => true));
    await page.context().close();
  });

  it('says of each form what it costs, whether it is ready and how it is sent', async () => {
    const page = await open(`compare/?c=${ids.slice(0, 2).join(',')}`);
    const labels = await page.locator('.side-by-side tbody th').allInnerTexts();
    for (const form of ['Leafed in a pot', 'Dormant in a pot', 'Bare-root'])
      expect(labels.some(label => label.startsWith(form))).toBe(true);
    await page.context().close();
  });

  it('puts the values of a trait below each other on a phone, all of them in view', async () => {
    const page = await open(`compare/?c=${ids.slice(0, 3).join(',')}`, { width: 360 });
    const row = page.locator('.side-by-side tbody tr').nth(4);
    const boxes = await row
      .locator('td')
      .evaluateAll(all => all.map(cell => cell.getBoundingClientRect().toJSON()));
    expect(boxes).toHaveLength(3);
    for (const [at, { left, right, top }] of boxes.entries()) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeLessThanOrEqual(360);
      if (at > 0) expect(top).toBeGreaterThanOrEqual(boxes[at - 1]!.bottom);
    }
    await page.context().close();
  });

  it('shows only the checked cultivars of a table with scripts off', async () => {
    const page = await open('compare/species/fig/', { javaScriptEnabled: false });
    const keep = page.locator('.keep input');
    expect(await keep.count()).toBeGreaterThan(4);
    for (const at of [0, 2, 3]) await keep.nth(at).check();
    await page.locator('.only input').check();
    expect(await page.locator('.compare tbody tr:visible').count()).toBe(3);
    await page.context().close();
  });

  it.each(['stock/', 'cultivars/'])(
    'starts from check boxes in the list at %s, by a plain form',
    async path => {
      for (const javaScriptEnabled of [true, false]) {
        const page = await open(path, { javaScriptEnabled, width: 360 });
        const boxes = page.locator('.comparing input[name="c"]:visible');
        const picked = [await boxes.nth(0).inputValue(), await boxes.nth(1).inputValue()];
        await boxes.nth(0).check();
        await boxes.nth(1).check();
        const button = page.locator('.compare-bar button');
        // The bar stays in sight as long as something is checked.
        expect(await button.evaluate(each => each.getBoundingClientRect().bottom <= innerHeight)).toBe(true);
        await button.click();
        await page.waitForURL(/compare\/\?/);
        expect(new URL(page.url()).searchParams.getAll('c')).toEqual(picked);
        if (javaScriptEnabled) await expect.poll(() => heads(page)).toHaveLength(2);
        else expect(await page.locator('noscript').first().textContent()).toContain('Open a table below');
        await page.context().close();
      }
    },
  );

  it('leads on to whole tables with scripts off', async () => {
    const page = await open('compare/', { javaScriptEnabled: false });
    expect(await page.locator('main').textContent()).toMatch(/Scripts are off/);
    expect(await page.locator('[data-compare]').isVisible()).toBe(false);
    const table = await page.locator('main a[href*="/compare/species/"]').first().getAttribute('href');
    await page.goto(new URL(table!, site.address).href);
    expect(await page.locator('.compare tbody tr').count()).toBeGreaterThan(1);
    expect(await page.locator('.compare .fruit').count()).toBe(
      await page.locator('.compare tbody tr').count(),
    );
    await page.context().close();
  });

  it.each(['compare/', `compare/?c=${ids.join(',')}`, 'cultivars/', 'stock/'])(
    '%s does not scroll sideways at 320 px',
    async path => {
      const page = await open(path, { width: 320 });
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320);
      await page.context().close();
    },
  );
});

describe('small plates', () => {
  it('are to scale in the rows, half a px to the millimeter, and have their picture', async () => {
    const page = await open('cultivars/');
    const marks = await page.locator('.name > .fruit').evaluateAll(all =>
      all.map(mark => ({
        width: Number(mark.getAttribute('width')),
        height: Number(mark.getAttribute('height')),
        drawn: mark.querySelector('use')!.getBoundingClientRect().width,
        name: mark.parentElement!.querySelector('a')!.textContent!.trim(),
      })),
    );
    expect(marks).toHaveLength(cultivars.length);
    for (const { width, height, drawn, name } of marks) {
      const { fruit } = cultivars.find(each => each.name === name)!;
      expect([width, height]).toEqual([fruit.widthMm / 2, fruit.lengthMm / 2]);
      expect(drawn).toBeGreaterThan(width * 0.8);
    }
    await page.context().close();
  });

  it('all point at a symbol of the shared file', () => {
    const symbols = new Set(
      [...readText(folder, 'plates.svg').matchAll(/<symbol id="([^"]+)"/g)].map(([, id]) => id),
    );
    const used = filesOf(folder)
      .filter(path => path.endsWith('.html'))
      .flatMap(path => [...readText(folder, path).matchAll(/plates\.svg#([^"]+)"/g)].map(([, id]) => id));
    expect(used.length).toBeGreaterThan(50);
    expect([...new Set(used)].filter(id => !symbols.has(id))).toEqual([]);
  });
});

it('publishes no page of components', () => {
  expect(filesOf(folder).filter(path => path.startsWith('style/'))).toEqual([]);
});
