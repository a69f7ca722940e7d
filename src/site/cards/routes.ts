/** The pictures of shared links: one for each cultivar, which its lots share, each guide and video, and one for all other pages. */

import type { Catalogue, CultivarEntry } from '../../core/catalogue.ts';
import { cardPath } from '../addresses/paths.ts';
import { speciesName } from '../pages/stock/stock.ts';
import { listedCultivars } from '../parts/raised.ts';
import type { Route } from '../route.ts';
import type { Site } from '../site.ts';
import { fruitSizeInWords } from '../words/measures.ts';
import { ripeningWords, sentence } from '../words/words.ts';
import { type CardWords, cardPicture } from './card.ts';

/** Pages that are about no tree show one of the yard's, the same one every time. */
function anyTree(all: Catalogue, at: number): CultivarEntry | undefined {
  const listed = listedCultivars(all);
  return listed[at % Math.max(1, listed.length)];
}

function route(name: string, entry: CultivarEntry | undefined, words: CardWords): Route[] {
  if (entry === undefined) return [];
  return [
    {
      file: cardPath(name).slice(1),
      inputs: () => [entry.cultivar, words],
      make: () => cardPicture(entry, words),
    },
  ];
}

export function cardRoutes({ all }: Site): Route[] {
  const { yard, cultivars, guides, videos } = all;
  const ofYard = [yard.name];
  return [
    ...cultivars.flatMap(entry => {
      const { cultivar, species, flavor } = entry;
      const { lengthMm, widthMm } = cultivar.fruit;
      return route(`cultivar-${cultivar.id}`, entry, {
        title: cultivar.name,
        lines: [
          `${sentence(speciesName(species))}. ${flavor.name}, ripens ${ripeningWords[cultivar.ripening]}.`,
          `${fruitSizeInWords(lengthMm, widthMm)}. The bar is 10 mm (0.4 in).`,
          ...ofYard,
        ],
      });
    }),
    ...guides.flatMap(({ id, title }, at) =>
      route(`guide-${id}`, anyTree(all, 3 * at + 1), {
        title,
        lines: ['Care guide, with the dates of your place', ...ofYard],
      }),
    ),
    ...videos.flatMap(({ id, title }, at) =>
      route(`video-${id}`, anyTree(all, 3 * at + 2), { title, lines: ['Video', ...ofYard] }),
    ),
    ...route('site', anyTree(all, 0), { title: yard.name, lines: [yard.tagline] }),
  ];
}
