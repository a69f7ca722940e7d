/** `npm run cultivar`: adds a cultivar. */

import { planCultivar } from '../src/core/recording/newCultivar.ts';
import { again, keyboard } from './ask.ts';
import { changeFlags, changeHelp, changeRecords } from './changeRecords.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';
import { askCultivar, requestOf, traitFlags, traitHelp } from './cultivarTraits.ts';
import { countGiven } from './given.ts';

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

export async function main(words: string[]): Promise<number> {
  const plain = { type: 'string' } as const;
  const { values, positionals } = readFlags(words, help, {
    ...traitFlags,
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
  refuseLooseWords(positionals);
  const { name, species, flavor, length, width, id, origin, text } = values;
  if (process.stdin.isTTY && name === undefined)
    return again('Another cultivar?', () =>
      changeRecords(async yard => planCultivar(yard, await askCultivar(yard, keyboard)), values),
    );
  if (!name || !species || !flavor || !length || !width)
    throw new UsageError(
      'give --name, --species, --flavor, --length and --width, and the words of the others. Try --help.',
    );
  const mothers = countGiven(values.mothers ?? '0', '--mothers', 0);
  const request = requestOf({ id, name, species, flavor, mothers, origin, text }, values, length, width);
  return changeRecords(yard => planCultivar(yard, request), values);
}

await runIfMain(import.meta, main);
