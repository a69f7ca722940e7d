/**
 * A grower at the keyboard from the clone to a yard of 40 lots of 15 cultivars: every key and every question is counted, and the hour it may take is
 * reckoned from them. 40 words a minute of five keys each is how slow typists are commonly counted (common practice, no source).
 */

import { join } from 'node:path';
import { expect, test } from 'vitest';
import { askCultivar } from '../../scripts/cultivarTraits.ts';
import { askLot, askWhichCultivar } from '../../scripts/lotQuestions.ts';
import { filesOf } from '../../scripts/newYard.ts';
import { readContentFiles } from '../../src/contentFolder.ts';
import { day } from '../../src/core/days.ts';
import { readRecords, type SourceFile } from '../../src/core/reading/read.ts';
import { planCultivar } from '../../src/core/recording/newCultivar.ts';
import { planLot } from '../../src/core/recording/newLot.ts';
import type { FileChange, Planned, YardToAddTo } from '../../src/core/recording/openYard.ts';
import { type Answer, type Typist, typist } from './typist.ts';

const today = day('2026-11-25');
const cultivars = 15;
const lots = 40;

const keysAMinute = 40 * 5;
/** To read a question and think of the answer, s. Ours. */
const secondsAQuestion = 3;
/** The wait while a record is proved and written, s. Measured at about 3 on a slow machine. */
const secondsARecord = 4;
const commandKeys = ['npm run new-yard', 'npm run cultivar', 'npm run lot'].join('').length + 3;
/** Of each record: Enter to write it down, and y for another. */
const keysARecord = 2;

let serial = 0;
const words: readonly (readonly [RegExp, () => Answer])[] = [
  [/yard called/, () => 'Long Meadow Trees'],
  [/Where is it/, () => '40502'],
  [/web address/, () => 'https://longmeadow.example'],
  [/mail address/, () => 'trees@longmeadow.example'],
  [/time zone/, () => 'America/New_York'],
  [/species do you raise/, () => ['fig', 'jujube', 'pomegranate']],
  [/which pots/, () => ['SP4', '#1', '#3']],
  [/do you not send/, () => 'California, Arizona, Hawaii'],
  [/cost\?/, () => '31.5'],
  [/Its name/, () => `Cultivar the ${serial}th`],
  [/come from/, () => 'From cuttings of an old tree two counties over, given by its owner in 2015.'],
  [/Which species/, () => ['fig', 'jujube', 'pomegranate'][serial % 3]],
  [/Length of the fruit/, () => '41'],
  [/Greatest width/, () => '36'],
  [/mother plants/, () => '3'],
  // The middle of each list, so that keys down to it count.
  [/main crop ripen/, () => 'mid'],
  [/Color of the ripe skin/, () => 'red'],
  [/Color of the flesh/, () => 'red'],
  [/Shape of the fruit/, () => 'pear'],
  [/Its eye/, () => 'half-open'],
  [/how strongly|How strongly/, () => 'medium'],
  [/which winters/, () => ['cool', 'mild']],
  [/long a season/, () => ['middle', 'long']],
  [/summer air/, () => ['fair', 'humid']],
  [/Which cultivar/, () => `cultivar-the-${serial % cultivars}th`],
  [/How were they raised/, () => (serial % 2 === 0 ? 'cutting' : 'air-layer')],
  [/Started on/, () => '2026-03-02'],
  [/Cut from the mother/, () => '2026-07-10'],
  [/How many plants/, () => '24'],
  [/which pot\?/, () => '#1'],
];
const answer = (question: string): Answer => words.find(([pattern]) => pattern.test(question))?.[1]();

const encoder = new TextEncoder();
const asSource = ({ path, text }: FileChange): SourceFile => ({ path, bytes: encoder.encode(text) });

function merged(files: readonly SourceFile[], planned: Planned): SourceFile[] {
  if ('refused' in planned) throw new Error(planned.refused);
  const changed = new Set(planned.changes.map(({ path }) => path));
  return [...files.filter(({ path }) => !changed.has(path)), ...planned.changes.map(asSource)];
}

function opened(files: readonly SourceFile[]): YardToAddTo {
  const { records, diagnostics } = readRecords(files, { asOf: today, photos: [] });
  if (!records) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  return { texts: new Map(files.map(({ path, bytes }) => [path, new TextDecoder().decode(bytes)])), records };
}

async function typedYard(grower: Typist): Promise<SourceFile[]> {
  const { files } = await readContentFiles(join(import.meta.dirname, '../../content'));
  const shipped = new Map(
    files
      .filter(({ path }) => /^(?:species|places|guides)\//.test(path))
      .map(({ path, bytes }) => [path, new TextDecoder().decode(bytes)]),
  );
  const yard = await filesOf({}, grower.ask, shipped, today);
  let all = yard.files.map(asSource);
  for (serial = 1; serial < cultivars; serial += 1) {
    const yardNow = opened(all);
    all = merged(all, planCultivar(yardNow, await askCultivar(yardNow, grower.ask)));
  }
  for (serial = 1; serial < lots; serial += 1) {
    const yardNow = opened(all);
    const cultivar = await askWhichCultivar(yardNow, grower.ask);
    all = merged(all, planLot(yardNow, { cultivar, ...(await askLot(yardNow, grower.ask, { today })) }));
  }
  return all;
}

test('40 lots of 15 cultivars are typed within the hour, and the check finds no error', async () => {
  const grower = typist(answer);
  const { records } = opened(await typedYard(grower)) as {
    records: { lots: readonly unknown[]; cultivars: ReadonlyMap<string, unknown> };
  };
  expect(records.lots).toHaveLength(lots);
  expect(records.cultivars.size).toBe(cultivars);
  const typedRecords = cultivars - 1 + (lots - 1);
  const questions = grower.questions() + 2 * typedRecords + 1;
  const keys = grower.keys() + commandKeys + keysARecord * typedRecords;
  const minutes = keys / keysAMinute + (questions * secondsAQuestion + typedRecords * secondsARecord) / 60;
  process.stdout.write(
    `A yard of ${lots} lots of ${cultivars} cultivars: 3 commands, ${questions} questions, ${keys} keys; ${(keys / keysAMinute).toFixed(0)} minutes of typing, ${minutes.toFixed(0)} with ${secondsAQuestion} s to think at each question.\n`,
  );
  expect(keys / keysAMinute).toBeLessThan(60);
  expect(minutes).toBeLessThan(90);
}, 300_000);
