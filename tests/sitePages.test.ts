/** The pages that the reading takes for granted against the routes of the site. */

import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { gather } from '../src/core/reading/gather.ts';
import { SitePages } from '../src/core/reading/sitePages.ts';
import { loadYard } from './yards/loadYard.ts';

const routes = readdirSync(resolve(import.meta.dirname, '../src/pages'), {
  recursive: true,
  withFileTypes: true,
})
  .filter(entry => entry.isFile() && entry.name.endsWith('.astro'))
  .map(({ parentPath, name }) => `/${join(parentPath, name).split('/src/pages/')[1]}`)
  // The page of what was not found, and one for whoever works on the styles.
  .filter(route => !/^\/(?:404|style)/.test(route));

const yard = loadYard('base');
const pages = new SitePages(gather(yard.files, yard).draft);

/** Something for each name in brackets, by where it stands. */
const examples: readonly (readonly [RegExp, string])[] = [
  [/\/\[\.\.\.page\]/, ''],
  [/\/cultivars\/\[id\]/, '/cultivars/inkpot'],
  [/\/lots\/\[id\]/, '/lots/bellwether-2601'],
  [/\/guides\/\[id\]/, '/guides/first-winter'],
  [/\/videos\/\[id\]/, '/videos/layering'],
  [/\/places\/\[id\]/, '/places/lexington-ky'],
  [/\/\[place\]/, '/lexington-ky'],
  [/\/\[form\]/, '/leafed-pot'],
  [/\/\[species\]/, '/fig'],
  [/flavour\/\[id\]/, 'flavour/toffee'],
  [/ripening\/\[id\]/, 'ripening/late'],
];

test.each(routes)('the reading knows %s', route => {
  const filled = examples.reduce((path, [name, example]) => path.replace(name, example), route);
  const address = `${filled.replace(/(?:\/index)?\.astro$/, '')}/`.replace('//', '/');
  expect(pages.has(address), address).toBe(true);
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
