/** What has to be said of a cultivar: as flags, and as questions. */

import type { CultivarRequest } from '../src/core/recording/newCultivar.ts';
import type { YardToAddTo } from '../src/core/recording/openYard.ts';
import {
  airClasses,
  crops,
  ripeningClasses,
  seasonClasses,
  winterClasses,
} from '../src/core/records/common.ts';
import {
  availabilities,
  eyes,
  fleshColors,
  fruitShapes,
  pollinationHabits,
  skinColors,
  tendencies,
} from '../src/core/records/cultivar.ts';
import type { Ask } from './ask.ts';
import { UsageError } from './command.ts';
import { listGiven, millimetersGiven, wordGiven } from './given.ts';

const rains = ['good', 'fair', 'poor'] as const;
const vigours = ['low', 'medium', 'high'] as const;

/** What has to be said of a cultivar: flag, its words, the question. Of those with `many`, several may be given. */
const traits = {
  ripening: { words: ripeningClasses, asks: 'When does its main crop ripen, among others of the species?' },
  crops: { words: crops, asks: 'Which crops does it bear?', many: true },
  pollination: { words: pollinationHabits, asks: 'What does it need to set fruit?' },
  skin: { words: skinColors, asks: 'Color of the ripe skin?' },
  flesh: { words: fleshColors, asks: 'Color of the flesh?' },
  shape: { words: fruitShapes, asks: 'Shape of the fruit from the side?' },
  eye: { words: eyes, asks: 'Its eye, the opening at the end?' },
  splits: { words: tendencies, asks: 'How readily does it split after rain?' },
  rain: { words: rains, asks: 'How well does it stand rain while ripening?' },
  vigour: { words: vigours, asks: 'How strongly does it grow?' },
  winter: { words: winterClasses, asks: 'For which winters is it meant?', many: true },
  season: { words: seasonClasses, asks: 'For how long a season between freezes?', many: true },
  air: { words: airClasses, asks: 'For which summer air?', many: true },
  offered: { words: availabilities, asks: 'How widely is it offered, by anyone?' },
} as const;
export type Trait = keyof typeof traits;
export const traitNames = Object.keys(traits) as Trait[];

const plain = { type: 'string' } as const;
/** A flag for each. */
export const traitFlags = Object.fromEntries(traitNames.map(name => [name, plain])) as Record<
  Trait,
  typeof plain
>;

const flagWidth = 16;
/** The lines of --help about them. */
export const traitHelp = traitNames
  .map(
    name =>
      `  ${`--${name}`.padEnd(flagWidth)}  ${traits[name].words.join(', ')}${'many' in traits[name] ? ' (several with commas)' : ''}`,
  )
  .join('\n');

export type Given = Partial<Record<Trait, string | undefined>>;

/** Throws a UsageError for a trait that is missing, or a word that is none of its words. */
export function requestOf(
  known: Pick<CultivarRequest, 'id' | 'name' | 'species' | 'flavor' | 'mothers' | 'origin' | 'text'>,
  given: Given,
  length: string,
  width: string,
): CultivarRequest {
  const missing = traitNames.filter(name => given[name] === undefined);
  if (missing.length > 0)
    throw new UsageError(`give ${missing.map(name => `--${name}`).join(', ')} too. Try --help.`);
  const one = <T extends Trait>(name: T) =>
    wordGiven(
      given[name]!,
      traits[name].words as readonly string[],
      name,
    ) as (typeof traits)[T]['words'][number];
  const many = <T extends Trait>(name: T) =>
    listGiven(
      given[name]!,
      traits[name].words as readonly string[],
      name,
    ) as (typeof traits)[T]['words'][number][];
  return {
    ...known,
    ripening: one('ripening'),
    crops: many('crops'),
    pollination: one('pollination'),
    fruit: {
      skin: one('skin'),
      flesh: one('flesh'),
      shape: one('shape'),
      length_mm: millimetersGiven(length, '--length'),
      width_mm: millimetersGiven(width, '--width'),
      eye: one('eye'),
      splits: one('splits'),
      rain: one('rain'),
    },
    vigour: one('vigour'),
    suits: { winter: many('winter'), season: many('season'), air: many('air') },
    offered: one('offered'),
  };
}

/** Asks for everything a cultivar needs. */
export async function askCultivar(
  { records }: Pick<YardToAddTo, 'records'>,
  ask: Ask,
): Promise<CultivarRequest> {
  const needed = (typed: string) => (typed.trim() === '' ? 'This is needed.' : undefined);
  const name = (await ask.line('Its name, as it is sold?', { problem: needed }))!;
  const species = await ask.choice(
    'Which species?',
    [...records.species.values()].map(({ id, botanical, common }) => ({
      value: id,
      label: `${common[0]} (${botanical})`,
    })),
  );
  const flavor = await ask.choice(
    'What does it taste like?',
    records.yard.flavorClasses.map(({ id, name: title, means }) => ({
      value: id,
      label: `${title}: ${means}`,
    })),
  );
  const given: Given = {};
  for (const trait of traitNames) {
    const offered = traits[trait].words.map(word => ({ value: word, label: word }));
    given[trait] =
      'many' in traits[trait]
        ? (await ask.choices(traits[trait].asks, offered)).join(',')
        : await ask.choice(traits[trait].asks, offered);
  }
  const length = String(await ask.wholeNumber('Length of the fruit without the stalk, mm?', 5));
  const width = String(await ask.wholeNumber('Greatest width, mm?', 5));
  const mothers = await ask.wholeNumber('How many mother plants are there?', 0);
  const origin = await ask.line('Where did it come from? (one sentence; Enter to leave out)');
  return requestOf({ name, species, flavor, mothers, origin }, given, length, width);
}
