/** What a species record says of its fruit: rain while it ripens, pollination, and the troubles of some climates. */

import { z } from 'zod';
import { type AirClass, airClasses, type Standing, text, type WinterClass, winterClasses } from './common.ts';
import { type RainLoss, rainLosses } from './rainLoss.ts';

const standing = z
  .enum(['published', 'practice', 'ours'])
  .describe('published: in the source named; practice: common practice; ours: our working judgment.');
const source = text('Where this comes from: author, title, year; or that it is common practice.');

export const writtenRain = z
  .strictObject({
    worst: z.enum(rainLosses).describe('The most that a wet month at ripening does to the crop.'),
    splitting_counts: z
      .boolean()
      .describe('Whether rain spoils it by splitting, so that the cultivar’s `splits` counts.'),
    some: text('What happens in a somewhat wet month, and what to do.', 200),
    much: text('What happens in a very wet month, and what to do.', 200),
    standing,
    source,
  })
  .describe(
    'What rain does while the fruit ripens. Left out, the fruit is judged with care, in general words.',
  );

export const writtenPollination = z
  .strictObject({
    text: text('How the species is pollinated, in a sentence or two.', 400),
    standing,
    source,
  })
  .describe('Pollination of the species, told on the page of every cultivar of it.');

export const writtenTroubles = z
  .array(
    z.strictObject({
      where: z
        .strictObject({
          winter: z.array(z.enum(winterClasses)).min(1).optional(),
          air: z.array(z.enum(airClasses)).min(1).optional(),
        })
        .describe('The climates it belongs to; an axis left out means any.'),
      text: text('What it does, how to see it and what helps.', 400),
      standing,
      source,
    }),
  )
  .describe(
    'Pests, diseases and soils that limit the species in some climates. They are told; they do not change the verdict.',
  );

interface Sourced {
  standing: Standing;
  source: string;
}

export interface FruitInRain extends Sourced {
  worst: RainLoss;
  splittingCounts: boolean;
  some: string;
  much: string;
}

export interface Pollination extends Sourced {
  text: string;
}

export interface Trouble extends Sourced {
  where: { winter?: readonly WinterClass[]; air?: readonly AirClass[] };
  text: string;
}

export function normaliseRain(written: z.infer<typeof writtenRain>): FruitInRain {
  const { splitting_counts, ...rest } = written;
  return { ...rest, splittingCounts: splitting_counts };
}

export function normaliseTrouble({ where, ...rest }: z.infer<typeof writtenTroubles>[number]): Trouble {
  const { winter, air } = where;
  return { ...rest, where: { ...(winter && { winter }), ...(air && { air }) } };
}
