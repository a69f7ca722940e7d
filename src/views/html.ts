/**
 * Pieces of pages written as text. For parts that stand on thousands of pages: there a component for each line costs more than the line.
 * Everything put into a piece is escaped unless it is a piece itself.
 */

import { htmlText } from '../outputs/htmlText.ts';

/** A finished piece of HTML. */
export interface Html {
  readonly html: string;
}

type Insert = string | number | false | null | Html | readonly Html[];

function inserted(value: Insert): string {
  if (value === null || value === false) return '';
  if (typeof value === 'string') return htmlText(value);
  if (typeof value === 'number') return String(value);
  return 'html' in value ? value.html : value.map(piece => piece.html).join('');
}

/** Text with values put in, safe between tags and inside quoted attributes. Nothing is written for null and false. */
export function html(text: TemplateStringsArray, ...values: readonly Insert[]): Html {
  let written = text[0]!;
  for (let index = 0; index < values.length; index += 1) {
    written += inserted(values[index]!) + text[index + 1]!;
  }
  return { html: written };
}
