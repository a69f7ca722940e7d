/** The one list of every file of a site that a function of this program makes. What follows from the finished list, such as the sitemap, is made by the builder. */

import { cardRoutes } from './cards/routes.ts';
import { fileRoutes } from './files/routes.ts';
import { changeRoutes } from './pages/changes/routes.ts';
import { climateRoutes } from './pages/climates/routes.ts';
import { compareRoutes } from './pages/compare/routes.ts';
import { cultivarRoutes } from './pages/cultivars/routes.ts';
import { fruitYearRoutes } from './pages/fruit-year/routes.ts';
import { guideRoutes } from './pages/guides/routes.ts';
import { homeRoutes } from './pages/home/routes.ts';
import { howWeKnowRoutes } from './pages/how-we-know/routes.ts';
import { lotRoutes } from './pages/lots/routes.ts';
import { myPlaceRoutes } from './pages/my-place/routes.ts';
import { notFoundRoutes } from './pages/not-found/routes.ts';
import { orderingRoutes } from './pages/ordering/routes.ts';
import { placeRoutes } from './pages/places/routes.ts';
import { searchRoutes } from './pages/search/routes.ts';
import { stockRoutes } from './pages/stock/routes.ts';
import { videoRoutes } from './pages/videos/routes.ts';
import { walkRoutes } from './pages/walk/routes.ts';
import type { Route } from './route.ts';
import type { Site } from './site.ts';

/** The routes of each chapter. Those whose making takes longest come first. */
const chapters: readonly ((site: Site) => Route[])[] = [
  howWeKnowRoutes,
  placeRoutes,
  climateRoutes,
  stockRoutes,
  changeRoutes,
  searchRoutes,
  myPlaceRoutes,
  cultivarRoutes,
  lotRoutes,
  compareRoutes,
  fruitYearRoutes,
  guideRoutes,
  videoRoutes,
  homeRoutes,
  orderingRoutes,
  notFoundRoutes,
  walkRoutes,
  cardRoutes,
  fileRoutes,
];

/** All routes by their file. Throws when two have one address. */
export function routesByFile(routes: readonly Route[]): Map<string, Route> {
  const byFile = new Map<string, Route>();
  for (const route of routes) {
    if (byFile.has(route.file)) throw new Error(`two routes of this program make ${route.file}`);
    byFile.set(route.file, route);
  }
  return byFile;
}

export function routesOf(site: Site): Map<string, Route> {
  return routesByFile(chapters.flatMap(routes => routes(site)));
}
