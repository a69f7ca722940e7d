/**
 * Addresses of the stylesheets and scripts that pages ask for by name, as the bundler has named them. Read by the bundler alone: it makes each
 * script one file with all that it imports, the way workers are bundled, since every further file would be a round trip.
 */

import sans from './fonts/sans.woff2?url';
import serif from './fonts/serif.woff2?url';
import compareScript from './islands/compare.ts?worker&url';
import choosePlaceScript from './islands/myPlace/choose.ts?worker&url';
import place from './islands/myPlace/everyPage.ts?worker&url';
import notFound from './islands/notFound.ts?worker&url';
import orderList from './islands/orderStart.ts?worker&url';
import searchScript from './islands/search/page.ts?worker&url';
import walkScript from './islands/walk/page.ts?worker&url';
import type { Assets } from './site/site.ts';
import choosePlace from './styles/choosePlace.css?url';
import compare from './styles/compare.css?url';
import evidence from './styles/evidence.css?url';
import fruitYear from './styles/fruitYear.css?url';
import guidePrint from './styles/guidePrint.css?url';
import guideSheet from './styles/guideSheet.css?url';
import home from './styles/home.css?url';
import lotPrint from './styles/lotPrint.css?url';
import ordering from './styles/ordering.css?url';
import placePage from './styles/place.css?url';
import placeList from './styles/placeList.css?url';
import search from './styles/search.css?url';
import site from './styles/site.css?url';
import videos from './styles/videos.css?url';
import walk from './styles/walk.css?url';

export const assets: Assets = {
  styles: {
    site,
    choosePlace,
    compare,
    evidence,
    guidePrint,
    home,
    lotPrint,
    place: placePage,
    fruitYear,
    guideSheet,
    ordering,
    placeList,
    search,
    videos,
    walk,
  },
  scripts: {
    place,
    compare: compareScript,
    choosePlace: choosePlaceScript,
    notFound,
    orderList,
    search: searchScript,
    walk: walkScript,
  },
  fonts: [sans, serif],
};
