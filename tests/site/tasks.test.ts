/**
 * What customers come for, done in a browser from the first page they see, with the steps counted: every link followed, field filled and key
 * or button pressed is one.
 */

import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { atSite } from './atSite.ts';
import { builtSites, filesOf, readText } from './builtSites.ts';

const { folder, base } = builtSites.belowBase;
const phone = { viewport: { width: 360, height: 740 } };

const here = atSite({ folder, base });

/** A visit that counts its steps. */
function visitOf(page: Page) {
  let steps = 0;
  return {
    steps: () => steps,
    open: async (path: string) => {
      steps += 1;
      await page.goto(here.site.address + path, { waitUntil: 'networkidle' });
    },
    click: async (selector: string) => {
      steps += 1;
      await page.locator(selector).first().click();
      await page.waitForLoadState('networkidle');
    },
    type: async (selector: string, text: string) => {
      steps += 1;
      await page.locator(selector).fill(text);
      await page.locator(selector).press('Enter');
      await page.waitForLoadState('networkidle');
    },
  };
}

async function visiting(
  then: (page: Page, visit: ReturnType<typeof visitOf>) => Promise<void>,
  options: BrowserContextOptions = phone,
): Promise<void> {
  const context = await here.browser.newContext(options);
  try {
    const page = await context.newPage();
    await then(page, visitOf(page));
  } finally {
    await context.close();
  }
}

const heightOf = (page: Page) => page.evaluate(() => document.documentElement.scrollHeight);
/** The place in the head: opened and set, two steps. */
async function setPlace(visit: ReturnType<typeof visitOf>, where: string): Promise<void> {
  await visit.click('.here summary');
  await visit.type('#here-place', where);
}

describe('a customer on a phone', () => {
  it('from a chapter of a film to the guide of their town, at the same chapter, in five steps at most', () =>
    visiting(async (page, visit) => {
      const video = filesOf(folder).find(
        file =>
          /^videos\/[^/]+\/index\.html$/.test(file) &&
          /data-guide-dates="[^"]+#/.test(readText(folder, file)),
      )!;
      const [, part] = /data-guide-dates="[^"]+#([^"]+)"/.exec(readText(folder, video))!;
      await visit.open(video.replace('index.html', ''));
      await setPlace(visit, '021');
      const link = page.locator(`[data-guide-dates$="#${part}"]`).first();
      await expect.poll(() => link.textContent()).toBe('Boston');
      await visit.click(`[data-guide-dates$="#${part}"]`);
      expect(new URL(page.url()).pathname).toMatch(/\/guides\/[^/]+\/boston-ma\/$/);
      expect(new URL(page.url()).hash).toBe(`#${part}`);
      expect(visit.steps()).toBeLessThanOrEqual(5);
    }));

  it('learns from the first page what ripens in their town, and keeps the place on every page', () =>
    visiting(async (page, visit) => {
      await visit.open('');
      await visit.type('#home-place', '021');
      await page.waitForURL('**/places/boston-ma/');
      expect(await page.locator('.ranked > li').count()).toBeGreaterThan(10);
      expect(await page.locator('.ranked .best a').first().textContent()).toMatch(/\$\d+.*sent/);
      expect(await heightOf(page)).toBeLessThanOrEqual(6000);
      expect(visit.steps()).toBe(2);
      for (const path of ['', 'stock/', 'guides/', 'compare/', 'how-we-know/', 'changes/']) {
        await page.goto(here.site.address + path, { waitUntil: 'networkidle' });
        expect(await page.locator('[data-here-name]').textContent(), path).toBe('Boston');
      }
    }));

  it('sees at Houston how trees travel there on the list, and on a lot what the button does', () =>
    visiting(async (page, visit) => {
      await visit.open('stock/form/leafed-pot/');
      await setPlace(visit, '770');
      await expect.poll(() => page.locator('[data-season]').textContent()).toMatch(/^To Houston: /);
      await page.keyboard.press('Escape');
      await visit.click('tr:has(td.ready) a[href$="/lots/26-layer-01/"]');
      await expect.poll(() => page.locator('[data-buy]').textContent()).toMatch(/^(?:Order|Reserve): sent/);
      expect(await page.locator('[data-sends="leafed-pot"]').textContent()).toMatch(/\d/);
      expect(visit.steps()).toBeLessThanOrEqual(5);
    }));

  it('in Munich reads C first, and sees neither price nor button where the yard does not send', () =>
    visiting(async (page, visit) => {
      await visit.open('stock/');
      await setPlace(visit, 'Munich');
      await expect
        .poll(() => page.locator('[data-season]').textContent())
        .toMatch(/^We do not send to Munich\./);
      expect(await page.locator('.lots td b').locator('visible=true').count()).toBe(0);
      expect(await page.locator('.lots th a').first().textContent()).toMatch(/cm \(\d+ in\)/);
      await page.goto(`${here.site.address}places/boston-ma/`, { waitUntil: 'networkidle' });
      expect(await page.locator('.place-card').textContent()).toMatch(/-?[\d.]+\sC \(-?\d+\sF\)/);
    }));

  it('clears the place again', () =>
    visiting(async (page, visit) => {
      await visit.open('stock/');
      await setPlace(visit, 'Boston');
      await expect.poll(() => page.locator('[data-here-name]').textContent()).toBe('Boston');
      await visit.click('[data-here-clear]');
      expect(await page.locator('[data-here-name]').textContent()).toBe('Set your place');
      expect(await page.locator('[data-season]').textContent()).not.toMatch(/Boston/);
      expect(await page.evaluate(() => localStorage.length)).toBe(0);
    }));
});

describe('what was asked of the pages', () => {
  it('the list of all lots is 9,000 px high at most on a phone, the head 120 px', () =>
    visiting(async (page, visit) => {
      await visit.open('stock/');
      expect(await page.locator('.lots tbody tr').count()).toBeGreaterThan(70);
      expect(await heightOf(page)).toBeLessThanOrEqual(9000);
      expect(
        await page.locator('.head').evaluate(head => head.getBoundingClientRect().height),
      ).toBeLessThanOrEqual(120);
    }));

  it('every price told as lowest is that of a form that is ready', () => {
    const { lots } = JSON.parse(readText(folder, 'stock.json')) as {
      lots: { forms: { state: string; price?: { amount: number } | null }[] }[];
    };
    expect(lots.length).toBeGreaterThan(20);
    const home = readText(folder, 'index.html');
    const [, told] = /ready today<span data-priced>, from [^\d]*([\d.]+)/.exec(home)!;
    const ready = lots.flatMap(({ forms }) =>
      forms
        .filter(({ state }) => state === 'ready')
        .flatMap(({ price }) => (price ? [price.amount / 100] : [])),
    );
    expect(Number(told)).toBe(Math.min(...ready));
  });

  it.each([
    '',
    'stock/',
    'cultivars/',
    'places/boston-ma/',
    'guides/',
    'ordering/',
    'my-place/',
    'how-we-know/',
    'changes/',
  ])('/%s keeps within a phone in letters of twice the size', path =>
    visiting(
      async page => {
        await page.goto(here.site.address + path);
        // 200 % of the size of the letters of this site (WCAG 2.2, 1.4.4).
        await page.addStyleTag({ content: 'html { font-size: 212.5% !important; }' });
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
      },
      { ...phone, bypassCSP: true },
    ),
  );
});
