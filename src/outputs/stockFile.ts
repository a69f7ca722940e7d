/** stock.json: every lot with what is left, which forms are ready or open when, its size, scarcity and price, and why. */

import { z } from 'zod';
import { type Catalogue, type LotEntry, leadingForm } from '../core/catalogue.ts';
import { forms } from '../core/records/common.ts';
import { roundTo } from '../core/units.ts';
import {
  type AddressOf,
  openDay,
  openId,
  openPrice,
  openReasons,
  openUrl,
  priceOf,
  publishedSchema,
  reasonsOf,
} from './openFile.ts';
import { type FormRuns, openSending, openSendingOf } from './openSending.ts';

/** Raised when a field changes its meaning or goes away; new fields do not raise it. */
const STOCK_FILE_VERSION = 1;

const openForm = z.strictObject({
  form: z.enum(forms),
  state: z
    .enum(['ready', 'opens', 'blocked', 'look'])
    .describe('ready now; opens between two days; blocked; look: waits for somebody to look at it.'),
  from: openDay.nullable().describe('When it opens: the day it may in 1 of 10 years.'),
  to: openDay.nullable().describe('When it opens: the day it has in 9 of 10 years.'),
  price: openPrice.nullable(),
  because: openReasons,
});

const openLot = z.strictObject({
  lot: openId,
  cultivar: openId.describe('Id in cultivars.json.'),
  species: openId,
  left: z.int().min(0).describe('Plants left; 0: sold out.'),
  forms: z.array(openForm),
  size: z.strictObject({
    class: z.string().describe('Container class the plant is graded as.'),
    container: z.string().nullable().describe('Pot it stands in.'),
    heightCm: z.number().nullable(),
    caliperMm: z.number().nullable(),
    measuredOn: openDay.nullable(),
  }),
  scarcity: z.strictObject({
    class: z.int().min(0).max(4).describe('0 widely to be had, 4 hardly anywhere.'),
    because: openReasons,
  }),
  tier: z
    .int()
    .nullable()
    .describe("Rungs of the price ladder above the species' base price, of the leading form."),
  price: openPrice.nullable().describe('Price of the leading form; null once the lot is sold.'),
  url: openUrl,
});

const stockFileShape = z.strictObject({
  version: z.literal(STOCK_FILE_VERSION),
  asOf: openDay.describe('The day the states are computed for.'),
  yard: z.string(),
  sending: openSending.describe(
    'Weeks in which trees of each form leave the yard, by the weather at its own end: no destination can have more. Those of a place are in places/ID.json.',
  ),
  lots: z.array(openLot),
});

export type StockFile = z.infer<typeof stockFileShape>;

/** A measure in inches is no more exact for being in cm. */
function tenths(measure: number | null): number | null {
  return measure === null ? null : roundTo(measure, 0.1);
}

function openLotOf(entry: LotEntry, addressOf: AddressOf): StockFile['lots'][number] {
  const { lot, cultivar, species, stock, size, scarcity, soldOut } = entry;
  // What is sold has no price any more, here as on its page.
  const tiers = soldOut ? {} : entry.tiers;
  const { name, container, heightCm, caliperMm, measuredOn } = size.answer;
  const leading = leadingForm(entry);
  const tier = leading ? tiers[leading.form]?.answer : undefined;
  return {
    lot: lot.id,
    cultivar: cultivar.id,
    species: species.id,
    left: stock.free,
    forms: entry.forms.map(({ form, state, range, because }) => {
      const own = tiers[form]?.answer;
      return {
        form,
        state,
        from: range?.from ?? null,
        to: range?.to ?? null,
        price: own ? priceOf(own.price) : null,
        because: reasonsOf(because),
      };
    }),
    size: { class: name, container, heightCm: tenths(heightCm), caliperMm: tenths(caliperMm), measuredOn },
    scarcity: { class: scarcity.answer, because: reasonsOf(scarcity.because) },
    tier: tier?.rung ?? null,
    price: tier ? priceOf(tier.price) : null,
    url: addressOf(`/lots/${lot.id}/`),
  };
}

/** The content of stock.json. `addressOf` makes absolute addresses of paths; `sending`: the weeks by the yard's own weather. */
export function stockFile(
  { asOf, yard, lots }: Catalogue,
  addressOf: AddressOf,
  sending: readonly FormRuns[],
): StockFile {
  return {
    version: STOCK_FILE_VERSION,
    asOf,
    yard: yard.name,
    sending: openSendingOf(sending),
    lots: lots.map(entry => openLotOf(entry, addressOf)),
  };
}

/** JSON Schema of stock.json, published as stock.schema.json. */
export function stockFileSchema(): Record<string, unknown> {
  return publishedSchema(stockFileShape, 'Stock of a yard on one day');
}
