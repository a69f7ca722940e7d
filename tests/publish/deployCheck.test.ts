/** `npm run deploy:check` on small sites written by hand: what is wrong with each is known. */

import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { proveSite } from '../../scripts/deployCheck.ts';

const scratch = mkdtempSync(join(tmpdir(), 'leafdrop-prove-'));
afterAll(() => rmSync(scratch, { recursive: true, force: true }));

const address = 'https://bench.example';
let count = 0;

function page(base: string, path: string, body: string, canonical = `${address}${base}${path}`): string {
  return `<!DOCTYPE html><html lang="en"><head><link rel="canonical" href="${canonical}"><link rel="stylesheet" href="${base}assets/a.css"></head><body><a href="${base}">Home</a>${body}</body></html>`;
}

/** A whole small site below a path, with some of its files replaced, added, or taken away (null). */
function site(base: string, differs: Record<string, string | null> = {}): string {
  const files: Record<string, string | null> = {
    'index.html': page(
      base,
      '',
      `<a href="${base}lots/a/#seen">A</a> <a href="${base}?q=1&amp;r=2">Seek</a> <a href="https://elsewhere.example/x">Away</a> <a href="mailto:a@bench.example">Write</a>`,
    ),
    'lots/a/index.html': page(base, 'lots/a/', '<h2 id="seen">Seen</h2><a href="#seen">Here</a>'),
    'go/abcd/index.html': `<!DOCTYPE html><html lang="en"><head><link rel="canonical" href="${address}${base}lots/a/"><meta http-equiv="refresh" content="0; url=${base}lots/a/"></head></html>`,
    '404.html': page(base, '', '').replace(/<link rel="canonical"[^>]*>/, ''),
    'assets/a.css': `body { background: url("${base}assets/b.svg") }`,
    'assets/b.svg': '<svg xmlns="http://www.w3.org/2000/svg"/>',
    'robots.txt': 'User-agent: *\n',
    'sitemap.xml': `<urlset><url><loc>${address}${base}lots/a/</loc></url></urlset>`,
    'pagefind/pagefind.js': '',
    'pagefind/pagefind-entry.json': '{}',
    ...differs,
  };
  count += 1;
  const folder = join(scratch, `${count}`);
  for (const [file, text] of Object.entries(files)) {
    if (text === null) continue;
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  }
  return folder;
}

const faultsOf = async (differs: Record<string, string | null>, base = '/orchard/') =>
  (await proveSite(site(base, differs), base, address)).faults;

describe('a built site', () => {
  it.each(['/', '/orchard/'])('that is whole has no fault below %s', async base => {
    expect(await proveSite(site(base), base, address)).toEqual({ files: 10, faults: [] });
  });

  it.each([
    ['/', '/orchard/', 'npm run build -- --base /orchard/'],
    ['/orchard/', '/', 'npm run build'],
    ['/old/', '/orchard/', 'npm run build -- --base /orchard/'],
  ])('built for %s is refused at %s', async (built, served, remedy) => {
    expect((await proveSite(site(built), served, address)).faults).toEqual([
      `the site was built for ${built} and is to be served at ${served}: rebuild it with ${remedy}`,
    ]);
  });

  const base = '/orchard/';
  const at = '/orchard/lots/a/';
  const onLot = (body: string) => ({
    'lots/a/index.html': page(base, 'lots/a/', `<i id="seen"></i>${body}`),
  });
  it.each<[string, Record<string, string | null>, string]>([
    [
      'a dead link',
      onLot('<a href="/orchard/lots/b/">B</a>'),
      `${at} links to /orchard/lots/b/, which is not there`,
    ],
    [
      'a link to no part',
      onLot('<a href="/orchard/#top">Up</a>'),
      `${at} links to /orchard/#top, and that page has no such part`,
    ],
    ['a link past the base', onLot('<a href="/lots/a/">A</a>'), `${at} links to /lots/a/, outside /orchard/`],
    [
      'a link past the base with the own name',
      onLot('<a href="https://bench.example/lots/a/">A</a>'),
      `${at} links to /lots/a/, outside /orchard/`,
    ],
    [
      'a picture that is not there',
      onLot('<img srcset="/orchard/p-1.avif 1x, /orchard/p-2.avif 2x" alt="">'),
      `${at} links to /orchard/p-2.avif, which is not there`,
    ],
    [
      'a canonical address elsewhere',
      { 'lots/a/index.html': page(base, 'lots/a/', '<i id="seen"></i>', `${address}/lots/a/`) },
      `${at} says that its address is https://bench.example/lots/a/, not one below https://bench.example/orchard/: see address in yard.yaml`,
    ],
    [
      'a redirect that leads nowhere',
      { 'go/abcd/index.html': '<meta http-equiv="refresh" content="0; url=/orchard/lots/z/">' },
      '/orchard/go/abcd/ links to /orchard/lots/z/, which is not there',
    ],
    [
      'a style sheet that names a lost file',
      { 'assets/b.svg': null },
      '/orchard/assets/a.css links to /orchard/assets/b.svg, which is not there',
    ],
    ['no search index', { 'pagefind/pagefind.js': null }, 'pagefind/pagefind.js was not built'],
    ['no page for missing addresses', { '404.html': null }, '404.html was not built'],
    [
      'a sitemap that names a lost page',
      { 'sitemap.xml': '<loc>https://bench.example/orchard/lots/q/</loc>' },
      '/orchard/sitemap.xml links to /orchard/lots/q/, which is not there',
    ],
  ])('with %s is told so', async (_, differs, fault) => {
    expect(await faultsOf(differs)).toContain(fault);
  });

  it('that is not there is refused in plain words', async () => {
    await expect(proveSite(join(scratch, 'none'), '/', address)).rejects.toThrow(
      /there is no built site in .*none; run npm run build first/,
    );
  });
});
