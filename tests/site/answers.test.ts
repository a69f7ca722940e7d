/** What customers came for, done as they would do it, with the steps counted: a guide of one's town from a film, and a search for what they mean. */

import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { atSite } from './atSite.ts';
import { builtSites } from './builtSites.ts';

const { folder, base } = builtSites.atRoot;
const phone = { width: 360, height: 740 };

const here = atSite({ folder, base });

async function at<T>(
  path: string,
  then: (page: Page) => Promise<T>,
  options: BrowserContextOptions = {},
): Promise<T> {
  const context = await here.browser.newContext({ viewport: phone, ...options });
  try {
    const page = await context.newPage();
    await page.goto(here.site.address + path, { waitUntil: 'networkidle' });
    return await then(page);
  } finally {
    await context.close();
  }
}

const topOf = async (page: Page, selector: string) => (await page.locator(selector).first().boundingBox())!.y;

describe('a guide', () => {
  it('of one’s town is five steps at most from the link below a film', () =>
    at('videos/2026-11-pots-away/', async page => {
      let steps = 1; // The link below the film has been followed.
      await page.locator('[data-here] summary').click();
      steps += 1;
      await page.locator('[data-here] input').fill('02139');
      await page.keyboard.press('Enter');
      steps += 1;
      await expect
        .poll(() => page.locator('[data-here-name]').textContent(), { timeout: 20_000 })
        .toMatch(/Cambridge|Boston/);
      await page.locator('main a[href*="/guides/overwintering-pot/"]').first().click();
      steps += 1;
      await page.waitForURL(/guides\/overwintering-pot\/[a-z-]+\/#/);
      expect(await page.locator('.guide-now time').first().getAttribute('datetime')).toMatch(
        /^\d{4}-\d\d-\d\d$/,
      );
      expect(steps).toBeLessThanOrEqual(5);
    }));

  it.each([
    'first-48-hours/',
    'first-48-hours/bare-root/fig/',
    'overwintering-pot/boston-ma/',
    'waking-and-hardening/seattle-wa/',
  ])('%s tells the first thing to do within 700 px on a phone', path =>
    at(`guides/${path}`, async page => {
      const first = await Promise.all(
        ['.guide-now li strong', '.guide-now dd', 'article.guide > p'].map(async selector =>
          (await page.locator(selector).count()) === 0 ? Number.POSITIVE_INFINITY : topOf(page, selector),
        ),
      );
      expect(Math.min(...first)).toBeLessThan(700);
    }),
  );

  it('keeps "now" at the day it is read', () =>
    at('guides/overwintering-pot/boston-ma/', async page => {
      const told = () => page.locator('.guide-now li strong').allInnerTexts();
      const built = await told();
      await page.clock.setFixedTime(new Date('2027-08-12T12:00:00'));
      await page.reload({ waitUntil: 'networkidle' });
      await expect.poll(() => page.locator('[data-now-day]').textContent()).toMatch(/August/);
      const summer = await told();
      expect(summer).toHaveLength(2);
      expect(summer[0]).toMatch(/last feed/);
      expect(summer).not.toEqual(built);
    }));

  it('says what is to be done now without scripts, by the day it was made', () =>
    at(
      'guides/overwintering-pot/boston-ma/',
      async page => expect(await page.locator('.guide-now li strong').count()).toBe(2),
      { javaScriptEnabled: false },
    ));

  it('prints its calendar on the first side', () =>
    at('guides/overwintering-pot/boston-ma/', async page => {
      await page.emulateMedia({ media: 'print' });
      const order = await page.evaluate(() => {
        const [calendar, text] = ['.guide-calendar', 'article.guide'].map(
          each => document.querySelector(each)!,
        );
        return calendar!.compareDocumentPosition(text!) & Node.DOCUMENT_POSITION_FOLLOWING;
      });
      expect(order).not.toBe(0);
      const rows = await page
        .locator('.guide-calendar .care-tasks > li')
        .evaluateAll(all => all.map(each => each.getBoundingClientRect().height));
      expect(Math.min(...rows)).toBeGreaterThan(0);
    }));
});

describe('a search', () => {
  const search = (text: string, then: (page: Page) => Promise<void>) =>
    at(`search/?q=${encodeURIComponent(text)}`, async page => {
      await expect.poll(() => page.locator('[data-search-status]').textContent()).toMatch(/\d/);
      await then(page);
    });
  const near = (page: Page) => page.locator('.nothing .columns').allInnerTexts();
  const cultivars = (page: Page) => page.locator('.sought .name a').allInnerTexts();

  it('for a slip in the kind of tree offers the kind', () =>
    search('persimon', async page => expect((await near(page)).join(' ')).toMatch(/persimmon/i)));

  it('for a slip in a word of a guide finds no tree, and offers the guide', () =>
    search('wintr', async page => {
      expect(await cultivars(page)).toEqual([]);
      expect((await near(page)).join(' ')).toMatch(/Winter for a tree/);
    }));

  it.each([
    ['Munich', 'munich-de'],
    ['houston', 'houston-tx'],
    ['02139', 'boston-ma'],
  ])('for %s leads to the place', (text, place) =>
    search(text, async page => {
      const first = page.locator('.found').first();
      expect(await first.textContent()).toMatch(/Place/);
      expect(await first.locator('a').first().getAttribute('href')).toBe(`${base}places/${place}/`);
    }),
  );

  it('for a ZIP code that is entered opens its place', () =>
    at('search/', async page => {
      await page.locator('#seek').fill('02139');
      await page.keyboard.press('Enter');
      await page.waitForURL('**/places/boston-ma/');
    }));

  it('for the number of a lot opens the lot', () =>
    at('search/', async page => {
      await page.locator('#seek').fill('26-layer-01');
      await page.keyboard.press('Enter');
      await page.waitForURL('**/lots/26-layer-01/');
    }));

  it('for something rare under $50 shows only what is both', () =>
    search('something rare under $50', async page => {
      const found = await cultivars(page);
      expect(found.length).toBeGreaterThan(0);
      const prices = await page.locator('.sought td.price').allInnerTexts();
      for (const price of prices) expect(Number(/[\d.]+/.exec(price)?.[0])).toBeLessThanOrEqual(50);
    }));
});

describe('an address that leads nowhere', () => {
  it.each([
    ['lots/26-layer-011/', 'Lot 26-layer-01'],
    ['cultivars/pocket-lanten/', 'Pocket Lantern'],
  ])('%s offers what is near', (path, name) =>
    at(path, page => page.locator('[data-near] a', { hasText: name }).first().waitFor({ state: 'visible' })),
  );
});

it('shared links say what they lead to', () =>
  at('cultivars/pocket-lantern/', async page => {
    const meta = (name: string) => page.locator(`meta[property="${name}"]`).getAttribute('content');
    expect(await meta('og:title')).toBe('Pocket Lantern fig');
    expect((await meta('og:description'))?.length).toBeGreaterThan(20);
    expect(await meta('og:url')).toMatch(/^https:.*\/cultivars\/pocket-lantern\/$/);
  }));

describe('a list of trees', () => {
  it('is made from the page of a lot, kept, and written into one email with lot, price and short address', () =>
    at('stock/', async page => {
      let steps = 0;
      await page.goto(`${here.site.address}lots/26-layer-01/`, { waitUntil: 'networkidle' });
      steps += 1;
      await page.locator('a', { hasText: 'Put on my list' }).click();
      steps += 1;
      await page.locator('[data-order-rows] li').waitFor();
      await page.reload({ waitUntil: 'networkidle' });
      expect(await page.locator('[data-order-rows] li').count()).toBe(1);
      await page.locator('#list-lot').fill('25-layer-03');
      await page.locator('#list-form').selectOption('dormant-pot');
      await page.locator('.order-add button').click();
      steps += 3;
      await expect.poll(() => page.locator('[data-order-rows] li').count()).toBe(2);
      const mail = decodeURIComponent((await page.locator('[data-order-mail]').getAttribute('href'))!);
      for (const word of ['lot 26-layer-01', 'lot 25-layer-03, dormant in a pot, $', '/go/', 'Together: $'])
        expect(mail).toContain(word);
      expect(steps).toBeLessThanOrEqual(5);
    }));

  it('says cartons, the price of delivery and the sending weeks for the place that is chosen, in the email too', () =>
    at('places/boston-ma/', async page => {
      await page.locator('[data-mine-set]').first().click();
      await page.goto(`${here.site.address}ordering/?lot=26-layer-01#list`, { waitUntil: 'networkidle' });
      const parcels = page.locator('[data-order-parcels]');
      await parcels.locator('p', { hasText: 'Delivery to Boston' }).waitFor();
      const told = await parcels.textContent();
      expect(told).toMatch(/with 1 tree, billed as \d+ lb/);
      expect(told).toMatch(
        /Delivery to Boston[^:]*: \$\d+ for 1 parcel \(Everywhere else we send to, our prices of /,
      );
      expect(told).toContain('Weeks in which we send to Boston');
      const mail = decodeURIComponent((await page.locator('[data-order-mail]').getAttribute('href'))!);
      for (const word of [
        'for delivery, $',
        'Delivery to Boston',
        'They will live at Boston',
        'Weeks in which you send there',
      ])
        expect(mail).toContain(word);
      await page.evaluate(() => localStorage.clear());
    }));

  it.each(['', 'videos/2026-10-the-box-comes/', 'lots/26-layer-01/'])(
    'no price stands where the yard does not send, at /%s',
    path =>
      at('places/munich-de/', async page => {
        await page.locator('[data-mine-set]').first().click();
        await page.goto(here.site.address + path, { waitUntil: 'networkidle' });
        await page.locator('html[data-not-sent]').waitFor({ state: 'attached' });
        // biome-ignore lint/performance/useDomNodeTextContent: what is hidden is no text of the page.
        expect(await page.locator('main').innerText()).not.toMatch(/\$\d/);
        await page.evaluate(() => localStorage.clear());
      }),
  );

  it('says that nothing is sent where the yard does not send', () =>
    at('places/munich-de/', async page => {
      await page.locator('[data-mine-set]').first().click();
      await page.goto(`${here.site.address}ordering/?lot=26-layer-01#list`, { waitUntil: 'networkidle' });
      await page.locator('[data-order-parcels] p', { hasText: 'We do not send to Munich' }).waitFor();
      await page.evaluate(() => localStorage.clear());
    }));

  it('names a lot it does not know, and gives way to the address of the yard without scripts', () =>
    at('ordering/', async page => {
      await page.locator('#list-lot').fill('99-none-01');
      await page.locator('.order-add button').click();
      await expect
        .poll(() => page.locator('[data-order-list] [role="status"]').textContent())
        .toMatch(/No lot 99-none-01/);
      const plain = await page.context().browser()!.newContext({ javaScriptEnabled: false });
      const other = await plain.newPage();
      await other.goto(`${here.site.address}ordering/`);
      expect(await other.locator('[data-order-list]').isVisible()).toBe(false);
      expect(await other.locator('a[href^="mailto:"]').count()).toBeGreaterThan(0);
      await plain.close();
    }));
});
