/** Every kind of page, for the demonstration yard with names that are hard on markup. */

import { HtmlValidate } from 'html-validate';
import { describe, expect, it } from 'vitest';
import { careYears } from '../careYears.ts';
import { evidenceFor, loadContent } from '../content.ts';
import { assemble } from '../core/catalogue.ts';
import { figuresOfPlace } from '../core/climate/place.ts';
import { climateSummary } from '../core/climate/summary.ts';
import { listHistory } from '../core/history/history.ts';
import { cultivarParts } from '../core/markdown/parts.ts';
import { forms } from '../core/records/common.ts';
import { grownSpecies, outlooksFor } from '../outlooks.ts';
import { siteLinks } from '../outputs/siteLinks.ts';
import type { Page, PageContext } from './page.ts';
import { changesPage } from './pages/changes/changesPage.ts';
import { climatePage } from './pages/climates/climatePage.ts';
import { publishedKinds } from './pages/climates/climates.ts';
import { climatesPage } from './pages/climates/climatesPage.ts';
import { compareLists } from './pages/compare/compare.ts';
import { compareListPage, comparePage } from './pages/compare/comparePage.ts';
import { cultivarList, flavorLists, ripeningLists } from './pages/cultivars/cultivar.ts';
import { cultivarListPage, traitListPage } from './pages/cultivars/cultivarListPage.ts';
import { cultivarPage } from './pages/cultivars/cultivarPage.ts';
import { exampleVerdicts } from './pages/cultivars/cultivarPlaces.ts';
import { arrivalForms } from './pages/guides/arrivalViews.ts';
import { guideAtPlacePage } from './pages/guides/guideAtPlacePage.ts';
import { arrivalPage, guidePage } from './pages/guides/guidePage.ts';
import { guidesAtPlaces } from './pages/guides/guideSubject.ts';
import { guidesPage } from './pages/guides/guidesPage.ts';
import { homePage } from './pages/home/homePage.ts';
import { howWeKnowPage } from './pages/how-we-know/howWeKnowPage.ts';
import { lotPage } from './pages/lots/lotPage.ts';
import { myPlacePage } from './pages/my-place/myPlacePage.ts';
import { notFoundPage } from './pages/not-found/notFoundPage.ts';
import { orderingPage } from './pages/ordering/orderingPage.ts';
import { placePage } from './pages/places/placePage.ts';
import { placesPage } from './pages/places/placesPage.ts';
import { searchPage } from './pages/search/searchPage.ts';
import { soldPage } from './pages/stock/soldPage.ts';
import { formLists, soldList, stockList } from './pages/stock/stock.ts';
import { formPage, stockPage } from './pages/stock/stockPage.ts';
import { videoPage } from './pages/videos/videoPage.ts';
import { videosPage } from './pages/videos/videosPage.ts';

const tools: PageContext = {
  links: siteLinks('https://yard.example', '/orchard/'),
  photo: async () => ({
    placeholder: 'data:image/webp;base64,AA',
    width: 1600,
    height: 1200,
    names: [],
    fallback: '/photos/one-800.jpg',
    sources: [{ type: 'image/webp', variants: [{ path: '/photos/one-800.webp', width: 800 }] }],
  }),
};
const hard = `<i>"Pêche" & 'Plum'`;

const { reading, asOf } = await loadContent({ dir: 'content' });
const records = structuredClone(reading.records!);
/** Beside home, one place much colder and one without winter. */
const links = [...records.videos.values()].flatMap(({ chapters }) =>
  chapters.flatMap(chapter => chapter.links),
);
const inVideos = links.filter(({ kind }) => kind === 'place').map(({ id }) => id);
const kept = [records.yard.home, 'minneapolis-mn', 'miami-fl', ...inVideos];
for (const id of records.places.keys()) if (!kept.includes(id)) records.places.delete(id);
for (const cultivar of records.cultivars.values()) cultivar.name = hard;
for (const guide of records.guides.values()) guide.title = hard;
const climates = new Map(
  [...records.places].map(([id, place]) => [id, climateSummary(figuresOfPlace(place))]),
);
const all = assemble(records, asOf, climates);
const places = await outlooksFor(all);
const lots = await Promise.all(
  all.lots.map(entry => lotPage(all, entry, exampleVerdicts(all, places, entry.cultivar.id), tools)),
);
const cultivars = await Promise.all(all.cultivars.map(entry => cultivarPage(all, entry, places, tools)));
const guides = await Promise.all(
  guidesAtPlaces(all).map(async at => {
    const years = await careYears(all, at.species);
    return guideAtPlacePage(all, at, years.get(at.place.id)!, tools);
  }),
);

const [place] = all.places;
const grown = await Promise.all(grownSpecies(all).map(species => careYears(all, species)));
const known = { outlooks: places, careYears: grown.map(years => years.get(place!.id)!) };
const here = places.get(all.home.id)!;
const [guide] = all.guides;
const arrival = all.guides.find(({ kind }) => kind === 'arrival')!;
const tables = compareLists(all);
const others = [
  homePage(all, here, tools),
  ...stockList(all).pages.map(page => stockPage(all, page, tools)),
  ...forms.flatMap(form => formLists(all)[form].pages.map(page => formPage(all, form, page, tools))),
  ...soldList(all).pages.map(page => soldPage(all, page, tools)),
  ...cultivarList(all).pages.map(page => cultivarListPage(all, page, tools)),
  ...[...flavorLists(all), ...ripeningLists(all)].flatMap(list =>
    list.list.pages.map(page => traitListPage(all, list, page, tools)),
  ),
  comparePage(all, tools),
  ...[...tables.species, ...tables.flavor].flatMap(list =>
    list.list.pages.map(page => compareListPage(all, list, page, here, tools)),
  ),
  climatesPage(all, tools),
  ...publishedKinds(all).map(kind => climatePage(all, kind, places, tools)),
  placesPage(all, tools),
  placePage(all, place!, known, tools),
  myPlacePage(all, tools),
  guidesPage(all, tools),
  guidePage(all, guide!, tools),
  arrivalPage(all, { guide: arrival, form: arrivalForms(arrival)[0]!, species: all.species[0]! }, tools),
  videosPage(all, tools),
  ...all.videos.map(video => videoPage(all, video, tools)),
  changesPage(all, listHistory(records, all).events, tools),
  searchPage(all, tools),
  orderingPage(all, tools),
  howWeKnowPage(all, await evidenceFor(all.species), tools),
  notFoundPage(tools),
];

/** The rules of the HTML standard alone: tags closed and in order, content where it is allowed, no attribute or id twice. */
const validator = new HtmlValidate({
  extends: ['html-validate:standard'],
  rules: { 'void-style': 'off', 'attribute-boolean-style': 'off', 'attribute-empty-style': 'off' },
});

function faults({ main, path }: Page): string[] {
  const whole = `<!DOCTYPE html><html lang="en"><head><title>x</title></head><body><main>${main.html}</main></body></html>`;
  const { results } = validator.validateStringSync(whole);
  return results.flatMap(({ messages }) =>
    messages.map(({ ruleId, message }) => `${path} ${ruleId}: ${message}`),
  );
}

describe.each([
  ['lots', lots],
  ['cultivars', cultivars],
  ['guides', guides],
])('pages of %s', (_, pages) => {
  it('hold to the HTML standard, as html-validate reads it', () => {
    expect(pages.length).toBeGreaterThan(20);
    expect(pages.flatMap(faults)).toEqual([]);
  });

  it('write a name as it is, wherever it stands', () => {
    for (const { main } of pages) {
      expect(main.html).not.toContain('<i>');
      expect(main.html).toContain('&lt;i&gt;&quot;Pêche&quot; &amp; &#39;Plum&#39;');
    }
  });

  it('show nothing that was not there to be shown', () => {
    for (const { main, title, description } of pages) {
      const text = `${main.html} ${title} ${description}`;
      expect(text).not.toMatch(/undefined|\[object|>null<|NaN/);
    }
  });

  it('link below the base path', () => {
    for (const { main } of pages) {
      const links = [...main.html.matchAll(/ href="([^"]*)"/g)].map(([, link]) => link!);
      expect(links.length).toBeGreaterThan(3);
      for (const link of links) expect(link).toMatch(/^(?:\/orchard\/|#|https?:|mailto:)/);
    }
  });
});

describe('all other pages', () => {
  it('hold to the HTML standard, as html-validate reads it', () => {
    expect(others.length).toBeGreaterThan(30);
    expect(others.flatMap(faults)).toEqual([]);
  });

  it('show names as they are, and nothing that was not there to be shown', () => {
    for (const { main, title, description } of others) {
      expect(main.html).not.toContain('<i>');
      expect(`${main.html} ${title} ${description}`).not.toMatch(/undefined|\[object|>null<|NaN/);
    }
  });

  it('link below the base path', () => {
    const links = others.flatMap(({ main }) => [...main.html.matchAll(/ href="([^"]*)"/g)]);
    expect(links.length).toBeGreaterThan(1000);
    for (const [, link] of links) expect(link).toMatch(/^(?:\/orchard\/|#|https?:|mailto:)/);
  });
});

it('gives the page of a cultivar no part that its text could take the name of', () => {
  const ids = cultivars.flatMap(({ main }) =>
    [...main.html.matchAll(/[ \n]id="([^"]*)"/g)].map(([, id]) => id!),
  );
  const own = new Set(ids.filter(id => !/^(?:plate-|instead-|sold-)/.test(id)));
  expect([...own].filter(id => !cultivarParts.includes(id))).toEqual([]);
});

describe('the page of a lot', () => {
  it('says that a lot is sold, and offers neither form nor carton', () => {
    const sold = lots.filter((_, index) => all.lots[index]!.soldOut);
    expect(sold.length).toBeGreaterThan(0);
    for (const { main } of sold) {
      expect(main.html).toContain('This lot is sold.');
      expect(main.html).not.toMatch(/id="forms"|id="carton"/);
    }
  });

  it('says since when and why a lot is held back', () => {
    const held = all.lots.findIndex(({ lot, soldOut }) => lot.hold && !soldOut);
    expect(held).toBeGreaterThanOrEqual(0);
    expect(lots[held]!.main.html).toContain('Held back since');
  });

  it('keeps the space of a photograph before it is there', () => {
    const shown = all.lots.findIndex(({ lot }) => lot.photo);
    expect(shown).toBeGreaterThanOrEqual(0);
    expect(lots[shown]!.main.html).toMatch(
      /<img src="\/orchard\/photos\/one-800\.jpg" alt="[^"]+" width="853" height="640" loading="eager"/,
    );
  });
});

describe('the page of a cultivar', () => {
  it('names the lots that are sold, and the words of the grower', () => {
    const index = all.cultivars.findIndex(
      ({ cultivar, lots: own }) => cultivar.body.trim() !== '' && own.some(lot => lot.soldOut),
    );
    expect(index).toBeGreaterThanOrEqual(0);
    expect(cultivars[index]!.main.html).toContain('<h3>Sold</h3>');
    expect(cultivars[index]!.main.html).toMatch(/<div class="prose"><p>/);
  });

  it('says when a cultivar is no longer raised', () => {
    const retired = all.cultivars.findIndex(({ cultivar }) => cultivar.retired && cultivar.retired <= asOf);
    expect(retired).toBeGreaterThanOrEqual(0);
    expect(cultivars[retired]!.main.html).toContain('We stopped raising it on');
  });
});

describe('the page of a guide at a place', () => {
  const pageOf = (kind: string, place: string) => {
    const guide = all.guides.find(each => each.kind === kind)!;
    return guides.find(({ path }) => path === `/guides/${guide.id}/${place}/`)!;
  };

  it('is a version of the guide, with the dates and the calendar of the place', () => {
    const { canonical, main } = pageOf('overwintering-pot', 'minneapolis-mn');
    expect(canonical).toBe(`/guides/${all.guides.find(({ kind }) => kind === 'overwintering-pot')!.id}/`);
    expect(main.html).toMatch(/<time datetime="20\d\d-\d\d-\d\d">/);
    expect(main.html).toMatch(/href="\/orchard\/guides\/[a-z-]+\/minneapolis-mn\.ics" type="text\/calendar"/);
  });

  it('warns of winters that are too hard for the ground, and only of these', () => {
    expect(pageOf('overwintering-ground', 'minneapolis-mn').main.html).toContain('<div class="notice">');
    expect(pageOf('overwintering-ground', 'miami-fl').main.html).not.toContain('<div class="notice">');
  });

  it('tells of each form what becomes of it on arrival, with a calendar of its own', () => {
    const { main } = pageOf('arrival', 'minneapolis-mn');
    for (const form of ['leafed-pot', 'dormant-pot', 'bare-root']) {
      expect(main.html).toContain(`<h4 id="${form}">`);
      expect(main.html).toContain(`/minneapolis-mn/${form}.ics" type="text/calendar"`);
    }
  });
});
