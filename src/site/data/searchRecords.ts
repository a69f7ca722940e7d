/**
 * What the words of a search find: every cultivar with its lots, every guide in general, every video. A lot is found under its cultivar.
 * Narrowing and ordering need no index: see searchRows.ts.
 */

import { recordAddress } from '../../core/addresses/paths.ts';
import type { Catalogue, CultivarEntry } from '../../core/catalogue.ts';
import { guidePath } from '../addresses/guidePaths.ts';
import { cultivarPath } from '../addresses/paths.ts';
import { memoize } from '../memo.ts';
import { cultivarFacts, cultivarSummary, suitsFacts } from '../pages/cultivars/cultivar.ts';
import { generalGuide } from '../pages/guides/guideViews.ts';
import { speciesName } from '../pages/stock/stock.ts';
import { listedCultivars } from '../parts/raised.ts';
import { formWords, sentence } from '../words/words.ts';

export interface SearchRecord {
  /** From the root of the site. */
  url: string;
  content: string;
  language: 'en';
  meta: { title: string };
  /** A number as text, which the index sorts by value: the record's place in the list of all, by which its row is found. */
  sort: { place: string };
}

/** A page that is found by its words only. */
export interface PageRow {
  path: string;
  title: string;
  summary: string;
}

function cultivarWords(all: Catalogue, entry: CultivarEntry): string {
  const { cultivar, species, lots } = entry;
  const told = [...cultivarFacts(entry), ...suitsFacts(cultivar)].map(
    ({ label, value }) => `${label}: ${value}.`,
  );
  const offered = new Set(
    lots.filter(({ soldOut }) => !soldOut).flatMap(({ forms }) => forms.map(({ form }) => formWords[form])),
  );
  return [
    `${cultivar.name}. ${sentence(speciesName(species))}. ${cultivarSummary(entry, all)}`,
    `${[...species.common, species.botanical].join(', ')}.`,
    ...told,
    ...[...offered].map(form => `${form}.`),
    ...lots.map(({ lot }) => `Lot ${lot.id}.`),
    cultivar.body,
  ].join('\n');
}

/** Words of a piece of HTML of our own making. */
function textOf(html: string): string {
  return html
    .replace(/<[^>]*>/g, ' ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&amp;', '&');
}

/** Guides and videos, with all their words. */
export const searchedPages = memoize((all: Catalogue): (PageRow & { words: string })[] => [
  ...all.guides.map(guide => ({
    path: guidePath(guide.id),
    title: guide.title,
    summary: guide.summary,
    // Its address names it too, as in "overwintering".
    words: `${guide.id.replaceAll('-', ' ')}. ${textOf(generalGuide(all, guide, path => path).html)}`,
  })),
  ...all.videos.map(({ id, title, summary, chapters }) => ({
    path: recordAddress('video', id),
    title,
    summary: summary ?? `Video. ${chapters.map(chapter => chapter.title).join('. ')}.`,
    words: chapters.map(chapter => `${chapter.title}.`).join(' '),
  })),
]);

/** Everything that a search finds: cultivars by name, then guides, then videos. */
export function searchRecords(all: Catalogue): SearchRecord[] {
  const found = [
    ...listedCultivars(all).map(entry => ({
      url: cultivarPath(entry.cultivar.id),
      title: entry.cultivar.name,
      content: cultivarWords(all, entry),
    })),
    ...searchedPages(all).map(({ path, title, summary, words }) => ({
      url: path,
      title,
      content: `${title}. ${summary}\n${words}`,
    })),
  ];
  return found.map(({ url, title, content }, place) => ({
    url,
    content,
    language: 'en',
    meta: { title },
    sort: { place: String(place) },
  }));
}
