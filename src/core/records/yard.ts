/** The yard: the business, its money, its rules. File: content/yard.yaml. */

import { z } from 'zod';
import type { Day } from '../days.ts';
import { inchesToCm } from '../units.ts';
import { amount, date, type Form, id, link, type Method, oneUnit, text } from './common.ts';
import { containerClasses } from './container.ts';
import { type Delivery, normaliseDelivery, writtenDelivery } from './delivery.ts';
import { normaliseSending, type SendingRules, writtenSending } from './sending.ts';

const money = amount('An amount in quotes, such as "3.50".');

/** A web address without a path, and without a user name, which would be published with every link. */
export const addressPattern = /^https?:\/\/[^\s/?#@\\]+$/;
/** Address of a form for a new file, with the places of its name and its text. */
export const newFilePattern = /^https:\/\/[^\s/]+\/\S*\{name\}\S*\{text\}\S*$/;
export const currencyPattern = /^[A-Z]{3}$/;

const side = z.number().min(1).max(120);
const share = z.number().min(0).max(0.95);
const steps = z.int().min(-10).max(20);
const sizeClassName = z.enum(containerClasses.map(({ name }) => name) as [string, ...string[]]);

const prices = z.strictObject({
  series: z
    .enum(['R5', 'R10', 'R20'])
    .describe('Preferred-number series of ISO 3 that the price ladder climbs.'),
  base: z
    .record(z.string(), z.number().positive().max(100_000))
    .describe(
      'Per species id: price of the base size, in the currency; taken to the nearest rung of the ladder.',
    ),
  base_size: sizeClassName.describe('Container class that the base price is for, such as "#1".'),
  steps_per_size: z.int().min(0).max(6).describe('Rungs up for each container class above the base size.'),
  steps_per_scarcity: z.int().min(0).max(6).describe('Rungs up for each step of scarcity.'),
  form_steps: z
    .strictObject({ 'leafed-pot': steps, 'dormant-pot': steps, 'bare-root': steps })
    .describe('Rungs up or down for the form of sale.'),
  rounding: z
    .array(
      z.strictObject({
        below: z.number().positive().optional().describe('Prices below this; left out on the last line.'),
        to: z.number().positive().describe('Round to a multiple of this.'),
      }),
    )
    .min(1)
    .describe("The yard's own rounding, from low prices to high."),
});

/** What raising and selling a tree costs. Private. */
export const writtenCosts = z
  .strictObject({
    start: z
      .strictObject({ 'air-layer': money, cutting: money, division: money, graft: money })
      .describe('Direct cost of one start, per method.'),
    space_week: money.describe('Overhead and labor for one square foot for one week.'),
    area_sqft: z
      .record(z.string(), z.number().positive().max(100))
      .describe('Square feet a pot of each container class takes up.'),
    pot: z.record(z.string(), money).describe('Pot and mix, per container class.'),
    packing: money.describe('Carton, wrap and time to pack one plant.'),
    fee_share: share.describe('Share of the price that goes in payment and listing fees, 0 to 0.95.'),
    sell_through: z
      .number()
      .min(0.05)
      .max(1)
      .describe('Share of sellable trees that find a buyer, 0.05 to 1.'),
    margin: share.describe('Least margin on price, 0 to 0.95.'),
  })
  .describe('Private: never published.');

const carton = z.strictObject({
  name: text('What the yard calls this carton.', 40),
  inner_in: z
    .tuple([side, side, side])
    .describe('Inner length, width and height, in; the plant lies along the longest side.'),
  outer_in: z.tuple([side, side, side]).describe('Outer length, width and height, in.'),
  tare_lb: z.number().min(0).max(30).describe('Weight of the empty carton with its filling, lb.'),
});

const parcelRule = z.strictObject({
  name: text('Carrier or service this row is for.', 60),
  divisor: z.number().min(50).max(10_000).describe('Cubic inches per pound.'),
  rounding: z.enum(['nearest', 'up']).describe('How each side is rounded to whole inches.'),
  over_cubic_in: z
    .number()
    .min(0)
    .max(20_000)
    .optional()
    .describe('The dimensional weight counts only above this volume.'),
  longest_in: z.number().min(10).max(200).optional().describe('Longest side allowed, in.'),
  length_and_girth_in: z.number().min(10).max(400).optional().describe('Greatest length plus girth, in.'),
  heaviest_lb: z.number().min(1).max(500).optional().describe('Greatest weight, lb.'),
  checked: date('When the row was last checked against the carrier.'),
});

/** Tags of BCP 47. */
const languages = ['en-US', 'en-GB'] as const;

export const writtenYard = z.strictObject({
  name: text("The yard's name.", 60),
  tagline: text('One line under the name.', 120),
  about: text('Who you are, two or three sentences.', 800).optional(),
  address: z
    .string()
    .regex(addressPattern)
    .max(255)
    .describe('Web address of the finished site without a path, such as https://trees.example.'),
  home: id('Place the yard stands in: id of a file in content/places.'),
  time_zone: z.string().max(60).describe('IANA time zone, such as America/Chicago; decides what "today" is.'),
  fixed_day: date(
    'Holds "today" at this day, for a demonstration yard; a real yard leaves it out.',
  ).optional(),
  currency: z.string().regex(currencyPattern).describe('ISO 4217 code, such as USD.'),
  language: z
    .enum(languages)
    .optional()
    .describe(
      'English of the pages: en-US, or en-GB with British spelling and metric measures first. Your own words stay as you write them. Left out: en-US.',
    ),
  contact: z.strictObject({
    email: z.email().describe('Address customers write to.').optional(),
    phone: text('Phone number.', 40).optional(),
    post: text('Postal address.', 200).optional(),
  }),
  ordering: z.strictObject({
    how: text('How to order, in your own words.', 1200),
    link: link('Where orders are placed, when that is one address for all.').optional(),
    lead_days: z.int().min(0).max(60).describe('Days between an order and its parcel leaving.'),
  }),
  flavor_classes: z
    .array(
      z.strictObject({
        id: id('Short id used in cultivar files.'),
        name: text('What customers read.', 40),
        means: text('What it tastes like.', 160),
      }),
    )
    .min(1)
    .describe("The yard's own flavor classes, in the order they are shown."),
  smallest: z
    .array(
      z
        .strictObject({
          container: sizeClassName.describe('Container class, such as "#1".'),
          height_in: z.number().min(1).max(300).optional(),
          height_cm: z.number().min(3).max(760).optional().describe('Least height sold.'),
          caliper_mm: z.number().min(1).max(200).optional().describe('Least stem thickness sold, mm.'),
        })
        .check(oneUnit('height_in', 'height_cm')),
    )
    .min(1)
    .describe(
      'The smallest plant sold in each container class; bare-root trees go by the pot they last stood in.',
    ),
  new_file: z
    .string()
    .regex(newFilePattern)
    .max(500)
    .describe(
      'Address of the form for a new file at the host of your repository, in the folder content/walks, with {name} and {text} where the host takes them. A walk typed on the phone is put in with one tap.',
    )
    .optional(),
  walk_fresh_days: z
    .int()
    .min(1)
    .max(365)
    .describe('After this many days a count or a sign has to be looked at again.'),
  prices,
  costs: writtenCosts.optional(),
  video_description_limit: z
    .int()
    .min(500)
    .max(50_000)
    .optional()
    .describe('Most characters your video host takes below a video; 5,000 when left out.'),
  listing_limit: z
    .int()
    .min(300)
    .max(100_000)
    .optional()
    .describe(
      'Most characters of the text npm run listing writes for one lot, for pasting elsewhere; no limit when left out.',
    ),
  towns: z
    .strictObject({
      look_up: z
        .boolean()
        .optional()
        .describe('Write false where visitors should look up no towns; true when left out.'),
      home_people: z
        .int()
        .min(0)
        .max(50_000_000)
        .optional()
        .describe("Fewest people of a town in the yard's own country; every town when left out."),
      elsewhere_people: z
        .int()
        .min(0)
        .max(50_000_000)
        .optional()
        .describe('Fewest people of a town in any other country; 5,000 when left out.'),
    })
    .optional()
    .describe(
      'Which towns visitors can look up. Every further thousand adds about 240 kB to the site, half of it in transit.',
    ),
  cartons: z.array(carton).min(1),
  parcel_rules: z.array(parcelRule).min(1),
  delivery: writtenDelivery.optional(),
  sending: writtenSending
    .check(oneUnit('coldest_f', 'coldest_c'))
    .check(oneUnit('hottest_f', 'hottest_c'))
    .check(oneUnit('cut_back_in', 'cut_back_cm')),
  private_note: text('For the yard only; never published.', 2000).optional(),
});

export type WrittenYard = z.infer<typeof writtenYard>;

/** Outer and inner sides in inches, longest first: carriers' rules are written in inches and pounds. */
export interface Carton {
  name: string;
  innerIn: [number, number, number];
  outerIn: [number, number, number];
  tareLb: number;
}

export interface ParcelRule {
  name: string;
  divisor: number;
  rounding: 'nearest' | 'up';
  overCubicIn: number;
  longestIn: number | null;
  lengthAndGirthIn: number | null;
  heaviestLb: number | null;
  checked: Day;
}

export interface Smallest {
  heightCm: number | null;
  caliperMm: number | null;
}

export interface PriceSettings {
  series: 'R5' | 'R10' | 'R20';
  /** Species id to price of the base size, in major units of the currency. */
  base: Record<string, number>;
  baseClassIndex: number;
  stepsPerSize: number;
  stepsPerScarcity: number;
  formSteps: Record<Form, number>;
  /** Major units; `below` is null on the last line. */
  rounding: { below: number | null; to: number }[];
}

/** Private. Major units of the currency; shares 0 to 1. */
export interface Costs {
  start: Record<Method, number>;
  spaceWeek: number;
  areaSqft: Record<string, number>;
  pot: Record<string, number>;
  packing: number;
  feeShare: number;
  sellThrough: number;
  margin: number;
}

export interface Yard {
  name: string;
  tagline: string;
  about: string | null;
  address: string;
  home: string;
  timeZone: string;
  /** Set only in a demonstration yard. */
  fixedDay: Day | null;
  currency: string;
  /** English of the pages, a tag of BCP 47. */
  language: (typeof languages)[number];
  contact: { email: string | null; phone: string | null; post: string | null };
  ordering: { how: string; link: string | null; leadDays: number };
  flavorClasses: { id: string; name: string; means: string }[];
  /** By container class name. */
  smallest: Record<string, Smallest>;
  /** Address of the host's form for a new file, with `{name}` and `{text}`. */
  newFile: string | null;
  walkFreshDays: number;
  /** Most characters of the text below a video. */
  videoDescriptionLimit: number;
  /** Most characters of the text for one lot; null: no limit. */
  listingLimit: number | null;
  prices: PriceSettings;
  /** Private; null: no floor is kept. */
  costs: Costs | null;
  /** Fewest people of a town that can be looked up, in the yard's own country and elsewhere; null: none can. */
  towns: { atHome: number; elsewhere: number } | null;
  cartons: Carton[];
  parcelRules: ParcelRule[];
  /** Prices of delivery; null: the yard gives none. */
  delivery: Delivery | null;
  sending: SendingRules;
}

/** Characters that hosts of videos commonly take in the text below one. Common practice, no source. */
const defaultDescriptionLimit = 5000;

/** Towns elsewhere from so many people on. Standing: ours. */
const defaultTownPeople = 5000;

/** The three sides, longest first. */
function longestFirst([a, b, c]: readonly [number, number, number]): [number, number, number] {
  return [a, b, c].sort((x, y) => y - x) as [number, number, number];
}

const amounts = (record: Record<string, string>) =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [key, Number(value)]));

/** Costs with their amounts as numbers. */
export function normaliseCosts(written: z.infer<typeof writtenCosts>): Costs {
  return {
    start: amounts(written.start) as Record<Method, number>,
    spaceWeek: Number(written.space_week),
    areaSqft: written.area_sqft,
    pot: amounts(written.pot),
    packing: Number(written.packing),
    feeShare: written.fee_share,
    sellThrough: written.sell_through,
    margin: written.margin,
  };
}

/** The yard with defaults filled and every limit in C and cm. */
export function normaliseYard(written: WrittenYard): Yard {
  const { prices, costs, sending } = written;
  return {
    name: written.name,
    tagline: written.tagline,
    about: written.about ?? null,
    address: written.address,
    home: written.home,
    timeZone: written.time_zone,
    fixedDay: (written.fixed_day ?? null) as Day | null,
    currency: written.currency,
    language: written.language ?? 'en-US',
    contact: {
      email: written.contact.email ?? null,
      phone: written.contact.phone ?? null,
      post: written.contact.post ?? null,
    },
    ordering: {
      how: written.ordering.how,
      link: written.ordering.link ?? null,
      leadDays: written.ordering.lead_days,
    },
    flavorClasses: written.flavor_classes,
    smallest: Object.fromEntries(
      written.smallest.map(({ container, height_in, height_cm, caliper_mm }) => [
        container,
        {
          heightCm: height_cm ?? (height_in === undefined ? null : inchesToCm(height_in)),
          caliperMm: caliper_mm ?? null,
        },
      ]),
    ),
    newFile: written.new_file ?? null,
    walkFreshDays: written.walk_fresh_days,
    videoDescriptionLimit: written.video_description_limit ?? defaultDescriptionLimit,
    listingLimit: written.listing_limit ?? null,
    prices: {
      series: prices.series,
      base: prices.base,
      baseClassIndex: containerClasses.findIndex(({ name }) => name === prices.base_size),
      stepsPerSize: prices.steps_per_size,
      stepsPerScarcity: prices.steps_per_scarcity,
      formSteps: prices.form_steps,
      rounding: prices.rounding.map(({ below, to }) => ({ below: below ?? null, to })),
    },
    costs: costs ? normaliseCosts(costs) : null,
    towns:
      written.towns?.look_up === false
        ? null
        : {
            atHome: written.towns?.home_people ?? 0,
            elsewhere: written.towns?.elsewhere_people ?? defaultTownPeople,
          },
    cartons: written.cartons.map(carton => ({
      name: carton.name,
      innerIn: longestFirst(carton.inner_in),
      outerIn: longestFirst(carton.outer_in),
      tareLb: carton.tare_lb,
    })),
    parcelRules: written.parcel_rules.map(rule => ({
      name: rule.name,
      divisor: rule.divisor,
      rounding: rule.rounding,
      overCubicIn: rule.over_cubic_in ?? 0,
      longestIn: rule.longest_in ?? null,
      lengthAndGirthIn: rule.length_and_girth_in ?? null,
      heaviestLb: rule.heaviest_lb ?? null,
      checked: rule.checked as Day,
    })),
    delivery: written.delivery ? normaliseDelivery(written.delivery, written.currency) : null,
    sending: normaliseSending(sending),
  };
}
