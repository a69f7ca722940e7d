/** What a visitor waits for on the search page of a large yard, in the browser: from a letter typed or a choice ticked to the list being shown. */

import type { Page } from 'playwright-core';
import { randomFromText } from '../../src/core/random.ts';
import { searchGroups } from '../../src/site/pages/search/searchTerms.ts';
import { startBrowser } from '../site/browser.ts';
import { median } from './measure.ts';
import { restMs, type Waited, waited, watchPaints } from './paintWatch.ts';
import { host } from './staticHost.ts';

/** Budget of this project: from the letter or tick to the list, once the page and its index are loaded. */
const budgetMs = 100;
/** A place of the visitor's own, so that every row has its verdict. */
async function choosePlace(page: Page, address: string): Promise<void> {
  await page.goto(`${address}my-place/`, { waitUntil: 'networkidle' });
  await page.fill('#zip', '28801');
  await page.click('[data-by-zip] button[type="submit"]');
  await page.waitForFunction(() => document.querySelector('[data-chosen-status]')?.textContent !== '');
}

/** Types the last letter of words and ticks boxes, in an order of chance; what comes before each is not counted. */
async function visit(
  page: Page,
  address: string,
  { placed, rate }: { placed: boolean; rate: number },
): Promise<Waited[]> {
  const random = randomFromText('visitor');
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random.uniform() * from.length)]!;
  await page.goto(`${address}search/`, { waitUntil: 'networkidle' });
  await watchPaints(page, { results: '[data-search-results]', events: ['input', 'change'] });
  const control = await page.context().newCDPSession(page);
  await control.send('Emulation.setCPUThrottlingRate', { rate });
  const box = page.locator('#seek');
  await box.focus();
  // Loaded when it has answered once.
  await waited(page, 'first', () => box.pressSequentially('m'));
  const found: Waited[] = [];
  const words = [
    'measured',
    'tree 12',
    'fig',
    'mulberry',
    'red',
    'late ripening',
    'bare-root',
    'lot m00321',
    'xylophone',
  ];
  for (const word of words) {
    await box.fill('');
    await page.waitForTimeout(restMs);
    await box.fill(word.slice(0, -1));
    await page.waitForTimeout(restMs);
    found.push(await waited(page, `typed "${word}"`, () => box.press(word.slice(-1))));
  }
  await waited(page, 'emptied', () => box.fill('tree'));
  for (let tick = 0; tick < 12; tick += 1) {
    // Verdicts can be ticked when a place is chosen.
    const group = pick(searchGroups.filter(each => placed || each !== 'place'));
    const boxes = page.locator(`[data-group="${group}"] input`);
    const at = Math.floor(random.uniform() * (await boxes.count()));
    const tickBox = () => boxes.nth(at).evaluate(input => (input as HTMLInputElement).click());
    found.push(await waited(page, `ticked ${group} ${at + 1}`, tickBox));
    // One tick in three stays, so that later ones find less.
    if (tick % 3 !== 0) await waited(page, 'unticked', tickBox);
  }
  for (const order of ['price', 'ripening', 'readiness']) {
    found.push(await waited(page, `in order of ${order}`, () => page.selectOption('#order', order)));
  }
  return found;
}

/** Prints the middle and the worst of all waits, at full speed and at a quarter of it. Returns whether all at full speed are within the budget. */
export async function benchSearch(
  folder: string,
  repeats: number,
  print: (line: string) => void,
): Promise<boolean> {
  const site = await host(folder);
  const browser = await startBrowser();
  let within = true;
  try {
    for (const placed of [false, true]) {
      for (const rate of [1, 4]) {
        const all: Waited[] = [];
        for (let run = 0; run < repeats; run += 1) {
          const context = await browser.newContext({ viewport: { width: 412, height: 823 } });
          const page = await context.newPage();
          if (placed) await choosePlace(page, site.address);
          all.push(...(await visit(page, site.address, { placed, rate })));
          await context.close();
        }
        const worst = all.reduce((slow, each) => (each.ms > slow.ms ? each : slow));
        const late = all.filter(({ ms }) => ms > budgetMs).length;
        const speed = rate === 1 ? 'at full speed' : `slowed ${rate} times`;
        print(
          `search, ${placed ? 'with a place chosen' : 'no place chosen'}, ${speed}: ${median(all.map(({ ms }) => ms)).toFixed(0)} ms in the middle, ${worst.ms.toFixed(0)} ms at worst (${worst.what}); ${late} of ${all.length} over ${budgetMs} ms`,
        );
        // The budget is for a machine at its own speed; what a slow telephone makes of it is told beside it.
        if (rate === 1) within &&= late === 0;
      }
    }
  } finally {
    await browser.close();
    site.stop();
  }
  return within;
}
