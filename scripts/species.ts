/** `npm run species`: adds a species, begun from the figures of a related one. */

import { cautionsOf, planSpecies, type SpeciesRequest } from '../src/core/recording/newSpecies.ts';
import { type OpenYard, unknown } from '../src/core/recording/openYard.ts';
import { choice, line } from './ask.ts';
import { changeFlags, changeHelp, changeRecords } from './changeRecords.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';

const help = `Adds a species, content/species/ID.yaml, begun from the figures of a related one. Every copied figure is marked as copied. Its cautions
and what is said about moving it across borders are never taken over by themselves: each is asked for.

  npm run species -- --botanical "Morus nigra" --common "black mulberry" --like mulberry --cautions 1 \\
    --movement "Ask the plant health authority at both ends before a tree crosses a border." --base-price 40

Without flags it asks.
  --botanical NAME  such as Morus nigra
  --common NAMES    common names, the first is shown; several with commas
  --like ID         the related species
  --cautions LIST   which of its cautions hold too, by number (1,2), or none; --show-cautions lists them
  --movement TEXT   what is known of moving it across borders, or same
  --base-price N    what a tree in the base pot costs; without one it cannot be priced
  --id ID           name of the file; else from the first common name
  --show-cautions   lists the cautions and movement rules of the related species
${changeHelp}`;

type Hazards = SpeciesRequest['hazards'];

function takenOver(hazard: Hazards[number], like: string): Hazards[number] {
  const source = `Taken over from ${like} by the yard. There: ${hazard.source}`;
  return { ...hazard, standing: 'ours', source: source.slice(0, 400) };
}

function chosen(hazards: Hazards, list: string, like: string): Hazards {
  if (list.trim() === 'none') return [];
  return list.split(',').map(each => {
    const hazard = /^\d+$/.test(each.trim()) ? hazards[Number(each) - 1] : undefined;
    if (!hazard)
      throw new UsageError(
        `--cautions "${each}" is no number of a caution; ${like} has ${hazards.length}. Write such as 1,2, or none.`,
      );
    return takenOver(hazard, like);
  });
}

function cautions(yard: OpenYard, like: string) {
  const found = cautionsOf(yard, like);
  if (found) return found;
  throw new UsageError(unknown('species', like, yard.records.species.keys()).refused);
}

async function asked(yard: OpenYard): Promise<SpeciesRequest> {
  const needed = (typed: string) => (typed.trim() === '' ? 'This is needed.' : undefined);
  const botanical = (await line('Botanical name?', { problem: needed }))!;
  const common = (await line('Common name, as inside a sentence?', { problem: needed }))!;
  const like = await choice(
    'Which species is it most like?',
    [...yard.records.species.values()].map(each => ({
      value: each.id,
      label: each.common[0] ?? each.botanical,
    })),
  );
  const { hazards, movement } = cautions(yard, like);
  const kept: Hazards = [];
  for (const hazard of hazards) {
    const answer = await choice(`Does this hold for ${common}? ${hazard.caution}`, [
      { value: 'yes', label: 'Yes' },
      { value: 'no', label: 'No, I have looked it up' },
      { value: 'unsure', label: 'Not sure: keep it until I know' },
    ]);
    if (answer !== 'no') kept.push(takenOver(hazard, like));
  }
  const moving = (await line('What is known of moving it across borders?', {
    initial: movement.trim(),
    problem: needed,
  }))!;
  const price = await line('What does a tree in the base pot cost? (Enter to leave out)');
  return { botanical, common: [common], like, hazards: kept, movement: moving, basePrice: priceGiven(price) };
}

function priceGiven(text: string | undefined): number | undefined {
  if (text === undefined) return undefined;
  if (!/^\d{1,6}(?:\.\d{1,3})?$/.test(text))
    throw new UsageError(`"${text}" is no price; write it as 40 or 31.5.`);
  return Number(text);
}

function shownCautions(yard: OpenYard, like: string): string {
  const { hazards, movement } = cautions(yard, like);
  const lines = hazards.map(({ to, caution }, index) => `${index + 1}. (${to}) ${caution}`);
  return `${[...lines, `movement: ${movement.trim()}`].join('\n')}\n`;
}

export async function main(words: string[]): Promise<number> {
  const plain = { type: 'string' } as const;
  const { values, positionals } = readFlags(words, help, {
    botanical: plain,
    common: plain,
    like: plain,
    cautions: plain,
    movement: plain,
    'base-price': plain,
    id: plain,
    'show-cautions': { type: 'boolean' },
    ...changeFlags,
  });
  refuseLooseWords(positionals);
  const { botanical, common, like, movement, id } = values;
  if (process.stdin.isTTY && botanical === undefined && like === undefined)
    return changeRecords(async yard => planSpecies(yard, await asked(yard)), values);
  if (!like) throw new UsageError('say with --like which species it is most like. Try --help.');
  const list = values.cautions;
  const basePrice = priceGiven(values['base-price']);
  return changeRecords(yard => {
    const known = cautions(yard, like);
    if (values['show-cautions']) return { changes: [], said: `\n${shownCautions(yard, like)}` };
    if (!botanical || !common) throw new UsageError('give --botanical and --common.');
    if (list === undefined || movement === undefined)
      throw new UsageError(
        `say with --cautions and --movement what holds for it; nothing of that is taken over by itself. ${like} has:\n${shownCautions(yard, like)}`,
      );
    return planSpecies(yard, {
      id,
      botanical,
      common: common.split(',').map(each => each.trim()),
      like,
      hazards: chosen(known.hazards, list, like),
      movement: movement === 'same' ? known.movement : movement,
      basePrice,
    });
  }, values);
}

await runIfMain(import.meta, main);
