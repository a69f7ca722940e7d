import { createHash } from 'node:crypto';
import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { headerTable, redirectPage, redirectTable } from './redirects.ts';

const links = {
  href: (path: string) => `/orchard${path}`,
  absolute: (path: string) => `https://yard.example/orchard${path}`,
};

describe('sending readers on', () => {
  it('a page leads to the new one below the base path, keeps a named part, and names the canonical address', async () => {
    const page = redirectPage({ from: '/go/34cd/', to: '/guides/first-winter/#lifting' }, links);
    expect(page).toContain('content="0; url=/orchard/guides/first-winter/#lifting"');
    expect(page).toContain('<link rel="canonical" href="https://yard.example/orchard/guides/first-winter/">');
    expect(page).toContain('<meta name="robots" content="noindex">');
    const report = await new HtmlValidate({
      extends: ['html-validate:recommended', 'html-validate:a11y'],
    }).validateString(page);
    expect(report.results.flatMap(({ messages }) => messages.map(({ message }) => message))).toEqual([]);
  });

  it('escapes what an address may hold', () => {
    expect(redirectPage({ from: '/a/', to: '/b/#x&y="z"' }, links)).toContain('#x&amp;y=&quot;z&quot;"');
  });

  it('its one script is the one its policy names (CSP Level 3, 2.3.1)', () => {
    const page = redirectPage({ from: '/a/', to: '/b/' }, links);
    const [, script] = /<script data-to="[^"]*">([^<]*)<\/script>/.exec(page)!;
    expect(page).toContain(`'sha256-${createHash('sha256').update(script!).digest('base64')}'`);
    expect(page.match(/<script/g)).toHaveLength(1);
  });

  it('the table has from, to and 301 in each line, what was renamed first', () => {
    const table = redirectTable(
      [
        { from: '/go/34cd/', to: '/lots/a/' },
        { from: '/lots/old/', to: '/lots/a/' },
      ],
      links,
    );
    expect(table).toBe('/orchard/lots/old/ /orchard/lots/a/ 301\n/orchard/go/34cd/ /orchard/lots/a/ 301\n');
    const file = { from: '/places/old.json', to: '/places/new.json' };
    expect(redirectTable([], links, [file])).toBe('/orchard/places/old.json /orchard/places/new.json 301\n');
  });

  it('the headers forbid framing and sniffing', () => {
    const table = headerTable(links);
    expect(table).toMatch(
      /^\/orchard\/\*\n(?: {2}\S+: .+\n)+\/orchard\/assets\/\*\n {2}Cache-Control: .*immutable\n$/,
    );
    expect(table).toContain("frame-ancestors 'none'");
  });
});
