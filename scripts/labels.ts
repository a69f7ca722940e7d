/** `npm run labels`: paper for the benches and the boxes. */

import { join, resolve } from 'node:path';
import { careYears } from '../src/careYears.ts';
import { catalogue } from '../src/content.ts';
import { assemble, type Catalogue, type LotEntry } from '../src/core/catalogue.ts';
import { addDays } from '../src/core/days.ts';
import { nearest } from '../src/core/reading/nearest.ts';
import { either } from '../src/core/reading/problem.ts';
import { forms } from '../src/core/records/common.ts';
import { writeWhole } from '../src/files.ts';
import { boxCards } from '../src/labels/boxCard.ts';
import { boxCardWords } from '../src/labels/boxCardWords.ts';
import { benchOrder, labelWords } from '../src/labels/content.ts';
import { countSheet, countTable } from '../src/labels/countSheet.ts';
import { labelSheets } from '../src/labels/potLabels.ts';
import { type Paper, papers, type Sheet, sheetNamed, sheets } from '../src/labels/sheets.ts';
import { testSheet } from '../src/labels/testSheet.ts';
import { dayGiven } from './changeRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { countGiven, wordGiven } from './given.ts';
import { soundContent } from './soundContent.ts';

const kinds = ['count', 'pots', 'tags', 'box', 'test'] as const;

const help = `Makes paper for the benches and the boxes, as PDF files in .yard/labels/.

  npm run labels -- count                 a count sheet in the order of the benches, and the same as CSV to type back
  npm run labels -- pots 26-cut-03=24     pot labels: so many of a lot; without lots one for every plant that is left
  npm run labels -- tags 26-cut-03=2      tie-on tags, to be cut from card
  npm run labels -- box 26-layer-01 26-layer-02 --form bare-root --to boston-ma
                                          a card for the box: first steps, cautions, address of the guide
  npm run labels -- test --sheet a4-2x7   outlines and rulers: print it on plain paper first, at 100 %

  --sheet NAME      ${sheets.map(({ name }) => name).join(', ')},
                    or measures in mm: "letter 3x10 66.7x25.4 at 4.8,12.7 every 69.9,25.4"
  --from PLACE      first label that is still on the sheet, counted along the rows from 1
  --paper WORD      ${either(Object.keys(papers))}, for count sheets and cards
  --height in|cm    --stem mm|in      units of the count sheet
  --form WORD       ${either(forms)}     --to PLACE     --arrives DAY
  --base /orchard/  the path below which the site is published
  --out FOLDER      another folder than .yard/labels
  --help
`;

function lotNamed(all: Catalogue, id: string): LotEntry {
  const found = all.lots.find(({ lot }) => lot.id === id);
  if (found) return found;
  const guess = nearest(
    id,
    all.lots.map(({ lot }) => lot.id),
  );
  throw new UsageError(`there is no lot "${id}"${guess ? `; did you mean "${guess}"?` : '.'}`);
}

/** Lots with how many labels of each. */
function wanted(all: Catalogue, words: readonly string[]): LotEntry[] {
  if (words.length === 0)
    return benchOrder(all.lots).flatMap(entry => Array.from({ length: entry.stock.left }, () => entry));
  return words.flatMap(word => {
    const [id = '', number = '1'] = word.split('=');
    return Array.from({ length: countGiven(number, word) }, () => lotNamed(all, id));
  });
}

function sheetGiven(text: string): Sheet {
  const sheet = sheetNamed(text);
  if (typeof sheet === 'string') throw new UsageError(`--sheet: ${sheet}`);
  return sheet;
}

interface Settings {
  paper: Paper;
  sheet: string | undefined;
  from: number;
  base: string;
  form: string | undefined;
  to: string | undefined;
  arrives: string | undefined;
  units: { height: 'in' | 'cm'; stem: 'in' | 'mm' };
}

async function boxCard(
  all: Catalogue,
  words: readonly string[],
  { form, to, arrives, base, paper }: Settings,
): Promise<Buffer> {
  if (!form || !to || words.length === 0)
    throw new UsageError('a box card needs lots, --form and --to. Try --help.');
  const place = all.places.find(({ id }) => id === to);
  if (!place) {
    const guess = nearest(
      to,
      all.places.map(({ id }) => id),
    );
    throw new UsageError(`there is no place "${to}"${guess ? `; did you mean "${guess}"?` : '.'}`);
  }
  const day = dayGiven(arrives, '--arrives') ?? addDays(all.asOf, all.yard.sending.transitDays);
  const bySpecies = Map.groupBy(
    words.map(id => lotNamed(all, id)),
    ({ species }) => species,
  );
  const cards = [];
  for (const [species, lots] of bySpecies) {
    const year = (await careYears(all, species)).get(place.id)!;
    cards.push(
      boxCardWords(all, { lots, form: wordGiven(form, forms, 'form'), place, arrives: day }, year, base),
    );
  }
  return boxCards(cards, paper, all.asOf);
}

async function filesOf(
  kind: (typeof kinds)[number],
  all: Catalogue,
  words: readonly string[],
  settings: Settings,
): Promise<[string, string | Buffer][]> {
  const { paper, from, base, units } = settings;
  switch (kind) {
    case 'count':
      return [
        ['count-sheet.pdf', await countSheet(all, paper, units)],
        ['count-sheet.csv', countTable(all, units)],
      ];
    case 'pots':
    case 'tags': {
      const tags = kind === 'tags';
      const sheet = sheetGiven(
        settings.sheet ??
          (tags ? `${paper}-tag-1x${paper === 'a4' ? 11 : 10}` : paper === 'a4' ? 'a4-2x7' : 'letter-2x7'),
      );
      const labels = wanted(all, words).map(entry => labelWords(all, entry, base));
      return [
        [
          `${kind}.pdf`,
          await labelSheets(labels, sheet, {
            title: tags ? 'Tie-on tags' : 'Pot labels',
            day: all.asOf,
            from,
            hole: tags,
          }),
        ],
      ];
    }
    case 'box':
      return [['box-card.pdf', await boxCard(all, words, settings)]];
    case 'test':
      return [['test-sheet.pdf', await testSheet(sheetGiven(settings.sheet ?? 'letter-2x7'), all.asOf)]];
  }
}

export async function main(given: string[]): Promise<number> {
  const plain = { type: 'string' } as const;
  const { values, positionals } = readFlags(given, help, {
    sheet: plain,
    from: plain,
    paper: plain,
    height: plain,
    stem: plain,
    form: plain,
    to: plain,
    arrives: plain,
    base: plain,
    out: plain,
    'as-of': plain,
  });
  const [word = '', ...words] = positionals;
  const kind = wordGiven(word, kinds, 'kind of paper');
  const { asOf, records } = await soundContent({ asOf: values['as-of'] });
  process.env.AS_OF = asOf;
  // Only a card for a box needs climates, which take longest.
  const all = kind === 'box' ? await catalogue() : assemble(records, asOf, new Map());
  const settings: Settings = {
    paper: wordGiven(
      values.paper ?? (all.home.country === 'US' || all.home.country === 'CA' ? 'letter' : 'a4'),
      Object.keys(papers) as Paper[],
      'paper',
    ),
    sheet: values.sheet,
    from: countGiven(values.from ?? '1', '--from') - 1,
    base: values.base ?? process.env.BASE_PATH ?? '/',
    form: values.form,
    to: values.to,
    arrives: values.arrives,
    units: {
      height: wordGiven(values.height ?? 'in', ['in', 'cm'], 'unit'),
      stem: wordGiven(values.stem ?? 'mm', ['mm', 'in'], 'unit'),
    },
  };
  const folder = resolve(values.out ?? '.yard/labels');
  for (const [name, data] of await filesOf(kind, all, words, settings)) {
    const path = join(folder, name);
    await writeWhole(path, data);
    process.stdout.write(`${path}\n`);
  }
  return 0;
}

await runIfMain(import.meta, main);
