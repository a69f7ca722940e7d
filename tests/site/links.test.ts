/** Every link and fragment of the built site leads somewhere on it. Checked with linkinator, without the network. */

import { LinkChecker, LinkState } from 'linkinator';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import { builtSites, pagesOf, readText } from './builtSites.ts';

describe.each(Object.entries(builtSites))('links of the site %s', (_, { folder, base }) => {
  let site: ServedSite;
  beforeAll(async () => {
    site = await serve(folder, base, 0);
  });
  afterAll(() => site.stop());

  it('all lead to a page or a named part of one', async () => {
    const origin = new URL(site.address).origin;
    const { links } = await new LinkChecker().check({
      path: site.address,
      recurse: true,
      checkFragments: true,
      checkCss: true,
      concurrency: 8,
      linksToSkip: async link => !link.startsWith(origin),
    });
    const broken = links
      .filter(({ state }) => state === LinkState.BROKEN)
      .map(({ url, parent }) => `${parent} -> ${url}`);
    expect(broken).toEqual([]);
    const followed = links.filter(({ state }) => state === LinkState.OK).length;
    expect(followed).toBeGreaterThan(pagesOf(folder).length);
  });

  it('stay below the base path and never hold a double slash', () => {
    const wrong = pagesOf(folder).flatMap(page =>
      [...readText(folder, page).matchAll(/\s(?:href|src|action)="(\/[^"]*)"/g)]
        .map(([, target]) => target!)
        .filter(target => !target.startsWith(base) || target.includes('//'))
        .map(target => `${page}: ${target}`),
    );
    expect(wrong).toEqual([]);
  });
});
