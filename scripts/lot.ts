/** `npm run lot`: adds a lot. */

import { day, parseDay } from '../src/core/days.ts';
import { either } from '../src/core/reading/problem.ts';
import { planLot, usualForms } from '../src/core/recording/newLot.ts';
import type { OpenYard } from '../src/core/recording/openYard.ts';
import { forms, methods } from '../src/core/records/common.ts';
import { choice, choices, line, wholeNumber } from './ask.ts';
import { changeFlags, changeHelp, changeRecords, dayGiven, refuseLooseWords } from './changeRecords.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';
import { countGiven, listGiven, wordGiven } from './given.ts';

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

async function asked(yard: OpenYard) {
  const { cultivars } = yard.records;
  const isDay = (typed: string) => (parseDay(typed) === null ? 'A day such as 2026-03-02.' : undefined);
  const cultivar = await choice(
    'Which cultivar?',
    [...cultivars.values()]
      .filter(({ retired }) => retired === null)
      .map(({ id, name }) => ({ value: id, label: name })),
  );
  const method = await choice(
    'How were they raised?',
    methods.map(each => ({ value: each, label: each })),
  );
  const chosen = wordGiven(method, methods, 'method');
  const started = day(
    (await line('Started on which day?', { initial: yard.today, problem: isDay })) ?? yard.today,
  );
  const rootstock = chosen === 'graft' ? await line('On which rootstock?') : undefined;
  const raised = await wholeNumber('How many plants?', 1);
  const container = await line('In which pot? (#1, SP4, 3 L; Enter for none yet)');
  const usual = usualForms(yard, chosen);
  const sold = await choices(
    `Sold in which forms? Lots like it: ${usual.join(', ')}`,
    forms.map(each => ({ value: each, label: each })),
  );
  return {
    cultivar,
    method: chosen,
    started,
    rootstock,
    raised,
    container,
    forms: sold.map(each => wordGiven(each, forms, 'form')),
  };
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, {
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
  if (values.help) {
    process.stdout.write(help);
    return 0;
  }
  refuseLooseWords(positionals);
  const { cultivar, method, raised } = values;
  if (process.stdin.isTTY && cultivar === undefined && method === undefined) {
    return changeRecords(async yard => planLot(yard, await asked(yard)), values);
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
