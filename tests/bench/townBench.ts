/** What a visitor waits for who takes one of the towns that were found, on a slow telephone: verdicts, climate and sending weeks in the page. */

import type { Page } from 'playwright-core';
import { type Waited, waited } from './paintWatch.ts';
import { benchVisits, openSlowed } from './slowVisits.ts';

/** Budget of this project. */
const budgetMs = 150;
/** Names that several towns share. */
const names = ['Springfield', 'Salem', 'Franklin', 'Clinton', 'Madison', 'Georgetown'];

/** Takes the second town of each name, so that none has been worked out before. The time a visitor takes to read the list is not counted. */
async function visit(page: Page, address: string, visitor: number): Promise<Waited[]> {
  await openSlowed(page, `${address}my-place/`, { results: '[data-chosen-trees]', events: ['click'] });
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

/** Prints how long visitors wait. Returns whether the middle wait is within the budget. */
export function benchTowns(
  folder: string,
  visitors: number,
  print: (line: string) => void,
): Promise<boolean> {
  return benchVisits({ what: 'town', budgetMs, visit }, { folder, visitors, print });
}
