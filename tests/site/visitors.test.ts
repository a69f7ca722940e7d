/**
 * Visitors with needs of their own: text twice as large, forced colors, less motion, no storage, a keyboard and nothing else, paper.
 */

import type { BrowserContextOptions, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { levels } from '../../src/core/match/answers.ts';
import { levelWords } from '../../src/core/match/words.ts';
import { atSite } from './atSite.ts';
import { builtSites, pagesOf, readText } from './builtSites.ts';
import { layoutFaults } from './layoutFaults.ts';
import { examplesOfEveryKind } from './pageKinds.ts';
import { axeFindings, inTurns, watch } from './visiting.ts';

const { folder, base } = builtSites.atRoot;
const anyLevel = new RegExp(`^(?:${levels.map(level => levelWords[level]).join('|')})$`);
const atOnce = 3;

const here = atSite({ folder, base });

const examples = examplesOfEveryKind(folder);

/** Opens every kind of page in one way and returns all that is said about them. */
async function onEveryKind(
  options: BrowserContextOptions,
  check: (page: Page, say: (fault: string) => void) => Promise<void>,
  beforeScripts: () => void = () => {},
): Promise<string[]> {
  const faults: string[] = [];
  const context = await here.browser.newContext(options);
  await context.addInitScript(beforeScripts);
  await inTurns(examples, atOnce, async ({ kind, path }) => {
    const page = await context.newPage();
    const address = here.site.address + path;
    const { problems, expect: expected } = watch(page, here.site.address);
    if (path === '404.html') expected(address);
    const say = (fault: string) => faults.push(`${kind} ${path}: ${fault}`);
    await page.goto(address, { waitUntil: 'networkidle' });
    await check(page, say);
    problems.forEach(say);
    await page.close();
  });
  await context.close();
  return faults;
}

describe('text of twice the size (WCAG 2.2, 1.4.4)', () => {
  /** What browsers call the standard size is 16 px. */
  const doubled = { standard: 32, fixed: 26 };

  it('is laid out without fault on every kind of page, wide and half as wide', async () => {
    const sizes = new Set<number>();
    const faults = await onEveryKind({}, async (page, say) => {
      const control = await page.context().newCDPSession(page);
      await control.send('Page.setFontSizes', { fontSizes: doubled });
      for (const width of [1280, 640]) {
        await page.setViewportSize({ width, height: 800 });
        sizes.add(await page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize)));
        for (const fault of await layoutFaults(page)) say(`${width} px: ${fault}`);
      }
    });
    // The text of the site is 1.0625 times what the visitor asks for.
    expect([...sizes]).toEqual([34]);
    expect(faults).toEqual([]);
  });
});

describe('letters of the device, where ours do not come in time', () => {
  it('are laid out without fault on every kind of page, at 320 px', async () => {
    const families = new Set<string>();
    const faults = await onEveryKind({ viewport: { width: 320, height: 800 } }, async (page, say) => {
      families.add(
        await page.evaluate(() => {
          const { style } = document.documentElement;
          const asked = getComputedStyle(document.documentElement);
          for (const family of ['--serif', '--sans'])
            style.setProperty(family, asked.getPropertyValue(family).replace(/^[^,]+,/, ''));
          // The panel of the place lies over the page when it is open, and is meant to.
          for (const details of document.querySelectorAll<HTMLDetailsElement>('main details'))
            details.open = true;
          return getComputedStyle(document.body).fontFamily;
        }),
      );
      for (const fault of await layoutFaults(page)) say(fault);
    });
    expect([...families]).toEqual(['"Catalogue Sans stand-in", system-ui, sans-serif']);
    expect(faults).toEqual([]);
  });
});

/** Marks of readiness and of verdicts that would not be seen: neither a border nor a filling. */
function blankMarks(page: Page): Promise<string[]> {
  return page.locator('.state, .level').evaluateAll(marks =>
    marks
      .filter(mark => mark.checkVisibility())
      .filter(mark => {
        const { borderTopWidth, backgroundColor, backgroundImage } = getComputedStyle(mark, '::before');
        const filled = backgroundImage !== 'none' || !/, 0\)$/.test(backgroundColor);
        return Number.parseFloat(borderTopWidth) === 0 && !filled;
      })
      .map(mark => mark.textContent ?? ''),
  );
}

function movingParts(page: Page): Promise<number> {
  return page.evaluate(
    () =>
      document.getAnimations().length +
      [...document.querySelectorAll('*')].filter(element => {
        const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element);
        return transitionDuration !== '0s' || animationName !== 'none' || scrollBehavior === 'smooth';
      }).length,
  );
}

describe('forced colors, less motion, and a browser that keeps nothing', () => {
  it('leave every kind of page whole: marks are seen, nothing moves, no script fails', async () => {
    const faults = await onEveryKind(
      { forcedColors: 'active', reducedMotion: 'reduce' },
      async (page, say) => {
        for (const text of await blankMarks(page)) say(`no mark before "${text}"`);
        const moving = await movingParts(page);
        if (moving > 0) say(`${moving} parts move`);
        for (const fault of await layoutFaults(page)) say(fault);
        if (await page.evaluate(() => 'kept' in window)) say('storage is there after all');
      },
      () => {
        for (const name of ['localStorage', 'sessionStorage', 'indexedDB']) {
          Object.defineProperty(window, name, {
            get() {
              throw new DOMException('The operation is insecure.', 'SecurityError');
            },
          });
        }
        try {
          Object.assign(window, { kept: window.localStorage.length });
        } catch {
          // As it should be.
        }
      },
    );
    expect(faults).toEqual([]);
  });

  it.each(['', 'stock/', 'places/minneapolis-mn/'])(
    'leave no finding on "%s" in forced colors',
    async path => {
      const page = await here.browser.newPage({ forcedColors: 'active' });
      await page.goto(here.site.address + path);
      expect(await axeFindings(page, true)).toEqual([]);
      await page.close();
    },
  );
});

describe('a keyboard alone', () => {
  const focused = (page: Page) =>
    page.evaluate(() => {
      const { activeElement: at } = document;
      return at === null ? '' : (at.getAttribute('name') ?? at.id) || (at.textContent ?? '').trim();
    });
  const open = async (path: string, width = 1280) => {
    const page = await here.browser.newPage({ viewport: { width, height: 800 } });
    await page.goto(here.site.address + path, { waitUntil: 'networkidle' });
    return page;
  };
  /** Presses Tab until the focus is on what is looked for; fails after so many. */
  const tabTo = async (page: Page, selector: string) => {
    for (let press = 0; press < 60; press += 1) {
      await page.keyboard.press('Tab');
      if (await page.evaluate(looked => document.activeElement?.matches(looked) ?? false, selector)) return;
    }
    throw new Error(`Tab does not reach ${selector}`);
  };

  it('comes first to the way past the head, which shows itself and leads to the content', async () => {
    const page = await open('stock/');
    const skip = page.locator('.skip');
    const left = async () => (await skip.boundingBox())!.x;
    expect(await left()).toBeLessThan(0);
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe('Skip to the content');
    expect(await left()).toBeGreaterThanOrEqual(0);
    await page.keyboard.press('Enter');
    expect(await focused(page)).toBe('main');
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.closest('main') !== null)).toBe(true);
    await page.close();
  });

  it('shows where it is, on every stop of a list', async () => {
    const page = await open('stock/', 320);
    for (let press = 0; press < 30; press += 1) {
      await page.keyboard.press('Tab');
      const { style, width, text } = await page.evaluate(() => {
        const { outlineStyle, outlineWidth } = getComputedStyle(document.activeElement!);
        return {
          style: outlineStyle,
          width: Number.parseFloat(outlineWidth),
          text: document.activeElement!.textContent,
        };
      });
      expect(style, text ?? '').toBe('solid');
      expect(width, text ?? '').toBeGreaterThanOrEqual(2);
    }
    await page.close();
  });

  it('searches from any page', async () => {
    const page = await open('guides/');
    await tabTo(page, '.seek input');
    await page.keyboard.type('persimmon');
    await page.keyboard.press('Enter');
    await page.waitForURL(/\/search\/\?q=persimmon/);
    await page.close();
  });

  it('chooses a place, and lists speak for it', async () => {
    const page = await open('stock/');
    // Before its script is there the form leads to the page where a place is chosen.
    await page.waitForLoadState('networkidle');
    await tabTo(page, '.here summary');
    await page.keyboard.press('Enter');
    await tabTo(page, '#here-place');
    await page.keyboard.type('28801');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.locator('[data-mine]').first().textContent()).toMatch(anyLevel);
    await page.close();
  });

  it('compares cultivars and takes one out again', async () => {
    const page = await open('compare/');
    for (const letter of ['B', 'C']) {
      if (letter === 'B') await tabTo(page, 'form[data-compare] select');
      else await page.locator('form[data-compare] select').focus();
      await page.keyboard.type(letter);
      await tabTo(page, 'form[data-compare] button');
      await page.keyboard.press('Enter');
    }
    const plates = page.locator('[data-compare-table] svg.plate');
    await expect.poll(() => plates.count()).toBe(2);
    await tabTo(page, '[data-compare-table] button');
    await page.keyboard.press('Enter');
    await expect.poll(() => plates.count()).toBe(1);
    await page.close();
  });
});

describe('paper', () => {
  const sidesOf = (pdf: Buffer) => pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;

  it('takes the lots with most to say, and one of each kind, on one side of A4 and of Letter', async () => {
    const lots = pagesOf(folder).filter(path => path.startsWith('lots/'));
    const longest = lots.sort((a, b) => readText(folder, b).length - readText(folder, a).length).slice(0, 6);
    const paths = new Set([
      ...longest.map(file => file.replace(/index\.html$/, '')),
      ...examples.filter(({ kind }) => kind === 'lot').map(({ path }) => path),
    ]);
    const sides: unknown[] = [];
    const page = await here.browser.newPage();
    for (const path of paths) {
      await page.goto(here.site.address + path);
      for (const format of ['A4', 'Letter'] as const)
        sides.push([path, format, sidesOf(await page.pdf({ format }))]);
    }
    await page.close();
    expect(sides).toEqual(
      [...paths].flatMap(path => [
        [path, 'A4', 1],
        [path, 'Letter', 1],
      ]),
    );
  });

  it.each(examples.filter(({ kind }) => ['lot', 'place', 'guide', 'guide for a place'].includes(kind)))(
    'shows the words of $path without fault, black on white',
    async ({ path }) => {
      // A4 less its margins, at 96 px an inch; guides are printed on the broad side.
      const width = path.startsWith('guides/') ? 1060 : 703;
      const page = await here.browser.newPage({ viewport: { width, height: 1000 }, colorScheme: 'dark' });
      await page.goto(here.site.address + path);
      await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      expect(await layoutFaults(page)).toEqual([]);
      const [ink, paper] = await page.evaluate(() => {
        const { color } = getComputedStyle(document.body);
        return [color, getComputedStyle(document.documentElement).backgroundColor];
      });
      expect([ink, paper]).toEqual(['rgb(0, 0, 0)', 'rgb(255, 255, 255)']);
      expect(await page.locator('h1').isVisible()).toBe(true);
      expect(await page.locator('.skip, .seek, .here, .contents ul').locator('visible=true').count()).toBe(0);
      await page.close();
    },
  );
});
