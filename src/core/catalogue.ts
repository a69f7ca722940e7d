/** The one value every page, feed and label is made from. */

import { assignCodes } from './addresses/codes.ts';
import { type EarlierParts, earlierParts } from './addresses/earlierParts.ts';
import { firstAddresses } from './addresses/firstNames.ts';
import { formerClimates } from './addresses/formerClimates.ts';
import { ledgerOf } from './addresses/ledger.ts';
import { recordAddress } from './addresses/paths.ts';
import { figuresOfPlace, withDailyRecord } from './climate/place.ts';
import { climateKindId, climateKindOf } from './climate/placeClass.ts';
import type { ClimateSummary } from './climate/summary.ts';
import type { Day } from './days.ts';
import { answerLot, lotBench } from './lots/answerLot.ts';
import type { FormAnswer, LotAnswers, ScarcityClass, StockCount } from './lots/answers.ts';
import { homeOutlook } from './lots/outlook.ts';
import { noSupply, type Supply, scarcityOf, withLot } from './lots/scarcity.ts';
import { stockOf } from './lots/stock.ts';
import { indexWalks } from './lots/walkIndex.ts';
import { namingHost } from './records/change.ts';
import { type Answer, forms } from './records/common.ts';
import type { Cultivar } from './records/cultivar.ts';
import { type Guide, guideKinds } from './records/guide.ts';
import type { Lot } from './records/lot.ts';
import type { Place } from './records/place.ts';
import type { Records } from './records/records.ts';
import type { Species } from './records/species.ts';
import type { Video } from './records/video.ts';
import type { Yard } from './records/yard.ts';

/** The yard without its costs. */
export type PublicYard = Omit<Yard, 'costs'>;
/** A cultivar without the requests waiting for it. */
export type PublicCultivar = Omit<Cultivar, 'requests'>;

export interface LotEntry extends LotAnswers {
  lot: Lot;
  cultivar: PublicCultivar;
  species: Species;
  /** Nothing left and nothing coming: the page stays and says so. */
  soldOut: boolean;
}

export interface CultivarEntry {
  cultivar: PublicCultivar;
  species: Species;
  flavor: { id: string; name: string; means: string };
  /** Lots of this cultivar, those with a form ready first, then by the day they open, then by id. */
  lots: LotEntry[];
}

export interface Catalogue {
  asOf: Day;
  yard: PublicYard;
  home: Place;
  species: Species[];
  /** By name. */
  cultivars: CultivarEntry[];
  /** By id. */
  lots: LotEntry[];
  /** By id; the monthly figures of a place with a daily record are filled in from it. */
  places: Place[];
  /** Climate of each place by its id. */
  climates: ReadonlyMap<string, ClimateSummary>;
  /** In the order of their kinds, which is about the order in which a buyer needs them, then by id. */
  guides: Guide[];
  /** Newest first; those of one day by id. */
  videos: Video[];
  /** The code of the short address of every lot, cultivar, guide and video: `/lots/26-layer-01/` to `3kfd`. */
  codes: ReadonlyMap<string, string>;
  /** The address under which a renamed record was first published, by its address of today. */
  firstAddresses: ReadonlyMap<string, string>;
  /** The domain in the ids of feeds and calendars; it stays when the site moves. */
  namingHost: string;
  /** Parts of pages that have another name now, by page. */
  earlierParts: ReadonlyMap<string, EarlierParts>;
  /** Names of kinds of climate whose page was published and that none of the places has now. */
  formerClimates: readonly string[];
}

/** Orders text by code unit, the same on every machine. */
function byText<T>(textOf: (item: T) => string): (a: T, b: T) => number {
  return (a, b) => {
    const [left, right] = [textOf(a), textOf(b)];
    return left < right ? -1 : Number(left > right);
  };
}

function newestFirst(a: Video, b: Video): number {
  return a.date === b.date ? byText<Video>(({ id }) => id)(a, b) : Number(a.date < b.date) * 2 - 1;
}

function found<T>(records: ReadonlyMap<string, T>, id: string, what: string): T {
  const record = records.get(id);
  if (record === undefined) throw new Error(`no ${what} "${id}": the records were not checked`);
  return record;
}

const stateOrder = { ready: 0, opens: 1, look: 2, blocked: 3 } as const;

/**
 * The form a lot is shown with: the first that is ready, in the order leafed, dormant, bare-root; else the one that opens soonest;
 * else one that waits for a look; else the first. Null only for a lot that may be sold in no form.
 */
export function leadingForm(entry: Pick<LotAnswers, 'forms'>): FormAnswer | null {
  const rank = (answer: FormAnswer) =>
    `${stateOrder[answer.state]} ${answer.range?.from ?? ''} ${answer.range?.to ?? ''} ${forms.indexOf(answer.form)}`;
  return [...entry.forms].sort(byText(rank))[0] ?? null;
}

function lotOrder(entry: LotEntry): string {
  const leading = leadingForm(entry);
  return `${leading ? stateOrder[leading.state] : 4} ${leading?.range?.from ?? ''} ${entry.lot.id}`;
}

/** What the yard has of each cultivar, and raised and sold in the last two seasons. */
function suppliesOf(
  lots: readonly Lot[],
  stocks: ReadonlyMap<string, StockCount>,
  asOf: Day,
): Map<string, Supply> {
  const supplies = new Map<string, Supply>();
  for (const lot of lots) {
    const supply = supplies.get(lot.cultivar) ?? noSupply;
    supplies.set(lot.cultivar, withLot(supply, lot, stocks.get(lot.id)!, asOf));
  }
  return supplies;
}

function publicCultivar({ requests: _private, ...cultivar }: Cultivar): PublicCultivar {
  return cultivar;
}

function publicYard({ costs: _private, ...yard }: Yard): PublicYard {
  return yard;
}

/** The pages that have a short address. */
function codedPages({ cultivars, guides, videos }: Records, lots: readonly Lot[]): string[] {
  return [
    ...[...cultivars.keys()].map(id => recordAddress('cultivar', id)),
    ...lots.map(({ id }) => recordAddress('lot', id)),
    ...[...guides.keys()].map(id => recordAddress('guide', id)),
    ...videos.map(({ id }) => recordAddress('video', id)),
  ];
}

/** A place with its figures: those of its daily record where it names one. */
function filledPlace(place: Place, dailyRecords: Records['dailyRecords']): Place {
  if (place.daily === null || place.tminC.length > 0) return place;
  return withDailyRecord(place, found(dailyRecords, place.daily, 'daily record')).place;
}

/**
 * Computes everything about a yard for one day. Pure; the records must have passed the check. `climates` holds the climate of
 * each place for the pages to show; readiness does not need it. Costs and requests waiting are used here and left out of the result,
 * whatever page is made from it.
 */
export function assemble(
  records: Records,
  asOf: Day,
  climates: ReadonlyMap<string, ClimateSummary>,
): Catalogue {
  const { yard } = records;
  const places = [...records.places.values()]
    .map(place => filledPlace(place, records.dailyRecords))
    .sort(byText(({ id }) => id));
  const home = places.find(({ id }) => id === yard.home);
  if (home === undefined) throw new Error(`no home place "${yard.home}": the records were not checked`);
  const outlook = homeOutlook({ name: home.name, figures: figuresOfPlace(home) }, records.temperatures, asOf);
  const bench = lotBench({ asOf, yard, outlook });
  const walks = indexWalks(records.walks, asOf);
  const started = records.lots.filter(lot => lot.started <= asOf).sort(byText(lot => lot.id));
  const sightings = (lot: Lot) => walks.get(lot.id) ?? [];
  const stocks = new Map(started.map(lot => [lot.id, stockOf(lot, sightings(lot), asOf)]));
  const supplies = suppliesOf(started, stocks, asOf);

  const cultivars = [...records.cultivars.values()].sort(byText(({ name, id }) => `${name}\n${id}`));
  const entries = new Map<string, CultivarEntry & { scarcity: Answer<ScarcityClass> }>();
  for (const cultivar of cultivars) {
    entries.set(cultivar.id, {
      cultivar: publicCultivar(cultivar),
      species: found(records.species, cultivar.species, 'species'),
      flavor: yard.flavorClasses.find(({ id }) => id === cultivar.flavor) ?? {
        id: cultivar.flavor,
        name: cultivar.flavor,
        means: '',
      },
      lots: [],
      scarcity: scarcityOf(cultivar, supplies.get(cultivar.id) ?? noSupply),
    });
  }

  const ledger = ledgerOf(records.addresses);
  const lots = started.map((lot): LotEntry => {
    const { cultivar, species, scarcity, lots: siblings } = found(entries, lot.cultivar, 'cultivar');
    const stock = stocks.get(lot.id)!;
    const answers = answerLot(lot, species, sightings(lot), stock, scarcity, bench);
    const entry = { lot, cultivar, species, soldOut: stock.left === 0, ...answers };
    siblings.push(entry);
    return entry;
  });

  return {
    asOf,
    yard: publicYard(yard),
    home,
    species: [...records.species.values()].sort(byText(({ id }) => id)),
    cultivars: [...entries.values()].map(({ scarcity: _shown, ...entry }) => ({
      ...entry,
      lots: entry.lots.sort(byText(lotOrder)),
    })),
    lots,
    climates,
    places,
    guides: [...records.guides.values()].sort(byText(({ kind, id }) => `${guideKinds.indexOf(kind)} ${id}`)),
    videos: [...records.videos].sort(newestFirst),
    codes: assignCodes(records.addresses, codedPages(records, started)),
    firstAddresses: firstAddresses(ledger),
    namingHost: namingHost(records.changes, yard.address),
    earlierParts: earlierParts(ledger),
    formerClimates: formerClimates(
      ledger,
      new Set([...climates.values()].map(({ class: kind }) => climateKindId(kind.answer))),
    ).filter(id => climateKindOf(id) !== null),
  };
}
