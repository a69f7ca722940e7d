/** First page, stock list and lot of yards that are small, empty, far away or full of long names: valid, and without a word too much. */

import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { baseYard, catalogueOf, lateSummer, southern, type World, worldRecords } from '../../tests/world.ts';
import type { Catalogue } from '../core/catalogue.ts';
import { readyOffers } from '../core/lots/readyOffers.ts';
import type { PlaceAnswers } from '../outlooks.ts';
import { siteLinks } from '../outputs/siteLinks.ts';
import type { Page, PageContext } from './page.ts';
import { homePage } from './pages/home/homePage.ts';
import { lotPage } from './pages/lots/lotPage.ts';
import { stockList } from './pages/stock/stock.ts';
import { stockPage } from './pages/stock/stockPage.ts';

/** By then the lot that was seen in late summer is ready in leaf. */
const today = '2026-09-10';
const tools: PageContext = {
  links: siteLinks('https://bench.example', '/orchard/'),
  photo: async file => {
    throw new Error(`no photograph was asked for, and yet ${file} is`);
  },
};

/** Fruit that is ripe on the 230th day, wherever the yard is; for the order of the shelves alone. */
const here = (all: Catalogue): PlaceAnswers =>
  ({
    place: all.home,
    match: () => ({
      ripening: [
        {
          crop: 'main',
          share: 0.9,
          word: 'reliable',
          dates: { p10: 220, p50: 230, p90: 240 },
          blocked: null,
        },
      ],
    }),
  }) as unknown as PlaceAnswers;

async function pagesOf(world: World): Promise<{ all: Catalogue; home: Page; list: Page; lots: Page[] }> {
  const all = catalogueOf(worldRecords(world), today);
  return {
    all,
    home: homePage(all, here(all), tools),
    list: stockPage(all, stockList(all).pages[0]!, tools),
    lots: await Promise.all(all.lots.map(entry => lotPage(all, entry, [], tools))),
  };
}

const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:a11y'],
  rules: { 'void-style': 'off', 'no-trailing-whitespace': 'off', 'long-title': 'off' },
});

async function faultsOf({ main }: Page): Promise<string[]> {
  const document = `<!DOCTYPE html><html lang="en"><head><title>Page</title></head><body><main>${main.html}</main></body></html>`;
  const { results } = await validator.validateString(document);
  return results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId}: ${message}`));
}

const wordsOf = ({ main }: Page) => main.html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

const long = 'Lady Featheringstonehaugh-Cholmondeley of the Northern Bench Behind the Old Kiln'.slice(0, 80);
const toTheLeft = '\u062a\u064a\u0646 \u0627\u0644\u062c\u0628\u0644';
const worlds: Record<string, World> = {
  'of one lot': { walks: lateSummer },
  'of none ready': { lots: [{ started: '2026-08-01', severed: undefined, pottings: [] }] },
  'of nothing left': { walks: { [today]: [{ left: 0 }] } },
  'without prices': {
    yard: { prices: { ...baseYard.prices, base: {} } },
    walks: lateSummer,
  },
  'in euros': { yard: { currency: 'EUR' }, walks: lateSummer },
  'of 40 flavors': {
    yard: {
      flavor_classes: Array.from({ length: 40 }, (_, at) => ({
        id: at === 0 ? 'honey' : `honey-${at}`,
        name: at === 0 ? 'Honey' : `Honey of kind ${at}`,
        means: 'Sweet',
      })),
    },
    walks: lateSummer,
  },
  'of names of 80 characters': { cultivar: { name: long }, walks: lateSummer },
  'of names from right to left': { cultivar: { name: toTheLeft }, walks: lateSummer },
  'in the south': { home: southern, walks: lateSummer },
};

describe.each(Object.entries(worlds))('a yard %s', (name, world) => {
  it('has a first page, a list and lots that are valid and leave no stray words', async () => {
    const { home, list, lots } = await pagesOf(world);
    for (const page of [home, list, ...lots]) {
      expect(await faultsOf(page), `${page.path}`).toEqual([]);
      expect(wordsOf(page)).not.toMatch(/undefined|\bnull\b|\[object|NaN|\bfalse\b|Infinity/);
    }
  });

  it('tells a price or a number of ready lots only where there are any', async () => {
    const { all, home } = await pagesOf(world);
    const { lots, lowest } = readyOffers(all.lots);
    const words = wordsOf(home);
    expect(/lots? ready today/.test(words)).toBe(lots > 0);
    expect(/ready today ?, (?:from )?[^\d ]*\d/.test(words)).toBe(lowest !== null);
    if (name === 'in euros') expect(words).toContain('\u20ac');
  });
});

describe('names', () => {
  it.each([long, toTheLeft])('stand whole, and apart from the words around them: %s', async given => {
    const { home, list, lots } = await pagesOf({ cultivar: { name: given }, walks: lateSummer });
    for (const page of [home, list, ...lots]) expect(page.main.html).toContain(`<bdi>${given}</bdi>`);
  });
});
