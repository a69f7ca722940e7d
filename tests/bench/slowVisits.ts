/** Visits of one page on a slow telephone, one visitor after the other, and what was waited for in them. */

import type { Page } from 'playwright-core';
import { startBrowser } from '../site/browser.ts';
import { median } from './measure.ts';
import { type Waited, type Watch, watchPaints } from './paintWatch.ts';
import { host } from './staticHost.ts';

/** A telephone of the middle range is about so many times slower than this kind of machine: the figure Lighthouse slows by. */
const slowedTimes = 4;

/** Opens a page, and slows it from then on. */
export async function openSlowed(page: Page, address: string, watched: Watch): Promise<void> {
  await page.goto(address, { waitUntil: 'networkidle' });
  await watchPaints(page, watched);
  const control = await page.context().newCDPSession(page);
  await control.send('Emulation.setCPUThrottlingRate', { rate: slowedTimes });
}

export interface VisitBench {
  /** What is waited for: `town`. */
  what: string;
  /** Most that the middle wait may be, ms, until the answer is in the page. */
  budgetMs: number;
  /** Everything a visitor waits for, in order; visitors are numbered from 0. */
  visit: (page: Page, address: string, visitor: number) => Promise<Waited[]>;
}

/**
 * Prints the middle and the worst wait of a visitor's first answer and of later ones. Returns whether the middle of both is within the budget.
 */
export async function benchVisits(
  { what, budgetMs, visit }: VisitBench,
  { folder, visitors, print }: { folder: string; visitors: number; print: (line: string) => void },
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
    { name: 'first answer', waits: visits.map(([first]) => first!) },
    { name: 'later answers', waits: visits.flatMap(([, ...later]) => later) },
  ];
  const inWords = (ms: number[]) =>
    `${median(ms).toFixed(0)} ms in the middle, ${Math.max(...ms).toFixed(0)} ms at worst`;
  for (const { name, waits } of kinds) {
    const written = waits.map(({ writtenMs }) => writtenMs);
    const over = written.filter(ms => ms > budgetMs).length;
    print(
      `${what}, slowed ${slowedTimes} times, ${name}: in the page after ${inWords(written)}, ${over} of ${waits.length} over ${budgetMs} ms; on the screen after ${inWords(waits.map(({ ms }) => ms))}`,
    );
  }
  return kinds.every(({ waits }) => median(waits.map(({ writtenMs }) => writtenMs)) <= budgetMs);
}
