/** Guides for a town, as the browser works them out, against the built pages and calendar files of reference places. */

import { beforeAll, describe, expect, it } from 'vitest';
import { assembled, loadContent } from '../src/content.ts';
import { careYear } from '../src/core/care/careYear.ts';
import { USUAL_POT_LITERS } from '../src/core/care/plantInCare.ts';
import type { Catalogue } from '../src/core/catalogue.ts';
import { nothingPublished } from '../src/core/climate/figures.ts';
import { figuresOfPlace } from '../src/core/climate/place.ts';
import { usualDays } from '../src/core/climate/ribbon.ts';
import { weatherYears } from '../src/core/climate/weatherYears.ts';
import type { Guide } from '../src/core/records/guide.ts';
import type { Place } from '../src/core/records/place.ts';
import { type SheetWeather, sheetYear, townCalendars, townSheet } from '../src/islands/guides/townSheet.ts';
import { townWeather } from '../src/islands/town/answer.ts';
import { siteLinks } from '../src/outputs/siteLinks.ts';
import {
  arrivalCalendarPath,
  guidePath,
  placeCalendarPath,
  placeGuidePath,
} from '../src/site/addresses/guidePaths.ts';
import { arrivalForms } from '../src/site/pages/guides/arrivalViews.ts';
import { guideAtPlacePage } from '../src/site/pages/guides/guideAtPlacePage.ts';
import { arrivalCalendarFile, placeCalendarFile } from '../src/site/pages/guides/guideFiles.ts';
import { firstId, sentSource, sheetPlace } from '../src/site/pages/guides/guideSources.ts';
import { guideLine } from '../src/site/pages/guides/line.ts';
import type { SheetSource } from '../src/site/pages/guides/sheetSource.ts';
import { packedTown } from './packedTown.ts';

let all: Catalogue;
const links = siteLinks('https://yard.example', '/trees/');

beforeAll(async () => {
  all = (await assembled(await loadContent({ dir: 'content' }))).catalogue;
});

/** As a browser gets it. */
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value));
const sourceOf = (guide: Guide): SheetSource => sent(sentSource(all, guide, links.href)!);

const placeIds = ['minneapolis-mn', 'miami-fl', 'seattle-wa', 'tampa-fl', 'melbourne-au', 'munich-de'];

interface Told {
  place: Place;
  /** As a browser draws it from the figures of the place. */
  weather: SheetWeather;
  builtYear: (guide: SheetSource) => ReturnType<typeof careYear>;
}

const told = new Map<string, Told>();

function toldAt(id: string): Told {
  let found = told.get(id);
  if (found === undefined) {
    const place = all.places.find(each => each.id === id)!;
    const summary = all.climates.get(id)!;
    const { published: _, ...figures } = figuresOfPlace(place);
    const own = { ...sent(figures), published: nothingPublished };
    const years = weatherYears(figuresOfPlace(place));
    const { freeze, annualMinC, chill, class: kind } = summary;
    found = {
      place,
      weather: {
        years: weatherYears(own),
        summary: { ...sent({ freeze, annualMinC, chill, class: kind }), ribbon: usualDays(own) },
      },
      builtYear: ({ yardSpecies }) => {
        const species = all.species.find(each => each.id === yardSpecies[0]!.id)!;
        return careYear({ id, name: place.name, years, summary }, species, USUAL_POT_LITERS);
      },
    };
    told.set(id, found);
  }
  return found;
}

describe('a guide worked out in the browser', () => {
  it('is there for every guide of the yard', () => {
    expect(all.guides.length).toBeGreaterThanOrEqual(8);
    expect(all.guides.filter(guide => sentSource(all, guide, links.href) === null)).toEqual([]);
  });

  it.each(placeIds)('equals the built page and calendar files, guide by guide and form by form: %s', id => {
    const { place, weather, builtYear } = toldAt(id);
    for (const guide of all.guides) {
      const source = sourceOf(guide);
      const at = sheetPlace(place);
      const species = all.species.find(each => each.id === source.yardSpecies[0]!.id)!;
      const built = builtYear(source);
      const page = guideAtPlacePage(all, { guide, place, species }, built, { links });
      const year = sheetYear(source, at, weather);
      const general = guidePath(guide.id);
      const line = guideLine({ path: general, place, places: `${general}#places` }, links.href);
      const sheet = townSheet(source, at, year, links.href);
      expect(page.main.html.replace(line.html, '')).toContain(`<div class="guide-sheet">${sheet}</div>`);

      const url = links.absolute(placeGuidePath(guide.id, id));
      const made = townCalendars(source, at, year, { placeId: firstId(all, 'place', id), url });
      const dated = placeCalendarFile(all, guide, place, built, links);
      const files = [
        ...(dated === null ? [] : [[placeCalendarPath(guide.id, id), dated]]),
        ...arrivalForms(guide).map(form => [
          arrivalCalendarPath(guide.id, id, form),
          arrivalCalendarFile(all, guide, place, built, form, links),
        ]),
      ];
      expect(made.map(({ path, text }) => [path, text])).toEqual(files);
    }
  });

  it('of a town has the dates and the name of the town, in the units of its country', () => {
    const boone = packedTown('Boone', 'North Carolina', 'US', 36.217, -81.675, 984);
    const guide = all.guides.find(({ kind }) => kind === 'waking')!;
    const source = sourceOf(guide);
    const at = {
      id: 'kamloops-bc',
      name: 'Boone',
      where: 'North Carolina, United States',
      country: 'US',
      hasPage: false,
    };
    const weather = townWeather(boone);
    const sheet = townSheet(source, at, sheetYear(source, at, weather), links.href);
    expect(sheet).toContain('<span class="kind">Boone</span>');
    expect(sheet).toContain('Calendar for Boone');
    expect(sheet).not.toMatch(/undefined|NaN|null|kamloops-bc\/"/);
    expect(sheet).toMatch(/\d F \(-?\d/);
    // NOAA normals 1991-2020 of Boone 1 SE: half of all last 32 F freezes have come by early to middle May.
    expect(weather.summary.freeze['32F'].answer.last.p50).toMatch(/^0(?:4-2|4-3|5-[01])/);
  });
});
