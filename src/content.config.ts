/**
 * Wires the records to the site's typed collections. The loader only hands over what the one door has read and checked; a problem
 * in the content throws, which stops the build with the whole report.
 */

import { defineCollection } from 'astro:content';
import type { Loader } from 'astro/loaders';
import { z } from 'zod';
import { records } from './content.ts';
import type { Cultivar } from './core/records/cultivar.ts';
import type { Guide } from './core/records/guide.ts';
import type { Lot } from './core/records/lot.ts';
import type { Place } from './core/records/place.ts';
import type { Records } from './core/records/records.ts';
import type { Species } from './core/records/species.ts';
import type { Video } from './core/records/video.ts';

interface Entry {
  id: string;
}

/** A loader over one kind of record. Its Markdown is rendered by the pages, which know their reader. */
function loaderOf<T extends Entry>(
  name: string,
  pick: (from: Records) => Iterable<T>,
  publish: (entry: T) => object = entry => entry,
): Loader {
  return {
    name: `leafdrop-${name}`,
    load: async ({ store }) => {
      store.clear();
      for (const entry of pick(await records())) store.set({ id: entry.id, data: { ...publish(entry) } });
    },
  };
}

/** The records are checked before they come here, so the schema only names their type. */
function typed<T>() {
  return z.custom<T>(value => typeof value === 'object' && value !== null);
}

export const collections = {
  species: defineCollection({
    loader: loaderOf('species', ({ species }) => species.values()),
    schema: typed<Species>(),
  }),
  cultivars: defineCollection({
    loader: loaderOf(
      'cultivars',
      ({ cultivars }) => cultivars.values(),
      ({ requests: _private, ...cultivar }) => cultivar,
    ),
    schema: typed<Omit<Cultivar, 'requests'>>(),
  }),
  lots: defineCollection({
    loader: loaderOf('lots', ({ lots }) => lots),
    schema: typed<Lot>(),
  }),
  places: defineCollection({
    loader: loaderOf('places', ({ places }) => places.values()),
    schema: typed<Place>(),
  }),
  guides: defineCollection({
    loader: loaderOf('guides', ({ guides }) => guides.values()),
    schema: typed<Guide>(),
  }),
  videos: defineCollection({
    loader: loaderOf('videos', ({ videos }) => videos),
    schema: typed<Video>(),
  }),
};
