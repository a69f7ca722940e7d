/** The search page in a browser, checked against the open files of the same site: words, choices, order, address, keyboard, nothing found. */

import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import type { CultivarsFile } from '../../src/outputs/cultivarsFile.ts';
import type { StockFile } from '../../src/outputs/stockFile.ts';
import type { PlaceFile } from '../../src/site/data/file.ts';
import { startBrowser } from './browser.ts';
import { builtSites, readText } from './builtSites.ts';
import { axeFindings } from './visiting.ts';

const { folder } = builtSites.belowBase;
const { cultivars } = JSON.parse(readText(folder, 'cultivars.json')) as CultivarsFile;
const { lots } = JSON.parse(readText(folder, 'stock.json')) as StockFile;
type OpenForm = StockFile['lots'][number]['forms'][number];
type OpenCultivar = CultivarsFile['cultivars'][number];

/** Forms of all lots of a cultivar that are not sold out, with the size of the lot. */
function offersOf({ id }: OpenCultivar): (OpenForm & { size: string })[] {
  return lots
    .filter(({ cultivar, left }) => cultivar === id && left > 0)
    .flatMap(({ forms, size }) => forms.map(form => ({ ...form, size: size.class })));
}

const withOffer = (fits: (offer: ReturnType<typeof offersOf>[number]) => boolean) =>
  cultivars.filter(cultivar => offersOf(cultivar).some(fits));
const namesOf = (some: readonly OpenCultivar[]) => some.map(({ name }) => name).sort();

let browser: Browser;
let site: ServedSite;
beforeAll(async () => {
  browser = await startBrowser();
  site = await serve(folder, builtSites.belowBase.base, 0);
});
/** What went wrong on the pages of a test. */
const problems: string[] = [];
afterEach(() => expect(problems.splice(0)).toEqual([]));
afterAll(async () => {
  await browser.close();
  await site.stop();
});

async function open(query = '', options: BrowserContextOptions = {}, served = site): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  page.on('pageerror', problem => problems.push(problem.message));
  page.on('requestfailed', request => problems.push(`failed: ${request.url()}`));
  page.on('console', message => {
    // Letters that come too late for a first view are kept for the next one: that depends on speed alone.
    if (/preloaded using link preload but not used/.test(message.text())) return;
    if (message.type() === 'error' || message.type() === 'warning') problems.push(message.text());
  });
  await page.goto(`${served.address}search/${query}`, { waitUntil: 'networkidle' });
  return page;
}

/** What is told when the page has come to rest. */
async function told(page: Page): Promise<string> {
  const status = page.locator('[data-search-status]');
  await expect.poll(() => status.textContent()).toMatch(/\.$/);
  return (await status.textContent())!;
}

/** Waits until the rows that are shown at once are all there: the first come a moment before the others. */
async function rowsDrawn(page: Page): Promise<void> {
  await expect.poll(() => page.locator('[aria-busy]').count()).toBe(0);
}

/** Names in the table, all of them. */
async function names(page: Page): Promise<string[]> {
  const more = page.locator('[data-search-results] table + button');
  await rowsDrawn(page);
  while ((await more.count()) > 0 && (await more.isVisible())) {
    await more.click();
    await rowsDrawn(page);
  }
  return page.locator('.sought .name a').allInnerTexts();
}

async function choose(page: Page, group: string, value: string): Promise<void> {
  const key = page.locator('[data-search-key]');
  if ((await key.getAttribute('open')) === null) await key.locator('summary').click();
  await key.locator(`[data-group="${group}"] input[value="${value}"]`).click();
}

const query = (page: Page) => new URL(page.url()).search;

describe('searching for words', () => {
  it.each(Object.values(builtSites))(
    'finds every cultivar by its name at $base',
    async ({ folder: built, base }) => {
      const served = await serve(built, base, 0);
      const page = await open('', {}, served);
      for (const { name, url } of cultivars.slice(0, 6)) {
        await page.locator('#seek').fill(name);
        await expect.poll(() => page.locator('.sought .name a').first().textContent()).toBe(name);
        const found = await page.locator('.sought .name a').first().getAttribute('href');
        expect(found).toBe(
          base + new URL(url).pathname.replace(builtSites.belowBase.base, '').replace(/^\//, ''),
        );
      }
      await page.context().close();
      await served.stop();
    },
  );

  it('finds a cultivar by the number of its lot', async () => {
    const { lot, cultivar } = lots[Math.floor(lots.length / 2)]!;
    const page = await open(`?q=${lot}`);
    await told(page);
    expect((await names(page))[0]).toBe(cultivars.find(({ id }) => id === cultivar)!.name);
    await page.context().close();
  });

  it('finds guides by their words, and not when something about trees is chosen', async () => {
    const page = await open('?q=overwintering');
    expect(await told(page)).toMatch(/(?:1 guide or video|(?!1 )\d+ guides or videos) with/);
    expect(await page.locator('.found a').first().getAttribute('href')).toMatch(/\/guides\/[\w-]+\/$/);
    await choose(page, 'form', 'bare-root');
    await expect.poll(() => page.locator('.found').count()).toBe(0);
    await page.context().close();
  });

  it('loads nothing before the page is touched', async () => {
    const page = await open();
    const loaded: string[] = [];
    page.on('request', request => loaded.push(request.url()));
    await page.waitForTimeout(300);
    expect(loaded).toEqual([]);
    expect(await page.locator('[data-search-status]').textContent()).toBe('');
    await page.locator('#seek').focus();
    await expect.poll(() => loaded.some(url => url.endsWith('rows.json'))).toBe(true);
    await expect.poll(() => loaded.some(url => url.endsWith('pagefind.js'))).toBe(true);
    await page.context().close();
  });
});

describe('choices', () => {
  const flavor = cultivars[0]!.flavor.id;
  const { ripening, species } = cultivars[0]!;
  const offer = cultivars.flatMap(offersOf).find(({ price }) => price !== null)!;
  const price = String(offer.price!.amount);

  it.each<[string, string, OpenCultivar[]]>([
    ['species', species, cultivars.filter(each => each.species === species)],
    ['flavor', flavor, cultivars.filter(each => each.flavor.id === flavor)],
    ['ripening', ripening, cultivars.filter(each => each.ripening === ripening)],
    ['form', 'bare-root', withOffer(({ form }) => form === 'bare-root')],
    ['readiness', 'ready', withOffer(({ state }) => state === 'ready')],
    ['readiness', 'opens', withOffer(({ state }) => state === 'opens')],
    // A price is the most somebody wants to pay.
    ['price', price, withOffer(each => each.price !== null && each.price.amount <= offer.price!.amount)],
    ['size', offer.size, withOffer(({ size }) => size === offer.size)],
  ])(
    'of %s %s leave what the open files say, and its count is told beforehand',
    async (group, value, expected) => {
      expect(expected.length).toBeGreaterThan(0);
      const page = await open();
      const count = page.locator(`[data-group="${group}"] label:has(input[value="${value}"]) [data-count]`);
      expect(await count.textContent()).toBe(String(expected.length));
      await choose(page, group, value);
      expect(await told(page)).toMatch(new RegExp(`^${expected.length} cultivars?, 1 choice made`));
      expect((await names(page)).sort()).toEqual(namesOf(expected));
      expect(query(page)).toBe(`?${group}=${encodeURIComponent(value)}`);
      await page.context().close();
    },
  );

  it('of form and readiness are asked of one and the same lot', async () => {
    const expected = withOffer(({ form, state }) => form === 'bare-root' && state === 'opens');
    const page = await open('?form=bare-root&readiness=opens');
    await told(page);
    expect((await names(page)).sort()).toEqual(namesOf(expected));
    await page.context().close();
  });

  it('and words are taken together', async () => {
    const page = await open(`?q=fig&flavor=${flavor}`);
    await told(page);
    const found = await names(page);
    const expected = namesOf(cultivars.filter(each => each.flavor.id === flavor));
    for (const name of found) expect(expected).toContain(name);
    expect(found.length).toBeGreaterThan(0);
    await page.context().close();
  });

  it('of a verdict need a place, and then leave what is said of it there', async () => {
    const page = await open('?place=at-home');
    expect(await told(page)).toMatch(/where the tree will live/);
    await page.locator('#mine-place').fill('28801');
    await page.locator('#mine-place').press('Enter');
    await expect.poll(() => page.locator('[data-search-status]').textContent()).toMatch(/1 choice made/);
    const place = await page.evaluate(() =>
      JSON.parse(Object.entries(localStorage).find(([key]) => key.startsWith('leafdrop-place'))![1]),
    );
    const { kinds, cultivars: kindOf } = JSON.parse(
      readText(folder, `places/${place.place}/verdicts.json`),
    ) as PlaceFile;
    const expected = cultivars.filter(({ id }) => kinds[kindOf[id]!]?.level === 'at-home');
    expect((await names(page)).sort()).toEqual(namesOf(expected));
    await choose(page, 'place', 'at-home');
    await choose(page, 'place', 'a-gamble');
    const gambles = cultivars.filter(({ id }) => kinds[kindOf[id]!]?.level === 'a-gamble');
    await expect.poll(async () => (await names(page)).sort()).toEqual(namesOf(gambles));
    await page.context().close();
  });
});

describe('order', () => {
  const lowest = (values: number[]) => Math.min(Number.POSITIVE_INFINITY, ...values);
  const cheapest = (each: OpenCultivar) => lowest(offersOf(each).flatMap(({ price }) => price?.amount ?? []));
  const soonest = (each: OpenCultivar) =>
    lowest(
      offersOf(each).flatMap(({ state, from }) => {
        if (state === 'ready') return 0;
        return state === 'opens' && from !== null ? Math.max(1, Date.parse(from)) : [];
      }),
    );
  const classes = ['very-early', 'early', 'mid', 'late', 'very-late'];
  const keys: Record<string, (each: OpenCultivar) => number> = {
    name: each => cultivars.indexOf(each),
    price: cheapest,
    readiness: soonest,
    ripening: each => classes.indexOf(each.ripening),
  };

  it.each(Object.entries(keys))('by %s is that of the open files', async (order, keyOf) => {
    const page = await open('?q=');
    await page.locator('#order').selectOption(order === 'name' ? 'price' : 'name');
    await page.locator('#order').selectOption(order);
    await told(page);
    const found = (await names(page)).map(name => keyOf(cultivars.find(each => each.name === name)!));
    expect(found).toHaveLength(cultivars.length);
    expect(found).toEqual([...found].sort((a, b) => (a === b ? 0 : a - b)));
    await page.context().close();
  });
});

describe('the address', () => {
  it('brings back the whole of a search, and the back button undoes its steps', async () => {
    const page = await open('?flavor=no-such-flavor');
    await told(page);
    const first = cultivars[0]!;
    await page.goto(`${site.address}search/`, { waitUntil: 'networkidle' });
    await choose(page, 'ripening', first.ripening);
    await told(page);
    const one = await names(page);
    await choose(page, 'flavor', first.flavor.id);
    await page.locator('#order').selectOption('readiness');
    await expect
      .poll(() => query(page))
      .toBe(`?flavor=${first.flavor.id}&ripening=${first.ripening}&sort=readiness`);
    await expect.poll(() => page.locator('[data-search-status]').textContent()).toMatch(/2 choices/);
    const two = await names(page);

    const again = await open(query(page));
    await told(again);
    expect(await names(again)).toEqual(two);
    expect(await again.locator(`[data-group="flavor"] input[value="${first.flavor.id}"]`).isChecked()).toBe(
      true,
    );
    expect(await again.locator('#order').inputValue()).toBe('readiness');
    await again.context().close();

    await page.goBack();
    await page.goBack();
    await expect.poll(() => names(page)).toEqual(one);
    expect(query(page)).toBe(`?ripening=${first.ripening}`);
    expect(await page.locator(`[data-group="flavor"] input[value="${first.flavor.id}"]`).isChecked()).toBe(
      false,
    );
    await page.context().close();
  });
});

describe('from the keyboard', () => {
  it('words, a choice, its removal and the next rows are reached and keep the focus', async () => {
    const page = await open();
    await page.locator('#seek').focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement!.tagName)).toBe('SUMMARY');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await expect.poll(() => query(page)).toMatch(/^\?species=/);
    expect(await told(page)).toMatch(/1 choice made/);
    expect(await page.evaluate(() => (document.activeElement as HTMLInputElement).checked)).toBe(true);
    await page.locator('[data-search-asked] button').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => query(page)).toBe('');
    await expect.poll(() => page.evaluate(() => document.activeElement!.id)).toBe('seek');
    await page.locator('#order').selectOption('price');
    const more = page.locator('[data-search-results] table + button');
    await more.waitFor({ state: 'visible' });
    await more.focus();
    await page.keyboard.press('Enter');
    const focused = await page.evaluate(() => document.activeElement!.textContent);
    expect(focused).toBe(await page.locator('.sought .name a').nth(20).textContent());
    await page.context().close();
  });
});

describe('nothing found', () => {
  it('names the choice that stands in the way with what is left without it', async () => {
    const rare = cultivars
      .flatMap(each => each.flavor.id)
      .find(flavor => !cultivars.some(each => each.flavor.id === flavor && each.ripening === 'very-early'))!;
    const page = await open(`?flavor=${rare}&ripening=very-early`);
    expect(await told(page)).toMatch(/^0 cultivars/);
    const left = cultivars.filter(each => each.flavor.id === rare).length;
    const button = page.locator('.nothing button', { hasText: 'Ripens' });
    expect(await button.textContent()).toContain(`: ${left}`);
    await button.click();
    await expect.poll(() => query(page)).toBe(`?flavor=${rare}`);
    await expect.poll(async () => (await names(page)).length).toBe(left);
    expect(await page.evaluate(() => document.activeElement!.tagName)).toBe('A');
    await page.context().close();
  });

  it('names what may have been meant, and the plain lists', async () => {
    const { name, url } = cultivars.find(each => each.name.length > 8 && !each.name.includes(' '))!;
    const slip = `x${name.slice(1, -1)}q`;
    const page = await open(`?q=${slip}`);
    expect(await told(page)).toMatch(/^0 cultivars/);
    expect(await page.locator('.nothing a', { hasText: name }).getAttribute('href')).toBe(
      new URL(url).pathname,
    );
    expect(await page.locator('main nav a[href$="/stock/"]').count()).toBe(1);
    await page.context().close();
  });

  it('says so when the index cannot be loaded', async () => {
    const page = await open();
    await page.route('**/rows.json', route => route.fulfill({ status: 503, body: '' }));
    await page.locator('#seek').fill('fig');
    await expect
      .poll(() => page.locator('[data-search-status]').textContent())
      .toMatch(/could not be loaded/);
    await page.context().close();
    // The browser tells of the answer it was given.
    expect(problems.splice(0).filter(text => !/503|rows\.json$/.test(text))).toEqual([]);
  });
});

describe('the page', () => {
  it('hides what needs scripts when they are off, and leads on to a plain list for every choice that has one', async () => {
    const page = await open('', { javaScriptEnabled: false });
    expect(await page.locator('[data-search]').isVisible()).toBe(false);
    const lists = await page
      .locator('main nav a')
      .evaluateAll(links => links.map(link => (link as HTMLAnchorElement).pathname));
    for (const path of [
      'stock/form/bare-root/',
      'cultivars/ripening/early/',
      `cultivars/flavor/${cultivars[0]!.flavor.id}/`,
      'climates/',
    ]) {
      expect(lists).toContain(builtSites.belowBase.base + path);
    }
    const flavor = cultivars[0]!.flavor.id;
    await page.goto(`${site.address}cultivars/flavor/${flavor}/`);
    expect((await page.locator('.traits .name a').allInnerTexts()).sort()).toEqual(
      namesOf(cultivars.filter(each => each.flavor.id === flavor)),
    );
    await page.context().close();
  });

  it.each([
    ['light', 1280, '?q=fig&form=bare-root'],
    ['dark', 1280, '?sort=price&form=bare-root'],
    ['light', 320, '?q=fig&form=bare-root'],
    ['dark', 320, '?q=zzzz&readiness=sold&form=bare-root'],
  ] as const)(
    'in %s at %i px with %s has no finding of axe (WCAG 2.2 AA) and no sideways scrolling',
    async (colorScheme, width, asked) => {
      const page = await open(asked, { colorScheme, viewport: { width, height: 800 }, bypassCSP: true });
      await told(page);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      expect(await axeFindings(page)).toEqual([]);
      await page.context().close();
    },
  );

  it('tells its choices without colors of its own, in forced colors', async () => {
    const page = await open('?sort=price', { forcedColors: 'active' });
    await told(page);
    expect(await page.locator('.sought .state').first().isVisible()).toBe(true);
    await page.context().close();
  });
});
