/** Answers typed in, as text, to the keys of a place record. */

import { z } from 'zod';
import { type WrittenPlace, writtenPlace } from '../records/place.ts';
import type { Draft } from './draft.ts';
import { publishedDraft } from './publishedAnswers.ts';
import { readMonths } from './twelve.ts';

/** Keys that can be given as text, by kind. */
const textKeys = ['name', 'region', 'country', 'period', 'source', 'terms'] as const;
const numberKeys = ['lat', 'lon', 'elevation_m'] as const;
const monthlyKeys = ['tmax_c', 'tmin_c', 'tmax_f', 'tmin_f', 'rain_mm', 'rain_in', 'dew_c'] as const;
const zoneKeys = ['zone', 'zone_basis'] as const;
/** Published figures that win over what is modeled. */
const publishedKeys = [
  'sd_tmax_c',
  'sd_tmin_c',
  'sd_about',
  'sd_source',
  'first_freeze',
  'last_freeze',
  'freeze_source',
  'coldest_night_c',
  'coldest_night_f',
  'coldest_night_source',
] as const;

export type AnswerKey =
  | (typeof textKeys)[number]
  | (typeof numberKeys)[number]
  | (typeof monthlyKeys)[number]
  | (typeof zoneKeys)[number]
  | (typeof publishedKeys)[number];

export const answerKeys: readonly AnswerKey[] = [
  ...textKeys,
  ...numberKeys,
  ...monthlyKeys,
  ...zoneKeys,
  ...publishedKeys,
];

export type Answers = Partial<Record<AnswerKey, string>>;

/** The question to ask about a temperature that is out of range in one unit. */
const otherUnit: Partial<Record<keyof WrittenPlace, string>> = {
  tmax_c: ' Are these degrees F? Then give tmax_f.',
  tmin_c: ' Are these degrees F? Then give tmin_f.',
};

/** What is wrong with one value by the schema, with what is expected; null when it is allowed. */
function faultOf(key: keyof WrittenPlace, value: unknown): string | null {
  const schema: z.ZodType = writtenPlace.shape[key];
  const read = schema.safeParse(value);
  if (read.success) return null;
  const inner = schema instanceof z.ZodOptional ? (schema.unwrap() as z.ZodType) : schema;
  const { path = [], message = '' } = read.error.issues[0] ?? {};
  const at = path.reduce<unknown>((held, step) => (held as Record<PropertyKey, unknown>)?.[step], value);
  const reason = inner.description ?? message;
  return `"${String(at)}" does not fit. ${reason}${otherUnit[key] ?? ''}`;
}

/** A draft from answers; problems name the key. */
export function answersDraft(answers: Answers): { draft: Draft; problems: string[] } {
  const draft: Draft = {};
  const problems: string[] = [];
  const set = <K extends keyof WrittenPlace>(key: K, value: WrittenPlace[K]) => {
    const fault = faultOf(key, value);
    if (fault === null) draft[key] = value;
    else problems.push(`${key}: ${fault}`);
  };
  for (const key of textKeys) {
    const text = answers[key];
    if (text !== undefined) set(key, key === 'country' ? text.trim().toUpperCase() : text.trim());
  }
  for (const key of numberKeys) {
    const text = answers[key];
    if (text === undefined) continue;
    if (text.trim() === '' || !Number.isFinite(Number(text)))
      problems.push(`${key}: "${text}" is no number.`);
    else set(key, Number(text));
  }
  for (const key of monthlyKeys) {
    const text = answers[key];
    if (text === undefined) continue;
    const months = readMonths(text);
    if (typeof months === 'string') problems.push(`${key}: ${months}.`);
    else set(key, months);
  }
  const { zone, zone_basis: basis } = answers;
  if (zone !== undefined)
    set('winter_zone', { zone: zone.trim(), basis: basis?.trim() || 'as given by the grower' });
  else if (basis !== undefined) problems.push('zone_basis: give the zone with it (--zone).');
  const published = publishedDraft(answers);
  problems.push(...published.problems);
  for (const key of ['sd', 'freeze', 'annual_min_c'] as const) {
    if (published.draft[key] !== undefined) set(key, published.draft[key]);
  }
  return { draft, problems };
}
