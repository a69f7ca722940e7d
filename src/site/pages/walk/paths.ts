/** Files of the walk on the phone, from the root of the site. The worker lies beside the page, since it serves only what lies below it. */

import { walkPath } from '../../addresses/paths.ts';

export const walkDataPath = `${walkPath}lots.json`;
export const walkManifestPath = `${walkPath}manifest.webmanifest`;
export const walkWorkerPath = `${walkPath}worker.js`;
/** Icon for the home screen, by its side in pixels. */
export const walkIconPath = (px: number) => `${walkPath}icon-${px}.png`;
