/** `npm run new-yard`: a yard of one's own in place of the demonstration, from a few answers. */

import { mkdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { confirm, isCancel } from '@clack/prompts';
import { changeTogether } from '../src/build/filesTogether.ts';
import { oneAtATime } from '../src/build/oneAtATime.ts';
import { contentDir, publicationDay, readContentFiles, shownFolder } from '../src/content.ts';
import { type Day, parseDay } from '../src/core/days.ts';
import { readRecords } from '../src/core/reading/read.ts';
import { formatDiagnostic } from '../src/core/reading/report.ts';
import { bareYard, type Shipped, shippedSpecies, withFirstTree } from '../src/core/recording/newYard.ts';
import type { FileChange } from '../src/core/recording/openYard.ts';
import { type Ask, keyboard } from './ask.ts';
import { dayGiven } from './changeRecords.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';
import { traitHelp } from './cultivarTraits.ts';
import { recordsLock } from './lastChange.ts';
import { type NewYard, settingsOf, treeAsked, treeGiven, yardFlags, yardGiven } from './newYardGiven.ts';
import { askYard } from './newYardQuestions.ts';
import { lookAt, type Target } from './newYardTarget.ts';

const help = `Begins a yard of your own in content/, in place of the demonstration. Without flags it asks; the first tree is part of it.

  npm run new-yard
  npm run new-yard -- --name "Long Meadow" --place 40502 --email yard@trees.example --species fig,mulberry --containers "SP4,#1" \\
    --price 30 --cultivar "Their Name" --flavor toffee ... --method cutting --raised 24 --container SP4

The yard
  --name NAME         --address https://trees.example   --email ADDRESS
  --place WHERE       a ZIP code, a weather station by its name or id, or a place in content/places
  --place-name NAME   what you call it; else the name of the station      --region STATE, where the station does not say it
  --time-zone ZONE    else that of this machine
  --currency CODE     else USD in the United States
  --species LIST      of those in content/species
  --forms LIST        leafed-pot,dormant-pot,bare-root; else all
  --containers LIST   pots trees are sold in: "SP4,#1,3 L"
  --days LIST         days parcels leave; else mon,tue
  --transit-days N    days a parcel is on its way; else 3
  --not-to LIST       states or countries you do not send to
  --price AMOUNT      what a tree of the first species costs  --price-pot POT: in which pot; else #1, or the first of the pots

Its first cultivar
  --cultivar NAME     as it is sold; of the first species, or --cultivar-species ID
  --flavor ID         npm run cultivar -- --help explains these
${traitHelp}
  --length MM  --width MM  --mothers COUNT  --origin TEXT

Its first lot
  --method WORD  --raised COUNT  --container POT  --started DAY  --severed DAY  --rootstock TEXT

  --replace           lets go of files of the demonstration that you have changed
  --no-build          writes the yard and does not build its site
  --show              says what would be done, and does nothing
  --help

Nothing of the demonstration stays: no address, no list of changes, no photograph, no temperature. Killed at any moment, it leaves the
folder as it was, or as it will be. CONTENT_DIR names another folder for the yard, which has to be empty.
`;

const shippedFolder = fileURLToPath(new URL('../content', import.meta.url));
const shippedFolders = ['species/', 'places/', 'guides/'];

async function shippedTexts(): Promise<Shipped> {
  const { files } = await readContentFiles(shippedFolder);
  return new Map(
    files
      .filter(({ path }) => shippedFolders.some(folder => path.startsWith(folder)))
      .map(({ path, bytes }) => [path, new TextDecoder().decode(bytes)]),
  );
}

function asOffered(shipped: Shipped) {
  return shippedSpecies(shipped).map(({ id, botanical, common }) => ({
    value: id,
    label: common[0] ?? botanical,
  }));
}

/** All answers, from the keyboard or from flags, as the files of the yard. Throws a UsageError for what cannot be. */
export async function filesOf(
  values: Readonly<Record<string, string | boolean | undefined>>,
  ask: Ask | null,
  shipped: Shipped,
  today: Day,
): Promise<NewYard> {
  const species = asOffered(shipped);
  const answers = ask ? await askYard(ask, species) : await yardGiven(values, species);
  const settings = settingsOf(answers, today);
  const bare = bareYard(shipped, settings, answers.home.file);
  const tree = ask
    ? await treeAsked(bare.yard, answers, ask, today)
    : treeGiven(values, answers, today, text => dayGiven(text, 'the day'));
  const planned = withFirstTree(bare, tree.cultivar, tree.lot);
  if ('refused' in planned) throw new UsageError(planned.refused);
  const encoder = new TextEncoder();
  const { diagnostics } = readRecords(
    planned.files.map(({ path, text }) => ({ path, bytes: encoder.encode(text) })),
    { asOf: today, photos: [] },
  );
  const wrong = diagnostics.find(({ level, rule }) => level === 'error' || rule === 'later-than-day');
  if (wrong)
    throw new UsageError(`nothing was changed, since this would be wrong: ${formatDiagnostic(wrong, '')}`);
  return { answers, files: planned.files, said: planned.said };
}

async function write(folder: string, files: readonly FileChange[], target: Target): Promise<void> {
  for (const path of new Set(files.map(each => dirname(join(folder, each.path)))))
    await mkdir(path, { recursive: true });
  const wanted = new Set(files.map(({ path }) => path));
  const unchanged = new Set(
    files.filter(({ path, text }) => target.texts.get(path) === text).map(({ path }) => path),
  );
  await changeTogether(folder, [
    ...files
      .filter(({ path }) => !unchanged.has(path))
      .map(({ path, text }) => ({ path: join(folder, path), newPath: join(folder, path), text })),
    ...target.paths
      .filter(path => !wanted.has(path))
      .map(path => ({ path: join(folder, path), newPath: join(folder, path), text: null })),
  ]);
}

/** What is done with the new yard, beside where it is done. */
function nextSteps({ answers, files }: NewYard, shown: string): readonly (readonly [string, string])[] {
  const cultivar = files.find(({ path }) => path.startsWith('cultivars/'))!.path;
  const { length: count } = answers.species;
  return [
    ['npm start', 'look at your site'],
    [`${shown}/${cultivar}`, 'write what your customers should know of it'],
    ['npm run cultivar, npm run lot', 'add the other trees, one after the other'],
    ...(count > 1
      ? [
          [
            `${shown}/yard.yaml, prices:`,
            `give each species its own price; all start at ${answers.price}`,
          ] as const,
        ]
      : []),
    [`${shown}/yard.yaml, cartons:`, 'measure your own boxes; these are figures to start from'],
    [`${shown}/yard.yaml, parcel_rules:`, "look your carrier's rules up"],
    [`${shown}/private/yard.yaml`, 'your costs, if no tree shall be sold below them'],
    [`git add ${shown}; git commit`, 'keep it; .github/workflows/README.md publishes it'],
  ];
}

function whatNext(yard: NewYard, folder: string, built: string | null): string {
  const { answers, said } = yard;
  const shown = shownFolder(folder);
  const steps = nextSteps(yard, shown);
  const width = Math.max(...steps.map(([where]) => where.length));
  const lines = steps.map(([where, what]) => `  ${where.padEnd(width)}  ${what}`);
  return `${answers.name} is in ${shown}/, at ${answers.home.name}. ${said}
${built ?? 'Its site was not built yet: npm start builds and shows it.\n'}
What next
${lines.join('\n')}
`;
}

async function buildIt(): Promise<string> {
  const { build } = await import('../src/build/publish.ts');
  const site = await build({ base: '/' });
  if (site === null)
    throw new UsageError('the yard is written, but its site was not built; npm run check says why.');
  return `Its site of ${site.made + site.unchanged} files is in ${site.out}.\n`;
}

async function agreed(folder: string, { changed, paths }: Target): Promise<boolean> {
  if (paths.length === 0) return true;
  const own = changed.length > 0 ? ` These you have changed: ${changed.join(', ')}.` : '';
  const answer = await confirm({
    message: `Put this in place of the demonstration in ${shownFolder(folder)}?${own}`,
    output: process.stderr,
  });
  return !isCancel(answer) && answer;
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, yardFlags);
  refuseLooseWords(positionals);
  const asks = process.stdin.isTTY && values.name === undefined;
  const folder = contentDir();
  const waiting = () => process.stderr.write('Another command is changing the records; waiting for it ...\n');
  return oneAtATime(recordsLock(folder), waiting, async () => {
    const target = await lookAt(folder, { mayReplace: asks || values.replace === true });
    const shipped = await shippedTexts();
    const asked = parseDay(process.env.AS_OF ?? '');
    const yard = await filesOf(values, asks ? keyboard : null, shipped, asked ?? publicationDay([]));
    if (values.show) {
      process.stdout.write(
        `Would be written into ${shownFolder(folder)}: ${yard.files.length} files. ${yard.said}\n`,
      );
      return 0;
    }
    if (asks && !(await agreed(folder, target))) throw new UsageError('stopped; nothing was changed.');
    await write(folder, yard.files, target);
    const built = values['no-build'] ? null : await buildIt();
    process.stdout.write(whatNext(yard, folder, built));
    return 0;
  });
}

await runIfMain(import.meta, main);
