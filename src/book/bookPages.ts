/** The pages of the private book: plain tables for a screen and for paper, without scripts, and asked of no search engine. */

import type { Catalogue } from '../core/catalogue.ts';
import { dayInWords } from '../core/days.ts';
import { priceInWords } from '../core/money.ts';
import { type Html, html, safeHtml } from '../site/html.ts';
import { cartonViews } from '../site/pages/lots/lot.ts';
import { sentNow } from '../site/parts/sentNow.ts';
import { stateView } from '../site/words/state.ts';
import { formWords } from '../site/words/words.ts';
import type { YardBook } from './book.ts';

/** Stands on every page, so that a page of the book is known wherever it turns up. */
export const BOOK_MARK = 'Private book of the yard';

const styles = `body{font:15px/1.45 system-ui,sans-serif;margin:1.5rem;max-width:75rem;color:#1c1c1c;background:#fff}
nav a{margin-right:1rem}table{border-collapse:collapse;width:100%;margin:1rem 0}th,td{border:1px solid #999;padding:.3rem .5rem;text-align:left;vertical-align:top}
th{background:#eee}td.n{text-align:right;font-variant-numeric:tabular-nums}caption{text-align:left;font-weight:600}
@media print{nav{display:none}thead{display:table-header-group}tr{break-inside:avoid}}`;

const pageTitles = {
  index: 'What waits for what',
  prices: 'Prices and costs',
  orders: 'Set aside and waiting',
  sold: 'Sold',
  stale: 'To be looked at again',
  cartons: 'Cartons',
} as const;
type PageName = keyof typeof pageTitles;

const table = (caption: string, heads: readonly string[], rows: readonly Html[]): Html =>
  rows.length === 0
    ? html`<p>${caption}: nothing.</p>`
    : html`<table><caption>${caption}</caption><thead><tr>${heads.map(head => html`<th scope="col">${head}</th>`)}</tr></thead><tbody>${rows}</tbody></table>`;

const cells = (...values: readonly (string | number)[]): Html =>
  html`<tr>${values.map(value => (typeof value === 'number' ? html`<td class="n">${value}</td>` : html`<td>${value}</td>`))}</tr>`;

function page(name: PageName, all: Catalogue, body: readonly Html[]): string {
  const links = (Object.keys(pageTitles) as PageName[]).map(
    each => html`<a href="${each}.html">${pageTitles[each]}</a> `,
  );
  return html`<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><meta name="robots" content="noindex,nofollow"><title>${pageTitles[name]} - ${all.yard.name}</title><style>${safeHtml(styles)}</style></head><body><p>${BOOK_MARK}: ${all.yard.name}, ${dayInWords(all.asOf)}. Not to be published.</p><nav>${links}</nav><h1>${pageTitles[name]}</h1>${body}</body></html>
`.html;
}

const percent = (share: number) => `${Math.round(share * 100)} %`;

function waiting(all: Catalogue, { waits }: YardBook): Html[] {
  const rows = waits.map(({ entry, answer }) => {
    const { words } = stateView(answer, all.asOf, sentNow(all)[answer.form]);
    const why = answer.because
      .map(({ text }) => text)
      .slice(0, 2)
      .join(' ');
    return cells(
      entry.lot.id,
      entry.cultivar.name,
      entry.stock.left,
      `${formWords[answer.form]}: ${words}`,
      entry.lookNext ?? '',
      why,
    );
  });
  return [
    table(
      'Lots with plants left, what is ready first',
      ['Lot', 'Cultivar', 'Left', 'Comes first', 'Look at next', 'Why'],
      rows,
    ),
  ];
}

function prices({ yard: { currency } }: Catalogue, book: YardBook): Html[] {
  const money = (minor: number | null) => (minor === null ? '' : priceInWords({ minor, currency }));
  const rows = book.prices.map(({ entry, form, priceMinor, floorMinor, overFloor, overrideRungs }) =>
    cells(
      entry.lot.id,
      entry.cultivar.name,
      formWords[form],
      money(priceMinor),
      money(floorMinor),
      overFloor === null ? '' : percent(overFloor),
      overrideRungs === null ? '' : `${overrideRungs > 0 ? '+' : ''}${overrideRungs}`,
    ),
  );
  const heads = [
    'Lot',
    'Cultivar',
    'Form',
    'Price',
    'Cost floor',
    'Price above the floor',
    'Own price, rungs from the computed one',
  ];
  return [table('One plant', heads, rows)];
}

function orders({ people }: YardBook): Html[] {
  const set = people.flatMap(({ name, reserved }) =>
    reserved.map(({ lot, plants, until, overdue }) =>
      cells(name, lot, plants, until === null ? '' : dayInWords(until), overdue ? 'past its day' : ''),
    ),
  );
  const wait = people.flatMap(({ name, waiting: asked }) =>
    asked.map(({ cultivar, plants, since, ready }) =>
      cells(name, cultivar, plants, dayInWords(since), ready.join(', ')),
    ),
  );
  return [
    table('Set aside', ['Who', 'Lot', 'Plants', 'Until', ''], set),
    table('Waiting', ['Who', 'Cultivar', 'Plants', 'Since', 'Ready now'], wait),
  ];
}

function sold({ yard: { currency } }: Catalogue, book: YardBook): Html[] {
  const money = (minor: number | null) => (minor === null ? '' : priceInWords({ minor, currency }));
  const day = (each: string | null) => (each === null ? '' : dayInWords(each as never));
  const totals = book.seasons.map(({ season, species, plants, minor, unpriced }) =>
    cells(season, species, plants, money(minor), unpriced),
  );
  const rows = book.sold.map(({ entry, sold: count, writtenDown, meanMinor, first, last, perWeek }) =>
    cells(
      entry.lot.id,
      entry.cultivar.name,
      count,
      writtenDown,
      money(meanMinor),
      day(first),
      day(last),
      perWeek === null ? '' : perWeek.toFixed(1),
    ),
  );
  const heads = [
    'Lot',
    'Cultivar',
    'Sold by the counts',
    'Written down',
    'Mean price',
    'First',
    'Last',
    'Plants a week',
  ];
  return [
    table(
      'By season, July to June, from the sales written down',
      ['Season', 'Species', 'Plants', 'Takings', 'Plants without a price'],
      totals,
    ),
    table('By lot', heads, rows),
  ];
}

function stale({ yard }: Catalogue, book: YardBook): Html[] {
  const days = (value: number | null) => (value === null ? 'never' : value);
  const rows = book.stale.map(({ entry, countedDaysAgo, seenDaysAgo }) =>
    cells(entry.lot.id, entry.cultivar.name, days(countedDaysAgo), days(seenDaysAgo), entry.lookNext ?? ''),
  );
  return [
    table(
      `Not counted or not looked at for more than ${yard.walkFreshDays} days`,
      ['Lot', 'Cultivar', 'Counted, days ago', 'Seen, days ago', 'Look at next'],
      rows,
    ),
  ];
}

function cartons({ lots }: Catalogue): Html[] {
  const rows = lots
    .filter(({ soldOut }) => !soldOut)
    .flatMap(entry =>
      cartonViews(entry).map(({ formName, carton, cutBack, weight, billable }) =>
        cells(entry.lot.id, entry.cultivar.name, formName, carton, cutBack, weight, billable.join('; ')),
      ),
    );
  return [
    table('By lot and form', ['Lot', 'Cultivar', 'Form', 'Carton', 'Cut back to', 'Weight', 'Billed'], rows),
  ];
}

/** File name to text of every page of the book. */
export function bookPages(all: Catalogue, book: YardBook): Map<string, string> {
  const bodies: Record<PageName, readonly Html[]> = {
    index: waiting(all, book),
    prices: prices(all, book),
    orders: orders(book),
    sold: sold(all, book),
    stale: stale(all, book),
    cartons: cartons(all),
  };
  return new Map(
    (Object.keys(bodies) as PageName[]).map(name => [`${name}.html`, page(name, all, bodies[name])]),
  );
}
