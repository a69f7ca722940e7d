/** `npm run cultivar`: adds a cultivar. */

import { type CultivarRequest, planCultivar } from '../src/core/recording/newCultivar.ts';
import type { OpenYard } from '../src/core/recording/openYard.ts';
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
import { choice, choices, line, wholeNumber } from './ask.ts';
import { changeFlags, changeHelp, changeRecords, refuseLooseWords } from './changeRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { countGiven, listGiven, millimetersGiven, wordGiven } from './given.ts';

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
type Trait = keyof typeof traits;
const traitNames = Object.keys(traits) as Trait[];

const flagWidth = 16;
const traitHelp = traitNames
  .map(
    name =>
      `  ${`--${name}`.padEnd(flagWidth)}  ${traits[name].words.join(', ')}${'many' in traits[name] ? ' (several with commas)' : ''}`,
  )
  .join('\n');

const help = `Adds a cultivar: content/cultivars/ID.md.

Without flags it asks. Flags:
  --name NAME       as it is sold
  --species ID      a file in content/species
  --flavor ID      a class from the list in yard.yaml
${traitHelp}
  --length MM       length of the fruit without the stalk
  --width MM        greatest width
  --mothers COUNT   mother plants in the yard
  --origin TEXT     where it came from, one sentence
  --text TEXT       the text of its page
  --id ID           name of the file; else from the name
${changeHelp}`;

type Given = Partial<Record<Trait, string | undefined>>;

function requestOf(
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

async function asked({ records }: OpenYard): Promise<CultivarRequest> {
  const needed = (typed: string) => (typed.trim() === '' ? 'This is needed.' : undefined);
  const name = (await line('Its name, as it is sold?', { problem: needed }))!;
  const species = await choice(
    'Which species?',
    [...records.species.values()].map(({ id, botanical, common }) => ({
      value: id,
      label: `${common[0]} (${botanical})`,
    })),
  );
  const flavor = await choice(
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
        ? (await choices(traits[trait].asks, offered)).join(',')
        : await choice(traits[trait].asks, offered);
  }
  const length = String(await wholeNumber('Length of the fruit without the stalk, mm?', 5));
  const width = String(await wholeNumber('Greatest width, mm?', 5));
  const mothers = await wholeNumber('How many mother plants are there?', 0);
  const origin = await line('Where did it come from? (one sentence; Enter to leave out)');
  return requestOf({ name, species, flavor, mothers, origin }, given, length, width);
}

export async function main(words: string[]): Promise<number> {
  const plain = { type: 'string' } as const;
  const { values, positionals } = readFlags(words, {
    ...(Object.fromEntries(traitNames.map(name => [name, plain])) as Record<Trait, typeof plain>),
    id: plain,
    name: plain,
    species: plain,
    flavor: plain,
    length: plain,
    width: plain,
    mothers: plain,
    origin: plain,
    text: plain,
    ...changeFlags,
  });
  if (values.help) {
    process.stdout.write(help);
    return 0;
  }
  refuseLooseWords(positionals);
  const { name, species, flavor, length, width, id, origin, text } = values;
  if (process.stdin.isTTY && name === undefined)
    return changeRecords(async yard => planCultivar(yard, await asked(yard)), values);
  if (!name || !species || !flavor || !length || !width)
    throw new UsageError(
      'give --name, --species, --flavor, --length and --width, and the words of the others. Try --help.',
    );
  const mothers = countGiven(values.mothers ?? '0', '--mothers', 0);
  const request = requestOf({ id, name, species, flavor, mothers, origin, text }, values, length, width);
  return changeRecords(yard => planCultivar(yard, request), values);
}

await runIfMain(import.meta, main);
