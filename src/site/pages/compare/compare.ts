/** Cultivars side by side: traits in words, when they ripen in the yard's own place, and where they differ. */

import type { Catalogue, CultivarEntry } from '../../../core/catalogue.ts';
import { monthInWords } from '../../../core/days.ts';
import type { PlaceAnswers } from '../../../outlooks.ts';
import { cultivarPath } from '../../addresses/paths.ts';
import { type FruitMark, fruitMark } from '../../drawing/fruitMarks.ts';
import { ribbonMonths } from '../../drawing/ribbon.ts';
import type { CropBar } from '../../drawing/seasonBar.ts';
import { memoize } from '../../memo.ts';
import { type Grouped, groupBy, type PagedList, paged } from '../../parts/paging.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { bookOf, kindIn } from '../../parts/verdictBook.ts';
import { fruitSizeInWords } from '../../words/measures.ts';
import { joinedCrops } from '../../words/verdict.ts';
import {
  colorsInWords,
  cropWords,
  listInWords,
  pollinationShort,
  ripeningWords,
  sentence,
  shapeWords,
} from '../../words/words.ts';
import { cultivarFacts, suitsFacts } from '../cultivars/cultivar.ts';
import type { Fact } from '../lots/lot.ts';
import { speciesName } from '../stock/stock.ts';
import { offerFacts } from './offers.ts';

/** As many as can be looked at side by side. */
export const COMPARED_AT_MOST = 4;
/** Rows of one table: each has a plate. */
const perPage = 40;

export interface Season {
  bars: readonly CropBar[];
  /** When each crop ripens and how surely. */
  words: string;
}

/** When a cultivar ripens in a place. */
export function seasonIn(all: Catalogue, place: PlaceAnswers, id: string): Season {
  const { bars, ripens } = kindIn(bookOf(all, place), id);
  return { bars, words: joinedCrops(ripens) };
}

export interface ComparedRow {
  id: string;
  path: string;
  name: string;
  mark: FruitMark;
  /** One for each of the traits of its table. */
  traits: string[];
}

/** What the tables compare, in columns; a table of one species or flavor leaves that out. */
const traitNames = ['Species', 'Flavor', 'Ripens', 'Color', 'Shape', 'Size', 'Crops', 'Pollination'] as const;

/** What a table is about. */
export type CompareKind = 'species' | 'flavor';

const sharedBy: Record<CompareKind, (typeof traitNames)[number]> = { species: 'Species', flavor: 'Flavor' };

/** Heads of the columns of a table. */
export function comparedTraits(kind: CompareKind): string[] {
  return traitNames.filter(name => name !== sharedBy[kind]);
}

/** Small plates are larger here than in lists. */
const MARK_SCALE = 2;

function comparedRow(
  all: Catalogue,
  { cultivar, species, flavor }: CultivarEntry,
  kind: CompareKind,
): ComparedRow {
  const { fruit } = cultivar;
  const mark = fruitMark(all, cultivar, species);
  const traits: Record<(typeof traitNames)[number], string> = {
    Species: speciesName(species),
    Flavor: flavor.name,
    Ripens: ripeningWords[cultivar.ripening],
    Color: colorsInWords(fruit),
    Shape: shapeWords[fruit.shape],
    Size: fruitSizeInWords(fruit.lengthMm, fruit.widthMm),
    Crops: listInWords(cultivar.crops.map(crop => cropWords[crop])),
    Pollination: pollinationShort[cultivar.pollination],
  };
  return {
    id: cultivar.id,
    path: cultivarPath(cultivar.id),
    name: cultivar.name,
    mark: { ...mark, width: mark.width * MARK_SCALE, height: mark.height * MARK_SCALE },
    traits: traitNames.filter(name => name !== sharedBy[kind]).map(name => traits[name]),
  };
}

/** The value most rows share; null when no two do. */
function commonest(values: readonly string[]): string | null {
  const counts = new Map<string, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const [value, count] = [...counts].reduce((most, each) => (each[1] > most[1] ? each : most), [
    '',
    0,
  ] as const);
  return count > 1 ? value : null;
}

/** Which traits of which rows differ from what most of them have in common, by row and trait. */
export function differences(rows: readonly Pick<ComparedRow, 'traits'>[]): boolean[][] {
  const usual = (rows[0]?.traits ?? []).map((_, trait) =>
    commonest(rows.map(({ traits }) => traits[trait] as string)),
  );
  return rows.map(({ traits }) =>
    traits.map((value, trait) => usual[trait] !== null && value !== usual[trait]),
  );
}

export interface CompareList {
  kind: CompareKind;
  id: string;
  /** Path of its first page. */
  path: string;
  heading: string;
  list: PagedList<ComparedRow>;
}

function listsBy(all: Catalogue, kind: CompareKind, keyOf: (entry: CultivarEntry) => string): CompareList[] {
  return [...groupBy(listedCultivars(all), keyOf)].map(([id, entries]) => {
    const first = entries[0] as CultivarEntry;
    const heading = kind === 'species' ? sentence(speciesName(first.species)) : first.flavor.name;
    const group: Grouped<ComparedRow> = {
      id,
      heading,
      botanical: kind === 'species' ? first.species.botanical : null,
      rows: entries.map(entry => comparedRow(all, entry, kind)),
    };
    return { kind, id, path: `/compare/${kind}/${id}/`, heading, list: paged([group], perPage) };
  });
}

/** Every table there is: one for each species and for each flavor class, by name. */
export const compareLists = memoize((all: Catalogue) => {
  const byHeading = (a: CompareList, b: CompareList) => a.heading.localeCompare(b.heading, 'en');
  return {
    species: listsBy(all, 'species', ({ species }) => species.id).sort(byHeading),
    flavor: listsBy(all, 'flavor', ({ flavor }) => flavor.id).sort(byHeading),
  };
});

/** All traits of a cultivar under labels that every cultivar has. */
export function comparedFacts(all: Catalogue, entry: CultivarEntry): Fact[] {
  const facts = new Map(cultivarFacts(entry).map(({ label, value }) => [label, value]));
  const always = [
    'Flavor',
    'Ripens',
    'Color',
    'Fruit',
    'Eye',
    'Crops',
    'Pollination',
    'In rain',
    'Growth',
    'Hardiness',
  ];
  return [
    { label: 'Species', value: sentence(speciesName(entry.species)) },
    ...always.map(label => ({ label, value: facts.get(label) ?? 'None' })),
    ...suitsFacts(entry.cultivar),
    ...offerFacts(all, entry),
  ];
}

/** The first and last month of the axis that seasons are drawn on: `January to December`, south of the equator `July to June`. */
export function axisInWords(lat: number): string {
  const months = ribbonMonths(lat);
  return [months[0], months.at(-1)].map(month => monthInWords((month as number) + 1)).join(' to ');
}
