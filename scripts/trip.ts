/** `npm run trip`: whether trees can leave on a day, by this week's forecast of both ends typed in. */

import { type Day, dayInWords } from '../src/core/days.ts';
import { isoWeek, nextSendingDay } from '../src/core/match/sending.ts';
import { judgeTyped, type TypedAnswer, typedDays } from '../src/core/match/typedForecast.ts';
import { nearest } from '../src/core/reading/nearest.ts';
import { formWords } from '../src/site/words/words.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';
import { soundContent } from './soundContent.ts';

const help = `Says whether trees can leave on a day, by the forecast you type in. Private: nothing of it is published.

  npm run trip -- --to boston-ma --here 28/45,31/50,30/52,29/49 --there 25/40,22/38,30/44,33/47

  --to         place the parcel goes to; only its name is used
  --here       low/high of the yard: the day of leaving and each day on the way
  --there      the same of the place it goes to
  --leaving    2026-11-30; without it the next sending day
  --celsius    the numbers are in C; without it in F
  --json       for other programs

The rule is the limits under sending: in yard.yaml. A forecast more than three or four days ahead is a guess: look again on the morning
the parcel leaves. Ends with code 0 whatever the answer, 2 when something typed cannot be read.
`;

function asText(answers: readonly TypedAnswer[]): string {
  return answers
    .map(({ form, yes, carton, against }) => {
      const said = yes
        ? `yes, in a ${carton} carton`
        : `no\n${against.map(line => `    ${line}`).join('\n')}`;
      return `  ${formWords[form]}: ${said}`;
    })
    .join('\n');
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    to: { type: 'string' },
    here: { type: 'string' },
    there: { type: 'string' },
    leaving: { type: 'string' },
    celsius: { type: 'boolean' },
    json: { type: 'boolean' },
    'as-of': { type: 'string' },
  });
  refuseLooseWords(positionals);
  const { to, here, there } = values;
  if (!to || !here || !there) throw new UsageError('--to, --here and --there are needed. Try --help.');
  const { asOf, records } = await soundContent({ asOf: values['as-of'] });
  const place = records.places.get(to);
  if (!place) {
    const guess = nearest(to, [...records.places.keys()]);
    throw new UsageError(`there is no place "${to}"${guess ? `; did you mean "${guess}"?` : '.'}`);
  }
  const rules = records.yard.sending;
  const leaving = (values.leaving ?? nextSendingDay(rules, asOf)) as Day;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(leaving) || Number.isNaN(Date.parse(leaving))) {
    throw new UsageError(`--leaving is "${leaving}"; write a day, such as ${isoWeek(asOf).monday}.`);
  }
  const ends = [
    { flag: '--here', text: here, name: records.places.get(records.yard.home)?.name ?? 'the yard' },
    { flag: '--there', text: there, name: place.name },
  ].map(({ flag, text, name }) => {
    const typed = typedDays(text, rules.transitDays + 1, values.celsius === true, flag);
    if (!typed.ok) throw new UsageError(`${typed.text}.`);
    return { name, days: typed.days };
  });
  const trip = { leaving, here: ends[0]!, there: ends[1]! };
  const answers = judgeTyped(trip, rules);
  process.stdout.write(
    values.json
      ? `${JSON.stringify({ leaving, to, answers }, null, 2)}\n`
      : `To ${place.name}, leaving ${dayInWords(leaving)}, ${rules.transitDays} days on the way, by the forecast you typed:\n\n${asText(answers)}\n`,
  );
  return 0;
}

await runIfMain(import.meta, main);
