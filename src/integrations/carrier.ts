/** The process that takes unchanged pages into a new site, and writes what sends readers on to them from their short addresses. */

import { siteLinks } from '../outputs/siteLinks.ts';
import { writeRedirect } from './addressList.ts';
import type { CarryOrder, FromCarrier } from './carryOver.ts';
import { takeOver } from './publishedPages.ts';

function carry({ out, built, address, base, files, redirects }: CarryOrder): void {
  for (const file of files) takeOver(out, built, file);
  const links = siteLinks(address, base);
  for (const redirect of redirects) writeRedirect(built, redirect, links);
}

function answer(message: FromCarrier): void {
  process.send?.(message, () => process.disconnect());
}

process.on('message', (order: CarryOrder) => {
  try {
    carry(order);
    answer({ done: true });
  } catch (problem) {
    answer({ problem: problem instanceof Error ? problem.message : String(problem) });
  }
});
// A build that is killed takes its carrier with it.
process.on('disconnect', () => process.exit());
