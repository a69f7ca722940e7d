import { dailyRecordFigures, lastNormalYears, type RecordNote } from '../../climate/dailyRecord.ts';
import { readDailyRecord } from '../../climate/dailyRecordText.ts';
import type { Place, WrittenPlace } from '../../records/place.ts';
import type { Draft, Entry } from '../draft.ts';
import { atLine, atValue, type Problem, smallFirst, wholeFile } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

/** The daily record a place names is there, can be read and covers the year; and none lies about unused. */
export const placeDaily: Check = draft => {
  const named = new Set(draft.places.map(({ value }) => value.daily));
  const unused =
    draft.places.length < draft.ids.place.size ? [] : [...draft.ids.daily].filter(name => !named.has(name));
  return [...draft.places.flatMap(place => placeProblems(draft, place)), ...unused.map(unusedRecord)];
};

function placeProblems({ ids, dailyRecords }: Draft, { file, value }: Entry<WrittenPlace, Place>): Problem[] {
  if (value.daily === null) return [];
  const missing = checkReference({
    rule: 'place-daily',
    file,
    spot: atValue('daily'),
    kind: 'daily record',
    id: value.daily,
    known: ids.daily,
    where: 'Daily records are CSV files in content/places/.',
  });
  const text = dailyRecords.get(value.daily);
  return text === undefined ? missing : recordProblems(`places/${value.daily}`, text, value.lat);
}

function recordProblems(file: string, text: string, lat: number): Problem[] {
  const { rows, problems } = readDailyRecord(text);
  const found = problems.map(
    ({ level, line, message }): Problem => ({
      rule: level === 'error' ? 'daily-record' : 'daily-gaps',
      file,
      spot: line > 0 ? atLine(line) : wholeFile,
      message,
      remedy:
        level === 'error'
          ? 'mend the file, or take the figures from another source.'
          : 'look at the lines if there are many.',
    }),
  );
  if (found.some(({ rule }) => rule === 'daily-record')) return found;
  const figures = dailyRecordFigures(lastNormalYears(rows), lat);
  if (figures !== null) return [...found, ...figures.notes.flatMap(note => lossProblem(file, note))];
  return [
    ...found,
    {
      rule: 'daily-record',
      file,
      spot: wholeFile,
      message: 'some months of the year have too few days in this record',
      remedy: 'take a longer record, or write twelve monthly figures in the place instead.',
    },
  ];
}

/** A few days not read are no loss; months or seasons left out, or a short record, are. */
function lossProblem(file: string, { kind, text }: RecordNote): Problem[] {
  if (kind === 'unread') return [];
  return [
    {
      rule: kind === 'short' ? 'daily-short' : 'daily-gaps',
      file,
      spot: wholeFile,
      message: smallFirst(text.replace(/\.$/, '')),
      remedy:
        kind === 'short' ? 'go on reading, or add older years.' : 'fill the gaps if the readings exist.',
    },
  ];
}

function unusedRecord(name: string): Problem {
  return {
    rule: 'stray-file',
    file: `places/${name}`,
    spot: wholeFile,
    got: name,
    expected: 'a place that names it under daily',
    message: 'no place names this daily record',
    remedy: `add "daily: ${name}" to a place, or take the file out.`,
  };
}
