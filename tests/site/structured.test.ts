/**
 * What built pages tell programs: schema.org in JSON-LD, feeds, sitemap. Checked with @adobe/structured-data-validator (the rules of
 * search engines for schema.org), by the pages' own visible text, and by the open stock file.
 */

import Validator from '@adobe/structured-data-validator';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { priceInWords } from '../../src/core/money.ts';
import type { StockFile } from '../../src/outputs/stockFile.ts';
import { builtSites, filesOf, leadsOn, pagesOf, readText } from './builtSites.ts';

interface Thing {
  '@type': string;
  [key: string]: unknown;
}

const blockPattern = /<script type="application\/ld\+json">(.*?)<\/script>/gs;

function thingsOf(html: string): Thing[] {
  return [...html.matchAll(blockPattern)].flatMap(([, text]) => {
    const block = JSON.parse(text!);
    expect(block['@context']).toBe('https://schema.org');
    return block['@graph'];
  });
}

const decoded = (html: string) =>
  html
    .replace(/<[^>]+>/g, '')
    .replaceAll('&#39;', "'")
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&')
    .replace(/\s+/g, ' ')
    .trim();

/** Every address in a thing, without fragments; those of schema.org itself left out. */
function addressesOf(value: unknown): string[] {
  if (typeof value === 'string') {
    return /^https?:/.test(value) && !value.startsWith('https://schema.org/') ? [value.split('#')[0]!] : [];
  }
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(addressesOf) : [];
}

const listed = (value: unknown) => (Array.isArray(value) ? value : [value]) as Thing[];

describe.each(Object.entries(builtSites))('the site %s', (_, { folder, base }) => {
  const pages = pagesOf(folder)
    .map(path => {
      const html = readText(folder, path);
      return { path, html, things: thingsOf(html) };
    })
    .filter(({ html }) => !leadsOn(html));
  const files = new Set(filesOf(folder));
  const stock = JSON.parse(readText(folder, 'stock.json')) as StockFile;
  const origin = new URL(stock.lots[0]!.url).origin;
  /** Whether an address leads to a file of this site. */
  const isBuilt = (address: string) => {
    if (!address.startsWith(origin + base)) return false;
    const path = decodeURI(address.slice((origin + base).length));
    return files.has(path === '' || path.endsWith('/') ? `${path}index.html` : path);
  };
  const lotPages = pages.filter(({ path }) => /^lots\/[^/]+\/index\.html$/.test(path));
  const productOf = ({ things }: { things: Thing[] }) => things.find(thing => thing['@type'] === 'Product');

  it('says something on its pages', () => {
    const count = (type: string) =>
      pages.filter(({ things }) => things.some(thing => thing['@type'] === type)).length;
    expect(count('Organization')).toBe(1);
    expect(count('WebSite')).toBe(1);
    expect(count('BreadcrumbList')).toBeGreaterThan(lotPages.length);
    expect(count('ItemList')).toBeGreaterThan(0);
  });

  it('has no error by the rules of search engines', async () => {
    const errors: string[] = [];
    for (const { path, html, things } of pages.filter(page => page.things.length > 0)) {
      const jsonld: Record<string, Thing[]> = {};
      for (const thing of things) jsonld[thing['@type']] = [...(jsonld[thing['@type']] ?? []), thing];
      const issues = await new Validator().validate({ jsonld, microdata: {}, rdfa: {} });
      for (const { severity, issueMessage } of issues) {
        // Only an entry in a shop's listing needs a picture, and a page without a photograph has none to name.
        const noPicture = issueMessage.includes('"image"') && !html.includes('<picture>');
        if (severity === 'ERROR' && !noPicture) errors.push(`${path}: ${issueMessage}`);
      }
    }
    expect(errors).toEqual([]);
  });

  it('names the photograph where there is one', () => {
    const pictured = lotPages.filter(page => page.html.includes('<picture>') && productOf(page));
    expect(pictured.length).toBeGreaterThan(0);
    for (const page of pictured) expect(isBuilt(String(productOf(page)!.image)), page.path).toBe(true);
  });

  it('offers each lot at the price and in the state its page shows', () => {
    let offered = 0;
    for (const page of lotPages) {
      const product = productOf(page);
      const list = /<ul class="offers"[^>]*>.*?<\/ul>/s.exec(page.html)?.[0] ?? '';
      const shown = [...list.matchAll(/<li class="(\w+)">(.*?)<\/li>/gs)].flatMap(([, state, item]) => {
        const price = /<p class="amount"[^>]*>(.*?)<\/p>/s.exec(item!)?.[1];
        const name = decoded(/<h3>(.*?)<\/h3>/s.exec(item!)![1]!);
        return price === undefined ? [] : [{ name, state: state!, price: decoded(price) }];
      });
      const offers = product ? listed(product.offers) : [];
      expect(
        offers.map(({ name, price, priceCurrency }) => ({
          name,
          price: priceInWords({ minor: Math.round(Number(price) * 100), currency: String(priceCurrency) }),
        })),
        page.path,
      ).toEqual(shown.map(({ name, price }) => ({ name, price })));
      expect(
        offers.map(({ availability }) => String(availability).replace('https://schema.org/', '')),
        page.path,
      ).toEqual(shown.map(({ state }) => ({ ready: 'InStock', opens: 'PreOrder' })[state] ?? 'OutOfStock'));
      offered += offers.length;
    }
    expect(offered).toBeGreaterThan(50);
  });

  it('offers each lot as the open stock file has it', () => {
    const byUrl = new Map(lotPages.map(page => [productOf(page)?.url, productOf(page)]));
    for (const { lot, url, left, forms } of stock.lots) {
      const product = byUrl.get(url);
      const priced = left === 0 ? [] : forms.filter(({ price }) => price !== null);
      expect(product?.sku ?? null, lot).toBe(priced.length === 0 ? null : lot);
      const offers = product ? listed(product.offers) : [];
      expect(offers.map(({ price }) => Math.round(Number(price) * 100))).toEqual(
        priced.map(({ price }) => price!.amount),
      );
      expect(offers.map(({ availabilityStarts }) => availabilityStarts ?? null)).toEqual(
        priced.map(({ to }) => to),
      );
    }
  });

  it('offers a cultivar between the lowest and the highest price of its page', () => {
    const cultivars = pages.filter(page => /^cultivars\/[^/]+\/index\.html$/.test(page.path));
    let offered = 0;
    for (const page of cultivars) {
      const lots = /<section aria-labelledby="lots">.*?<\/section>/s.exec(page.html)![0];
      const cells = [...lots.matchAll(/<td class="(\w+)"><b>\$([\d,.]+)<\/b>/g)].map(([, state, price]) => ({
        state: state!,
        price: Number(price!.replaceAll(',', '')),
      }));
      // A form to come has no say in the price beside one that is ready.
      const best = ['ready', 'opens', 'look'].find(state => cells.some(cell => cell.state === state));
      const prices = cells.filter(({ state }) => state === best).map(({ price }) => price);
      const product = productOf(page);
      expect(product !== undefined, page.path).toBe(prices.length > 0);
      if (!product) continue;
      offered += 1;
      const offer = product.offers as Thing;
      expect(Number(offer.lowPrice)).toBe(Math.min(...prices));
      expect(Number(offer.highPrice)).toBe(Math.max(...prices));
      expect(offer.offerCount).toBe(prices.length);
      expect(offer.availability === 'https://schema.org/InStock').toBe(lots.includes('<td class="ready">'));
    }
    expect(offered).toBeGreaterThan(5);
  });

  it('counts positions from 1 without gaps', () => {
    const lists = pages.flatMap(({ things }) => things.filter(thing => thing.itemListElement));
    for (const list of lists) {
      const items = listed(list.itemListElement);
      expect(items.map(({ position }) => position)).toEqual(items.map((_item, index) => index + 1));
    }
  });

  it('names only addresses that are there', () => {
    const missing = pages.flatMap(({ path, things }) =>
      addressesOf(things)
        .filter(address => !isBuilt(address))
        .map(address => `${path}: ${address}`),
    );
    expect(missing).toEqual([]);
  });

  it('shows in each trail what the page shows', () => {
    for (const { path, html, things } of pages) {
      const trail = things.find(thing => thing['@type'] === 'BreadcrumbList');
      const nav = /<nav class="crumbs".*?<\/nav>/s.exec(html)?.[0];
      expect(trail !== undefined, path).toBe(nav !== undefined);
      if (!trail || !nav) continue;
      const names = listed(trail.itemListElement).map(({ name }) => name);
      expect(names.slice(0, -1)).toEqual(
        [...nav.matchAll(/<a [^>]*>(.*?)<\/a>/gs)].map(([, name]) => decoded(name!)),
      );
    }
  });

  describe('feeds', () => {
    const atom = readText(folder, 'changes.atom');
    const json = JSON.parse(readText(folder, 'changes.json'));
    const { feed } = new XMLParser({ ignoreAttributes: false, isArray: name => name === 'entry' }).parse(
      atom,
    );

    it('are well formed, tell the same and lead to pages', () => {
      expect(XMLValidator.validate(atom)).toBe(true);
      expect(json.items.length).toBeGreaterThan(20);
      expect(feed.entry.map(({ id }: { id: string }) => id)).toEqual(json.items.map(({ id }: Thing) => id));
      const links = [
        json.home_page_url,
        json.feed_url,
        ...json.items.map(({ url }: { url: string }) => url),
        ...feed.link.map((link: Thing) => link['@_href']),
        ...feed.entry.map(({ link }: { link: Thing }) => link['@_href']),
      ];
      expect(links.filter(link => !isBuilt(String(link)))).toEqual([]);
    });

    it('are no newer than their newest change', () => {
      expect(feed.updated).toBe(json.items[0].date_published);
    });

    it('are named in the head of the pages about the list', () => {
      for (const path of ['index.html', 'stock/index.html', 'changes/index.html']) {
        for (const [type, name] of [
          ['atom', 'changes.atom'],
          ['feed', 'changes.json'],
        ]) {
          const ending = type === 'atom' ? 'xml' : 'json';
          expect(readText(folder, path)).toMatch(
            new RegExp(
              `<link rel="alternate" type="application/${type}\\+${ending}"[^>]* href="${base}${name}"`,
            ),
          );
        }
      }
    });

    it('tell what the page of changes tells', () => {
      const html = readText(folder, 'changes/index.html');
      for (const { url } of json.items) expect(html).toContain(`href="${new URL(url).pathname}"`);
      expect([...html.matchAll(/<time datetime="([\d-]+)">/g)].map(([, on]) => on)).toEqual(
        expect.arrayContaining(json.items.map((item: Thing) => String(item.date_published).slice(0, 10))),
      );
    });
  });

  describe('sitemap', () => {
    const parser = new XMLParser({ isArray: name => name === 'url' || name === 'sitemap' });
    const locations = (path: string): string[] => {
      const text = readText(folder, path);
      expect(XMLValidator.validate(text)).toBe(true);
      const { urlset, sitemapindex } = parser.parse(text);
      return (urlset?.url ?? sitemapindex.sitemap).map(({ loc }: { loc: string }) => loc);
    };

    it('is named by robots.txt, and names every page that is its own canonical page, and no other', () => {
      const [, index] = /^Sitemap: (\S+)$/m.exec(readText(folder, 'robots.txt'))!;
      expect(index).toBe(`${origin}${base}sitemap.xml`);
      const named = locations('sitemap.xml').flatMap(list => {
        expect(isBuilt(list)).toBe(true);
        return locations(list.slice((origin + base).length));
      });
      const own = pages.flatMap(({ path, html }) => {
        const address = `${origin}${base}${path.replace(/index\.html$/, '')}`;
        const canonical = /<link rel="canonical" href="([^"]+)"/.exec(html)?.[1];
        return canonical === address && !html.includes('content="noindex"') ? [address] : [];
      });
      expect(named).toEqual([...own].sort());
      expect(named).toContain(`${origin}${base}`);
      expect(named.some(address => address.includes('/search/'))).toBe(false);
    });
  });
});
