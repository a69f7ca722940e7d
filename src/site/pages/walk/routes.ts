/** The walk on the phone: its page, its data, and what lets it be opened without a network and put on the home screen. */

import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { walkPath } from '../../addresses/paths.ts';
import { stockInputs } from '../../inputs.ts';
import { jsonRoute, noInputs, pageRoute, type Route } from '../../route.ts';
import { type CopiedFile, contextOf, linksOf, type Site } from '../../site.ts';
import { walkFile } from './benchLots.ts';
import {
  iconDrawing,
  walkDataPath,
  walkIconPath,
  walkIconSides,
  walkManifestPath,
  walkWorkerPath,
} from './paths.ts';
import { walkPage } from './walkPage.ts';
import { walkWorker } from './walkWorker.ts';

const drawingOf = ({ copied }: Site) => copied.find(({ file }) => file === iconDrawing);

function manifest(site: Site) {
  const { all } = site;
  const { href } = linksOf(site);
  return {
    name: `Walk, ${all.yard.name}`,
    short_name: 'Walk',
    start_url: href(walkPath),
    scope: href(walkPath),
    display: 'standalone',
    background_color: '#fcfcfa',
    theme_color: '#fcfcfa',
    icons: (drawingOf(site) === undefined ? [] : walkIconSides).map(px => ({
      src: href(walkIconPath(px)),
      sizes: `${px}x${px}`,
      type: 'image/png',
    })),
  };
}

/** The icon of the site as PNG: not every telephone takes a drawing. */
async function icon(drawing: CopiedFile, px: number): Promise<Uint8Array> {
  const svg = await readFile(drawing.from);
  return sharp(svg, { density: 72 * (px / 32) })
    .resize(px, px, { fit: 'contain', background: '#fcfcfa' })
    .flatten({ background: '#fcfcfa' })
    .png({ compressionLevel: 9, palette: true })
    .toBuffer();
}

export function walkRoutes(site: Site): Route[] {
  const { all } = site;
  const drawing = drawingOf(site);
  const inputs = () => stockInputs(all);
  return [
    pageRoute(walkPath, noInputs, () => walkPage(all, contextOf(site))),
    jsonRoute(walkDataPath.slice(1), inputs, () => walkFile(all)),
    jsonRoute(walkManifestPath.slice(1), noInputs, () => manifest(site)),
    { file: walkWorkerPath.slice(1), inputs, make: () => walkWorker(site) },
    ...(drawing === undefined
      ? []
      : walkIconSides.map(px => ({
          file: walkIconPath(px).slice(1),
          inputs: noInputs,
          make: () => icon(drawing, px),
        }))),
  ];
}
