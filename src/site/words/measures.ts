/** Sizes as they are printed on pages. */

import type { LotEntry } from '../../core/catalogue.ts';
import { lengthInWords, mmToInches, roundTo } from '../../core/units.ts';

/** The pot a plant stands in: `#1 pot`, `3 L pot`. */
function potInWords(written: string): string {
  return `${written} pot`;
}

/** What the plants stand in: a pot, nothing since they were lifted, or nothing of their own yet, such as a layer on its mother. */
export function standInWords({ lot, size }: Pick<LotEntry, 'lot' | 'size'>): string {
  const { container } = size.answer;
  if (container !== null) return potInWords(container);
  return lot.lifted === null ? 'not yet potted' : 'bare roots';
}

const gradedWords = {
  '-1': 'one size under its pot',
  '0': 'true to its pot',
  '1': 'one size over its pot',
} as const;

/** How a plant is graded beside its pot, so that nobody takes the grade for the pot: `one size under its pot`. */
export function gradeInWords({ name, againstPot }: LotEntry['size']['answer']): string {
  return againstPot === null ? `as ${name}, by height and stem` : gradedWords[`${againstPot}`];
}

/** Pot and height, as far as they are known: `#1 pot, 34 in (86 cm)`. */
export function sizeInWords(entry: Pick<LotEntry, 'lot' | 'size'>): string {
  const { heightCm } = entry.size.answer;
  return `${standInWords(entry)}, ${heightCm === null ? 'not yet measured' : lengthInWords(heightCm)}`;
}

/** Length by width of a fruit: `2.2 × 1.8 in (55 × 45 mm)`. */
export function fruitSizeInWords(lengthMm: number, widthMm: number): string {
  const inches = (mm: number) => roundTo(mmToInches(mm), 0.1).toFixed(1);
  return `${inches(lengthMm)} × ${inches(widthMm)} in (${roundTo(lengthMm, 1)} × ${roundTo(widthMm, 1)} mm)`;
}

/** Rain of a month: `3.7 in (95 mm)`. */
export function rainInWords(mm: number): string {
  return `${roundTo(mmToInches(mm), 0.1).toFixed(1)} in (${roundTo(mm, 1)} mm)`;
}

/** Keeps each figure on one line with its unit. */
export function unbroken(words: string): string {
  return words.replace(/(\d) (?=(?:F|C|in|ft|mm|m|kPa|%|days)(?!\w))/g, '$1\u00a0');
}
