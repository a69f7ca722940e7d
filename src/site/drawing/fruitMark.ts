/** A small plate in a row, as text. The words of the row say what it shows, so it is left out for people who do not see it. */

import { type Html, html } from '../html.ts';
import { type FruitMark, fruitMarksPath } from './fruitMarks.ts';

export function fruitMarkHtml(
  { symbol, colors, width, height }: FruitMark,
  href: (path: string) => string,
): Html {
  return html`
    <svg class="fruit ${colors}" width="${width}" height="${height}" aria-hidden="true">
      <use href="${href(fruitMarksPath)}#${symbol}"></use>
    </svg>
  `;
}
