/** What the search page loads to show, narrow and order: a row for each cultivar, and what can be chosen. */

import type { Catalogue, CultivarEntry } from '../../core/catalogue.ts';
import { daysBetween } from '../../core/days.ts';
import type { ScarcityClass } from '../../core/lots/answers.ts';
import { levels } from '../../core/match/answers.ts';
import { levelWords } from '../../core/match/words.ts';
import { priceInWords } from '../../core/money.ts';
import { forms, type RipeningClass, ripeningClasses } from '../../core/records/common.ts';
import { containerClasses } from '../../core/records/container.ts';
import { placePath } from '../addresses/paths.ts';
import { type FruitMark, fruitMark } from '../drawing/fruitMarks.ts';
import { memoize } from '../memo.ts';
import { stockState } from '../pages/cultivars/cultivar.ts';
import { whereabouts } from '../pages/places/place.ts';
import {
  type OfferGroup,
  type SearchGroup,
  type SearchState,
  searchStates,
} from '../pages/search/searchTerms.ts';
import { speciesName, stateHeadings } from '../pages/stock/stock.ts';
import { listedCultivars } from '../parts/raised.ts';
import { fruitSizeInWords } from '../words/measures.ts';
import type { StateView } from '../words/state.ts';
import { colorsInWords, formWords, ripeningWords, scarcityWords, sentence } from '../words/words.ts';
import { type PageRow, searchedPages } from './searchRecords.ts';

/** What can be chosen in a group: values and their words, in the order in which a buyer thinks of them. */
export type Choices = (readonly [value: string, words: string])[];

/** One form of one lot, and how it stands. Equal ones of all lots are written once. */
export interface Offer extends Record<OfferGroup, string> {
  /** Days until it may open; 0: ready; null: no day known. */
  days: number | null;
}

export interface TreeRow {
  id: string;
  name: string;
  also: readonly string[];
  species: string;
  mark: FruitMark;
  flavor: string;
  ripening: RipeningClass;
  /** How seldom others offer it, 0 to 4 as text; null: no lot tells. */
  scarcity: string | null;
  /** Numbers of its lots. */
  lots: readonly string[];
  fruit: string;
  size: string;
  stock: StateView;
  /** Indexes of offers. */
  offers: readonly number[];
}

/** A page that is found by its words only. */
export interface RowsFile {
  offers: readonly Offer[];
  /** In the order of the records of the search index, with which the cultivars begin. */
  trees: readonly TreeRow[];
  /** Those that follow. */
  pages: readonly PageRow[];
  /** Every place, by name. */
  places: readonly PageRow[];
  choices: Record<SearchGroup, Choices>;
}

/** Of the price: a form that the yard gives no price has this in its place. */
const noPrice = '';

const soldOffer: Offer = { form: '', readiness: 'sold', price: noPrice, size: '', days: null };

function offersOf(entry: CultivarEntry, { asOf }: Catalogue): Offer[] {
  const standing = entry.lots.filter(({ soldOut }) => !soldOut);
  if (standing.length === 0) return [soldOffer];
  return standing.flatMap(({ forms: answers, tiers, size }) =>
    answers.map(({ form, state, range }): Offer => {
      const opens = state === 'opens' && range !== null ? Math.max(1, daysBetween(asOf, range.from)) : null;
      return {
        form,
        readiness: state,
        price: String(tiers[form]?.answer.price.minor ?? noPrice),
        size: size.answer.name,
        days: state === 'ready' ? 0 : opens,
      };
    }),
  );
}

/** Rarest first. */
const scarcityClasses = ['4', '3', '2', '1', '0'];

/** That of the lots, which share it. */
function scarcityOfEntry({ lots }: CultivarEntry): string | null {
  const [lot] = lots;
  return lot === undefined ? null : String(lot.scarcity.answer);
}

const stateWords: Record<SearchState, string> = { ...stateHeadings, sold: 'Sold, or none raised yet' };

/** Of lots only what occurs; of traits, all the yard has names for. */
function choicesOf(
  all: Catalogue,
  offers: readonly Offer[],
  trees: readonly TreeRow[],
): Record<SearchGroup, Choices> {
  const occurs = (group: OfferGroup, values: readonly string[]) =>
    values.filter(value => offers.some(offer => offer[group] === value));
  const { currency } = all.yard;
  const prices = [...new Set(offers.map(({ price }) => price))].filter(price => price !== noPrice);
  const grown = new Map(
    listedCultivars(all).map(({ species }) => [species.id, sentence(speciesName(species))]),
  );
  return {
    species: [...grown].sort(([, a], [, b]) => a.localeCompare(b, 'en')),
    flavor: all.yard.flavorClasses.map(({ id, name }) => [id, name]),
    ripening: ripeningClasses.map(ripening => [ripening, sentence(ripeningWords[ripening])]),
    form: occurs('form', forms).map(form => [form, formWords[form as (typeof forms)[number]]]),
    readiness: occurs('readiness', searchStates).map(state => [state, stateWords[state as SearchState]]),
    price: prices
      .map(Number)
      .sort((a, b) => a - b)
      .map(minor => [String(minor), priceInWords({ minor, currency })]),
    scarcity: scarcityClasses
      .filter(value => trees.some(({ scarcity }) => scarcity === value))
      .map(value => [value, scarcityWords[Number(value) as ScarcityClass]]),
    size: occurs(
      'size',
      containerClasses.map(({ name }) => name),
    ).map(name => [name, name]),
    place: levels.map(level => [level, levelWords[level]]),
  };
}

/** The content of `/search/rows.json`. */
export const searchRows = memoize((all: Catalogue): RowsFile => {
  const offers: Offer[] = [];
  const known = new Map<string, number>();
  const indexOf = (offer: Offer) => {
    const key = JSON.stringify(offer);
    const index = known.get(key) ?? offers.push(offer) - 1;
    known.set(key, index);
    return index;
  };
  const trees = listedCultivars(all).map((entry): TreeRow => {
    const { cultivar, species, flavor } = entry;
    const { fruit } = cultivar;
    return {
      id: cultivar.id,
      name: cultivar.name,
      also: cultivar.synonyms,
      species: species.id,
      mark: fruitMark(all, cultivar, species),
      flavor: flavor.id,
      ripening: cultivar.ripening,
      scarcity: scarcityOfEntry(entry),
      lots: entry.lots.map(({ lot }) => lot.id),
      fruit: colorsInWords(fruit),
      size: fruitSizeInWords(fruit.lengthMm, fruit.widthMm),
      stock: stockState(entry, all),
      offers: [...new Set(offersOf(entry, all).map(indexOf))],
    };
  });
  const pages = searchedPages(all).map(({ path, title, summary }) => ({ path, title, summary }));
  const places = all.places.map(place => ({
    path: placePath(place.id),
    title: place.name,
    summary: whereabouts(place),
  }));
  return { offers, trees, pages, places, choices: choicesOf(all, offers, trees) };
});
