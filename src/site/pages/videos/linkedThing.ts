/** What a chapter links to, and how that stands today: a reader who comes from an old video must not be sent after a tree that is gone. */

import { guideParts } from '../../../core/care/guideHeadings.ts';
import { type Catalogue, type CultivarEntry, type LotEntry, leadingForm } from '../../../core/catalogue.ts';
import { readyOffers } from '../../../core/lots/readyOffers.ts';
import { priceInWords } from '../../../core/money.ts';
import type { Place } from '../../../core/records/place.ts';
import type { ChapterLink } from '../../../core/records/video.ts';
import { guidePath, placeGuidePath } from '../../addresses/guidePaths.ts';
import { cultivarPath, lotPath, placePath } from '../../addresses/paths.ts';
import { memoize } from '../../memo.ts';
import { alternativeRows } from '../../parts/alternatives.ts';
import type { StateView } from '../../words/state.ts';
import { countInWords, lowerFirst, ripeningWords, sentence } from '../../words/words.ts';
import { stockState } from '../cultivars/cultivar.ts';
import { whereabouts } from '../places/place.ts';
import { flavorOf, speciesName, stockLine } from '../stock/stock.ts';

/** Where a reader goes instead, or with their own place. */
export interface WayOn {
  /** Words before the link. */
  words: string;
  path: string;
  name: string;
  state: StateView | null;
  /** The guide whose dates for the visitor's place it leads to; left out where it names no guide. */
  guide?: string;
}

export interface LinkedThing {
  /** What it is: `Lot`, `Cultivar`, `Guide`, `Place`. */
  kind: string;
  name: string;
  /** Null when it has no page today. */
  path: string | null;
  state: StateView | null;
  /** One line about it; empty where the name says enough. */
  note: string;
  /** The price within the note, with the comma before it, which is left out for readers to whom nothing is sent. */
  priced?: string;
  on: WayOn[];
}

interface ById {
  lots: ReadonlyMap<string, LotEntry>;
  cultivars: ReadonlyMap<string, CultivarEntry>;
}

const byId = memoize(
  ({ lots, cultivars }: Catalogue): ById => ({
    lots: new Map(lots.map(entry => [entry.lot.id, entry])),
    cultivars: new Map(cultivars.map(entry => [entry.cultivar.id, entry])),
  }),
);

/** How a lot stands by the form it is shown with; a lot that is sold says only that. */
function lotState(entry: LotEntry, all: Catalogue): { state: StateView; terms: string; priced: string } {
  const leading = leadingForm(entry);
  if (entry.soldOut || leading === null)
    return { state: { state: 'blocked', words: 'Sold' }, terms: '', priced: '' };
  const { formName, price, state, words } = stockLine(all, entry, leading);
  return {
    state: { state, words },
    terms: price === null ? formName : `${formName}, ${price}`,
    priced: price === null ? '' : `, ${price}`,
  };
}

function lotName({ lot, cultivar }: LotEntry): string {
  return `${cultivar.name}, lot ${lot.id}`;
}

/** The next lot of the cultivar that is not sold; where there is none that can be had, the nearest other cultivar too. */
function waysOn(all: Catalogue, cultivar: CultivarEntry, except: string | null): WayOn[] {
  const ways: WayOn[] = [];
  const next = cultivar.lots.find(({ lot, soldOut }) => !soldOut && lot.id !== except);
  if (next !== undefined) {
    const { state } = lotState(next, all);
    ways.push({ words: 'Next:', path: lotPath(next.lot.id), name: lotName(next), state });
    if (state.state !== 'blocked') return ways;
  }
  const nearest = alternativeRows(all, cultivar.cultivar)[0];
  if (nearest !== undefined) {
    ways.push({ words: 'Nearest to it:', path: nearest.path, name: nearest.name, state: nearest.stock });
  }
  return ways;
}

function lotThing(all: Catalogue, id: string): LinkedThing {
  const entry = byId(all).lots.get(id);
  if (entry === undefined) {
    return { kind: 'Lot', name: `Lot ${id}`, path: null, state: null, note: 'Not yet started.', on: [] };
  }
  const { state, terms, priced } = lotState(entry, all);
  const left = entry.soldOut ? 'None left' : `${entry.stock.free} left`;
  const note = [speciesName(entry.species), terms, left].filter(words => words !== '').join('. ');
  const gone = state.state === 'blocked';
  return {
    kind: 'Lot',
    name: lotName(entry),
    path: lotPath(id),
    state,
    note: `${sentence(note)}.`,
    priced,
    on: gone ? waysOn(all, byId(all).cultivars.get(entry.cultivar.id)!, id) : [],
  };
}

function cultivarThing(all: Catalogue, id: string): LinkedThing {
  const entry = byId(all).cultivars.get(id)!;
  const { cultivar, species, lots } = entry;
  const offered = lots.filter(({ soldOut }) => !soldOut).length;
  const { lots: ready, lowest, pricesDiffer } = readyOffers(lots);
  const price = lowest === null ? '' : `, ${pricesDiffer ? 'from ' : ''}${priceInWords(lowest)}`;
  const stock = `${countInWords(offered, 'lot')} on the list${ready === 0 ? '' : `, ${ready} ready${price}`}`;
  const traits = `${lowerFirst(flavorOf(all, cultivar.flavor))}, ripens ${ripeningWords[cultivar.ripening]}`;
  return {
    kind: 'Cultivar',
    name: cultivar.name,
    path: cultivarPath(id),
    state: stockState(entry, all),
    note: `${sentence(speciesName(species))}: ${traits}. ${sentence(stock)}.`,
    priced: ready === 0 ? '' : price,
    on: offered === 0 ? waysOn(all, entry, null) : [],
  };
}

function guideThing(all: Catalogue, { id, part }: ChapterLink, place: Place | null): LinkedThing {
  const guide = all.guides.find(one => one.id === id)!;
  const heading = part === null ? undefined : guideParts(guide).find(one => one.id === part);
  const fragment = heading === undefined ? '' : `#${heading.id}`;
  return {
    kind: 'Guide',
    name: heading === undefined ? guide.title : `${guide.title}: ${heading.text}`,
    path: guidePath(id) + fragment,
    state: null,
    note: heading === undefined ? guide.summary : '',
    on: [
      {
        words: 'With dates:',
        ...(place === null
          ? { path: `${guidePath(id)}#places`, name: 'choose your place', guide: guidePath(id) + fragment }
          : { path: placeGuidePath(id, place.id) + fragment, name: place.name }),
        state: null,
      },
    ],
  };
}

function placeThing(place: Place): LinkedThing {
  return {
    kind: 'Place',
    name: place.name,
    path: placePath(place.id),
    state: null,
    note: `${whereabouts(place) || place.name}: its freezes, its season, and what ripens there.`,
    on: [],
  };
}

/** What the links of one chapter lead to today. Where they name a place, its guides are offered with the dates of that place. */
export function linkedThings(all: Catalogue, links: readonly ChapterLink[]): LinkedThing[] {
  const placeOf = (id: string) => all.places.find(place => place.id === id)!;
  const named = links.find(({ kind }) => kind === 'place');
  const place = named === undefined ? null : placeOf(named.id);
  return links.map(link => {
    if (link.kind === 'lot') return lotThing(all, link.id);
    if (link.kind === 'cultivar') return cultivarThing(all, link.id);
    return link.kind === 'guide' ? guideThing(all, link, place) : placeThing(placeOf(link.id));
  });
}
