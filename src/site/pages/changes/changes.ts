/** What changed on the list, in words: for the page of changes and for the feeds. */

import type { Catalogue, LotEntry } from '../../../core/catalogue.ts';
import { type Day, dayInWords } from '../../../core/days.ts';
import type { PriceMove, StockEvent } from '../../../core/history/event.ts';
import { priceInWords } from '../../../core/money.ts';
import type { EventKind } from '../../../core/records/change.ts';
import type { Form, Reason } from '../../../core/records/common.ts';
import type { Feed, FeedEntry } from '../../../outputs/feed.ts';
import type { AddressOf } from '../../../outputs/openFile.ts';
import { xmlText } from '../../../outputs/xml.ts';
import { changesPath, lotPath } from '../../addresses/paths.ts';
import { memoize } from '../../memo.ts';
import { groupBy } from '../../parts/paging.ts';
import {
  countInWords,
  formWords,
  listInWords,
  lowerFirst,
  sentence,
  standingInWords,
} from '../../words/words.ts';
import { speciesName } from '../stock/stock.ts';

export const atomPath = '/changes.atom';
export const jsonFeedPath = '/changes.json';
export const changesTitle = 'What changed on the list';

const kindWords: Record<EventKind, string> = {
  opened: 'opened',
  back: 'back',
  ready: 'ready',
  price: 'price',
  'sold-out': 'sold out',
};

const formsInWords = (forms: readonly Form[]) => listInWords(forms.map(form => lowerFirst(formWords[form])));

function priceHeading(moves: readonly PriceMove[]): string {
  const up = moves.filter(({ from, to }) => to.minor > from.minor).length;
  if (up === moves.length) return 'Price up';
  return up === 0 ? 'Price down' : 'Prices moved';
}

/** The change itself, without the lot: `Ready bare-root`. */
function heading({ kind, forms, moves }: StockEvent): string {
  if (kind === 'opened') return 'On the list';
  if (kind === 'sold-out') return 'Sold out';
  if (kind === 'price') return priceHeading(moves);
  if (kind === 'ready') return `Ready ${formsInWords(forms)}`;
  return forms.length === 0 ? 'Some again' : `Some again, ready ${formsInWords(forms)}`;
}

/** `Leafed in a pot $32, was $25`; forms whose price moved alike are told together. */
function movesInWords(moves: readonly PriceMove[]): string {
  const alike = groupBy(moves, ({ from, to }) => `${priceInWords(to)}, was ${priceInWords(from)}`);
  return [...alike]
    .map(([words, same]) => `${sentence(formsInWords(same.map(({ form }) => form)))} ${words}`)
    .join('; ');
}

/** What goes with the heading: how many are left, or what moved. */
function detail({ kind, left, moves }: StockEvent): string {
  if (kind === 'price') return movesInWords(moves);
  if (kind === 'opened') return `${countInWords(left, 'plant')} started`;
  return kind === 'sold-out' ? 'None left' : `${left} left`;
}

const entriesByLot = memoize(
  (catalogue: Catalogue): ReadonlyMap<string, LotEntry> =>
    new Map(catalogue.lots.map(entry => [entry.lot.id, entry])),
);

/** `Bellwether fig, lot l26-01`. */
function lotName(catalogue: Catalogue, event: StockEvent): string {
  const { cultivar, species } = entriesByLot(catalogue).get(event.lot)!;
  return `${cultivar.name} ${speciesName(species)}, lot ${event.lot}`;
}

/** Lots to which the same happened on a day, for the same reasons. */
export interface Change {
  kind: EventKind;
  heading: string;
  lots: { path: string; name: string; detail: string }[];
  because: Reason[];
}

export interface DayOfChanges {
  day: Day;
  words: string;
  changes: Change[];
}

/** Changes by day, newest first. */
export function changesByDay(catalogue: Catalogue, events: readonly StockEvent[]): DayOfChanges[] {
  return [...groupBy(events, ({ day }) => day)].map(([on, ofDay]) => {
    const alike = groupBy(ofDay, event =>
      [heading(event), ...event.because.map(({ text }) => text)].join('\n'),
    );
    const day = on as Day;
    const changes = [...alike.values()].map(same => ({
      kind: same[0]!.kind,
      heading: heading(same[0]!),
      lots: same.map(event => ({
        path: lotPath(event.lot),
        name: lotName(catalogue, event),
        detail: detail(event),
      })),
      because: same[0]!.because,
    }));
    return { day, words: dayInWords(day), changes };
  });
}

function entryHtml(summary: string, because: readonly Reason[]): string {
  const reasons = because.map(
    ({ text, standing, source }) =>
      `<li>${xmlText(text)} (${xmlText(standingInWords(standing, source))})</li>`,
  );
  return `<p>${xmlText(summary)}</p><ul>${reasons.join('')}</ul>`;
}

function feedEntry(catalogue: Catalogue, event: StockEvent, addressOf: AddressOf): FeedEntry {
  const summary = `${heading(event)}. ${detail(event)}.`;
  return {
    id: event.id,
    title: `${lotName(catalogue, event)}: ${lowerFirst(heading(event))}`,
    day: event.day,
    url: addressOf(lotPath(event.lot)),
    summary,
    html: entryHtml(summary, event.because),
    tag: kindWords[event.kind],
  };
}

/** The feed of changes, to be written as Atom or as JSON Feed. */
export function changesFeed(catalogue: Catalogue, events: readonly StockEvent[], addressOf: AddressOf): Feed {
  const { yard } = catalogue;
  return {
    id: `https://${catalogue.namingHost}${changesPath}`,
    title: `${yard.name}: ${lowerFirst(changesTitle)}`,
    subtitle: 'Lots that opened, became ready, moved in price, sold out or came back.',
    author: yard.name,
    home: addressOf('/'),
    page: addressOf(changesPath),
    atom: addressOf(atomPath),
    json: addressOf(jsonFeedPath),
    entries: events.map(event => feedEntry(catalogue, event, addressOf)),
  };
}
