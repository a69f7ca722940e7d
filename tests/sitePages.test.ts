/** The pages that the reading takes for granted against the routes of the site, for the demonstration yard. */

import { expect, test } from 'vitest';
import { assembled, loadContent, readContentFiles } from '../src/content.ts';
import { gather } from '../src/core/reading/gather.ts';
import { SitePages } from '../src/core/reading/sitePages.ts';
import { routesOf } from '../src/site/routes.ts';
import { siteForTests } from './siteForTests.ts';

const content = await loadContent({ dir: 'content' });
const { catalogue } = await assembled(content);
const { files, photos } = await readContentFiles('content');
const pages = new SitePages(gather(files, { asOf: content.asOf, photos }).draft);

/** Addresses of pages, without the one for what was not found and those that only send readers on. */
const addresses = [...routesOf(siteForTests(catalogue)).keys()]
  .filter(file => /(?:^|\/)index\.html$/.test(file) && !file.startsWith('go/'))
  .map(file => `/${file.replace(/index\.html$/, '')}`);

test('the reading knows every page', () => {
  expect(addresses.length).toBeGreaterThan(500);
  expect(addresses.filter(address => !pages.has(address))).toEqual([]);
});

test('and no others', () => {
  for (const address of [
    '/order/',
    '/cultivars/nobody/',
    '/lots/',
    '/guides/first-winter/nowhere/',
    '/stock/form/pot/',
  ])
    expect(pages.has(address), address).toBe(false);
});
