/** The walk on the phone: its page, its data, and what lets it be opened without a network and put on the home screen. */

import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { walkPath } from '../../addresses/paths.ts';
import { stockInputs } from '../../inputs.ts';
import { jsonRoute, noInputs, pageRoute, type Route } from '../../route.ts';
import { contextOf, linksOf, type Site } from '../../site.ts';
import { walkFile } from './benchLots.ts';
import { walkDataPath, walkIconPath, walkManifestPath, walkWorkerPath } from './paths.ts';
import { walkPage } from './walkPage.ts';
import { walkWorker } from './walkWorker.ts';

/** Sides that browsers ask for before they offer the home screen. W3C Web Application Manifest; the sizes are common practice, no source. */
const iconSides = [192, 512];

function manifest({ all, base }: Site) {
  const { href } = linksOf({ all, base });
  return {
    name: `Walk, ${all.yard.name}`,
    short_name: 'Walk',
    start_url: href(walkPath),
    scope: href(walkPath),
    display: 'standalone',
    background_color: '#fcfcfa',
    theme_color: '#fcfcfa',
    icons: iconSides.map(px => ({
      src: href(walkIconPath(px)),
      sizes: `${px}x${px}`,
      type: 'image/png',
    })),
  };
}

/** The icon of the site as PNG: not every telephone takes a drawing. */
async function icon({ copied }: Site, px: number): Promise<Uint8Array> {
  const drawing = copied.find(({ file }) => file === 'favicon.svg');
  if (drawing === undefined) throw new Error('public/favicon.svg is missing');
  const svg = await readFile(drawing.from);
  return sharp(svg, { density: 72 * (px / 32) })
    .resize(px, px, { fit: 'contain', background: '#fcfcfa' })
    .flatten({ background: '#fcfcfa' })
    .png({ compressionLevel: 9, palette: true })
    .toBuffer();
}

export function walkRoutes(site: Site): Route[] {
  const { all } = site;
  const inputs = () => stockInputs(all);
  return [
    pageRoute(walkPath, noInputs, () => walkPage(all, contextOf(site))),
    jsonRoute(walkDataPath.slice(1), inputs, () => walkFile(all)),
    jsonRoute(walkManifestPath.slice(1), noInputs, () => manifest(site)),
    { file: walkWorkerPath.slice(1), inputs, make: () => walkWorker(site) },
    ...iconSides.map(px => ({
      file: walkIconPath(px).slice(1),
      inputs: noInputs,
      make: () => icon(site, px),
    })),
  ];
}
