/** What a search finds: every cultivar with its lots, and every guide in general. A lot is found under its cultivar. */

import type { Catalogue, CultivarEntry, LotEntry } from '../core/catalogue.ts';
import { daysBetween } from '../core/days.ts';
import { type Form, type RipeningClass, ripeningClasses } from '../core/records/common.ts';
import { cultivarFacts, cultivarSummary, suitsFacts } from './cultivar.ts';
import { guidePath } from './guides/guidePaths.ts';
import { generalGuide } from './guides/guideViews.ts';
import { cultivarPath } from './paths.ts';
import { listedCultivars } from './raised.ts';
import { speciesName } from './stock.ts';
import { formWords, sentence } from './words.ts';

/** How the lots of a cultivar stand, as a visitor chooses by it. */
export const searchStates = ['ready', 'opens', 'look', 'blocked', 'sold'] as const;
export type SearchState = (typeof searchStates)[number];

/** What can be chosen, by the name it has in the index. */
export interface SearchFilters {
  kind: ['cultivar' | 'guide'];
  species: string[];
  flavour: string[];
  ripening: RipeningClass[];
  form: Form[];
  state: SearchState[];
  /** Prices of the rungs of the ladder, minor units. */
  tier: string[];
  size: string[];
}

/** Numbers as text, which the index sorts by value. Every record has all of them: one without would drop out of the list. */
export interface SearchOrder {
  /** Place in the list by name. */
  name: string;
  /** Lowest price, minor units. */
  price: string;
  /** Days from today until the first lot is ready; 0 when one is. */
  ready: string;
  /** Ripening class, earliest first. */
  ripening: string;
}

export interface SearchRecord {
  /** From the root of the site. */
  url: string;
  content: string;
  language: 'en';
  meta: { title: string; summary: string };
  filters: Partial<SearchFilters>;
  sort: SearchOrder;
}

/** Above every real value: what has no price or day comes last. */
const LAST = 999_999_999;
/** Opening days are forecast; a lot without one comes after all that have one. */
const NO_DAY = 99_999;

function distinct<T>(values: readonly T[]): T[] {
  return [...new Set(values)].sort();
}

/** States of the forms of lots that are not sold out; sold when there is none. */
function statesOf(lots: readonly LotEntry[]): SearchState[] {
  const standing = lots.filter(({ soldOut }) => !soldOut);
  if (standing.length === 0) return ['sold'];
  return distinct(standing.flatMap(({ forms }) => forms.map(({ state }) => state)));
}

function daysUntilReady({ lots }: CultivarEntry, asOf: Catalogue['asOf']): number {
  const days = lots
    .filter(({ soldOut }) => !soldOut)
    .flatMap(({ forms }) => forms)
    .map(({ state, range }) => {
      if (state === 'ready') return 0;
      return state === 'opens' && range !== null ? Math.max(1, daysBetween(asOf, range.from)) : NO_DAY;
    });
  return Math.min(NO_DAY, ...days);
}

function offersOf(lots: readonly LotEntry[]) {
  return lots
    .filter(({ soldOut }) => !soldOut)
    .flatMap(({ forms, tiers, size }) =>
      forms.map(({ form }) => ({ form, tier: tiers[form]?.answer ?? null, size: size.answer.name })),
    );
}

function cultivarRecord(all: Catalogue, entry: CultivarEntry, rank: number): SearchRecord {
  const { cultivar, species, flavour, lots } = entry;
  const offers = offersOf(lots);
  const prices = offers.flatMap(({ tier }) => (tier ? [tier.price.minor] : []));
  const summary = `${sentence(speciesName(species))}. ${cultivarSummary(entry, all)}`;
  const told = [...cultivarFacts(entry), ...suitsFacts(cultivar)].map(
    ({ label, value }) => `${label}: ${value}.`,
  );
  return {
    url: cultivarPath(cultivar.id),
    content: [
      `${cultivar.name}. ${summary}`,
      `${[...species.common, species.botanical].join(', ')}.`,
      ...told,
      ...offers
        .map(({ form }) => form)
        .filter((form, index, forms) => forms.indexOf(form) === index)
        .map(form => `${formWords[form]}.`),
      ...lots.map(({ lot }) => `Lot ${lot.id}.`),
      cultivar.body,
    ].join('\n'),
    language: 'en',
    meta: { title: cultivar.name, summary },
    filters: {
      kind: ['cultivar'],
      species: [species.id],
      flavour: [flavour.id],
      ripening: [cultivar.ripening],
      form: distinct(offers.map(({ form }) => form)),
      state: statesOf(lots),
      tier: distinct(offers.flatMap(({ tier }) => (tier ? [String(tier.price.minor)] : []))),
      size: distinct(offers.map(({ size }) => size)),
    },
    sort: {
      name: String(rank),
      price: String(Math.min(LAST, ...prices)),
      ready: String(daysUntilReady(entry, all.asOf)),
      ripening: String(ripeningClasses.indexOf(cultivar.ripening)),
    },
  };
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

function guideRecord(all: Catalogue, guide: Catalogue['guides'][number], rank: number): SearchRecord {
  return {
    url: guidePath(guide.id),
    content: `${guide.title}. ${guide.summary}\n${textOf(generalGuide(all, guide, path => path).html)}`,
    language: 'en',
    meta: { title: guide.title, summary: guide.summary },
    filters: { kind: ['guide'] },
    sort: {
      name: String(all.cultivars.length + rank),
      price: String(LAST),
      ready: String(NO_DAY),
      ripening: String(ripeningClasses.length),
    },
  };
}

/** Everything that a search finds. */
export function searchRecords(all: Catalogue): SearchRecord[] {
  return [
    ...listedCultivars(all).map((entry, rank) => cultivarRecord(all, entry, rank)),
    ...all.guides.map((guide, rank) => guideRecord(all, guide, rank)),
  ];
}
