/** What the page of a lot says in each of its states. That pages are valid and link rightly: textPages.test.ts, for the whole yard. */

import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { catalogueOf, lateSummer, type World, worldRecords } from '../../../../tests/world.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import { normaliseGuide } from '../../../core/records/guide.ts';
import { normaliseVideo } from '../../../core/records/video.ts';
import { siteLinks } from '../../../outputs/siteLinks.ts';
import type { PublishedPhoto } from '../../../photos.ts';
import type { Page, PageContext } from '../../page.ts';
import { lotPage } from './lotPage.ts';

const summer = '2026-08-29';

const published: PublishedPhoto = {
  sources: [
    {
      type: 'image/avif',
      variants: [
        { path: '/photos/ab-480.avif', width: 480 },
        { path: '/photos/ab-960.avif', width: 960 },
      ],
    },
  ],
  fallback: '/photos/ab-960.jpg',
  width: 960,
  height: 720,
  placeholder: 'data:image/webp;base64,AAAA',
  names: [],
};

const tools: PageContext = {
  links: siteLinks('https://bench.example', '/orchard/'),
  photo: async () => published,
};

async function pageOf(all: Catalogue, id = 'a-1'): Promise<Page> {
  return lotPage(all, all.lots.find(({ lot }) => lot.id === id)!, [], tools);
}

async function pageIn(world: World, id?: string): Promise<Page> {
  return pageOf(catalogueOf(worldRecords(world), summer), id);
}

const validator = new HtmlValidate({
  extends: ['html-validate:recommended', 'html-validate:a11y'],
  rules: { 'void-style': 'off', 'no-trailing-whitespace': 'off', 'long-title': 'off' },
});

/** What html-validate (HTML Living Standard, WCAG) finds wrong with a page, in a plain document. */
async function faultsOf({ main }: Page): Promise<string[]> {
  const document = `<!DOCTYPE html><html lang="en"><head><title>Lot</title></head><body><main>${main.html}</main></body></html>`;
  const { results } = await validator.validateString(document);
  return results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId}: ${message}`));
}

/** The text between the tags. */
const wordsOf = ({ main }: Page) => main.html.replace(/<[^>]*>/g, ' ').replace(/\s+/g, ' ');

describe('the page of a lot', () => {
  it('says what it is to readers, search engines and programs', async () => {
    const page = await pageIn({ walks: lateSummer });
    expect(page.title).toBe('Test Fig fig, lot a-1');
    expect(page.path).toBe('/lots/a-1/');
    expect(page.description).toMatch(/^Test Fig \(Ficus carica\)\. #1 pot, 19 in \(47 cm\)\. .*19 left\.$/);
    expect(page.things).toMatchObject([
      { '@type': 'Product', url: 'https://bench.example/orchard/lots/a-1/' },
    ]);
    expect(wordsOf(page)).toContain('What you get');
  });

  it('of a sold lot keeps what it was, and offers nothing', async () => {
    const page = await pageIn({ walks: { [summer]: [{ left: 0 }] } });
    const words = wordsOf(page);
    expect(words).toContain('This lot is sold.');
    expect(words).toContain('No other lot of the cultivar is on the list today.');
    expect(words).toContain('What it was');
    expect(words).not.toMatch(/Form, readiness and price|How it travels|\$\d/);
    expect(page.description).toMatch(/\. Sold\.$/);
    expect(page.things).toEqual([]);
  });

  it('of a sold lot leads to the other lots of the cultivar', async () => {
    const page = await pageIn({ lots: [{}, { lot: 'a-2' }], walks: { [summer]: [{ left: 0 }] } });
    expect(wordsOf(page)).toContain('Other lots of the cultivar are below.');
    expect(page.main.html).toContain('<a href="/orchard/lots/a-2/">');
  });

  it('of a lot on hold says since when and why, unless it is sold', async () => {
    const lots = [{ hold: { since: '2026-08-20', why: 'Scale was seen on two trees.' } }];
    const held = wordsOf(await pageIn({ lots, walks: lateSummer }));
    expect(held).toMatch(/Held back since [^.]*20[^.]*2026\. +Scale was seen on two trees\./);
    const gone = wordsOf(await pageIn({ lots, walks: { [summer]: [{ left: 0 }] } }));
    expect(gone).toContain('This lot is sold.');
    expect(gone).not.toContain('Held back');
  });

  it('shows the photograph in all its copies, and names one to programs', async () => {
    const page = await pageIn({
      lots: [{ photo: { file: 'tree.jpg', alt: 'Three trees on a bench' } }],
      walks: lateSummer,
    });
    const { html } = page.main;
    expect(html).toContain(
      'srcset="/orchard/photos/ab-480.avif 480w, /orchard/photos/ab-960.avif 960w" sizes="(min-width: 73rem)',
    );
    expect(html).toContain(
      '<img src="/orchard/photos/ab-960.jpg" alt="Three trees on a bench" width="853" height="640" loading="eager"',
    );
    expect(page.things).toMatchObject([{ image: 'https://bench.example/orchard/photos/ab-960.jpg' }]);
    expect((await pageIn({ walks: lateSummer })).main.html).not.toContain('class="photo');
  });

  it('leads to the order form of the lot, else to that of the yard', async () => {
    const yard = { ordering: { how: 'Write.', lead_days: 3, link: 'https://bench.example/order?a=1&b=2' } };
    const ofYard = (await pageIn({ yard, walks: lateSummer })).main.html;
    expect(ofYard).toMatch(
      /href="https:\/\/bench\.example\/order\?a=1&amp;b=2"[^>]*>(?:Order|Reserve|Ask)\b[^<]+<\/a>/,
    );
    const lots = [{ buy: 'https://bench.example/buy' }];
    const ofLot = (await pageIn({ yard, lots, walks: lateSummer })).main.html;
    expect(ofLot).toMatch(/href="https:\/\/bench\.example\/buy"[^>]*>(?:Order|Reserve|Ask)\b[^<]+<\/a>/);
    expect(ofLot).not.toContain('/order?');
  });

  it('is that of its own yard, though parts are written once for all its lots', async () => {
    const before = catalogueOf(worldRecords({ walks: lateSummer }), summer);
    const records = worldRecords({ cultivar: { name: 'Renamed Fig' }, walks: lateSummer });
    records.guides.set(
      'arrival',
      normaliseGuide(
        'arrival',
        { title: 'When it arrives', kind: 'arrival', summary: 'The first day.' },
        { text: '', line: 1 },
      ),
    );
    const after = catalogueOf(records, summer);
    expect(wordsOf(await pageOf(before))).not.toMatch(/Renamed|When it arrives/);
    const words = wordsOf(await pageOf(after));
    expect(words).toContain('Does Renamed Fig live and ripen where you are');
    expect(words).toMatch(/When it arrives: +leafed in a pot *, +dormant in a pot *, +bare-root *\./);
    expect(words).not.toContain('Test Fig');
    expect(wordsOf(await pageOf(before))).toContain('Does Test Fig live and ripen where you are');
  });
});

/** Text with all five signs of HTML 13.3 "Escaping a string", and a mark of its own to look for. */
const hostile = (mark: string) => `<${mark}>"&'${mark}`;
const escaped = (mark: string) => `&lt;${mark}&gt;&quot;&amp;&#39;${mark}`;

/** A yard in which every text a grower writes, and a lot's page shows, is hostile. */
function hostileYard(sold: boolean): Catalogue {
  const records = worldRecords({
    yard: {
      name: hostile('Yard'),
      cartons: [{ name: hostile('Carton'), inner_in: [44, 16, 16], outer_in: [45, 17, 17], tare_lb: 3 }],
      parcel_rules: [
        {
          name: hostile('Rule'),
          divisor: 139,
          rounding: 'nearest',
          longest_in: 108,
          length_and_girth_in: 165,
          heaviest_lb: 150,
          checked: '2026-01-05',
        },
      ],
    },
    species: {
      botanical: hostile('Botanical'),
      common: [hostile('Species')],
      movement: hostile('Movement'),
      hazards: [
        { to: 'people', caution: hostile('Caution'), standing: 'published', source: hostile('Source') },
      ],
    },
    cultivars: {
      'test-fig': { name: hostile('Cultivar') },
      'next-fig': { name: hostile('Neighbor') },
    },
    lots: [
      {
        rootstock: hostile('Rootstock'),
        note: hostile('Note'),
        photo: { file: 'tree.jpg', alt: hostile('Alt') },
        hold: { since: '2026-08-20', why: hostile('Hold') },
        price: { amount: '45', why: hostile('Price') },
      },
      { lot: 'n-1', cultivar: 'next-fig' },
      ...(sold ? [{ lot: 'a-2' }] : []),
    ],
    walks: sold
      ? { [summer]: [{ left: 0 }, { ...lateSummer[summer][0], lot: 'n-1' }, { lot: 'a-2', left: 4 }] }
      : { [summer]: [...lateSummer[summer], { ...lateSummer[summer][0], lot: 'n-1' }] },
  });
  records.videos.push(
    normaliseVideo('walk', {
      title: hostile('Video'),
      date: '2026-08-01',
      chapters: [{ time: '0:00', title: hostile('Chapter'), links: ['lot:a-1'] }],
    }),
  );
  return catalogueOf(records, summer);
}

const onEveryPage = [
  'Cultivar',
  'Species',
  'Rootstock',
  'Note',
  'Alt',
  'Video',
  'Chapter',
  'Caution',
  'Source',
  'Movement',
];

describe('texts with signs of HTML in them', () => {
  it.each([
    ['a lot on hold', false, [...onEveryPage, 'Carton', 'Rule', 'Hold', 'Price', 'Neighbor']],
    ['a sold lot', true, [...onEveryPage, 'Neighbor']],
  ] as const)('stand on the page of %s as they were written', async (_, sold, marks) => {
    const page = await pageOf(hostileYard(sold));
    const { html } = page.main;
    expect(marks.filter(mark => !html.includes(escaped(mark)))).toEqual([]);
    // Outside data for programs, no sign is left as it was: neither a tag of such a name, nor a quote beside its mark.
    const shown = html.replace(/<script type="application\/ld\+json">.*?<\/script>/gs, '');
    expect(shown).not.toMatch(/<[A-Z]/);
    expect(marks.filter(mark => shown.includes(`"&'${mark}`) || shown.includes(`>"&`))).toEqual([]);
    expect(await faultsOf(page)).toEqual([]);
  });

  it('escapes a name in every place where it stands', async () => {
    const { html } = (await pageOf(hostileYard(true))).main;
    // The trail, the heading, the notice, the place of the visitor, the plate, the other lots and their caption.
    expect(html.split(escaped('Cultivar')).length - 1).toBeGreaterThanOrEqual(7);
    expect(html).toContain(`<caption class="unseen">Other lots of ${escaped('Cultivar')} that`);
  });

  it('cannot end the data for programs, and come out of it as they went in', async () => {
    const { html } = (await pageOf(hostileYard(false))).main;
    const [, data] = /<script type="application\/ld\+json">(.*?)<\/script>/s.exec(html)!;
    expect(data).not.toContain('<');
    const trail = JSON.parse(data!)['@graph'][0];
    expect(JSON.stringify(trail)).toContain(JSON.stringify(hostile('Cultivar')).slice(1, -1));
  });
});

it('leaves no stray words on the page of a lot never walked nor potted', async () => {
  const page = await pageIn({ lots: [{ severed: undefined, pottings: [] }] });
  expect(wordsOf(page)).toContain('Not yet measured');
  expect(JSON.stringify(page)).not.toMatch(/undefined|\bnull\b|\[object|NaN|\bfalse\b|\btrue\b/);
  expect(await faultsOf(page)).toEqual([]);
});
