/** What a visitor means by the words typed: a lot by its number, a place, a most to pay, how rare; the rest is looked for as words. */

import { editDistance } from '../../core/reading/nearest.ts';
import type { PageRow } from '../../site/data/searchRecords.ts';
import type { RowsFile } from '../../site/data/searchRows.ts';
import type { Wanted } from './wanted.ts';

export interface Understood {
  /** Words that are left to look for. */
  words: string;
  /** What the words choose beside the boxes. */
  chosen: Partial<Pick<Wanted['chosen'], 'price' | 'scarcity'>>;
  /** Lots and places that the words name. */
  named: (PageRow & { kind: 'Lot' | 'Place' })[];
  /** Digits of a US ZIP code, three or five. */
  zip: string | null;
}

/** Letters without accents, small. */
export function plain(words: string): string {
  return words
    .toLowerCase()
    .normalize('NFD')
    .replace(/\p{Mark}/gu, '');
}

const most =
  /(?:\b(?:under|below|less than|up to|at most|max(?:imum)?)\s*|<\s*)[$€£]?\s*(\d+(?:[.,]\d{1,2})?)\b|[$€£]\s*(\d+(?:\.\d{1,2})?)\b/;
/** Scarcity classes that words of the trade mean, rarest first. */
const rare: readonly (readonly [words: RegExp, classes: readonly string[]])[] = [
  [/\b(?:offered nowhere else|nowhere else|only here|almost never offered)\b/, ['4']],
  [/\b(?:(?:something |anything )?(?:rare|rarest|scarce)|hard to find)\b/, ['4', '3']],
  [/\b(?:uncommon|unusual|seldom offered)\b/, ['4', '3', '2']],
];

/** `file` gives the lots and places there are. Prices are read in the currency of the list. */
export function understand(text: string, file: Pick<RowsFile, 'trees' | 'places'>): Understood {
  let words = plain(text);
  const chosen: Understood['chosen'] = {};
  const price = most.exec(words);
  if (price !== null) {
    const amount = Number((price[1] ?? price[2] ?? '').replace(',', '.'));
    chosen.price = new Set([String(Math.round(amount * 100))]);
    words = words.replace(price[0], ' ');
  }
  for (const [said, classes] of rare) {
    if (!said.test(words)) continue;
    chosen.scarcity = new Set(classes);
    words = words.replace(said, ' ');
    break;
  }
  words = words.trim().replace(/\s+/g, ' ');
  const lots = file.trees.flatMap(({ name, lots: ids }) =>
    ids
      .filter(id => words === id.toLowerCase() || words === `lot ${id.toLowerCase()}`)
      .map(id => ({ kind: 'Lot' as const, path: `/lots/${id}/`, title: `Lot ${id}`, summary: name })),
  );
  const places = file.places
    .filter(
      ({ title }) =>
        words.length > 2 && `${plain(title)} `.startsWith(words.length > 3 ? words : `${words} `),
    )
    .map(place => ({ ...place, kind: 'Place' as const }));
  const zip = /^\d{3}(?:\d\d)?$/.test(words) ? words : null;
  const named = [...lots, ...places];
  return { words: zip !== null || lots.length > 0 ? '' : words, chosen, named, zip };
}

/** Records whose name has a word that begins with what was typed, so that a name is found before it is typed out. Best of all by rank. */
export function namesBeginning({ trees, pages, choices }: RowsFile, word: string): Map<number, number> {
  const species = new Map(choices.species);
  const names = [
    ...trees.map(({ name, also, species: kind }) => [name, ...also, species.get(kind) ?? '']),
    ...pages.map(({ title }) => [title]),
  ];
  const begins = (name: string) =>
    plain(name)
      .split(/[^\p{L}\p{N}]+/u)
      .some(part => part.startsWith(word));
  return new Map(names.flatMap((all, place) => (all.some(begins) ? [[place, -1] as const] : [])));
}

/** One slip in three letters. Standing: ours. */
const LETTERS_PER_SLIP = 3;
const MOST_NAMES = 4;

export interface Near {
  title: string;
  /** A page, from the root of the site; null: a search for the title. */
  path: string | null;
}

/** Slips between what was typed and a name or one word of it; null when they are too many. */
function slips(typed: string, name: string): number | null {
  const whole = plain(name);
  const allowed = Math.floor(typed.length / LETTERS_PER_SLIP);
  const near = Math.min(
    ...[whole, ...whole.split(/[^\p{L}\p{N}]+/u)].map(part => editDistance(typed, part, allowed)),
  );
  return near <= allowed ? near : null;
}

/** Cultivars, kinds of trees, flavors, places, guides and videos whose names are near to what was typed, four at most, nearest first. */
export function nearNames(typed: string, { trees, places, pages, choices }: RowsFile): Near[] {
  const wanted = plain(typed.trim());
  const named: { names: readonly string[]; near: Near }[] = [
    ...choices.species.map(([, title]) => ({ names: [title], near: { title, path: null } })),
    ...trees.map(({ id, name, also }) => ({
      names: [name, ...also],
      near: { title: name, path: `/cultivars/${id}/` },
    })),
    ...choices.flavor.map(([id, title]) => ({
      names: [title],
      near: { title, path: `/cultivars/flavor/${id}/` },
    })),
    ...[...places, ...pages].map(({ title, path }) => ({ names: [title], near: { title, path } })),
  ];
  return named
    .flatMap(({ names, near }) => {
      const found = names.flatMap(name => slips(wanted, name) ?? []);
      return found.length === 0 ? [] : [{ near, slips: Math.min(...found) }];
    })
    .toSorted((a, b) => a.slips - b.slips)
    .slice(0, MOST_NAMES)
    .map(({ near }) => near);
}

/** Lots whose number is one slip away from what was asked for, three at most, each with its cultivar. */
export function lotsNear(asked: string, { trees }: Pick<RowsFile, 'trees'>): Near[] {
  const wanted = asked.toLowerCase();
  return trees
    .flatMap(({ name, lots }) =>
      lots
        .filter(id => editDistance(wanted, id.toLowerCase(), 1) <= 1)
        .flatMap(id => ({ title: `Lot ${id}, ${name}`, path: `/lots/${id}/` })),
    )
    .slice(0, MOST_NAMES - 1);
}
