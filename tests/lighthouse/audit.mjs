/**
 * Runs Lighthouse with its defaults (a phone on simulated slow 4G) over addresses and prints one line of JSON for each. Apart from the
 * other tests because of its many packages.
 *
 *   node audit.mjs CHROMIUM ADDRESS...
 */

import { launch } from 'chrome-launcher';
import lighthouse from 'lighthouse';

const [chromePath, ...addresses] = process.argv.slice(2);
const chrome = await launch({
  chromePath,
  chromeFlags: ['--headless', '--no-sandbox', '--disable-dev-shm-usage', '--disable-gpu'],
  logLevel: 'silent',
});
try {
  for (const address of addresses) {
    const { lhr } = await lighthouse(address, { port: chrome.port, logLevel: 'silent', output: 'json' });
    const score = name => Math.round(100 * lhr.categories[name].score);
    const value = name => lhr.audits[name].numericValue;
    const scored = new Set(
      ['accessibility', 'best-practices', 'seo'].flatMap(name =>
        lhr.categories[name].auditRefs.filter(({ weight }) => weight > 0).map(({ id }) => id),
      ),
    );
    const findings = Object.values(lhr.audits)
      .filter(audit => scored.has(audit.id) && audit.score !== null && audit.score < 1)
      .map(({ id, title, details }) => {
        const items = (details?.items ?? []).slice(0, 3);
        return `${id}: ${title} ${items.map(item => item.node?.snippet ?? item.url ?? item.description ?? '').join(' ')}`;
      });
    console.log(
      JSON.stringify({
        performance: score('performance'),
        accessibility: score('accessibility'),
        bestPractices: score('best-practices'),
        seo: score('seo'),
        lcpMs: value('largest-contentful-paint'),
        fcpMs: value('first-contentful-paint'),
        cls: value('cumulative-layout-shift'),
        tbtMs: value('total-blocking-time'),
        findings,
      }),
    );
  }
} finally {
  chrome.kill();
}
