/** The service worker that keeps the walk at hand without a network. Served as it is, below the page it serves. */

import { hashOf } from '../../../hash.ts';
import { walkPath } from '../../addresses/paths.ts';
import { stockInputs } from '../../inputs.ts';
import { linksOf, type Site } from '../../site.ts';
import { iconDrawing, walkDataPath, walkManifestPath } from './paths.ts';

/** Name that all caches of the walk begin with. */
const cacheName = 'leafdrop-walk';

/**
 * Keeps the page and all it asks for in a cache of their own, named by what is in them, and answers from it: where the signal is weak nobody
 * waits. Each time the page is opened with a network the browser asks for this file anew; one that differs fetches everything for the next time.
 */
export function walkWorker(site: Site): string {
  const { href } = linksOf(site);
  const { styles, scripts } = site.assets;
  const shared = site.copied.filter(({ file }) => file.endsWith('.woff2') || file === iconDrawing);
  const files = [
    ...[walkPath, walkDataPath, walkManifestPath].map(href),
    styles.site,
    styles.walk,
    scripts.walk,
    ...shared.map(({ file }) => href(`/${file}`)),
  ];
  const name = `${cacheName} ${href('/')} ${hashOf(files, stockInputs(site.all), site.all.asOf)}`;
  return `const name = ${JSON.stringify(name)};
const files = ${JSON.stringify(files)};
const own = ${JSON.stringify(`${cacheName} ${href('/')} `)};
addEventListener('install', event => {
  event.waitUntil(caches.open(name).then(cache => cache.addAll(files)).then(() => skipWaiting()));
});
addEventListener('activate', event => {
  event.waitUntil(caches.keys()
    .then(names => Promise.all(names.filter(old => old.startsWith(own) && old !== name).map(old => caches.delete(old))))
    .then(() => clients.claim()));
});
addEventListener('fetch', event => {
  const { request } = event;
  if (request.method !== 'GET' || !files.includes(new URL(request.url).pathname)) return;
  event.respondWith(caches.open(name).then(cache => cache.match(request, { ignoreSearch: true, ignoreVary: true })).then(kept => kept ?? fetch(request)));
});
`;
}
