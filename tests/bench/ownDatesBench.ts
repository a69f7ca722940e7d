/** What a visitor waits for who gives his own freeze dates and coldest night, on a slow telephone: from sending the form to the trees being named in the page, and to their being on the screen. */

import type { Page } from 'playwright-core';
import { randomFromText } from '../../src/core/random.ts';
import { type Waited, waited } from './paintWatch.ts';
import { benchVisits, openSlowed } from './slowVisits.ts';

/** Budget of this project, for the answer to be in the page; laying it out and painting it is told beside it. */
const budgetMs = 50;
const answersAVisit = 6;
/** Places whose year dates of April and October and a night of 0 to 11 F can be laid over. */
const places = ['asheville-nc', 'philadelphia-pa', 'lexington-ky', 'richmond-va'];

async function fillIn(
  page: Page,
  { last, first, coldestF }: { last: number; first: number; coldestF: number },
) {
  await page.fill('#last-day', String(last));
  await page.selectOption('#last-month', '04');
  await page.fill('#first-day', String(first));
  await page.selectOption('#first-month', '10');
  await page.fill('#coldest', String(coldestF));
  await page.selectOption('#coldest-unit', 'F');
}

/** Dates of chance, one after the other, each over the year of one place. The time a visitor takes to fill in the form is not counted. */
async function visit(page: Page, address: string, visitor: number): Promise<Waited[]> {
  const random = randomFromText(`own dates ${visitor}`);
  const upTo = (most: number) => Math.floor(random.uniform() * most);
  await openSlowed(page, `${address}my-place/`, { results: '[data-chosen-trees]', events: ['submit'] });
  const place = places[visitor % places.length]!;
  await page.selectOption('#base-place', place);
  const found: Waited[] = [];
  for (let at = 0; at < answersAVisit; at += 1) {
    await fillIn(page, { last: 1 + upTo(28), first: 1 + upTo(28), coldestF: upTo(12) });
    // Nobody types a form as fast as this program does.
    await page.waitForTimeout(at === 0 ? 3000 : 500);
    const submit = () =>
      page.locator('[data-by-dates]').evaluate(form => (form as HTMLFormElement).requestSubmit());
    const answer = await waited(page, `dates over ${place}`, submit).catch(async problem => {
      throw new Error(`${problem.message}; ${await page.locator('[data-dates-problem]').textContent()}`);
    });
    found.push(answer);
  }
  return found;
}

/** Prints how long visitors wait. Returns whether the middle wait is within the budget. */
export function benchOwnDates(
  folder: string,
  visitors: number,
  print: (line: string) => void,
): Promise<boolean> {
  return benchVisits({ what: 'own dates', budgetMs, visit }, { folder, visitors, print });
}
