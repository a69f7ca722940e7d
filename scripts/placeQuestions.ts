/** The questions `npm run place` asks when a person sits at the keyboard. */

import { isCancel, log, select, text } from '@clack/prompts';
import type { DailyUnit } from '../src/core/climate/dailyRecordText.ts';
import { type AnswerKey, answersDraft } from '../src/core/places/answers.ts';
import type { Draft } from '../src/core/places/draft.ts';
import { UsageError } from './command.ts';

/** Questions go to the error stream, so that --print leaves the record alone on the other. */
const output = process.stderr;

export interface Asker {
  unit(): Promise<DailyUnit>;
  latitude(): Promise<number>;
  /** What the record still needs; nothing is asked that is known. */
  missingIn(draft: Draft): Promise<Draft>;
}

function answered<T>(answer: T): Exclude<T, symbol> {
  if (isCancel(answer)) throw new UsageError('stopped; nothing was written.');
  return answer as Exclude<T, symbol>;
}

async function askFor(key: AnswerKey, message: string, placeholder: string): Promise<Draft> {
  const answer = await text({
    message,
    placeholder,
    output,
    validate: typed => answersDraft({ [key]: typed ?? '' }).problems[0],
  });
  return answersDraft({ [key]: answered(answer) }).draft;
}

const questions: readonly [key: AnswerKey & keyof Draft, message: string, placeholder: string][] = [
  ['name', 'Name of the place?', 'Adelaide'],
  ['region', 'State, province or part of the country?', 'South Australia'],
  ['country', 'Country, as two letters?', 'AU'],
  ['lat', 'Latitude in degrees, south negative?', '-34.95'],
  ['lon', 'Longitude in degrees, west negative?', '138.52'],
  ['elevation_m', 'Height above the sea, m?', '8'],
];

const origins: readonly [key: AnswerKey & keyof Draft, message: string, placeholder: string][] = [
  ['period', 'Which years are the figures means of?', '1991-2020'],
  ['source', 'Who publishes the figures, and where?', 'National weather service, climate tables'],
  ['terms', 'Under which terms may they be used?', 'Open license; name the service as source'],
];

async function temperatures(): Promise<Draft> {
  const unit = answered(
    await select({
      message: 'In which unit are the temperatures?',
      output,
      options: [
        { value: 'c' as const, label: 'C' },
        { value: 'f' as const, label: 'F' },
      ],
    }),
  );
  const months = 'twelve numbers, January to December';
  return {
    ...(await askFor(`tmax_${unit}`, `Mean daily maximum of each month, ${months}?`, '29 28 26 ...')),
    ...(await askFor(`tmin_${unit}`, `Mean daily minimum of each month, ${months}?`, '17.1 16.8 15.1 ...')),
  };
}

function hasTemperatures(draft: Draft): boolean {
  return (draft.tmax_c ?? draft.tmax_f) !== undefined && (draft.tmin_c ?? draft.tmin_f) !== undefined;
}

async function askMissing(draft: Draft): Promise<Draft> {
  const answers: Draft = {};
  for (const [key, message, placeholder] of questions) {
    if (draft[key] === undefined) Object.assign(answers, await askFor(key, message, placeholder));
  }
  if (!hasTemperatures(draft)) Object.assign(answers, await temperatures());
  for (const [key, message, placeholder] of origins) {
    if (draft[key] === undefined) Object.assign(answers, await askFor(key, message, placeholder));
  }
  if (Object.keys(answers).length > 0)
    log.info('Rain, dew point and winter zone can be added in the file.', { output });
  return answers;
}

/** Questions put on the terminal. */
export function asker(): Asker {
  return {
    unit: async () =>
      answered(
        await select<DailyUnit>({
          message: 'In which unit is the daily record?',
          output,
          options: [
            { value: 'C', label: 'C' },
            { value: 'F', label: 'F' },
            { value: 'tenths-C', label: 'tenths of C (GHCN-Daily station files)' },
          ],
        }),
      ),
    latitude: async () =>
      (await askFor('lat', 'Latitude in degrees, south negative?', '38.04')).lat as number,
    missingIn: askMissing,
  };
}
