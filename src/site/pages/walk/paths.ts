/** Files of the walk on the phone, from the root of the site. The worker lies beside the page, since it serves only what lies below it. */

import { walkPath } from '../../addresses/paths.ts';

export const walkDataPath = `${walkPath}lots.json`;
export const walkManifestPath = `${walkPath}manifest.webmanifest`;
export const walkWorkerPath = `${walkPath}worker.js`;
/** Icon for the home screen, by its side in pixels. */
export const walkIconPath = (px: number) => `${walkPath}icon-${px}.png`;
/** Sides that browsers ask for before they offer the home screen. W3C Web Application Manifest; the sizes are common practice, no source. */
export const walkIconSides = [192, 512];
/** What the icons are drawn from, where the site has it. */
export const iconDrawing = 'favicon.svg';
