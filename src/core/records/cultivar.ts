/** A cultivar: traits as front matter, prose below. File: content/cultivars/ID.md. */

import { z } from 'zod';
import type { Day } from '../days.ts';
import {
  type AirClass,
  airClasses,
  type Crop,
  count,
  crops,
  date,
  id,
  type Photo,
  photoSchema,
  type RipeningClass,
  ripeningClasses,
  type SeasonClass,
  type SummerClass,
  seasonClasses,
  summerClasses,
  text,
  type WinterClass,
  winterClasses,
} from './common.ts';
import { monthDayPattern } from './place.ts';

export const skinColors = ['green', 'yellow', 'amber', 'orange', 'red', 'violet', 'brown', 'black'] as const;
type SkinColor = (typeof skinColors)[number];
export const fleshColors = [
  'white',
  'cream',
  'amber',
  'orange',
  'rose',
  'red',
  'crimson',
  'brown',
  'purple',
] as const;
type FleshColor = (typeof fleshColors)[number];
export const fruitShapes = ['round', 'flattened', 'oval', 'pear', 'long', 'heart', 'cluster'] as const;
export type FruitShape = (typeof fruitShapes)[number];
export const eyes = ['closed', 'sealed', 'half-open', 'open', 'none'] as const;
export type Eye = (typeof eyes)[number];
export const tendencies = ['low', 'some', 'high'] as const;
export type Tendency = (typeof tendencies)[number];
export const pollinationHabits = ['unaided', 'self-fertile', 'partner', 'wasp-main', 'wasp-all'] as const;
/**
 * `unaided` sets fruit without pollination; `self-fertile`; `partner` needs another tree; `wasp-main` a fig whose main crop
 * needs the fig wasp (breba does not); `wasp-all` a fig that needs it for every crop.
 */
export type PollinationHabit = (typeof pollinationHabits)[number];
export const availabilities = ['nowhere-else', 'a-few', 'some', 'common'] as const;
/** How widely a cultivar is offered by anyone, as far as the grower knows. */
export type Availability = (typeof availabilities)[number];

const placeClass = z.strictObject({
  winter: z.enum(winterClasses).describe('How cold the winters are.'),
  season: z.enum(seasonClasses).describe('How long the season between freezes is.'),
  summer: z
    .enum(summerClasses)
    .describe('How much heat the growing months bring; the page of a place names its class.')
    .optional(),
  air: z.enum(airClasses).describe('How humid the summers are.'),
});

export const writtenCultivar = z.strictObject({
  name: text('Name as it is sold, without quotation marks.', 80),
  species: id('Id of a file in content/species.'),
  synonyms: z.array(text('Another name it goes by.', 80)).optional(),
  origin: text('Where it came from, one sentence.', 300).optional(),
  flavor: id('A flavor class from the list in yard.yaml; lists, search and alternatives go by it.'),
  ripening: z
    .enum(ripeningClasses)
    .describe(
      'When the main crop ripens, compared with others of the species; dates and verdicts for every place rest on it.',
    ),
  crops: z
    .array(z.enum(crops))
    .min(1)
    .describe("breba (on last year's wood) and main; each is given its dates."),
  pollination: z
    .enum(pollinationHabits)
    .describe(
      'unaided; self-fertile; partner: needs another tree; wasp-main: the main crop needs the fig wasp; wasp-all: all crops do.',
    ),
  chromosomes: z
    .int()
    .min(10)
    .max(400)
    .describe(
      'Number of chromosomes, where races of the species differ in it and pollinate only their own (American persimmon: 60 or 90).',
    )
    .optional(),
  fruit: z
    .strictObject({
      skin: z.enum(skinColors).describe('Main color of the ripe skin, as it is drawn.'),
      blush: z.enum(skinColors).describe('Second color, as stripes or a cheek.').optional(),
      flesh: z.enum(fleshColors).describe('Color of the ripe flesh, as it is drawn.'),
      shape: z.enum(fruitShapes).describe('Outline from the side, as it is drawn.'),
      length_mm: z.number().min(5).max(200).describe('Length without the stalk, mm; drawings are to scale.'),
      width_mm: z.number().min(5).max(200).describe('Greatest width, mm; drawings are to scale.'),
      eye: z
        .enum(eyes)
        .describe(
          'The opening at the end of the fruit; none for fruits without one. It counts in wet weather.',
        ),
      splits: z
        .enum(tendencies)
        .describe('How readily it splits after rain; the verdict on wet places rests on it.'),
      rain: z
        .enum(['good', 'fair', 'poor'])
        .describe('How well it stands rain while ripening; the verdict on wet places rests on it.'),
    })
    .describe(
      'What the ripe fruit is like: it is drawn from this on every list and page, so that a tree without a photograph has a picture.',
    ),
  hardiness_offset_c: z
    .number()
    .min(-8)
    .max(8)
    .describe('How many C hardier (minus) or less hardy (plus) than the species.')
    .optional(),
  vigour: z.enum(['low', 'medium', 'high']).describe('How strongly it grows; told on its page.'),
  suits: z
    .strictObject({
      winter: z.array(z.enum(winterClasses)).min(1),
      season: z.array(z.enum(seasonClasses)).min(1),
      summer: z.array(z.enum(summerClasses)).min(1).optional(),
      air: z.array(z.enum(airClasses)).min(1),
    })
    .describe(
      'The kinds of place it is meant for, as the grower knows it; told on its page and in the open files.',
    ),
  trials: z
    .array(
      z.strictObject({
        where: text('The place in words.', 80),
        place: id(
          'Id of the file in content/places with the climate most like it. How much the trial says about other places goes by how like their climates are.',
        ).optional(),
        class: placeClass.describe('What kind of place that is.'),
        crop: z
          .enum(crops)
          .describe('The crop that `ripened` speaks of; the main crop where it is left out.')
          .optional(),
        from: z.int().min(1900).max(2200).describe('First year.'),
        to: z.int().min(1900).max(2200).describe('Last year.'),
        winter: z.enum(['unhurt', 'died-back', 'killed', 'stored']).describe('What the winters did to it.'),
        ripened: z.enum(['all', 'most', 'some', 'none']).describe('In how many seasons the crop ripened.'),
        note: text('What happened.').optional(),
      }),
    )
    .describe('What was seen of it, where.')
    .optional(),
  ripe_seen: z
    .array(
      z.strictObject({
        place: id('The place it was seen at: the name of a file in content/places.'),
        crop: z.enum(crops).describe('Which crop.'),
        from: z
          .string()
          .regex(monthDayPattern)
          .describe('First ripe fruit of an early year, MM-DD in quotes.'),
        to: z.string().regex(monthDayPattern).describe('First ripe fruit of a late year, MM-DD in quotes.'),
        note: text('Which years, and who saw it.').optional(),
      }),
    )
    .describe(
      'When its first fruit was ripe at places whose climate is known. These dates take the place of the figure of its ripening class, everywhere.',
    )
    .optional(),
  offered: z
    .enum(availabilities)
    .describe(
      'How widely anyone offers it, from nowhere-else to common; how scarce it is, and its price, start from that.',
    ),
  mothers: count(
    'Mother plants in the yard that can be propagated from; with one or none it counts as scarcer.',
    10_000,
  ),
  retired: date(
    'Last day on which the yard raised it. Its page stays; no lot may be started later.',
  ).optional(),
  requests: count('People waiting for it. Private: never published.', 100_000).optional(),
  photos: z.array(photoSchema).optional(),
  private_note: text('For the yard only; never published.', 2000).optional(),
});

export type WrittenCultivar = z.infer<typeof writtenCultivar>;

export interface PlaceClass {
  winter: WinterClass;
  season: SeasonClass;
  summer: SummerClass;
  air: AirClass;
}

/** The class of a place as a grower tells it; `summer` null where nobody said. */
export type ToldClass = Omit<PlaceClass, 'summer'> & { summer: SummerClass | null };

export interface Trial {
  where: string;
  /** The place whose climate is most like it; null where the record names none. */
  place: string | null;
  class: ToldClass;
  crop: Crop;
  from: number;
  to: number;
  winter: 'unhurt' | 'died-back' | 'killed' | 'stored';
  ripened: 'all' | 'most' | 'some' | 'none';
  note: string | null;
}

/** First ripe fruit of a crop, seen at a place. */
export interface RipeSeen {
  place: string;
  crop: Crop;
  /** `MM-DD`; the range may run over the new year. */
  from: string;
  to: string;
  note: string | null;
}

export interface Fruit {
  skin: SkinColor;
  blush: SkinColor | null;
  flesh: FleshColor;
  shape: FruitShape;
  lengthMm: number;
  widthMm: number;
  eye: Eye;
  splits: Tendency;
  rain: 'good' | 'fair' | 'poor';
}

export interface Cultivar {
  id: string;
  name: string;
  species: string;
  synonyms: string[];
  origin: string | null;
  flavor: string;
  ripening: RipeningClass;
  crops: Crop[];
  pollination: PollinationHabit;
  /** Null where it is not known or makes no difference. */
  chromosomes: number | null;
  fruit: Fruit;
  hardinessOffsetC: number;
  vigour: 'low' | 'medium' | 'high';
  /** `summer` is null where any will do or nobody said. */
  suits: { winter: WinterClass[]; season: SeasonClass[]; summer: SummerClass[] | null; air: AirClass[] };
  trials: Trial[];
  ripeSeen: RipeSeen[];
  offered: Availability;
  mothers: number;
  /** Last day on which the yard raised it; null while it does. */
  retired: Day | null;
  /** Private. */
  requests: number;
  photos: Photo[];
  /** Markdown below the front matter. */
  body: string;
  /** Line of the file on which the body starts, 1-based. */
  bodyLine: number;
}

/** A cultivar with defaults filled. The private note stays behind. */
export function normaliseCultivar(
  id: string,
  written: WrittenCultivar,
  body: { text: string; line: number },
): Cultivar {
  const { fruit } = written;
  return {
    id,
    name: written.name,
    species: written.species,
    synonyms: written.synonyms ?? [],
    origin: written.origin ?? null,
    flavor: written.flavor,
    ripening: written.ripening,
    crops: [...written.crops],
    pollination: written.pollination,
    chromosomes: written.chromosomes ?? null,
    fruit: {
      skin: fruit.skin,
      blush: fruit.blush ?? null,
      flesh: fruit.flesh,
      shape: fruit.shape,
      lengthMm: fruit.length_mm,
      widthMm: fruit.width_mm,
      eye: fruit.eye,
      splits: fruit.splits,
      rain: fruit.rain,
    },
    hardinessOffsetC: written.hardiness_offset_c ?? 0,
    vigour: written.vigour,
    suits: { ...written.suits, summer: written.suits.summer ?? null },
    trials: (written.trials ?? []).map(trial => ({
      ...trial,
      class: { ...trial.class, summer: trial.class.summer ?? null },
      place: trial.place ?? null,
      crop: trial.crop ?? 'main',
      note: trial.note ?? null,
    })),
    ripeSeen: (written.ripe_seen ?? []).map(seen => ({ ...seen, note: seen.note ?? null })),
    offered: written.offered,
    mothers: written.mothers,
    retired: (written.retired ?? null) as Day | null,
    requests: written.requests ?? 0,
    photos: written.photos ?? [],
    body: body.text,
    bodyLine: body.line,
  };
}
