/** Files that belong to no chapter: what pages share, what is published as it is, and the pages that send readers on from short addresses. */

import { readFile } from 'node:fs/promises';
import { shortAddress } from '../../core/addresses/paths.ts';
import { sitemapPath } from '../../outputs/sitemap.ts';
import { photoCopy } from '../../photos.ts';
import { fruitMarksFile } from '../drawing/fruitMarks.ts';
import { stockInputs } from '../inputs.ts';
import { siteManifestPath } from '../page.ts';
import { walkIconPath, walkIconSides } from '../pages/walk/paths.ts';
import { jsonRoute, noInputs, pageFile, type Route } from '../route.ts';
import { linksOf, type Site } from '../site.ts';
import { notices } from './notices.ts';
import { statesFile } from './states.ts';

/** Nothing on the site is closed to search engines; pages that should not be listed say so themselves. */
function robots(site: Site): string {
  return `User-agent: *\nDisallow:\n\nSitemap: ${linksOf(site).absolute(sitemapPath)}\n`;
}

/** Name, start and icons of the site on a home screen. */
function manifest(site: Site) {
  const { href } = linksOf(site);
  const { name, tagline } = site.all.yard;
  return {
    name,
    description: tagline,
    start_url: href('/'),
    scope: href('/'),
    display: 'minimal-ui',
    background_color: '#fcfcfa',
    theme_color: '#fcfcfa',
    icons: walkIconSides.map(px => ({
      src: href(walkIconPath(px)),
      sizes: `${px}x${px}`,
      type: 'image/png',
    })),
  };
}

function photoRoutes({ photos }: Site): Route[] {
  const names = new Set([...photos.values()].flatMap(photo => photo.names));
  return [...names].map(name => ({
    file: `photos/${name}`,
    inputs: noInputs,
    make: async () => (await photoCopy(name)).bytes,
  }));
}

function shortAddressRoutes({ all: { codes } }: Site): Route[] {
  return [...codes].map(([to, code]) => {
    const from = shortAddress(code);
    return { file: pageFile(from), inputs: () => to, make: () => ({ from, to }) };
  });
}

export function fileRoutes(site: Site): Route[] {
  const { all, copied } = site;
  return [
    { file: 'robots.txt', inputs: noInputs, make: () => robots(site) },
    jsonRoute(siteManifestPath.slice(1), noInputs, () => manifest(site)),
    { file: 'notices.txt', inputs: noInputs, make: notices },
    { file: 'plates.svg', inputs: () => stockInputs(all), make: () => fruitMarksFile(all) },
    { file: 'map/states.svg', inputs: noInputs, make: statesFile },
    ...copied.map(
      ({ file, from, ofNothingWritten }): Route => ({
        file,
        inputs: noInputs,
        make: () => readFile(from),
        ...(ofNothingWritten && { ofNothingWritten }),
      }),
    ),
    ...photoRoutes(site),
    ...shortAddressRoutes(site),
  ];
}
