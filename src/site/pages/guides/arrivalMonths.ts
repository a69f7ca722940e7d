/** What becomes of a tree at a place by the month in which it arrives. */

import { type Arrival, arrivalOf } from '../../../core/care/arrival.ts';
import type { CareYear } from '../../../core/care/careYear.ts';
import { seasonDayOf } from '../../../core/care/seasonClock.ts';
import { type Day, day, dayParts, monthInWords } from '../../../core/days.ts';
import type { Form } from '../../../core/records/common.ts';

const arrivalWords: Record<Arrival, string> = {
  settles: 'goes outdoors in shade, and into full sun in steps',
  'late-in-leaf': 'is held in the light, off freezing nights, until the leaves fall, then stored',
  stored: 'is stored asleep until spring',
  'stands-out': 'stands outdoors and wakes by itself',
  wakes: 'grows within one to two weeks, sheltered on freezing nights',
};

/** Months in a row that have the same answer. */
export interface ArrivalSpan {
  /** `November to March` */
  months: string;
  /** The same as numbers, 1 to 12. */
  numbers: number[];
  words: string;
}

const MID_MONTH = 15;

function answersOf(year: CareYear, form: Form, asOf: Day): string[] {
  const { year: calendarYear } = dayParts(asOf);
  return Array.from({ length: 12 }, (_, month) => {
    const arrives = day(`${calendarYear}-${String(month + 1).padStart(2, '0')}-${MID_MONTH}`);
    const plant = {
      species: year.species,
      form,
      arrives,
      stage: 'first-winter' as const,
      kept: 'pot' as const,
      potLiters: year.potLiters,
    };
    return arrivalWords[arrivalOf(year, plant, seasonDayOf(arrives, year.firstDoy).at)];
  });
}

/** What happens to a tree of a form by the month it arrives in, months alike taken together, the span of the day's month first. */
export function arrivalSpans(year: CareYear, form: Form, asOf: Day): ArrivalSpan[] {
  const answers = answersOf(year, form, asOf);
  const answerOf = (month: number) => answers[((month % 12) + 12) % 12]!;
  if (answers.every(answer => answer === answers[0]))
    return [{ months: 'All year', numbers: answers.map((_, month) => month + 1), words: answers[0]! }];
  let first = dayParts(asOf).month - 1;
  while (answerOf(first - 1) === answerOf(first)) first -= 1;
  const spans: ArrivalSpan[] = [];
  const name = (month: number) => monthInWords((((month % 12) + 12) % 12) + 1);
  for (let from = first; from < first + 12; ) {
    let to = from;
    while (to + 1 < first + 12 && answerOf(to + 1) === answerOf(from)) to += 1;
    spans.push({
      months: from === to ? name(from) : `${name(from)} to ${name(to)}`,
      numbers: Array.from({ length: to - from + 1 }, (_, index) => ((from + index + 12) % 12) + 1),
      words: answerOf(from),
    });
    from = to + 1;
  }
  return spans;
}
