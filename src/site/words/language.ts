/**
 * The site's own words in the English of the yard. They are written in American English; for a yard with `language: en-GB` whole pages are
 * turned at the end, and what the grower wrote stays as it was written. Measures are turned apart from it, see core/unitOrder.ts.
 */

import type { Catalogue } from '../../core/catalogue.ts';
import { htmlText } from '../../outputs/htmlText.ts';
import { memoize } from '../memo.ts';

/**
 * American words and British ones, whole words only, in small letters; a capital at the start is kept. Spellings: Oxford English Dictionary
 * headwords. Words for tools, fuels and the season: common practice, no source.
 */
export const wordPairs: readonly (readonly [american: string, british: string])[] = [
  ...['', 's', 'ed', 'ing', 'less', 'ful'].map(end => [`color${end}`, `colour${end}`] as const),
  ...['', 's', 'ed', 'ing'].map(end => [`flavor${end}`, `flavour${end}`] as const),
  ...['', 's', 'ing', 'hood'].map(end => [`neighbor${end}`, `neighbour${end}`] as const),
  ...['', 's', 'y'].map(end => [`mold${end}`, `mould${end}`] as const),
  ...['', 's', 'ed'].map(end => [`center${end}`, `centre${end}`] as const),
  ...['meter', 'kilometer', 'centimeter', 'millimeter', 'liter', 'fiber'].flatMap(word =>
    ['', 's'].map(end => [`${word}${end}`, `${word.replace(/er$/, 're')}${end}`] as const),
  ),
  ['gray', 'grey'],
  ['grayish', 'greyish'],
  ['vigor', 'vigour'],
  ['odor', 'odour'],
  ['modeled', 'modelled'],
  ['modeling', 'modelling'],
  ['labeled', 'labelled'],
  ['misspelled', 'misspelt'],
  ['pruners', 'secateurs'],
  ['flashlight', 'torch'],
  ['extension cord', 'extension lead'],
  ['gasoline', 'petrol'],
  ['kerosene', 'paraffin'],
  ['dolly', 'sack truck'],
  ['freeze of fall', 'freeze of autumn'],
  ['early fall', 'early autumn'],
  ['late fall', 'late autumn'],
  ['from fall', 'from autumn'],
];

const british = new Map(wordPairs);
const pairPattern = new RegExp(
  String.raw`\b(?:${wordPairs
    .map(([american]) => american)
    .toSorted((a, b) => b.length - a.length)
    .join('|')})\b`,
  'giu',
);

const monthPattern = String.raw`\b((?:Jan|Febr)uary|March|April|May|June|July|August|(?:Septem|Octo|Novem|Decem)ber|Jan|Feb|Mar|Apr|Jun|Jul|Aug|Sep|Oct|Nov|Dec)`;
const rangePattern = new RegExp(
  String.raw`${monthPattern} (\d{1,2}) (to|and) (\d{1,2})(?:,( \d{4}))?\b`,
  'g',
);
const datePattern = new RegExp(String.raw`${monthPattern} (\d{1,2})(?:,( \d{4}))?\b(?! F\b| C\b|[.]\d)`, 'g');

/** `April 9 to 24, 2026` as `9 to 24 April 2026`, and single days alike. */
function dayFirst(text: string): string {
  return text
    .replace(rangePattern, (_, month, from, joint, to, year = '') => `${from} ${joint} ${to} ${month}${year}`)
    .replace(datePattern, (_, month, date, year = '') => `${date} ${month}${year}`);
}

/** A text in British words, days before months. */
export function inBritish(text: string): string {
  return dayFirst(text).replace(pairPattern, found => {
    const word = british.get(found.toLowerCase()) as string;
    const first = found.charAt(0);
    return first === first.toLowerCase() ? word : word.charAt(0).toUpperCase() + word.slice(1);
  });
}

/** Every text below a value of plain data. */
function textsIn(value: unknown, texts: Set<string>): Set<string> {
  if (typeof value === 'string') texts.add(value);
  else if (value instanceof Map) for (const each of value.values()) textsIn(each, texts);
  else if (value !== null && typeof value === 'object')
    for (const each of Object.values(value)) textsIn(each, texts);
  return texts;
}

/** Names and sentences of the grower that the word pairs would change, longest first, as HTML writes them. Single small words are values. */
const asWritten = memoize(({ yard, species, cultivars, guides, videos, lots }: Catalogue): RegExp | null => {
  const records = [
    yard,
    species,
    guides.map(({ title, summary }) => [title, summary]),
    videos,
    cultivars.map(({ cultivar }) => cultivar),
    lots.map(({ lot }) => lot),
  ];
  const found = [...textsIn(records, new Set())].filter(
    text => /\s|^\p{Lu}/u.test(text) && inBritish(text) !== text,
  );
  if (found.length === 0) return null;
  const patterns = found
    .toSorted((a, b) => b.length - a.length)
    .map(text => htmlText(text).replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`));
  return new RegExp(patterns.join('|'), 'gu');
});

/** Turns what stands between the texts of the grower. */
function around(text: string, kept: RegExp | null): string {
  if (kept === null) return inBritish(text);
  let turned = '';
  let end = 0;
  for (const found of text.matchAll(kept)) {
    turned += inBritish(text.slice(end, found.index)) + found[0];
    end = found.index + found[0].length;
  }
  return turned + inBritish(text.slice(end));
}

/** A tag with its attributes, or a run of text. Scripts and styles are passed over whole. */
const piecePattern = /<(script|style)\b[\s\S]*?<\/\1>|<!--[\s\S]*?-->|<[^>]*>|[^<]+/g;
const readAttributes = / (?:alt|aria-label|content|placeholder|title)="[^"]*"/g;
const voidTags = new Set(['area', 'br', 'col', 'hr', 'img', 'input', 'link', 'meta', 'source', 'wbr']);
/** Written by the program within the text of a guide. */
const ownClasses = /\bclass="[^"]*\b(?:guide-caution|care-task|guide-task)/;

/**
 * A page in the English of the yard: unchanged for en-US. For en-GB its text and the attributes people read are turned, but for what the
 * grower wrote: the prose of guides and cultivars, and every name and sentence of the records.
 */
export function inLanguageOf(all: Catalogue, page: string): string {
  if (all.yard.language === 'en-US') return page;
  const kept = asWritten(all);
  const open: boolean[] = [];
  let prose = false;
  return page.replace(piecePattern, piece => {
    if (!piece.startsWith('<')) return prose ? piece : around(piece, kept);
    if (/^<(?:!|script|style)/.test(piece)) return piece;
    const tag = /^<\/?([a-z0-9]+)/.exec(piece)?.[1] ?? '';
    if (piece.startsWith('</')) {
      prose = open.pop() ?? false;
      return piece;
    }
    if (!voidTags.has(tag) && !piece.endsWith('/>')) {
      open.push(prose);
      if (/\bclass="(?:[^"]* )?prose\b/.test(piece)) prose = true;
      else if (ownClasses.test(piece)) prose = false;
    }
    return prose ? piece : piece.replace(readAttributes, found => around(found, kept));
  });
}
