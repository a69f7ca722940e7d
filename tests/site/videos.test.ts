/** Videos on the built site: states agree with the pages they are about, addresses to paste lead somewhere, codes are read as their address. */

import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import decodeQR from 'qr/decode.js';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { atSite } from './atSite.ts';
import { builtSites, filesOf, readText } from './builtSites.ts';
import { axeFindings } from './visiting.ts';

const { folder, base } = builtSites.belowBase;
const origin = 'https://kettlewise.example';
const ids = filesOf(folder).flatMap(path => /^videos\/([^/]+)\/index\.html$/.exec(path)?.[1] ?? []);

function pageOf(id: string): string {
  return readText(folder, `videos/${id}/index.html`);
}

/** The file a finished address of this site is served from. */
function fileOf(address: string): string {
  const { pathname } = new URL(address);
  expect(pathname.startsWith(base)).toBe(true);
  return join(folder, pathname.slice(base.length), 'index.html');
}

const plain = (html: string) =>
  html
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ')
    .trim();

/** One linked thing of a video's page. */
interface Shown {
  path: string;
  html: string;
  state: string | null;
}

function thingsOf(html: string): Shown[] {
  return [...html.matchAll(/<p class="name">(.*?)<\/p>(.*?)<\/li>/gs)].map(([, name, rest]) => ({
    path: /href="([^"]+)"/.exec(name!)![1]!,
    html: rest!,
    state: /<div>\s*<p>\s*<span class="state [a-z]+">([^<]+)</.exec(rest!)?.[1] ?? null,
  }));
}

describe('the pages of videos', () => {
  it('are there, and the list has them newest first', () => {
    expect(ids.length).toBeGreaterThanOrEqual(4);
    const list = readText(folder, 'videos/index.html');
    const listed = [...list.matchAll(/href="\/orchard\/videos\/([^/"]+)\/"/g)].map(([, id]) => id!);
    expect(listed.toSorted()).toEqual(ids);
    const dates = listed.map(id => /datetime="([^"]+)"/.exec(pageOf(id).split('<main')[1]!)![1]!);
    expect(dates).toEqual(dates.toSorted().toReversed());
  });

  it('give every chapter a name of its own, rising with its time', () => {
    for (const id of ids) {
      const starts = [...pageOf(id).matchAll(/<li id="t-(\d+)"/g)].map(([, seconds]) => Number(seconds));
      expect(starts[0]).toBe(0);
      expect(starts.length).toBeGreaterThanOrEqual(3);
      expect(starts).toEqual([...new Set(starts)].sort((a, b) => a - b));
    }
  });

  it('say of every lot what its own page says, and of a sold one where to go on', () => {
    let [standing, sold] = [0, 0];
    for (const { path, html, state } of ids.flatMap(id => thingsOf(pageOf(id)))) {
      if (!path.startsWith(`${base}lots/`)) continue;
      const lot = readText(folder, `${path.slice(base.length)}index.html`);
      const saysSold = lot.includes('This lot is sold.');
      expect(state === 'Sold', path).toBe(saysSold);
      if (saysSold) {
        sold += 1;
        const on = /<p class="on">.*?href="([^"]+)"/s.exec(html)?.[1];
        expect(on, path).toBeDefined();
        expect(existsSync(join(folder, on!.slice(base.length), 'index.html'))).toBe(true);
      } else {
        standing += 1;
        const terms =
          /<p class="soft">[^<]*?\. (?<form>[^,<]+)<span data-priced>, (?<price>\$[\d,.]*\d)<\/span>\. (?<left>\d+ left)\.</.exec(
            html,
          );
        expect(terms?.groups, path).toBeDefined();
        const { form, price, left } = terms!.groups as Record<'form' | 'price' | 'left', string>;
        const offer = new RegExp(`<h3>${form}</h3>.*?</li>`, 's').exec(lot)?.[0] ?? '';
        // How it is sent stands below the state there, in a sentence of its own.
        expect(plain(offer), path).toContain(state!.split(', sent')[0]);
        expect(plain(offer), path).toContain(price);
        expect(plain(lot), path).toContain(left);
      }
    }
    expect(standing).toBeGreaterThan(5);
    expect(sold).toBeGreaterThan(2);
  });

  it('are led back to from every lot, cultivar and guide they speak of, to the chapter', () => {
    for (const id of ids) {
      const html = pageOf(id);
      for (const { path } of thingsOf(html)) {
        if (path.startsWith(`${base}places/`)) continue;
        const target = readText(folder, `${path.slice(base.length).split('#')[0]}index.html`);
        const back = [...target.matchAll(new RegExp(`href="${base}videos/${id}/#(t-\\d+)"`, 'g'))];
        expect(back.length, path).toBeGreaterThan(0);
        for (const [, fragment] of back) expect(html).toContain(`id="${fragment}"`);
      }
    }
  });

  it('load nothing from elsewhere and weigh 4 kB compressed at most', () => {
    for (const id of ids) {
      const html = pageOf(id);
      expect(html).not.toMatch(/<(?:iframe|video|embed|object|script[^>]+\ssrc=)/);
      expect(gzipSync(html, { level: 9 }).length, id).toBeLessThanOrEqual(4000);
    }
  });
});

describe('texts to paste', () => {
  it.each(ids)('%s has its chapters as its page has them, and every address of it leads to a page', id => {
    const text = readText(folder, `videos/${id}/description.txt`);
    expect([...text].length).toBeLessThanOrEqual(5000);
    const shown = [...pageOf(id).matchAll(/<h3>(.*?)<\/h3>/gs)].map(([, heading]) => plain(heading!));
    // `0:00 Title`, one a line, rising from 0:00: common practice, no source.
    const chapters = text.split('\n').filter(line => /^(?:\d+:)?\d{1,2}:\d{2} /.test(line));
    expect(chapters).toEqual(shown);
    expect(chapters[0]).toMatch(/^0:00 /);

    const addresses = [...text.matchAll(/https?:\/\/\S+/g)].map(([address]) => address);
    expect(addresses.length).toBeGreaterThan(3);
    for (const address of addresses) {
      expect(address.startsWith(`${origin}${base}`)).toBe(true);
      expect(existsSync(fileOf(address)), address).toBe(true);
      const { hash } = new URL(address);
      if (hash !== '') expect(readFileSync(fileOf(address), 'utf8')).toContain(`id="${hash.slice(1)}"`);
    }
    const short = addresses.filter(address => address.startsWith(`${origin}${base}go/`));
    expect(short.length).toBeGreaterThan(1);
    expect(readFileSync(fileOf(short[0]!), 'utf8')).toContain(`${base}videos/${id}/`);
  });

  it('warns of sap where figs are shown', () => {
    const text = readText(folder, `videos/2026-06-layering/description.txt`);
    expect(text).toMatch(/Take care \(fig\): .*sap/);
    expect(text).toMatch(/knives and saws/);
  });
});

describe('codes for end cards', () => {
  /** A picture on white as the decoder takes it. */
  async function read(file: string): Promise<string> {
    const { data, info } = await sharp(readFileSync(join(folder, file)))
      .flatten({ background: '#888' })
      .toColourspace('srgb')
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect(info.width).toBe(info.height);
    expect(info.width).toBeGreaterThan(400);
    return decodeQR({ width: info.width, height: info.height, data }, { timeLimit: 5000 });
  }

  it.each(ids)('%s are read as the short address of its page, in both kinds', async id => {
    const address = /today: (\S+)/.exec(readText(folder, `videos/${id}/description.txt`))![1]!;
    expect(await read(`videos/${id}/qr.png`)).toBe(address);
    expect(await read(`videos/${id}/qr.svg`)).toBe(address);
    expect(readText(folder, `videos/${id}/qr.svg`).length).toBeLessThan(6000);
  });
});

describe('in a browser', () => {
  const here = atSite({ folder, base });

  // axe-core: rules of WCAG 2.0 to 2.2, levels A and AA.
  it.each([
    ['light', 320],
    ['light', 1280],
    ['dark', 320],
    ['dark', 1280],
  ] as const)(
    'pages of videos have no findings and do not scroll sideways, %s at %i px',
    async (colorScheme, width) => {
      const context = await here.browser.newContext({
        colorScheme,
        viewport: { width, height: 900 },
        bypassCSP: true,
      });
      const page = await context.newPage();
      const elsewhere: string[] = [];
      page.on('request', request => {
        if (!request.url().startsWith(here.site.address)) elsewhere.push(request.url());
      });
      for (const path of ['videos/', `videos/${ids.at(-1)!}/`]) {
        await page.goto(here.site.address + path, { waitUntil: 'networkidle' });
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
        expect(await axeFindings(page), path).toEqual([]);
      }
      expect(elsewhere).toEqual([]);
      await context.close();
    },
  );
});
