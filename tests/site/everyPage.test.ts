/**
 * Every kind of page at 320, 768 and 1280 px, light and dark, with scripts and without, at the root and below a base path: nothing fails,
 * nothing is fetched from elsewhere, no text lies over other text or is cut off, and axe-core finds nothing (WCAG 2.2 AA).
 */

import type { Browser, Page } from 'playwright-core';
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

interface Findings {
  layout: string[];
  axe: string[];
}

/** Opens pages, each once for all that is looked at, and collects what is said of their layout and what axe-core finds. */
async function look(
  served: ServedSite,
  pages: readonly { kind: string; path: string }[],
  scripts: boolean,
  check: (page: Page, say: (fault: string, of?: keyof Findings) => void) => Promise<void>,
): Promise<Findings> {
  const findings: Findings = { layout: [], axe: [] };
  const context = await browser.newContext({ javaScriptEnabled: scripts });
  await inTurns(pages, atOnce, async ({ kind, path }) => {
    const page = await context.newPage();
    const address = served.address + path;
    const { problems, expect: expected } = watch(page, served.address);
    if (path === '404.html') expected(address);
    await keepBreaches(page);
    await page.goto(address, { waitUntil: 'networkidle' });
    const say = (fault: string, of: keyof Findings = 'layout') =>
      findings[of].push(`${kind} ${path}: ${fault}`);
    await check(page, say);
    for (const problem of [...problems, ...(await breaches(page))]) say(problem);
    await page.close();
  });
  await context.close();
  return findings;
}

/** What axe-core is asked for: everything in two of the four looks; in the others what may differ there, the colors. */
const axeLooks = [
  { width: 320, colorScheme: 'dark', colorsOnly: false },
  { width: 320, colorScheme: 'light', colorsOnly: true },
  { width: 1280, colorScheme: 'light', colorsOnly: false },
  { width: 1280, colorScheme: 'dark', colorsOnly: true },
] as const;

async function checkEveryLook(
  page: Page,
  say: (fault: string, of?: keyof Findings) => void,
  axe: boolean,
): Promise<void> {
  // Unfolded only by the first look at the layout, so axe-core sees the page as a visitor finds it.
  for (const { width, colorScheme, colorsOnly } of axe ? axeLooks : []) {
    await page.setViewportSize({ width, height });
    await page.emulateMedia({ colorScheme });
    for (const finding of await axeFindings(page, colorsOnly))
      say(`${width} px, ${colorScheme}: ${finding}`, 'axe');
  }
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    for (const width of widths) {
      await page.setViewportSize({ width, height });
      for (const fault of await layoutFaults(page)) say(`${width} px, ${colorScheme}: ${fault}`);
    }
  }
}

describe('every kind of page', () => {
  let found: Findings;
  beforeAll(async () => {
    found = await look(site, [...examples, ...filled], true, (page, say) => checkEveryLook(page, say, true));
  });

  it('is laid out without fault at every width, in light and dark', () => {
    expect(found.layout).toEqual([]);
  });

  it('has no finding of axe-core (WCAG 2.2 AA), narrow and wide, light and dark', () => {
    expect(found.axe).toEqual([]);
  });
});

describe('every kind of page without scripts', () => {
  it('is laid out without fault at every width, in light and dark', async () => {
    const { layout } = await look(site, examples, false, (page, say) => checkEveryLook(page, say, false));
    expect(layout).toEqual([]);
  });
});

describe('below a base path', () => {
  it('every kind of page loads, and no link leads out of it', async () => {
    const { layout } = await look(below, examples, true, async (page, say) => {
      for (const fault of await layoutFaults(page)) say(fault);
      const astray = await page.locator('a[href]').evaluateAll(
        (links, base) =>
          links
            .map(link => new URL(link.getAttribute('href')!, location.href))
            // A file that a page made for saving has an address of its own kind, blob:.
            .filter(({ protocol, origin }) => protocol.startsWith('http') && origin === location.origin)
            .filter(({ pathname }) => !pathname.startsWith(base))
            .map(({ pathname }) => pathname),
        '/orchard/',
      );
      for (const to of astray) say(`leads out of the base path: ${to}`);
    });
    expect(layout).toEqual([]);
  });
});

describe('the checks themselves', () => {
  const spoilt = async (spoil: string, path: string) => {
    const page = await browser.newPage({ viewport: { width: 320, height }, bypassCSP: true });
    await page.goto(site.address + path);
    expect(await layoutFaults(page)).toEqual([]);
    await page.addStyleTag({ content: spoil });
    const found = (await layoutFaults(page)).join('\n');
    await page.close();
    return found;
  };

  it.each<[string, string, RegExp, string?]>([
    ['lines on top of each other', '.lots th > span { display: block; margin-top: -1.25rem }', /lies over/],
    [
      'a picture over a name',
      '.of > .mark { position: absolute } .lots-of .of > :is(h3, p) { margin-left: 0 }',
      /lies over/,
    ],
    [
      'text cut off by its frame',
      '.lots th { white-space: nowrap; overflow: hidden; display: block; max-width: 3rem }',
      /cut off by <th/,
    ],
    [
      'text beyond the page',
      'h1 { white-space: nowrap; width: 60rem; text-align: right }',
      /beyond the page: "Stock list"/,
    ],
    ['a page that scrolls sideways', 'main { min-width: 400px }', /scrolls sideways/],
    [
      'a button too small for its words',
      'button { width: 2rem; min-width: 0; white-space: nowrap }',
      /wider than its button/,
      'my-place/',
    ],
  ])('see %s', async (_, spoil, says, path = 'stock/') => {
    expect(await spoilt(spoil, path)).toMatch(says);
  });

  it('see gray words on white, and a request to elsewhere', async () => {
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
