/** Opens pages as a visitor does and keeps what goes wrong while they load; axe-core over the open page. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** WCAG 2.2, levels A and AA, as axe-core tags its rules. */
const wcag22 = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/**
 * Collects what goes wrong on a page from now on: errors and warnings in the console, errors of scripts, breaches of the content policy,
 * requests that fail, are refused, or go to anyone but the site. `expected` names an address whose own answer may be an error.
 */
export function watch(page: Page, site: string): { problems: string[]; expect: (address: string) => void } {
  const problems: string[] = [];
  let expected = '';
  const { origin } = new URL(site);
  page.on('console', message => {
    if (['error', 'warning'].includes(message.type()) && !message.location().url.startsWith(expected || '\0'))
      problems.push(`console: ${message.text()}`);
  });
  page.on('pageerror', error => problems.push(`script: ${error.message}`));
  page.on('requestfailed', request => problems.push(`failed: ${request.url()}`));
  page.on('request', request => {
    if (!request.url().startsWith(origin) && !request.url().startsWith('data:'))
      problems.push(`elsewhere: ${request.url()}`);
  });
  page.on('response', response => {
    if (response.status() >= 400 && response.url() !== expected)
      problems.push(`${response.status()}: ${response.url()}`);
  });
  return {
    problems,
    expect: address => {
      expected = address;
    },
  };
}

/** Has every page opened from now on keep breaches of its content policy, for `breaches`. */
export async function keepBreaches(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const kept: string[] = [];
    Object.assign(window, { breaches: kept });
    document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
      kept.push(`policy: ${violatedDirective} ${blockedURI}`),
    );
  });
}

export function breaches(page: Page): Promise<string[]> {
  return page.evaluate(() => (window as unknown as { breaches?: string[] }).breaches ?? []);
}

/** Findings of axe-core on the open page; only rules that depend on colors where `colorsOnly`. */
export async function axeFindings(page: Page, colorsOnly = false): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource);
  return page.evaluate(
    async only => {
      const { axe } = window as unknown as {
        axe: {
          run: (options: object) => Promise<{ violations: { id: string; nodes: { html: string }[] }[] }>;
        };
      };
      const { violations } = await axe.run({ runOnly: only, resultTypes: ['violations'] });
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
    },
    colorsOnly
      ? { type: 'rule', values: ['color-contrast', 'link-in-text-block'] }
      : { type: 'tag', values: wcag22 },
  );
}

/** Runs a task for each item, so many at a time. */
export async function inTurns<T>(
  items: readonly T[],
  atOnce: number,
  task: (item: T) => Promise<void>,
): Promise<void> {
  const rest = [...items];
  const worker = async () => {
    for (let item = rest.shift(); item !== undefined; item = rest.shift()) await task(item);
  };
  await Promise.all(Array.from({ length: atOnce }, worker));
}
