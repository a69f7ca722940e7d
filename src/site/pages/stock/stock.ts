/** The stock list: what a buyer compares about each lot, in order and in groups. */

import type { Catalogue, LotEntry } from '../../../core/catalogue.ts';
import { byDay } from '../../../core/days.ts';
import type { FormAnswer, FormState } from '../../../core/lots/answers.ts';
import { readyForms } from '../../../core/lots/readyOffers.ts';
import { priceInWords } from '../../../core/money.ts';
import { type Form, forms, type RipeningClass } from '../../../core/records/common.ts';
import { cultivarPath, lotPath } from '../../addresses/paths.ts';
import { type FruitMark, fruitMark } from '../../drawing/fruitMarks.ts';
import { memoize } from '../../memo.ts';
import { type Grouped, groupBy, type PagedList, paged } from '../../parts/paging.ts';
import { sentNow } from '../../parts/sentNow.ts';
import { briefState } from '../../words/briefState.ts';
import { sizeInWords } from '../../words/measures.ts';
import { speciesName } from '../../words/speciesName.ts';
import { type StateView, stateView } from '../../words/state.ts';
import { colorsInWords, formWords, lowerFirst, ripeningWords, sentence } from '../../words/words.ts';

export { speciesName } from '../../words/speciesName.ts';

/** Rows on one page of a list: about what prints on three sheets. */
export const rowsPerPage = 100;
/** The list of sold lots is one line a lot. */
const soldPerPage = 400;

/** One form of sale of a lot. */
export interface StockLine extends StateView {
  form: Form;
  formName: string;
  /** Null: no price for this form. */
  price: string | null;
  /** How it stands, for a cell of a list; null for what cannot be had. */
  brief: string | null;
}

export interface StockRow {
  lot: string;
  path: string;
  name: string;
  cultivar: string;
  cultivarPath: string;
  species: string;
  mark: FruitMark;
  /** The same at the scale of blocks of a list. */
  plate: FruitMark;
  /** Colors of the fruit in words, for people who do not see the small plate. */
  fruit: string;
  flavor: string;
  ripens: string;
  ripening: RipeningClass;
  size: string;
  left: number;
  lines: StockLine[];
}

export interface SoldRow {
  lot: string;
  path: string;
  name: string;
}

const flavorNames = memoize(
  (catalogue: Catalogue) => new Map(catalogue.yard.flavorClasses.map(({ id, name }) => [id, name])),
);

/** Name of the flavor class of a cultivar. */
export function flavorOf(catalogue: Catalogue, flavor: string): string {
  return flavorNames(catalogue).get(flavor) ?? flavor;
}

/** How one form of a lot stands today, with its price. */
export function stockLine(catalogue: Catalogue, entry: LotEntry, answer: FormAnswer): StockLine {
  const tier = entry.tiers[answer.form];
  return {
    form: answer.form,
    formName: formWords[answer.form],
    price: tier ? priceInWords(tier.answer.price) : null,
    brief: briefState(answer, sentNow(catalogue)[answer.form], catalogue.asOf),
    ...stateView(answer, catalogue.asOf, sentNow(catalogue)[answer.form]),
  };
}

const rowsOf = memoize((catalogue: Catalogue) =>
  memoize((entry: LotEntry) => rowOfForms(catalogue, entry, forms)),
);

/** The row of a lot with all its forms. */
export function stockRow(catalogue: Catalogue, entry: LotEntry): StockRow {
  return rowsOf(catalogue)(entry);
}

/** The row of a lot; only the forms asked for. */
function rowOfForms(catalogue: Catalogue, entry: LotEntry, shown: readonly Form[]): StockRow {
  const { lot, cultivar, species } = entry;
  return {
    lot: lot.id,
    path: lotPath(lot.id),
    name: cultivar.name,
    cultivar: cultivar.id,
    cultivarPath: cultivarPath(cultivar.id),
    species: speciesName(species),
    mark: fruitMark(catalogue, cultivar, species),
    plate: fruitMark(catalogue, cultivar, species, 'block'),
    fruit: colorsInWords(cultivar.fruit),
    flavor: flavorOf(catalogue, cultivar.flavor),
    ripens: ripeningWords[cultivar.ripening],
    ripening: cultivar.ripening,
    size: sizeInWords(entry),
    left: entry.stock.free,
    lines: entry.forms
      .filter(({ form }) => shown.includes(form))
      .map(answer => stockLine(catalogue, entry, answer)),
  };
}

/** Text order that no machine's language settings change. */
const collator = new Intl.Collator('en', { numeric: true });

function byName(a: LotEntry, b: LotEntry): number {
  return (
    collator.compare(speciesName(a.species), speciesName(b.species)) ||
    collator.compare(a.cultivar.name, b.cultivar.name) ||
    collator.compare(a.lot.id, b.lot.id)
  );
}

/** Lots that are not sold out, by species, cultivar and id. */
export const offered = memoize((catalogue: Catalogue) =>
  catalogue.lots.filter(({ soldOut }) => !soldOut).sort(byName),
);

/** Lots that are sold out, in the same order. */
export const sold = memoize((catalogue: Catalogue) =>
  catalogue.lots.filter(({ soldOut }) => soldOut).sort(byName),
);

function bySpecies<T>(entries: readonly LotEntry[], rowOf: (entry: LotEntry) => T): Grouped<T>[] {
  return [...groupBy(entries, ({ species }) => species.id)].map(([id, lots]) => ({
    id,
    heading: sentence(speciesName(lots[0]!.species)),
    botanical: lots[0]!.species.botanical,
    rows: lots.map(rowOf),
  }));
}

const readyOf = (entry: LotEntry) => readyForms(entry).length > 0;

/** Cultivars that have a lot ready before others of their species, and of a cultivar the lots that are ready first. */
function readyFirst(catalogue: Catalogue): LotEntry[] {
  const ready = new Set(
    offered(catalogue)
      .filter(readyOf)
      .map(({ cultivar }) => cultivar.id),
  );
  const last = (some: boolean) => (some ? 0 : 1);
  return [...offered(catalogue)].sort(
    (a, b) =>
      collator.compare(speciesName(a.species), speciesName(b.species)) ||
      last(ready.has(a.cultivar.id)) - last(ready.has(b.cultivar.id)) ||
      collator.compare(a.cultivar.name, b.cultivar.name) ||
      last(readyOf(a)) - last(readyOf(b)) ||
      collator.compare(a.lot.id, b.lot.id),
  );
}

/** Everything that can be had or is coming, by species. */
export const stockList = memoize(
  (catalogue: Catalogue): PagedList<StockRow> =>
    paged(
      bySpecies(readyFirst(catalogue), entry => stockRow(catalogue, entry)),
      rowsPerPage,
    ),
);

/** Sold lots, by species. */
export const soldList = memoize(
  (catalogue: Catalogue): PagedList<SoldRow> =>
    paged(
      bySpecies(sold(catalogue), ({ lot, cultivar }) => ({
        lot: lot.id,
        path: lotPath(lot.id),
        name: cultivar.name,
      })),
      soldPerPage,
    ),
);

/** Headings of a form's list, best first. */
export const stateHeadings: Record<FormState, string> = {
  ready: 'Ready',
  opens: 'Coming',
  look: 'Awaiting a check',
  blocked: 'Not available now',
};
const stateOrder: readonly FormState[] = ['ready', 'opens', 'look', 'blocked'];

function answerFor(entry: LotEntry, form: Form): FormAnswer | undefined {
  return entry.forms.find(answer => answer.form === form);
}

function openingDay(entry: LotEntry, form: Form): string {
  return answerFor(entry, form)?.range?.from ?? '';
}

/** Lots of one form by how they stand: ready first, then by the day they open. */
function listOfForm(catalogue: Catalogue, form: Form): PagedList<StockRow> {
  const entries = offered(catalogue).filter(entry => answerFor(entry, form));
  const byState = groupBy(entries, entry => answerFor(entry, form)!.state);
  const groups = stateOrder.map(state => {
    const lots = byState.get(state) ?? [];
    if (state === 'opens') {
      lots.sort((a, b) => byDay(openingDay(a, form), openingDay(b, form)) || byName(a, b));
    }
    return {
      id: state,
      heading: stateHeadings[state],
      botanical: null,
      rows: lots.map(lot => rowOfForms(catalogue, lot, [form])),
    };
  });
  return paged(groups, rowsPerPage);
}

/** The list of each form of sale. */
export const formLists = memoize((catalogue: Catalogue): Record<Form, PagedList<StockRow>> => {
  return Object.fromEntries(forms.map(form => [form, listOfForm(catalogue, form)])) as Record<
    Form,
    PagedList<StockRow>
  >;
});

const byCultivar = memoize((catalogue: Catalogue) =>
  groupBy(offered(catalogue), ({ cultivar }) => cultivar.id),
);

/** The other lots of the same cultivar that are not sold out. */
export function otherLots(catalogue: Catalogue, entry: LotEntry): StockRow[] {
  const lots = byCultivar(catalogue).get(entry.cultivar.id) ?? [];
  return lots.filter(({ lot }) => lot.id !== entry.lot.id).map(other => stockRow(catalogue, other));
}

/** Size of a lot and how many are left: `#1 pot, 34 in (86 cm). 7 left.` */
export function lotSize(entry: LotEntry): string {
  return `${sizeInWords(entry)}. ${entry.soldOut ? 'Sold' : `${entry.stock.free} left`}.`;
}

/** One line about a lot, which is also what a search shows: size, forms with readiness and price, how many are left. */
export function lotSummary(catalogue: Catalogue, entry: LotEntry): string {
  const row = stockRow(catalogue, entry);
  if (entry.soldOut) return `${sentence(row.size)}. Sold.`;
  const lines = row.lines.map(({ formName, words, price }) =>
    [`${formName}: ${lowerFirst(words)}`, ...(price === null ? [] : [price])].join(', '),
  );
  return `${sentence(row.size)}. ${lines.join('. ')}. ${row.left} left.`;
}
