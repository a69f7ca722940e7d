/** Sizes as they are printed on pages. */

import type { SizeClass } from '../core/lots/answers.ts';
import { lengthInWords, mmToInches, roundTo } from '../core/units.ts';

/** The pot a plant stands in: `#1 pot`, `3 L pot`. */
export function potInWords(written: string): string {
  return `${written} pot`;
}

/** Pot and height, as far as they are known: `#1 pot, 34 in (86 cm)`. */
export function sizeInWords({ container, heightCm }: SizeClass): string {
  const pot = container === null ? 'no pot' : potInWords(container);
  return heightCm === null ? `${pot}, not yet measured` : `${pot}, ${lengthInWords(heightCm)}`;
}

/** Length by width of a fruit: `2.2 × 1.8 in (55 × 45 mm)`. */
export function fruitSizeInWords(lengthMm: number, widthMm: number): string {
  const inches = (mm: number) => roundTo(mmToInches(mm), 0.1).toFixed(1);
  return `${inches(lengthMm)} × ${inches(widthMm)} in (${roundTo(lengthMm, 1)} × ${roundTo(widthMm, 1)} mm)`;
}
