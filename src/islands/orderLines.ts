/** The lines of an order list: as they are kept, and as they are written to the yard. */

import { dayInWords } from '../core/days.ts';
import {
  areaOf,
  billedLb,
  type Packed,
  parcelPrice,
  parcelsOf,
  type Whither,
} from '../core/lots/orderParcels.ts';
import { priceInWords } from '../core/money.ts';
import { poundsToKg, weightInWords } from '../core/units.ts';
import type { OrderFile, OrderForm, OrderLot } from '../site/pages/ordering/orderLots.ts';
import type { SendingView } from '../site/pages/places/sending.ts';

export interface OrderLine {
  lot: string;
  form: string;
  count: number;
}

/** A line whose lot is for sale in its form. */
export interface KnownLine {
  lot: Pick<OrderLot, 'lot' | 'cultivar' | 'address'>;
  form: OrderForm;
  count: number;
}

/** Where the trees will live, as far as it is known. */
export interface OrderPlace extends Whither {
  name: string;
  sent: boolean;
  weeks: SendingView['table'];
}

/** Lines as they were kept; empty for anything else. */
export function parseLines(text: string | null): OrderLine[] {
  try {
    const kept: unknown = JSON.parse(text ?? '[]');
    if (!Array.isArray(kept)) return [];
    return kept.flatMap((line: Partial<OrderLine> | null) =>
      typeof line?.lot === 'string' &&
      typeof line.form === 'string' &&
      Number.isInteger(line.count) &&
      line.count! > 0
        ? [{ lot: line.lot, form: line.form, count: line.count! }]
        : [],
    );
  } catch {
    return [];
  }
}

/** A kept line with its lot and form, of no more trees than are left by now; null where nothing of it is for sale any more. */
export function knownLine(
  { lots }: Pick<OrderFile, 'lots'>,
  { lot: id, form: wanted, count }: OrderLine,
): (KnownLine & { lot: OrderLot }) | null {
  const lot = lots.find(each => each.lot === id);
  const form = lot?.forms.find(each => each.form === wanted);
  return lot && form && lot.left > 0 ? { lot, form, count: Math.min(count, lot.left) } : null;
}

type Priced = Pick<OrderFile, 'currency' | 'cartons' | 'rules' | 'delivery'>;

const trees = (count: number) => `${count} ${count === 1 ? 'tree' : 'trees'}`;
const pounds = (lb: number) => weightInWords(poundsToKg(lb));

/** What trees cost without delivery, minor units. Lines without a price count nothing. */
function treesTotal(known: readonly KnownLine[]): number {
  return known.reduce((sum, { form, count }) => sum + (form.price ?? 0) * count, 0);
}

/** Parcels that are alike, told once: `2 x Long slim with 3 trees, each billed as 9 lb (4 kg)`. */
function parcelLines({ parcels, unpacked }: Packed, { cartons, rules }: Priced): string[] {
  const told = new Map<string, number>();
  for (const parcel of parcels) {
    const billed = rules.map(rule => {
      const weight = pounds(billedLb(parcel, cartons, rule));
      return rules.length === 1 ? weight : `${weight} (${rule.name})`;
    });
    const line = `${parcel.carton} with ${trees(parcel.trees)}, billed as ${billed.join(' or ')}`;
    told.set(line, (told.get(line) ?? 0) + 1);
  }
  const lines = [...told].map(([line, times]) => (times === 1 ? line : `${times} times ${line}`));
  if (unpacked > 0) lines.push(`${trees(unpacked)} fit no carton of ours: to be picked up, or asked for`);
  return lines;
}

export interface DeliveryTold {
  /** One line for parcels that are alike. */
  parcels: string[];
  /** What delivery costs, or why nobody can say yet; empty where the yard gives no prices. */
  words: string;
  /** Minor units; null where it is not known. */
  minor: number | null;
}

/** The parcels of a list and what delivering them costs to a place; null: no place is chosen. */
export function deliveryOf(
  file: Priced,
  known: readonly KnownLine[],
  place: OrderPlace | null,
): DeliveryTold {
  const ordered = known.flatMap(({ form, count }) =>
    form.packed === null ? [] : [{ form: form.form, count, ...form.packed }],
  );
  const packed = parcelsOf(ordered, file.cartons);
  const parcels = parcelLines(packed, file);
  const [rule] = file.rules;
  const { delivery } = file;
  const untold = (words: string) => ({ parcels, words, minor: null });
  if (delivery === null || rule === undefined || known.length === 0) return untold('');
  if (place === null)
    return untold('Choose your place at the top of the page, and the price of delivery stands here.');
  if (!place.sent) return untold(`We do not send to ${place.name}.`);
  const area = areaOf(delivery, place);
  if (area === null) return untold(`We have no price for delivery to ${place.name} yet: ask us.`);
  const isAllPacked = packed.unpacked === 0 && known.every(({ form }) => form.packed !== null);
  if (!isAllPacked || packed.parcels.length === 0) return untold('Ask us what delivery costs.');
  const prices = packed.parcels.map(parcel => parcelPrice(area, billedLb(parcel, file.cartons, rule)));
  if (prices.includes(null)) return untold(`Heavier than our prices for ${area.name} go: ask us.`);
  const minor = prices.reduce((sum: number, price) => sum + (price ?? 0), 0);
  const money = priceInWords({ minor, currency: file.currency });
  const count = packed.parcels.length === 1 ? '1 parcel' : `${packed.parcels.length} parcels`;
  return {
    parcels,
    minor,
    words: `Delivery to ${place.name}: ${money} for ${count} (${area.name}, our prices of ${dayInWords(delivery.checked)}).`,
  };
}

/** In which weeks the forms of a list leave for a place, a line each; none where no place is chosen or the yard does not send there. */
export function weekLines(known: readonly KnownLine[], place: OrderPlace | null): string[] {
  if (place === null || !place.sent) return [];
  return place.weeks
    .filter(({ form }) => known.some(line => line.form.form === form))
    .map(({ formName, runs }) => {
      const weeks = runs.map(({ days, words }) => `${days} (${words})`).join('; ');
      return `${formName}: ${weeks === '' ? 'in no week of the coming year' : weeks}`;
    });
}

/** The sum of a list, with delivery where its price is known. */
export function totalWords(file: Priced, known: readonly KnownLine[], delivery: DeliveryTold): string {
  const money = (minor: number) => priceInWords({ minor, currency: file.currency });
  const total = treesTotal(known);
  const asked = known.some(({ form }) => form.price === null) ? ', and what is priced on request' : '';
  return delivery.minor === null
    ? `${money(total)} without delivery${asked}.`
    : `${money(total)} and ${money(delivery.minor)} for delivery, ${money(total + delivery.minor)} together${asked}.`;
}

/** What is written to the yard: every line with its lot, form, price and short address, the total, parcels, delivery, sending weeks, and where the trees will live. */
export function orderText(
  file: Priced,
  known: readonly KnownLine[],
  place: OrderPlace | null,
  /** The place chosen, also while nothing else is known of it; null: none is chosen. */
  placeName: string | null = place?.name ?? null,
): string {
  const money = (minor: number) => priceInWords({ minor, currency: file.currency });
  const written = known.map(({ lot, form, count }) => {
    const price = form.price === null ? 'price on request' : `${money(form.price)} each`;
    return `${count} x ${lot.cultivar}, lot ${lot.lot}, ${form.name.toLowerCase()}, ${price}\n  ${form.words}\n  ${lot.address}`;
  });
  const delivery = deliveryOf(file, known, place);
  const block = (heading: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [[heading, ...lines.map(line => `  ${line}`)].join('\n')];
  const where =
    placeName === null ? 'They will live at (town and ZIP code):' : `They will live at ${placeName}.`;
  return [
    'Hello,',
    'I would like these trees:',
    ...written,
    `Together: ${totalWords(file, known, delivery)}`,
    ...block('Parcels, by your list:', delivery.parcels),
    ...(delivery.minor === null ? [] : [delivery.words]),
    where,
    ...block('Weeks in which you send there, by your site:', weekLines(known, place)),
    '',
  ].join('\n\n');
}
