/** Guides follow the chosen place, in a browser; without scripts every page stays as it was made. */

import { readFileSync } from 'node:fs';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { atSite } from './atSite.ts';
import { builtSites, filesOf, readText } from './builtSites.ts';

const { folder, base } = builtSites.belowBase;
const here = atSite({ folder, base });

/** Opens a page, at first with Seattle as the chosen place where scripts are on. */
async function visiting(
  then: (page: Page) => Promise<void>,
  options: BrowserContextOptions = {},
): Promise<void> {
  const context = await here.browser.newContext(options);
  try {
    const page = await context.newPage();
    if (options.javaScriptEnabled !== false) {
      await open(page, 'places/seattle-wa/');
      await page.click('[data-mine-set]');
    }
    await then(page);
  } finally {
    await context.close();
  }
}

const open = (page: Page, path: string) =>
  page.goto(`${here.site.address}${path}`, { waitUntil: 'networkidle' });
const line = (page: Page) => page.locator('[data-guide-line]');
/** A page of a lot that names the guide for the day a tree arrives. */
const lot = () =>
  filesOf(folder)
    .filter(path => /^lots\/[^/]+\/index\.html$/.test(path))
    .find(path => readText(folder, path).includes('class="arrives"'))!
    .replace('index.html', '');

describe('with a chosen place', () => {
  it('a guide in general leads to its version for the place, which says that it is the place’s', () =>
    visiting(async page => {
      await open(page, 'guides/waking-and-hardening/');
      expect(await line(page).textContent()).toMatch(/^For Seattle, .*: open this guide with your dates\.$/);
      await line(page).locator('a').click();
      await page.waitForURL(`**${base}guides/waking-and-hardening/seattle-wa/`);
      await expect.poll(() => line(page).textContent()).toMatch(/This is your place/);
    }));

  it('the version for another place says so and leads over', () =>
    visiting(async page => {
      await open(page, 'guides/overwintering-pot/miami-fl/');
      expect(await line(page).textContent()).toMatch(/^Your place is Seattle, /);
      expect(await line(page).locator('a').getAttribute('href')).toBe(
        `${base}guides/overwintering-pot/seattle-wa/`,
      );
      // The general guide can still be reached.
      expect(await page.locator('.crumbs a').last().getAttribute('href')).toBe(
        `${base}guides/overwintering-pot/`,
      );
    }));

  it('the list of guides, and the guide for a form, lead to the place’s', () =>
    visiting(async page => {
      await open(page, 'guides/');
      const links = await page
        .locator('.found a')
        .evaluateAll(all => all.map(one => one.getAttribute('href')!));
      expect(links.length).toBeGreaterThanOrEqual(8);
      expect(links.filter(to => !to.endsWith('/seattle-wa/'))).toEqual([]);
      await open(page, 'guides/first-48-hours/bare-root/fig/');
      expect(await line(page).locator('a').getAttribute('href')).toBe(
        `${base}guides/first-48-hours/seattle-wa/#bare-root`,
      );
    }));

  it('a lot leads straight to the part for its form, and back when the place is forgotten', () =>
    visiting(async page => {
      await open(page, lot());
      const arrives = page.locator('.arrives a');
      const links = await arrives.evaluateAll(all => all.map(one => one.getAttribute('href')!));
      for (const to of links)
        expect(to).toMatch(/\/first-48-hours\/seattle-wa\/#(?:leafed-pot|dormant-pot|bare-root)$/);
      await arrives.first().click();
      await page.waitForURL('**/first-48-hours/seattle-wa/#*');
      const part = new URL(page.url()).hash;
      expect(await page.locator(part).count()).toBe(1);
      await open(page, 'my-place/');
      await page.click('[data-forget]');
      await open(page, lot());
      const plain = await arrives.evaluateAll(all => all.map(one => one.getAttribute('href')!));
      for (const to of plain) expect(to).toMatch(/\/first-48-hours\/[a-z-]+\/[a-z-]+\/$/);
    }));

  it('the part of a tree about the chosen place leads to the care guides there', () =>
    visiting(async page => {
      await open(page, lot());
      const care = page.locator('[data-field="care"]');
      await expect.poll(() => care.getAttribute('href')).toBe(`${base}places/seattle-wa/#guides`);
      await care.click();
      await page.waitForURL('**/places/seattle-wa/#guides');
      expect(await page.locator('#guides').count()).toBe(1);
    }));

  it('another choice is followed without a reload', () =>
    visiting(async page => {
      await open(page, 'guides/pruning-and-sap/');
      const other = await page.context().newPage();
      await open(other, 'places/miami-fl/');
      await other.click('[data-mine-set]');
      await expect.poll(() => line(page).textContent()).toMatch(/^For Miami, /);
    }));
});

describe('with a town', () => {
  /** Chooses a town by a name that only one has. */
  async function choose(page: Page, name: string): Promise<void> {
    await open(page, 'my-place/');
    await page.fill('#zip', name);
    await page.click('[data-by-zip] button[type="submit"]');
    await expect.poll(() => page.locator('[data-here-name]').textContent()).toBe(name.split(',')[0]);
  }
  const heading = (page: Page) => page.locator('.guide-sheet h1 .kind').textContent();

  it('a guide is worked out for it: its dates, its calendar and the file of it; and the built one can be had', () =>
    visiting(async page => {
      const problems: string[] = [];
      page.on('pageerror', problem => problems.push(problem.message));
      await choose(page, 'Boone, North Carolina');
      await open(page, 'guides/overwintering-pot/');
      expect(await line(page).textContent()).toMatch(/^For Boone, .*: open this guide with your dates\.$/);
      await line(page).locator('a').click();
      await page.waitForURL(/guides\/overwintering-pot\/[a-z-]+\/$/);
      await expect.poll(() => heading(page)).toBe('Boone');
      expect(await line(page).textContent()).toMatch(/^Worked out on this device for Boone, North Carolina/);
      expect(await page.locator('#calendar').textContent()).toBe('Calendar for Boone');
      expect(await page.title()).toContain(': Boone');
      expect(await page.locator('#others').textContent()).toBe('Other guides for Boone');

      // What the page says to be done and what the calendar file says.
      const when = await page.locator('.guide-calendar [data-from]').first().getAttribute('data-from');
      const saved = page.waitForEvent('download');
      await page.locator('.guide-calendar a[type="text/calendar"]').first().click();
      const file = await saved;
      expect(file.suggestedFilename()).toBe('overwintering-pot-boone.ics');
      const text = readFileSync((await file.path())!, 'utf8');
      expect(text).toContain(`DTSTART;VALUE=DATE:${when!.replaceAll('-', '')}`);
      expect(text.replaceAll('\r\n ', '')).toMatch(/X-WR-CALNAME:|NAME:.*Boone/);

      const button = line(page).locator('button');
      await button.click();
      expect(await heading(page)).not.toBe('Boone');
      expect(
        await page.locator('.guide-calendar a[type="text/calendar"]').first().getAttribute('href'),
      ).toMatch(/\.ics$/);
      await button.click();
      await expect.poll(() => heading(page)).toBe('Boone');
      expect(problems).toEqual([]);
    }));

  it('the guide of the day a tree arrives has a calendar file for each form', () =>
    visiting(async page => {
      await choose(page, 'Boone, North Carolina');
      await open(page, 'guides/first-48-hours/');
      await line(page).locator('a').click();
      await expect.poll(() => heading(page)).toBe('Boone');
      const names = await page
        .locator('.guide-calendar a[type="text/calendar"]')
        .evaluateAll(all => all.map(one => (one as HTMLAnchorElement).download));
      expect(names).toEqual([
        'first-48-hours-leafed-pot-boone.ics',
        'first-48-hours-dormant-pot-boone.ics',
        'first-48-hours-bare-root-boone.ics',
      ]);
    }));

  it('the built guide stays, with what to bear in mind, where the parts of its own cannot be loaded', () =>
    visiting(async page => {
      await choose(page, 'Boone, North Carolina');
      await page.route('**/sheet.json', route => route.abort());
      await open(page, 'guides/overwintering-pot/');
      await line(page).locator('a').click();
      await expect.poll(() => line(page).textContent()).toMatch(/^The climate most like that of Boone/);
      expect(await heading(page)).not.toBe('Boone');
    }));
});

describe('without scripts', () => {
  it('the line leads to the places, and a lot to the guide for its form', () =>
    visiting(
      async page => {
        await open(page, 'guides/waking-and-hardening/');
        expect(await line(page).locator('a').getAttribute('href')).toBe('#places');
        await open(page, 'guides/waking-and-hardening/miami-fl/');
        expect(await line(page).textContent()).toMatch(/Not your place\? Choose another/);
        await open(page, lot());
        expect(await page.locator('.arrives a').first().getAttribute('href')).toMatch(
          /\/guides\/first-48-hours\/[a-z-]+\/[a-z-]+\/$/,
        );
      },
      { javaScriptEnabled: false },
    ));
});
