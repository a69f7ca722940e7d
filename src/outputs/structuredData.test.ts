/** What pages say in the words of schema.org; names and enumerations are held by the types of schema-dts at compile time. */

import { describe, expect, it } from 'vitest';
import { catalogueOf, lateSummer, type World, worldRecords } from '../../tests/world.ts';
import {
  breadcrumbs,
  cultivarProduct,
  listOfPages,
  lotProduct,
  structuredText,
  yardAndSite,
} from './structuredData.ts';

const addressOf = (path: string) => `https://bench.example${path}`;
const words = {
  seller: 'Testing Bench',
  name: 'Test Fig, lot a-1',
  description: 'A tree.',
  size: '#1 pot',
  image: null,
  formWords: { 'leafed-pot': 'In leaf', 'dormant-pot': 'Dormant', 'bare-root': 'Bare' },
};

function productOf(world: World, asOf: string) {
  const [entry] = catalogueOf(worldRecords(world), asOf).lots;
  // As programs read it: JSON has no types.
  const product = lotProduct(entry!, '/lots/a-1/', words, addressOf);
  return { entry: entry!, product: JSON.parse(JSON.stringify(product)) };
}

describe('a lot', () => {
  it('offers each form at its price, in stock when ready and for later when it opens', () => {
    const { entry, product } = productOf({ walks: lateSummer }, '2026-09-10');
    const states = entry.forms.map(({ state }) => state);
    expect(states).toEqual(['ready', 'opens', 'opens']);
    expect(product.offers.map((offer: { availability: string }) => offer.availability)).toEqual([
      'https://schema.org/InStock',
      'https://schema.org/PreOrder',
      'https://schema.org/PreOrder',
    ]);
    for (const [index, { form, range }] of entry.forms.entries()) {
      const { minor, currency } = entry.tiers[form]!.answer.price;
      const offer = product.offers[index];
      expect(offer.price).toBe((minor / 100).toFixed(2));
      expect(offer.priceCurrency).toBe(currency);
      expect(offer.availabilityStarts).toBe(range?.to);
    }
  });

  it('writes prices by the decimals of their currency (ISO 4217: yen has none)', () => {
    const { product } = productOf({ yard: { currency: 'JPY', prices: { ...pricesInYen } } }, '2026-09-10');
    expect(product.offers[0].price).toMatch(/^\d+$/);
    expect(product.offers[0].priceCurrency).toBe('JPY');
  });

  it('is out of stock while somebody has to look or something holds it', () => {
    const { entry, product } = productOf(
      { walks: { ...lateSummer, '2026-09-08': [{ health: 'hold' }] } },
      '2026-09-10',
    );
    expect(entry.forms[0]!.state).toBe('blocked');
    expect(product.offers[0].availability).toBe('https://schema.org/OutOfStock');
    expect(product.offers[0].availabilityStarts).toBeUndefined();
  });

  it('offers nothing once it is sold, since its page shows no price', () => {
    expect(productOf({ walks: { '2026-09-01': [{ left: 0 }] } }, '2026-09-10').product).toBeNull();
  });

  it('offers nothing without a price', () => {
    const { product } = productOf({ yard: { prices: { ...pricesInYen, base: {} } } }, '2026-09-10');
    expect(product).toBeNull();
  });
});

const pricesInYen = {
  series: 'R10' as const,
  base: { fig: 4000 },
  base_size: '#1',
  steps_per_size: 2,
  steps_per_scarcity: 1,
  form_steps: { 'leafed-pot': 0, 'dormant-pot': 0, 'bare-root': -1 },
  rounding: [{ to: 100 }],
};

describe('a cultivar', () => {
  const entryOf = (world: World, asOf: string) => catalogueOf(worldRecords(world), asOf).cultivars[0]!;

  it('is offered at the prices of the forms that are ready, and of no other', () => {
    const entry = entryOf({ walks: lateSummer, lots: [{}, { lot: 'a-2' }] }, '2026-09-10');
    const product = JSON.parse(JSON.stringify(cultivarProduct(entry, '/cultivars/a/', words, addressOf)));
    const prices = entry.lots.flatMap(({ forms, tiers }) =>
      forms.filter(({ state }) => state === 'ready').map(({ form }) => tiers[form]!.answer.price.minor),
    );
    expect(prices.length).toBeLessThan(6);
    expect(product.offers).toMatchObject({
      lowPrice: (Math.min(...prices) / 100).toFixed(2),
      highPrice: (Math.max(...prices) / 100).toFixed(2),
      offerCount: prices.length,
      availability: 'https://schema.org/InStock',
    });
  });

  it('is not offered when none of its lots is on the list', () => {
    const entry = entryOf({ walks: { '2026-09-01': [{ left: 0 }] } }, '2026-09-10');
    expect(cultivarProduct(entry, '/cultivars/a/', words, addressOf)).toBeNull();
  });
});

describe('a trail and a list', () => {
  it('count their items from 1 without gaps', () => {
    const pages = [
      { path: '/stock/', name: 'Stock list' },
      { path: '/cultivars/a/', name: 'A' },
    ];
    for (const list of [breadcrumbs(pages, 'Lot 1', addressOf), listOfPages(pages, addressOf)]) {
      const items = JSON.parse(JSON.stringify(list)).itemListElement as { position: number }[];
      expect(items.map(({ position }) => position)).toEqual(items.map((_, index) => index + 1));
    }
  });
});

describe('the text of the script', () => {
  it('cannot be ended by a name, and reads back as it was', () => {
    const { yard } = catalogueOf(
      worldRecords({ yard: { name: '</script><script>alert(1)//' } }),
      '2026-09-10',
    );
    const text = structuredText(yardAndSite(yard, addressOf));
    expect(text).not.toContain('<');
    const read = JSON.parse(text);
    expect(read['@context']).toBe('https://schema.org');
    expect(read['@graph'][0].name).toBe('</script><script>alert(1)//');
  });
});
