/**
 * Every kind of page at 320, 768 and 1280 px, light and dark, with scripts and without, at the root and below a base path: nothing fails,
 * nothing is fetched from elsewhere, no text lies over other text or is cut off, and axe-core finds nothing (WCAG 2.2 AA).
 */

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import { startBrowser } from './browser.ts';
import { builtSites } from './builtSites.ts';
import { layoutFaults } from './layoutFaults.ts';
import { examplesOfEveryKind } from './pageKinds.ts';
import { axeFindings, breaches, inTurns, keepBreaches, watch } from './visiting.ts';

const atOnce = 3;
const widths = [320, 768, 1280];
const height = 800;

let browser: Browser;
let site: ServedSite;
let below: ServedSite;
beforeAll(async () => {
  browser = await startBrowser();
  site = await serve(builtSites.atRoot.folder, builtSites.atRoot.base, 0);
  below = await serve(builtSites.belowBase.folder, builtSites.belowBase.base, 0);
});
afterAll(async () => {
  await browser.close();
  await site.stop();
  await below.stop();
});

const examples = examplesOfEveryKind(builtSites.atRoot.folder);

/** Filled in the browser: what a visitor sees after choosing. */
const filled = [
  { kind: 'comparison, filled', path: 'compare/?c=bellrope,wrenfoot,crow-parson,two-ditches' },
  { kind: 'search, answered', path: 'search/?q=fig' },
];

async function look(
  served: ServedSite,
  pages: readonly { kind: string; path: string }[],
  scripts: boolean,
  check: (page: Awaited<ReturnType<Browser['newPage']>>, say: (fault: string) => void) => Promise<void>,
): Promise<string[]> {
  const faults: string[] = [];
  const context = await browser.newContext({ javaScriptEnabled: scripts });
  await inTurns(pages, atOnce, async ({ kind, path }) => {
    const page = await context.newPage();
    const address = served.address + path;
    const { problems, expect: expected } = watch(page, served.address);
    if (path === '404.html') expected(address);
    await keepBreaches(page);
    await page.goto(address, { waitUntil: 'networkidle' });
    const say = (fault: string) => faults.push(`${kind} ${path}: ${fault}`);
    await check(page, say);
    for (const problem of [...problems, ...(await breaches(page))]) say(problem);
    await page.close();
  });
  await context.close();
  return faults;
}

describe.each([
  ['with scripts', true],
  ['without scripts', false],
])('every kind of page %s', (_, scripts) => {
  it('is laid out without fault at every width, in light and dark', async () => {
    const pages = scripts ? [...examples, ...filled] : examples;
    const faults = await look(site, pages, scripts, async (page, say) => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        for (const width of widths) {
          await page.setViewportSize({ width, height });
          for (const fault of await layoutFaults(page)) say(`${width} px, ${colorScheme}: ${fault}`);
        }
      }
    });
    expect(faults).toEqual([]);
  });
});

describe('below a base path', () => {
  it('every kind of page loads, and no link leads out of it', async () => {
    const faults = await look(below, examples, true, async (page, say) => {
      for (const fault of await layoutFaults(page)) say(fault);
      const astray = await page
        .locator('a[href^="/"]')
        .evaluateAll(
          (links, base) => links.map(link => link.getAttribute('href')!).filter(to => !to.startsWith(base)),
          '/orchard/',
        );
      for (const to of astray) say(`leads out of the base path: ${to}`);
    });
    expect(faults).toEqual([]);
  });
});

describe('accessibility (axe-core, WCAG 2.2 AA)', () => {
  it('has no finding on any kind of page, narrow and wide, light and dark', async () => {
    const faults = await look(site, [...examples, ...filled], true, async (page, say) => {
      // Everything in two of the four looks; in the others what may differ there, the colours.
      for (const [width, colorScheme, coloursOnly] of [
        [320, 'dark', false],
        [320, 'light', true],
        [1280, 'light', false],
        [1280, 'dark', true],
      ] as const) {
        await page.setViewportSize({ width, height });
        await page.emulateMedia({ colorScheme });
        for (const finding of await axeFindings(page, coloursOnly))
          say(`${width} px, ${colorScheme}: ${finding}`);
      }
    });
    expect(faults).toEqual([]);
  });
});

describe('the checks themselves', () => {
  const spoilt = async (spoil: string) => {
    const page = await browser.newPage({ viewport: { width: 320, height }, bypassCSP: true });
    await page.goto(`${site.address}stock/`);
    expect(await layoutFaults(page)).toEqual([]);
    await page.addStyleTag({ content: spoil });
    const found = (await layoutFaults(page)).join('\n');
    await page.close();
    return found;
  };

  it.each([
    ['lines on top of each other', '.stock .size { margin-top: -1.5rem }', /lies over/],
    ['a picture over a name', '.name > .fruit { left: 1rem; right: auto }', /lies over/],
    [
      'text cut off by its frame',
      '.name { max-width: 3rem; white-space: nowrap; overflow: hidden }',
      /cut off by <th/,
    ],
    [
      'text beyond the page',
      'h1 { white-space: nowrap; width: 60rem; text-align: right }',
      /beyond the page: "Stock list"/,
    ],
    ['a page that scrolls sideways', 'main { min-width: 400px }', /scrolls sideways/],
    ['a button too small for its words', 'button { width: 2rem }', /wider than its button/],
  ])('see %s', async (_, spoil, says) => {
    expect(await spoilt(spoil)).toMatch(says);
  });

  it('see grey words on white, and a request to elsewhere', async () => {
    const page = await browser.newPage();
    const { problems } = watch(page, site.address);
    await page.setContent(
      '<!doctype html><html lang="en"><title>t</title><main><p style="color:#bbb;background:#fff">Pale</p></main>',
    );
    expect((await axeFindings(page)).join()).toContain('color-contrast');
    await page.setContent('<img alt="" src="http://127.0.0.1:9/elsewhere.png">');
    await page.waitForLoadState('networkidle');
    expect(problems.join('\n')).toContain('elsewhere: http://127.0.0.1:9/elsewhere.png');
    await page.close();
  });
});
