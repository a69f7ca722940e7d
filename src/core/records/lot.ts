/** A lot: plants of one cultivar raised together. Files: content/lots/*.yaml, each a list. */

import { z } from 'zod';
import type { Day } from '../days.ts';
import { parseAmount } from '../money.ts';
import {
  amount,
  count,
  date,
  type Form,
  forms,
  id,
  link,
  type Method,
  methods,
  type Photo,
  photoSchema,
  text,
} from './common.ts';
import { type Container, containerOf, containerPattern } from './container.ts';

const potting = z.strictObject({
  date: date('When it went into this pot.'),
  container: z
    .string()
    .regex(containerPattern)
    .describe('The pot: "#1" (in quotes), SP4, or liters such as 3 L.'),
});

export const writtenLot = z.strictObject({
  lot: id('Permanent id of the lot. Never used again, even after the lot is sold.'),
  cultivar: id('Id of a file in content/cultivars.'),
  method: z.enum(methods).describe('How the plants were raised.'),
  rootstock: text('What it is grafted on. Left out: the plants stand on their own roots.', 80).optional(),
  started: date('When the layer went on, the cutting was struck, the division or graft was made.'),
  severed: date('When the layers were cut from the mother plant.').optional(),
  lifted: date('When the plants were lifted bare-root from the ground.').optional(),
  pottings: z.array(potting).describe('Every pot the lot has stood in, in order.').optional(),
  raised: count('How many plants were started in this lot.', 100_000).min(1),
  forms: z.array(z.enum(forms)).min(1).describe('The forms in which this lot may be sold.'),
  hold: z
    .strictObject({
      since: date('When the hold began.'),
      why: text('Why nothing of this lot is sold now. Shown to customers.', 200),
    })
    .describe('Keeps the whole lot from sale.')
    .optional(),
  reserved: z
    .array(
      z.strictObject({
        plants: count('How many plants.', 100_000).min(1),
        since: date('The day they were set aside.'),
        until: date('The last day they are kept; left out, until they are sold or let go.').optional(),
      }),
    )
    .min(1)
    .describe('Plants set aside for buyers. They are not for sale; for whom stands in the private folder.')
    .optional(),
  price: z
    .strictObject({
      amount: amount('The price in quotes, such as "45" or "45.50".'),
      why: text('Why this lot has a price of its own. Shown to customers.', 200),
      until: date('The last day of a sale price; left out, it holds until it is taken away.').optional(),
    })
    .describe('Sets the price instead of the computed tier.')
    .optional(),
  condition: text(
    'What a buyer must know of the condition of these plants, such as a bent stem. Stands at the top of the page of the lot.',
    300,
  ).optional(),
  buy: link('Where this lot can be bought, when it has an address of its own.').optional(),
  photo: photoSchema.optional(),
  note: text('Shown to customers.', 600).optional(),
  private_note: text('For the yard only; never published.', 2000).optional(),
});

export const writtenLots = z.array(writtenLot).min(1);

export type WrittenLot = z.infer<typeof writtenLot>;

interface Potting {
  date: Day;
  container: Container;
}

export interface Lot {
  id: string;
  cultivar: string;
  method: Method;
  /** Null: on its own roots. */
  rootstock: string | null;
  started: Day;
  severed: Day | null;
  lifted: Day | null;
  /** In order of date. */
  pottings: Potting[];
  raised: number;
  forms: Form[];
  hold: { since: Day; why: string } | null;
  /** Plants set aside for buyers, both days included; `until` null: until somebody takes them away. */
  reserved: { plants: number; since: Day; until: Day | null }[];
  /** Minor units of the yard's currency; `until` is the last day of a sale price. */
  price: { minor: number; why: string; until: Day | null } | null;
  /** What a buyer must know first. */
  condition: string | null;
  buy: string | null;
  photo: Photo | null;
  note: string | null;
  /** File and place in its list, for messages. */
  file: string;
  index: number;
}

/** A lot with defaults filled, pots classed and its own price in minor units. Dates and references are checked by the reading. */
export function normaliseLot(
  written: WrittenLot,
  place: { file: string; index: number },
  currency: string,
): Lot {
  const { price } = written;
  return {
    id: written.lot,
    cultivar: written.cultivar,
    method: written.method,
    rootstock: written.rootstock ?? null,
    started: written.started as Day,
    severed: (written.severed ?? null) as Day | null,
    lifted: (written.lifted ?? null) as Day | null,
    pottings: (written.pottings ?? []).map(potting => ({
      date: potting.date as Day,
      container: containerOf(potting.container),
    })),
    raised: written.raised,
    forms: [...written.forms],
    hold: written.hold ? { since: written.hold.since as Day, why: written.hold.why } : null,
    reserved: (written.reserved ?? []).map(({ plants, since, until }) => ({
      plants,
      since: since as Day,
      until: (until ?? null) as Day | null,
    })),
    price: price
      ? {
          minor: parseAmount(price.amount, currency) ?? 0,
          why: price.why,
          until: (price.until ?? null) as Day | null,
        }
      : null,
    condition: written.condition ?? null,
    buy: written.buy ?? null,
    photo: written.photo ?? null,
    note: written.note ?? null,
    ...place,
  };
}
