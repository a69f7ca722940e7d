/** The yard.yaml of a new yard, with comments that say what to look at next. */

import { type YamlValue, yamlFile } from '../editing/yamlWords.ts';
import { classOf } from '../records/container.ts';
import { inchesToCm } from '../units.ts';

export const sendingDays = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const;
export type SendingDay = (typeof sendingDays)[number];

export interface YardSettings {
  name: string;
  /** Web address of the finished site, without a path. */
  address: string;
  email?: string | undefined;
  /** Id of the place it stands in. */
  home: string;
  timeZone: string;
  /** ISO 4217. */
  currency: string;
  /** Pots it sells trees in, as they are written: "#1", SP4, 3 L. */
  containers: readonly string[];
  days: readonly SendingDay[];
  transitDays: number;
  /** States or countries it does not send to. */
  notTo: readonly string[];
  /** Ids. */
  species: readonly string[];
  /** What a tree costs in a pot, major units: the start of all prices. */
  price: { amount: number; container: string };
  /** Whether lengths are written in inches. */
  inches: boolean;
  /** The day it is begun, YYYY-MM-DD. */
  today: string;
}

/** Smallest plant of each class: height in inches, stem in mm. Our working figures, between which a pot of the trade is well filled. */
const smallestInches: Readonly<Record<string, readonly [heightIn: number, caliperMm: number]>> = {
  SP1: [3, 2],
  SP2: [4, 2],
  SP3: [6, 3],
  SP4: [8, 4],
  SP5: [10, 5],
  '#1': [14, 6],
  '#2': [20, 8],
  '#3': [28, 10],
  '#5': [36, 13],
  '#7': [42, 16],
  '#10': [48, 19],
  '#15': [60, 25],
  '#20': [66, 32],
  '#25': [72, 38],
};

const flavors = [
  ['pale-sweet', 'Pale and sweet', 'Melon, pear water and cane syrup, with hardly any acid'],
  ['blossom', 'Blossom', 'Flower-scented and light, with a grassy edge'],
  ['toffee', 'Toffee', 'Brown sugar, dates and baked crust'],
  ['orchard-spice', 'Orchard spice', 'Apricot, pumpkin and a pinch of cinnamon'],
  ['red-jam', 'Red jam', 'Strawberry and raspberry jam with enough acid to stay lively'],
  ['dark-vine', 'Dark vine', 'Blackberry, grape skin and a long, winey finish'],
  ['bright-sharp', 'Bright and sharp', 'Redcurrant and citrus; mouth-watering before it is sweet'],
] as const;

/** Class names of the pots a yard uses, the smallest first, each once. */
function classesOf(containers: readonly string[]): string[] {
  const names = new Set(containers.map(each => classOf(each)?.name));
  return Object.keys(smallestInches).filter(name => names.has(name));
}

function smallest({ containers, inches }: YardSettings): YamlValue {
  return classesOf(containers).map(container => {
    const [heightIn, caliper_mm] = smallestInches[container]!;
    const height: Record<string, number> = inches
      ? { height_in: heightIn }
      : { height_cm: Math.round(inchesToCm(heightIn)) };
    return { container, ...height, caliper_mm };
  });
}

/** Lines of rounding that suit amounts of the size of a price: dollars and euros as they are, yen by the hundred. */
function rounding(amount: number): YamlValue {
  const unit = amount >= 1000 ? 100 : 1;
  return [{ below: 40 * unit, to: unit }, { below: 150 * unit, to: 5 * unit }, { to: 10 * unit }];
}

const cartons = [
  ['Short slim', [30, 5, 5], [30.5, 5.5, 5.5], 1.1],
  ['Long slim', [40, 6, 6], [40.5, 6.5, 6.5], 1.5],
  ['Tall', [42, 8, 8], [42.5, 8.5, 8.5], 2],
  ['Stout', [44, 12, 12], [44.5, 12.5, 12.5], 3.2],
] as const;

const comment = (text: string) => `# ${text}\n`;

/** The text of yard.yaml. Costs are no part of it: they belong in the private folder. */
export function yardText(settings: YardSettings): string {
  const { name, address, email, home, timeZone, currency, days, transitDays, notTo, species, price, today } =
    settings;
  const where = classOf(price.container)?.name ?? price.container;
  const key = (table: Record<string, YamlValue>) => `${yamlFile(table)}\n`;
  return [
    '# yaml-language-server: $schema=../src/schemas/yard.schema.json\n\n',
    key({
      name,
      tagline: `Fruit trees raised and sold by ${name}`,
      address,
      home,
      time_zone: timeZone,
      currency,
    }),
    email ? key({ contact: { email } }) : 'contact: {}\n\n',
    key({
      ordering: {
        how: 'Write to us with the number of the lot, how many you want and where the tree will live. We answer and say whether the weather allows sending.',
        lead_days: 3,
      },
    }),
    comment('What the fruit tastes like. Cultivars name one of these; change them as you like.'),
    key({ flavor_classes: flavors.map(([id, title, means]) => ({ id, name: title, means })) }),
    comment('Nothing smaller than this leaves the yard. Figures to start from: put in your own.'),
    key({ smallest: smallest(settings) }),
    comment('A count or a sign older than this is looked at again before anything is promised.'),
    key({ walk_fresh_days: 28 }),
    comment(
      'All species start at the price of the one you named; give each its own. Rungs are those of ISO 3, series R10.',
    ),
    key({
      prices: {
        series: 'R10',
        base: Object.fromEntries(species.map(id => [id, price.amount])),
        base_size: where,
        steps_per_size: 1,
        steps_per_scarcity: 1,
        form_steps: { 'leafed-pot': 0, 'dormant-pot': 0, 'bare-root': -1 },
        rounding: rounding(price.amount),
      },
    }),
    comment(
      'Inner and outer sides in inches, empty weight in pounds. Figures to start from: measure your own.',
    ),
    key({
      cartons: cartons.map(([title, inner_in, outer_in, tare_lb]) => ({
        name: title,
        inner_in,
        outer_in,
        tare_lb,
      })),
    }),
    comment('Carriers change these without asking. Look them up with yours and move the date.'),
    key({
      parcel_rules: [
        {
          name: 'Parcel ground service, divisor 139',
          divisor: 139,
          rounding: 'up',
          longest_in: 108,
          length_and_girth_in: 165,
          heaviest_lb: 150,
          checked: '2026-10-05',
        },
      ],
    }),
    comment(
      'What each form may meet on its way can be set with limits:; left out, careful figures of ours hold.',
    ),
    yamlFile({
      sending: {
        weekdays: days,
        transit_days: transitDays,
        ...(settings.inches ? { cut_back_in: 30 } : { cut_back_cm: 76 }),
        not_to: notTo.map(region => ({
          region,
          why: 'We do not hold the papers that may be asked of plants there; the plant health authority there decides.',
          checked: today,
        })),
      },
    }),
  ].join('');
}
