/** The guides of the built site: every one has its body, its cautions and its dates or says why not, and its calendars can be read. */

import ICAL from 'ical.js';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type ServedSite, serve } from '../../scripts/serve.ts';
import { loadContent } from '../../src/content.ts';
import { cautionsFor } from '../../src/core/care/cautions.ts';
import { LONGEST_SENTENCE_WORDS, sentenceOffenders } from '../../src/core/care/guideSentences.ts';
import type { Records } from '../../src/core/records/records.ts';
import { metricFirst } from '../../src/core/unitOrder.ts';
import { unitsIn } from '../../src/site/words/units.ts';
import { startBrowser } from './browser.ts';
import { builtSites, filesOf, readText } from './builtSites.ts';

const { folder } = builtSites.atRoot;
const files = filesOf(folder).filter(path => path.startsWith('guides/'));

let records: Records;
beforeAll(async () => {
  const { reading } = await loadContent();
  records = reading.records!;
});
const guides = () => [...records.guides.values()];
const places = () => [...records.places.keys()];
const placePages = () =>
  guides().flatMap(guide =>
    places().map(place => ({ guide, place, page: `guides/${guide.id}/${place}/index.html` })),
  );

/** Words of a piece of HTML, entities as written. */
function wordsOf(html: string): string {
  return html
    .replace(/<(script|style)[\s\S]*?<\/\1>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#x27;|&#39;|&apos;/g, "'")
    .replace(/&quot;|&#x22;|&#34;/g, '"')
    .replace(/&amp;|&#x26;|&#38;/g, '&')
    .replace(/\s+/g, ' ');
}

function bodyOf(html: string): string {
  return /<article class="prose guide">([\s\S]*?)<\/article>/.exec(html)?.[1] ?? '';
}

describe('guides', () => {
  it('have a page in general and one for every place', () => {
    expect(guides().length).toBeGreaterThanOrEqual(8);
    expect(places().length).toBeGreaterThanOrEqual(60);
    const wanted = [
      'guides/index.html',
      ...guides().map(({ id }) => `guides/${id}/index.html`),
      ...placePages().map(({ page }) => page),
    ];
    expect(wanted.filter(page => !files.includes(page))).toEqual([]);
  });

  it('never lack their body: no page says much less than the guide does in general', () => {
    for (const { guide, page } of placePages()) {
      const general = wordsOf(bodyOf(readText(folder, `guides/${guide.id}/index.html`)));
      const words = wordsOf(bodyOf(readText(folder, page)));
      expect(words.length, page).toBeGreaterThan(general.length / 2);
      expect(words, page).not.toMatch(/\b(?:NaN|undefined|null|Infinity)\b/);
    }
  });

  it('hold every caution due for their kind and species, in general and for every place', () => {
    const species = [...records.species.values()];
    const missing: string[] = [];
    const look = (page: string, texts: readonly string[]) => {
      const words = wordsOf(readText(folder, page));
      missing.push(...texts.filter(text => !words.includes(text)).map(text => `${page}: ${text}`));
    };
    for (const guide of guides()) {
      const named = species.filter(({ id }) => guide.species.length === 0 || guide.species.includes(id));
      const texts = cautionsFor(guide.kind, named).map(({ text }) => text.trim().replace(/\s+/g, ' '));
      expect(texts.length).toBeGreaterThan(0);
      look(`guides/${guide.id}/index.html`, texts);
      for (const { id, country } of records.places.values()) {
        const measured = unitsIn(country) === 'metric' ? texts.map(metricFirst) : texts;
        look(`guides/${guide.id}/${id}/index.html`, measured);
      }
    }
    expect(missing).toEqual([]);
  });

  it('have dates for every place, or say why there are none', () => {
    const silent = placePages().filter(({ page }) => {
      const calendar = /<section class="guide-calendar"[\s\S]*?<\/section>/.exec(readText(folder, page))?.[0];
      return (
        !/<time datetime="\d{4}-\d\d-\d\d"/.test(calendar ?? '') &&
        !/no dates|Nothing in this/.test(calendar ?? '')
      );
    });
    expect(silent).toEqual([]);
  });

  it('point search engines from the page of a place to the general one', () => {
    const wrong = placePages().filter(
      ({ guide, page }) =>
        !new RegExp(`<link rel="canonical" href="https://[^"/]+/guides/${guide.id}/"`).test(
          readText(folder, page),
        ),
    );
    expect(wrong).toEqual([]);
  });

  it('have no script but the one by which links follow the chosen place', () => {
    const others = placePages().flatMap(({ page }) =>
      [...readText(folder, page).matchAll(/<script[^>]*>/g)]
        .map(([tag]) => tag)
        // Structured data runs nothing.
        .filter(tag => tag !== '<script type="application/ld+json">')
        .filter(
          tag =>
            !/^<script type="module" data-src="\/assets\/everyPage\.[^"]+\.js" data-key="leafdrop-place:\/">$/.test(
              tag,
            ),
        ),
    );
    expect(others).toEqual([]);
  });

  it(`have no sentence of more than ${LONGEST_SENTENCE_WORDS} words`, () => {
    const offenders = guides().flatMap(({ id, body }) =>
      sentenceOffenders(body).map(({ line, words, sentence }) => `${id}:${line} ${words} words: ${sentence}`),
    );
    expect(offenders).toEqual([]);
  });
});

describe('the way from a tree to its arrival', () => {
  it('leads to pages that name the species as the grower writes it', () => {
    const pages = filesOf(folder).filter(path => /^guides\/[^/]+\/bare-root\/[^/]+\/index\.html$/.test(path));
    const unnamed = pages.filter(page => {
      const [name] = records.species.get(page.split('/')[3]!)!.common;
      return !readText(folder, page).includes(`<span class="kind">${name}, bare-root</span>`);
    });
    expect(pages.length).toBeGreaterThan(3);
    expect(unnamed).toEqual([]);
  });

  it('is one link from every lot that is for sale and every cultivar, to a page for its form and species', () => {
    const pages = filesOf(folder).filter(path => /^(?:lots|cultivars)\/[^/]+\/index\.html$/.test(path));
    const stock = JSON.parse(readText(folder, 'stock.json')) as { lots: { lot: string; cultivar: string }[] };
    const cultivars = [...records.cultivars.keys()].map(id => `cultivars/${id}/index.html`);
    for (const page of cultivars.filter(path => pages.includes(path))) {
      const { species } = records.cultivars.get(page.split('/')[1]!)!;
      expect(readText(folder, page), page).toContain(`href="/guides/first-48-hours/bare-root/${species}/"`);
    }
    const withoutLink = stock.lots.filter(({ lot }) => {
      const html = readText(folder, `lots/${lot}/index.html`);
      return (
        html.includes('id="forms"') &&
        !/href="\/guides\/[^/]+\/(?:leafed-pot|dormant-pot|bare-root)\//.test(html)
      );
    });
    expect(withoutLink).toEqual([]);
  });

  it('leads on to the days of every place', () => {
    const html = readText(folder, 'guides/first-48-hours/leafed-pot/fig/index.html');
    const links = [...html.matchAll(/href="\/guides\/first-48-hours\/([^/"]+)\/#leafed-pot"/g)];
    expect(links.map(([, place]) => place!).sort()).toEqual(places().sort());
  });
});

describe('calendars of guides', () => {
  const calendars = files.filter(path => path.endsWith('.ics'));

  it('exist for every guide with dated tasks at every place, and are linked from its page', () => {
    expect(calendars.length).toBeGreaterThan(places().length * (guides().length - 1));
    const unlinked = calendars.filter(path => {
      const [, guide, place] = path.split('/');
      const page = `guides/${guide}/${place!.replace(/\.ics$/, '')}/index.html`;
      return !readText(folder, page).includes(`href="/${path}"`);
    });
    expect(unlinked).toEqual([]);
  });

  it('are read by an independent parser (ical.js), every event with days in order', () => {
    for (const path of calendars) {
      const calendar = new ICAL.Component(ICAL.parse(readText(folder, path)));
      const events = calendar.getAllSubcomponents('vevent').map(event => new ICAL.Event(event));
      expect(events.length, path).toBeGreaterThan(0);
      const wrong = events.filter(
        ({ startDate, endDate }) => !startDate.isDate || !endDate.isDate || startDate.compare(endDate) >= 0,
      );
      expect(
        wrong.map(({ uid }) => uid),
        path,
      ).toEqual([]);
    }
  });

  it('keep RFC 5545: 75 octets a line (3.1), CRLF at every end (3.1)', () => {
    const encoder = new TextEncoder();
    for (const path of calendars) {
      const text = readText(folder, path);
      expect(text.replaceAll('\r\n', ''), path).not.toMatch(/[\r\n]/);
      expect(text.endsWith('END:VCALENDAR\r\n'), path).toBe(true);
      const long = text.split('\r\n').filter(line => encoder.encode(line).length > 75);
      expect(long, path).toEqual([]);
    }
  });

  it('never give one id to two events, in all files together (3.8.4.7)', () => {
    const ids = calendars.flatMap(path => {
      const unfolded = readText(folder, path).replaceAll('\r\n ', '');
      return [...unfolded.matchAll(/^UID:(.*)\r$/gm)].map(([, id]) => id!);
    });
    expect(ids.length).toBeGreaterThan(calendars.length);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('printing', () => {
  let site: ServedSite;
  let browser: Browser;
  beforeAll(async () => {
    site = await serve(folder, '/', 0);
    browser = await startBrowser();
  });
  afterAll(async () => {
    await browser.close();
    await site.stop();
  });

  const kindsOfPlace = ['minneapolis-mn', 'richmond-va', 'miami-fl', 'melbourne-au'];
  it.each(kindsOfPlace)('every guide for %s fits both sides of one sheet, Letter and A4', async place => {
    const page = await browser.newPage();
    const tooLong: string[] = [];
    for (const { id } of guides()) {
      await page.goto(`${site.address}guides/${id}/${place}/`, { waitUntil: 'networkidle' });
      for (const format of ['Letter', 'A4']) {
        const pdf = await page.pdf({ format, landscape: true });
        const sides = pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
        expect(sides).toBeGreaterThan(0);
        if (sides > 2) tooLong.push(`${id} on ${format}: ${sides} sides`);
      }
    }
    await page.close();
    expect(tooLong).toEqual([]);
  });
});
