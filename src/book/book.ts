/**
 * The private book of a yard: what each lot waits for, prices beside costs, who has plants set aside and who waits, what was sold and for how much.
 * Everything about readiness, prices and stock is the catalogue's answer; here it is only set beside what is private.
 */

import type { Catalogue, LotEntry } from '../core/catalogue.ts';
import { type Day, daysBetween } from '../core/days.ts';
import type { FormAnswer } from '../core/lots/answers.ts';
import { costFloor } from '../core/lots/cost.ts';
import { type Form, forms } from '../core/records/common.ts';
import type { Orders, Sale } from '../core/records/orders.ts';
import type { Costs } from '../core/records/yard.ts';

interface WaitRow {
  entry: LotEntry;
  /** The form that comes first. */
  answer: FormAnswer;
  /** First day on which something changes by itself; null where somebody has to act, or nothing is in sight. */
  from: Day | null;
}

interface PriceRow {
  entry: LotEntry;
  form: Form;
  priceMinor: number;
  /** Least price at which a plant does not lose money, minor units; null where no costs are kept. */
  floorMinor: number | null;
  /** Share of the price above the floor. */
  overFloor: number | null;
  /** Rungs between an own price and the computed one; null for a computed price. */
  overrideRungs: number | null;
}

interface StaleRow {
  entry: LotEntry;
  /** Days since it was counted; null: never. */
  countedDaysAgo: number | null;
  /** Days since anybody looked at it. */
  seenDaysAgo: number | null;
}

interface SoldRow {
  entry: LotEntry;
  /** By the counts of the walks, all time. */
  sold: number;
  /** Written down in private/sales.csv. */
  writtenDown: number;
  /** Mean price of those with a price, minor units. */
  meanMinor: number | null;
  first: Day | null;
  last: Day | null;
  /** Plants a week between the first and the last sale; null for fewer than two days of sales. */
  perWeek: number | null;
}

interface SeasonTotal {
  /** First year of a season from July to June. */
  season: string;
  species: string;
  plants: number;
  minor: number;
  /** Plants without a price in the table. */
  unpriced: number;
}

interface Person {
  name: string;
  reserved: { lot: string; plants: number; until: Day | null; overdue: boolean }[];
  waiting: { cultivar: string; plants: number; since: Day; ready: string[] }[];
}

export interface YardBook {
  asOf: Day;
  waits: WaitRow[];
  prices: PriceRow[];
  stale: StaleRow[];
  sold: SoldRow[];
  seasons: SeasonTotal[];
  people: Person[];
}

const stateOrder = ['ready', 'look', 'opens', 'blocked'] as const;

/** The form of a lot that comes first: ready before a look, a look before a day, the earliest day before later ones. */
function firstForm({ forms: answers }: LotEntry): FormAnswer | null {
  const key = ({ state, range }: FormAnswer) => `${stateOrder.indexOf(state)}${range?.from ?? '9'}`;
  return [...answers].sort((a, b) => (key(a) < key(b) ? -1 : 1))[0] ?? null;
}

function waitsOf({ lots }: Catalogue): WaitRow[] {
  const rows = lots
    .filter(({ soldOut }) => !soldOut)
    .flatMap(entry => {
      const answer = firstForm(entry);
      return answer ? [{ entry, answer, from: answer.range?.from ?? null }] : [];
    });
  const key = ({ answer, from, entry }: WaitRow) =>
    `${stateOrder.indexOf(answer.state)}${from ?? '9'}${entry.lot.id}`;
  return rows.sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

function pricesOf({ lots, asOf }: Catalogue, costs: Costs | null, decimals: number): PriceRow[] {
  return lots
    .filter(({ soldOut }) => !soldOut)
    .flatMap(entry => {
      const { lot, species, tiers } = entry;
      const success = species.propagation[lot.method]?.success.value ?? null;
      const floor = costs && costFloor(lot, costs, success, asOf);
      const floorMinor = floor === null ? null : Math.ceil(floor * 10 ** decimals - 1e-6);
      return forms.flatMap((form): PriceRow[] => {
        const tier = tiers[form]?.answer;
        if (!tier) return [];
        const priceMinor = tier.price.minor;
        const overFloor = floorMinor === null ? null : (priceMinor - floorMinor) / priceMinor;
        return [{ entry, form, priceMinor, floorMinor, overFloor, overrideRungs: tier.overrideRungs }];
      });
    });
}

function staleOf({ lots, asOf, yard }: Catalogue): StaleRow[] {
  const ago = (day: Day | null) => (day === null ? null : daysBetween(day, asOf));
  const age = ({ countedDaysAgo, seenDaysAgo }: StaleRow) =>
    Math.max(countedDaysAgo ?? Number.POSITIVE_INFINITY, seenDaysAgo ?? Number.POSITIVE_INFINITY);
  return lots
    .filter(({ soldOut }) => !soldOut)
    .map(entry => ({
      entry,
      countedDaysAgo: ago(entry.stock.countedOn),
      seenDaysAgo: ago(entry.signs.lastLooked),
    }))
    .filter(row => age(row) > yard.walkFreshDays)
    .sort((a, b) => age(b) - age(a) || (a.entry.lot.id < b.entry.lot.id ? -1 : 1));
}

const sum = (sales: readonly Sale[], of: (sale: Sale) => number) =>
  sales.reduce((total, each) => total + of(each), 0);

function soldOf({ lots }: Catalogue, { sales }: Orders): SoldRow[] {
  const byLot = Map.groupBy(sales, ({ lot }) => lot);
  return lots
    .flatMap((entry): SoldRow[] => {
      const own = [...(byLot.get(entry.lot.id) ?? [])].sort((a, b) => (a.day < b.day ? -1 : 1));
      if (entry.stock.sold === 0 && own.length === 0) return [];
      const priced = own.filter(({ priceMinor }) => priceMinor !== null);
      const pricedPlants = sum(priced, ({ plants }) => plants);
      const [first, last] = [own[0]?.day ?? null, own.at(-1)?.day ?? null];
      const days = first && last ? daysBetween(first, last) : 0;
      const writtenDown = sum(own, ({ plants }) => plants);
      return [
        {
          entry,
          sold: entry.stock.sold,
          writtenDown,
          meanMinor:
            pricedPlants === 0
              ? null
              : Math.round(sum(priced, ({ plants, priceMinor }) => plants * priceMinor!) / pricedPlants),
          first,
          last,
          perWeek: days === 0 ? null : (writtenDown * 7) / (days + 1),
        },
      ];
    })
    .sort((a, b) => b.sold - a.sold || (a.entry.lot.id < b.entry.lot.id ? -1 : 1));
}

/** The season a day lies in: trees are sold from fall to spring, so it turns on July 1. */
export function sellingSeason(day: Day): string {
  const [year, month] = [Number(day.slice(0, 4)), Number(day.slice(5, 7))];
  const first = month >= 7 ? year : year - 1;
  return `${first}-${String((first + 1) % 100).padStart(2, '0')}`;
}

function seasonsOf({ lots }: Catalogue, { sales }: Orders): SeasonTotal[] {
  const species = new Map(
    lots.map(entry => [entry.lot.id, entry.species.common[0] ?? entry.species.botanical]),
  );
  const groups = Map.groupBy(
    sales,
    ({ day, lot }) => `${sellingSeason(day)}\n${species.get(lot) ?? 'of lots that are not started'}`,
  );
  return [...groups]
    .map(([key, rows]) => {
      const [season = '', name = ''] = key.split('\n');
      return {
        season,
        species: name,
        plants: sum(rows, ({ plants }) => plants),
        minor: sum(rows, ({ plants, priceMinor }) => plants * (priceMinor ?? 0)),
        unpriced: sum(rows, ({ plants, priceMinor }) => (priceMinor === null ? plants : 0)),
      };
    })
    .sort((a, b) =>
      a.season === b.season ? (a.species < b.species ? -1 : 1) : a.season < b.season ? 1 : -1,
    );
}

/** Nobody's name was written down. */
const NAMELESS = 'no name';

function peopleOf({ lots, asOf }: Catalogue, { reservations, waiting }: Orders): Person[] {
  const people = new Map<string, Person>();
  const personOf = (name: string | null) => {
    const key = name ?? NAMELESS;
    const found = people.get(key) ?? { name: key, reserved: [], waiting: [] };
    people.set(key, found);
    return found;
  };
  for (const { to, lot, plants, until } of reservations)
    personOf(to).reserved.push({ lot, plants, until, overdue: until !== null && until < asOf });
  for (const { to, cultivar, plants, since, form } of waiting) {
    const ready = lots
      .filter(entry => entry.cultivar.id === cultivar && !entry.soldOut)
      .filter(entry =>
        entry.forms.some(each => each.state === 'ready' && (form === null || each.form === form)),
      )
      .map(({ lot }) => lot.id);
    personOf(to).waiting.push({ cultivar, plants, since, ready });
  }
  return [...people.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Everything in the book. `costs` are the yard's, which the catalogue leaves out; `decimals` those of its currency. */
export function yardBook(all: Catalogue, orders: Orders, costs: Costs | null, decimals: number): YardBook {
  return {
    asOf: all.asOf,
    waits: waitsOf(all),
    prices: pricesOf(all, costs, decimals),
    stale: staleOf(all),
    sold: soldOf(all, orders),
    seasons: seasonsOf(all, orders),
    people: peopleOf(all, orders),
  };
}
