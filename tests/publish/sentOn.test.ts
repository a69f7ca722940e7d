/** The pages that send readers on, in a browser and from a host that only serves files. */

import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { redirectPage } from '../../src/outputs/redirects.ts';
import { siteLinks } from '../../src/outputs/siteLinks.ts';
import { startBrowser } from '../site/browser.ts';

const links = siteLinks('https://yard.example', '/orchard/');
const pages: Record<string, string> = {
  '/orchard/guides/old/': redirectPage({ from: '/guides/old/', to: '/guides/new/' }, links),
  '/orchard/go/3467/': redirectPage({ from: '/go/3467/', to: '/guides/new/#the-store' }, links),
  '/orchard/guides/new/':
    '<!doctype html><title>New</title><p style="height:3000px">Top</p><h2 id="the-store">Store</h2><h2 id="lifting">Lifting</h2>',
};
let server: Server;
let browser: Browser;
let site: string;
beforeAll(async () => {
  server = createServer((request, response) => {
    const page = pages[request.url ?? ''];
    response.writeHead(page === undefined ? 404 : 200, { 'content-type': 'text/html' });
    response.end(page ?? '');
  });
  await new Promise<void>(done => server.listen(0, '127.0.0.1', done));
  site = `http://127.0.0.1:${(server.address() as AddressInfo).port}/orchard`;
  browser = await startBrowser();
});
afterAll(async () => {
  await browser.close();
  server.close();
  server.closeAllConnections();
});

// RFC 9110, 10.2.2: the part that was asked for stays, unless the new address names its own.
it.each([
  ['/guides/old/', '/guides/new/', true],
  ['/guides/old/#the-store', '/guides/new/#the-store', true],
  ['/go/3467/', '/guides/new/#the-store', true],
  ['/go/3467/#lifting', '/guides/new/#the-store', true],
  ['/guides/old/#the-store', '/guides/new/', false],
])('%s opens %s, with scripts: %s', async (asked, opened, javaScriptEnabled) => {
  const context = await browser.newContext({ javaScriptEnabled });
  const page = await context.newPage();
  const problems: string[] = [];
  page.on('console', message => problems.push(message.text()));
  await page.goto(site + asked);
  await page.waitForURL(site + opened);
  if (opened.endsWith('#the-store')) await expect.poll(() => page.evaluate('scrollY')).toBeGreaterThan(1000);
  // The page that sent the reader on is not one to go back to.
  if (javaScriptEnabled) expect(await page.evaluate('history.length')).toBeLessThanOrEqual(2);
  expect(problems.filter(text => !text.includes('favicon') && !text.includes('404'))).toEqual([]);
  await context.close();
});
