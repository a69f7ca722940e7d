/** A site around a catalogue, with addresses of styles and scripts that no bundler has made. */

import type { Catalogue } from '../src/core/catalogue.ts';
import type { StockEvent } from '../src/core/history/event.ts';
import type { Assets, Site } from '../src/site/site.ts';

/** Every name has an address. */
const assets = (base: string): Assets => ({
  styles: {
    site: `${base}assets/site.css`,
    choosePlace: `${base}assets/choosePlace.css`,
    compare: `${base}assets/compare.css`,
    evidence: `${base}assets/evidence.css`,
    fruitYear: `${base}assets/fruitYear.css`,
    guideSheet: `${base}assets/guideSheet.css`,
    guidePrint: `${base}assets/guidePrint.css`,
    home: `${base}assets/home.css`,
    place: `${base}assets/place-page.css`,
    lotPrint: `${base}assets/lotPrint.css`,
    ordering: `${base}assets/ordering.css`,
    placeList: `${base}assets/placeList.css`,
    search: `${base}assets/search.css`,
    videos: `${base}assets/videos.css`,
    walk: `${base}assets/walk.css`,
  },
  scripts: {
    place: `${base}assets/place.js`,
    compare: `${base}assets/compare.js`,
    orderList: `${base}assets/orderList.js`,
    notFound: `${base}assets/notFound.js`,
    search: `${base}assets/search.js`,
    choosePlace: `${base}assets/choosePlace.js`,
    walk: `${base}assets/walk.js`,
  },
  fonts: [`${base}assets/sans.woff2`, `${base}assets/serif.woff2`],
});

export function siteForTests(all: Catalogue, base = '/', changes: readonly StockEvent[] = []): Site {
  return { all, changes, photos: new Map(), assets: assets(base), copied: [], base, preview: false };
}
