/** A browser and a built site that is served to it, from before the tests of a file, or of a part of it, until after them. */

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import { startBrowser } from './browser.ts';

export interface AtSite {
  browser: Browser;
  site: ServedSite;
}

/** Called where tests are described; what it returns is filled in before they run. */
export function atSite({ folder, base }: { folder: string; base: string }): AtSite {
  const at = {} as AtSite;
  beforeAll(async () => {
    at.browser = await startBrowser();
    at.site = await serve(folder, base, 0);
  });
  afterAll(async () => {
    await at.browser.close();
    await at.site.stop();
  });
  return at;
}
