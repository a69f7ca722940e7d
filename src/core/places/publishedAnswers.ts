/** Published figures typed in, which win over the model: the spread of single days, freeze dates and the coldest night. */

import { freezeThresholds, sdReferences, type WrittenPlace } from '../records/place.ts';
import { fahrenheitToCelsius, roundTo } from '../units.ts';
import { readMonths } from './twelve.ts';

/** Answers these figures are made from, as text. */
export interface PublishedAnswers {
  source?: string;
  sd_tmax_c?: string;
  sd_tmin_c?: string;
  sd_about?: string;
  sd_source?: string;
  first_freeze?: string;
  last_freeze?: string;
  freeze_source?: string;
  coldest_night_c?: string;
  coldest_night_f?: string;
  coldest_night_source?: string;
}

export interface PublishedFigures {
  draft: Pick<WrittenPlace, 'sd' | 'freeze' | 'annual_min_c'>;
  problems: string[];
}

type Dates = NonNullable<NonNullable<NonNullable<WrittenPlace['freeze']>['32F']>['first']>;
type Threshold = (typeof freezeThresholds)[number];

const dateForms =
  'write the middle date (10-15), or the dates of 10, 50 and 90 % (10-01 10-15 10-30), after another threshold than 32F its name (28F 11-02)';

/** Dates by threshold, parted by semicolons: `10-01 10-15 10-30; 28F 11-02`. A text that is no such list comes back as the problem. */
function freezeDates(text: string): Map<Threshold, Dates> | string {
  const found = new Map<Threshold, Dates>();
  for (const part of text.split(';')) {
    const words = part.trim().split(/[\s,]+/);
    const named = freezeThresholds.find(threshold => threshold === words[0]?.toUpperCase());
    const dates = named ? words.slice(1) : words;
    const wrong = dates.find(date => !/^(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/.test(date));
    if (wrong !== undefined) return `"${wrong}" is no date; ${dateForms}`;
    const [a, b, c] = dates;
    if (dates.length === 1) found.set(named ?? '32F', { p50: a! });
    else if (dates.length === 3) found.set(named ?? '32F', { p10: a!, p50: b!, p90: c! });
    else return `${dates.length} dates; ${dateForms}`;
  }
  return found;
}

function freezeOf(answers: PublishedAnswers, source: string, problems: string[]): WrittenPlace['freeze'] {
  const at: Partial<Record<Threshold, { first?: Dates; last?: Dates }>> = {};
  for (const end of ['first', 'last'] as const) {
    const text = answers[`${end}_freeze`];
    if (text === undefined) continue;
    const dates = freezeDates(text);
    if (typeof dates === 'string') problems.push(`${end}_freeze: ${dates}.`);
    else for (const [threshold, given] of dates) at[threshold] = { ...at[threshold], [end]: given };
  }
  if (Object.keys(at).length > 0) return { ...at, source };
  if (answers.freeze_source !== undefined)
    problems.push('freeze_source: give the dates with it (--last-freeze).');
  return undefined;
}

function spreadOf(answers: PublishedAnswers, source: string, problems: string[]): WrittenPlace['sd'] {
  const { sd_tmax_c: high, sd_tmin_c: low, sd_about: about, sd_source: named } = answers;
  if (high === undefined && low === undefined) {
    if (about !== undefined || named !== undefined)
      problems.push('sd: give --sd-tmin-c and --sd-tmax-c with it.');
    return undefined;
  }
  if (high === undefined || low === undefined) {
    problems.push('sd: give both --sd-tmin-c and --sd-tmax-c.');
    return undefined;
  }
  const reference = sdReferences.find(each => each === (about ?? 'month'));
  if (reference === undefined) problems.push(`sd_about: "${about}" is none of ${sdReferences.join(', ')}.`);
  const [tmax, tmin] = [readMonths(high), readMonths(low)];
  if (typeof tmax === 'string') problems.push(`sd_tmax_c: ${tmax}.`);
  if (typeof tmin === 'string') problems.push(`sd_tmin_c: ${tmin}.`);
  if (typeof tmax === 'string' || typeof tmin === 'string' || reference === undefined) return undefined;
  return { tmin_c: tmin, tmax_c: tmax, about: reference, source };
}

function coldestNightOf(
  answers: PublishedAnswers,
  source: string,
  problems: string[],
): WrittenPlace['annual_min_c'] {
  const { coldest_night_c: inC, coldest_night_f: inF, coldest_night_source: named } = answers;
  const text = inC ?? inF;
  if (text === undefined) {
    if (named !== undefined)
      problems.push('coldest_night_source: give the temperature with it (--coldest-night-f).');
    return undefined;
  }
  if (inC !== undefined && inF !== undefined) {
    problems.push('coldest_night_c: give it in C or in F, not both.');
    return undefined;
  }
  if (text.trim() === '' || !Number.isFinite(Number(text))) {
    problems.push(`coldest_night_${inC === undefined ? 'f' : 'c'}: "${text}" is no number.`);
    return undefined;
  }
  const celsius = inC === undefined ? fahrenheitToCelsius(Number(text)) : Number(text);
  return { mean: roundTo(celsius, 0.01), source };
}

/** What of a record these answers make; problems name the key. Where a figure has no source of its own, that of the place is its source. */
export function publishedDraft(answers: PublishedAnswers): PublishedFigures {
  const problems: string[] = [];
  const sourceOf = (own: string | undefined) => (own ?? answers.source ?? 'As given by the grower').trim();
  const sd = spreadOf(answers, sourceOf(answers.sd_source), problems);
  const freeze = freezeOf(answers, sourceOf(answers.freeze_source), problems);
  const coldest = coldestNightOf(answers, sourceOf(answers.coldest_night_source), problems);
  return {
    draft: {
      ...(sd ? { sd } : {}),
      ...(freeze ? { freeze } : {}),
      ...(coldest ? { annual_min_c: coldest } : {}),
    },
    problems,
  };
}
