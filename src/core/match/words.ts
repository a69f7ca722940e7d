/** The words people read. */
import { dayFromParts, dayInWords, monthDay } from '../days.ts';
import type { Crop, Figure, Reason, RipeningClass } from '../records/common.ts';
import type { DoySpread, Level, RipeningWord } from './answers.ts';

export const levelWords: Readonly<Record<Level, string>> = {
  'at-home': 'At home',
  'with-care': 'With care',
  'in-a-pot': 'In a pot',
  'a-gamble': 'A gamble',
  'not-here': 'Not here',
};

export const cropWords: Readonly<Record<Crop, string>> = { breba: 'breba crop', main: 'main crop' };

export const ripeningClassWords: Readonly<Record<RipeningClass, string>> = {
  'very-early': 'very early',
  early: 'early',
  mid: 'mid-season',
  late: 'late',
  'very-late': 'very late',
};

export const ripeningOddsWords: Readonly<Record<RipeningWord, string>> = {
  reliable: 'reliable',
  'most-years': 'in most years',
  'some-years': 'in some years',
  'not-outdoors': 'not outdoors',
};

/** Ripening classes in their order, earliest 0. */
export const ripeningOrder: Readonly<Record<RipeningClass, number>> = {
  'very-early': 0,
  early: 1,
  mid: 2,
  late: 3,
  'very-late': 4,
};

/** Bounds of the words for a share of years. Standing: ours. */
const RELIABLE_FROM = 0.8;
const MOST_YEARS_FROM = 0.5;
const SOME_YEARS_FROM = 0.2;

export function ripeningWord(share: number): RipeningWord {
  if (share >= RELIABLE_FROM) return 'reliable';
  if (share >= MOST_YEARS_FROM) return 'most-years';
  return share >= SOME_YEARS_FROM ? 'some-years' : 'not-outdoors';
}

/** A share of years: `in 7 years in 10`. */
export function yearsOfTen(share: number): string {
  if (share >= 0.95) return 'in nearly every year';
  if (share < 0.05) return 'in hardly any year';
  return `in ${Math.round(share * 10) || 1} ${share < 0.15 ? 'year' : 'years'} in 10`;
}

/** A day of the year: `April 9`. */
export function doyInWords(doy: number): string {
  const date = monthDay(doy);
  return dayInWords(dayFromParts(2001, Number(date.slice(0, 2)), Number(date.slice(3)))).slice(
    0,
    -', 2001'.length,
  );
}

/** The middle nine years in ten of a range: `August 14 to September 7`. */
export function spreadInWords({ p10, p90 }: DoySpread): string {
  return p10 === p90 ? doyInWords(p10) : `${doyInWords(p10)} to ${doyInWords(p90)}`;
}

/** A reason that leans on a figure of a record: its standing and source travel with it. */
export function reasonFrom(text: string, { standing, source }: Pick<Figure, 'standing' | 'source'>): Reason {
  return { text, standing, source };
}

export function ours(text: string): Reason {
  return { text, standing: 'ours' };
}

export function modeled(text: string): Reason {
  return { text, standing: 'modeled' };
}
