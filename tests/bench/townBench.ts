/** What a visitor waits for who takes one of the towns that were found, on a slow telephone: verdicts, climate and sending weeks in the page. */

import type { Page } from 'playwright-core';
import { startBrowser } from '../site/browser.ts';
import { median } from './measure.ts';
import { type Waited, waited, watchPaints } from './paintWatch.ts';
import { host } from './staticHost.ts';

/** Budget of this project. */
const budgetMs = 150;
/** A telephone of the middle range is about so many times slower than this kind of machine: the figure Lighthouse slows by. */
const slowedTimes = 4;
/** Names that several towns share. */
const names = ['Springfield', 'Salem', 'Franklin', 'Clinton', 'Madison', 'Georgetown'];

/** Takes the second town of each name, so that none has been worked out before. The time a visitor takes to read the list is not counted. */
async function visit(page: Page, address: string, visitor: number): Promise<Waited[]> {
  await page.goto(`${address}my-place/`, { waitUntil: 'networkidle' });
  await watchPaints(page, { results: '[data-chosen-trees]', events: ['click'] });
  const control = await page.context().newCDPSession(page);
  await control.send('Emulation.setCPUThrottlingRate', { rate: slowedTimes });
  const found: Waited[] = [];
  for (let at = 0; at < names.length; at += 1) {
    await page.fill('#zip', names[(at + visitor) % names.length]!);
    await page.locator('[data-by-zip]').evaluate(form => (form as HTMLFormElement).requestSubmit());
    const second = page.locator('[data-town-found] button').nth(1);
    await second.waitFor();
    await page.waitForTimeout(2000);
    const take = () => second.evaluate(button => (button as HTMLButtonElement).click());
    found.push(await waited(page, names[at]!, take));
  }
  return found;
}

/** Prints the middle and the worst wait of a visitor's first town and of later ones. Returns whether the middle of both is within the budget. */
export async function benchTowns(
  folder: string,
  visitors: number,
  print: (line: string) => void,
): Promise<boolean> {
  const site = await host(folder);
  const browser = await startBrowser();
  const visits: Waited[][] = [];
  try {
    for (let visitor = 0; visitor < visitors; visitor += 1) {
      const context = await browser.newContext({ viewport: { width: 412, height: 823 } });
      visits.push(await visit(await context.newPage(), site.address, visitor));
      await context.close();
    }
  } finally {
    await browser.close();
    site.stop();
  }
  const kinds = [
    { name: 'first town', waits: visits.map(([first]) => first!.writtenMs) },
    { name: 'later towns', waits: visits.flatMap(([, ...later]) => later.map(({ writtenMs }) => writtenMs)) },
  ];
  for (const { name, waits } of kinds) {
    print(
      `${name}, slowed ${slowedTimes} times: in the page after ${median(waits).toFixed(0)} ms in the middle, ${Math.max(...waits).toFixed(0)} ms at worst; ${waits.filter(ms => ms > budgetMs).length} of ${waits.length} over ${budgetMs} ms`,
    );
  }
  return kinds.every(({ waits }) => median(waits) <= budgetMs);
}
