/** A small plate in a row, as text. The words of the row say what it shows, so it is left out for people who do not see it. */

import { type Html, html } from '../html.ts';
import { type FruitMark, fruitMarksPath } from './fruitMarks.ts';

export function fruitMarkHtml(
  { symbol, colours, width, height }: FruitMark,
  href: (path: string) => string,
): Html {
  return html`
    <svg class="fruit ${colours}" width="${width}" height="${height}" aria-hidden="true">
      <use href="${href(fruitMarksPath)}#${symbol}"></use>
    </svg>
  `;
}
