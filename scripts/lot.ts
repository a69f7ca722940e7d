/** `npm run lot`: adds a lot. */

import { either } from '../src/core/reading/problem.ts';
import { planLot } from '../src/core/recording/newLot.ts';
import type { OpenYard } from '../src/core/recording/openYard.ts';
import { forms, methods } from '../src/core/records/common.ts';
import { again, keyboard } from './ask.ts';
import { changeFlags, changeHelp, changeRecords, dayGiven } from './changeRecords.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';
import { countGiven, listGiven, wordGiven } from './given.ts';
import { askLot, askWhichCultivar } from './lotQuestions.ts';

const help = `Adds a lot to the list of its year and method.

  npm run lot -- --cultivar wrenfoot --method cutting --started 2026-03-02 --raised 24 --container SP4

Without flags it asks.
  --id ID           left out: the next of its kind, such as 26-cut-16
  --cultivar ID     a file in content/cultivars
  --method WORD     ${either(methods)}
  --started DAY     when the layer went on, the cutting was struck, the division or graft was made; else today
  --raised COUNT    how many plants were started
  --rootstock TEXT  of a graft
  --severed DAY     when layers were cut from the mother plant
  --lifted DAY      when plants were lifted bare-root
  --container POT   the pot it stands in: "#1" (in quotes), SP4, "3 L"
  --potted DAY      when it went into that pot; else the day severed, lifted or started
  --forms LIST      ${forms.join(',')}; left out: those of lots like it
${changeHelp}`;

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    id: { type: 'string' },
    cultivar: { type: 'string' },
    method: { type: 'string' },
    started: { type: 'string' },
    raised: { type: 'string' },
    rootstock: { type: 'string' },
    severed: { type: 'string' },
    lifted: { type: 'string' },
    container: { type: 'string' },
    potted: { type: 'string' },
    forms: { type: 'string' },
    ...changeFlags,
  });
  refuseLooseWords(positionals);
  const { cultivar, method, raised } = values;
  if (process.stdin.isTTY && cultivar === undefined && method === undefined) {
    const asked = async (yard: OpenYard) =>
      planLot(yard, {
        cultivar: await askWhichCultivar(yard, keyboard),
        ...(await askLot(yard, keyboard, { today: yard.today })),
      });
    return again('Another lot?', () => changeRecords(asked, values));
  }
  if (cultivar === undefined || method === undefined || raised === undefined)
    throw new UsageError('give at least --cultivar, --method and --raised. Try --help.');
  const given = {
    id: values.id,
    cultivar,
    method: wordGiven(method, methods, 'method'),
    raised: countGiven(raised, '--raised'),
    rootstock: values.rootstock,
    severed: dayGiven(values.severed, '--severed'),
    lifted: dayGiven(values.lifted, '--lifted'),
    container: values.container,
    potted: dayGiven(values.potted, '--potted'),
    forms: values.forms === undefined ? undefined : listGiven(values.forms, forms, 'form'),
  };
  const started = dayGiven(values.started, '--started');
  return changeRecords(yard => planLot(yard, { ...given, started: started ?? yard.today }), values);
}

await runIfMain(import.meta, main);
