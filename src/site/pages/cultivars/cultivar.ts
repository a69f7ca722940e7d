/** The cultivar list and a cultivar's page. */

import type { Catalogue, CultivarEntry } from '../../../core/catalogue.ts';
import { byDay } from '../../../core/days.ts';
import type { FormState } from '../../../core/lots/answers.ts';
import { readyOffers } from '../../../core/lots/readyOffers.ts';
import { type RipeningClass, ripeningClasses } from '../../../core/records/common.ts';
import type { Cultivar, Trial } from '../../../core/records/cultivar.ts';
import { degreesCToF, roundTo } from '../../../core/units.ts';
import { cultivarPath, flavorPath, ripeningPath } from '../../addresses/paths.ts';
import { type FruitMark, fruitMark } from '../../drawing/fruitMarks.ts';
import { memoize } from '../../memo.ts';
import { groupBy, type PagedList, paged } from '../../parts/paging.ts';
import { listedCultivars } from '../../parts/raised.ts';
import { type SentNow, sentNow } from '../../parts/sentNow.ts';
import { fruitSizeInWords } from '../../words/measures.ts';
import { type StateView, stateView } from '../../words/state.ts';
import {
  airWords,
  colorsInWords,
  countInWords,
  cropWords,
  eyeWords,
  listInWords,
  pollinationShort,
  pollinationWords,
  rainWords,
  ripeningWords,
  seasonWords,
  sentence,
  shapeWords,
  splitWords,
  summerWords,
  trialRipenedWords,
  trialWinterWords,
  vigourWords,
  winterWords,
} from '../../words/words.ts';
import type { Fact } from '../lots/lot.ts';
import { rowsPerPage, speciesName } from '../stock/stock.ts';

export interface CultivarRow {
  id: string;
  path: string;
  name: string;
  mark: FruitMark;
  flavor: string;
  ripens: string;
  ripening: RipeningClass;
  fruit: string;
  size: string;
  crops: string;
  pollination: string;
  stock: StateView;
}

const bestFirst: readonly FormState[] = ['ready', 'opens', 'look', 'blocked'];

/** Of forms that are ready, one that leaves now stands before one that rests. */
const sendingRank = ({ state }: SentNow) => ['open', 'by-forecast', 'closed'].indexOf(state);

const stockStates = memoize((all: Catalogue) =>
  memoize((entry: CultivarEntry): StateView => {
    const answers = entry.lots.filter(({ soldOut }) => !soldOut).flatMap(({ forms }) => forms);
    const sent = sentNow(all);
    for (const state of bestFirst) {
      const found = answers
        .filter(answer => answer.state === state)
        .sort(
          (a, b) =>
            byDay(a.range?.from ?? '', b.range?.from ?? '') ||
            sendingRank(sent[a.form]) - sendingRank(sent[b.form]),
        )[0];
      if (found) return stateView(found, all.asOf, sent[found.form]);
    }
    return { state: 'blocked', words: entry.lots.length === 0 ? 'None raised yet' : 'Sold' };
  }),
);

/** The best any lot of a cultivar stands today. */
export function stockState(entry: CultivarEntry, catalogue: Catalogue): StateView {
  return stockStates(catalogue)(entry);
}

function cultivarRow(entry: CultivarEntry, catalogue: Catalogue): CultivarRow {
  const { cultivar, flavor } = entry;
  const { fruit } = cultivar;
  return {
    id: cultivar.id,
    path: cultivarPath(cultivar.id),
    name: cultivar.name,
    mark: fruitMark(catalogue, cultivar, entry.species),
    flavor: flavor.name,
    ripens: ripeningWords[cultivar.ripening],
    ripening: cultivar.ripening,
    fruit: colorsInWords(fruit),
    size: fruitSizeInWords(fruit.lengthMm, fruit.widthMm),
    crops: listInWords(cultivar.crops.map(crop => cropWords[crop])),
    pollination: pollinationShort[cultivar.pollination],
    stock: stockState(entry, catalogue),
  };
}

const rowsOf = memoize((catalogue: Catalogue) =>
  memoize((entry: CultivarEntry) => cultivarRow(entry, catalogue)),
);

function bySpecies(catalogue: Catalogue, listed: readonly CultivarEntry[]): PagedList<CultivarRow> {
  const groups = [...groupBy(listed, ({ species }) => species.id)].map(([id, entries]) => ({
    id,
    heading: sentence(speciesName(entries[0]!.species)),
    botanical: entries[0]!.species.botanical,
    rows: entries.map(rowsOf(catalogue)),
  }));
  groups.sort((a, b) => a.heading.localeCompare(b.heading, 'en'));
  return paged(groups, rowsPerPage);
}

/** All cultivars, by species and name. */
export const cultivarList = memoize((catalogue: Catalogue) =>
  bySpecies(catalogue, listedCultivars(catalogue)),
);

/** A list of the cultivars that have one trait in common. */
export interface TraitList {
  id: string;
  /** Where its first page is. */
  path: string;
  name: string;
  /** The name where it stands alone. */
  heading: string;
  /** One sentence; empty where the yard says nothing. */
  means: string;
  list: PagedList<CultivarRow>;
}

/** The cultivars of each flavor class of the yard, also of one that none has today: its address stays. */
export const flavorLists = memoize((catalogue: Catalogue): TraitList[] =>
  catalogue.yard.flavorClasses.map(({ id, name, means }) => ({
    id,
    path: flavorPath(id),
    name,
    heading: name,
    means,
    list: bySpecies(
      catalogue,
      listedCultivars(catalogue).filter(({ cultivar }) => cultivar.flavor === id),
    ),
  })),
);

/** The cultivars of each ripening class, earliest first. */
export const ripeningLists = memoize((catalogue: Catalogue): TraitList[] =>
  ripeningClasses.map(id => ({
    id,
    path: ripeningPath(id),
    name: sentence(ripeningWords[id]),
    heading: `Ripening ${ripeningWords[id].toLowerCase()}`,
    means: 'Of the main crop, compared with others of the species; where you are decides the date',
    list: bySpecies(
      catalogue,
      listedCultivars(catalogue).filter(({ cultivar }) => cultivar.ripening === id),
    ),
  })),
);

function hardinessInWords(offsetC: number): string {
  if (offsetC === 0) return 'As the species';
  const size = Math.abs(offsetC);
  const inBoth = `${roundTo(degreesCToF(size), 1)} F (${roundTo(size, 0.5)} C)`;
  return `${inBoth} ${offsetC < 0 ? 'hardier' : 'less hardy'} than the species`;
}

/** Traits in the order a buyer compares them. */
export function cultivarFacts({ cultivar, flavor }: CultivarEntry): Fact[] {
  const { fruit } = cultivar;
  const facts: Fact[] = [
    { label: 'Flavor', value: `${flavor.name}: ${flavor.means}` },
    { label: 'Ripens', value: sentence(ripeningWords[cultivar.ripening]) },
    { label: 'Crops', value: sentence(listInWords(cultivar.crops.map(crop => cropWords[crop]))) },
    { label: 'Pollination', value: pollinationWords[cultivar.pollination] },
    { label: 'Color', value: colorsInWords(fruit) },
    {
      label: 'Fruit',
      value: `${sentence(shapeWords[fruit.shape])}, ${fruitSizeInWords(fruit.lengthMm, fruit.widthMm)}`,
    },
    { label: 'In rain', value: `${sentence(rainWords[fruit.rain])}; ${splitWords[fruit.splits]}` },
  ];
  if (fruit.eye !== 'none') facts.push({ label: 'Eye', value: sentence(eyeWords[fruit.eye]) });
  facts.push(
    { label: 'Growth', value: sentence(vigourWords[cultivar.vigour]) },
    { label: 'Hardiness', value: hardinessInWords(cultivar.hardinessOffsetC) },
  );
  if (cultivar.synonyms.length > 0) {
    facts.push({ label: 'Also called', value: listInWords(cultivar.synonyms) });
  }
  if (cultivar.origin !== null) facts.push({ label: 'Origin', value: cultivar.origin });
  return facts;
}

/** The kinds of place a cultivar is meant for, as the grower knows it. */
export function suitsFacts({ suits }: Pick<Cultivar, 'suits'>): Fact[] {
  const words = <T extends string>(classes: readonly T[], named: Record<T, string>) =>
    sentence(
      listInWords(
        classes.map(name => named[name]),
        'or',
      ),
    );
  return [
    { label: 'Winters', value: words(suits.winter, winterWords) },
    { label: 'Seasons', value: words(suits.season, seasonWords) },
    ...(suits.summer ? [{ label: 'Summer heat', value: words(suits.summer, summerWords) }] : []),
    { label: 'Summer air', value: words(suits.air, airWords) },
  ];
}

export interface TrialView {
  where: string;
  kind: string;
  years: string;
  winter: string;
  ripened: string;
  note: string | null;
}

/** One trial as a line of the table. */
export function trialView(trial: Trial): TrialView {
  const { winter, season, summer, air } = trial.class;
  const heat = summer === null ? '' : `, ${summerWords[summer]} summers`;
  return {
    where: trial.where,
    kind: `${winterWords[winter]} winters, ${seasonWords[season]} season${heat}, ${airWords[air]} air`,
    years: trial.from === trial.to ? String(trial.from) : `${trial.from} to ${trial.to}`,
    winter: sentence(trialWinterWords[trial.winter]),
    ripened: sentence(`${cropWords[trial.crop]}, ${trialRipenedWords[trial.ripened]}`),
    note: trial.note,
  };
}

/** One line under the name, which is also what a search shows: flavor, ripening, fruit, stock. */
export function cultivarSummary(entry: CultivarEntry, catalogue: Catalogue): string {
  const { cultivar, flavor, lots } = entry;
  const stock = stockState(entry, catalogue);
  const left = lots.reduce((sum, { stock: count, soldOut }) => sum + (soldOut ? 0 : count.free), 0);
  const ready = readyOffers(lots).trees;
  const trees =
    ready > 0
      ? `, ${countInWords(ready, 'tree')}${left > ready ? `; ${left - ready} more to come` : ''}`
      : left > 0
        ? `, ${countInWords(left, 'tree')} to come`
        : '';
  return `${flavor.name}; ripens ${ripeningWords[cultivar.ripening]}. ${stock.words}${trees}.`;
}
