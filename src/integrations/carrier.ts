/** The process that takes unchanged pages into a new site, and writes what sends readers on to them from their short addresses. */

import { setImmediate as turnOfEvents } from 'node:timers/promises';
import { siteLinks } from '../outputs/siteLinks.ts';
import { writeRedirect } from './addressList.ts';
import type { CarryOrder, FromCarrier } from './carryOver.ts';
import { takeOver } from './publishedPages.ts';

/** Files taken before it is looked whether the build still runs. */
const filesBetweenLooks = 50;

async function carry({ out, built, address, base, files, redirects }: CarryOrder): Promise<void> {
  const links = siteLinks(address, base);
  const jobs = [
    ...files.map(file => () => takeOver(out, built, file)),
    ...redirects.map(redirect => () => writeRedirect(built, redirect, links)),
  ];
  for (const [index, job] of jobs.entries()) {
    job();
    if (index % filesBetweenLooks === 0) await turnOfEvents();
  }
}

function answer(message: FromCarrier): void {
  process.send?.(message, () => process.disconnect());
}

process.on('message', (order: CarryOrder) => {
  carry(order).then(
    () => answer({ done: true }),
    problem => answer({ problem: problem instanceof Error ? problem.message : String(problem) }),
  );
});
// A build that is killed takes its carrier with it.
process.on('disconnect', () => process.exit());
