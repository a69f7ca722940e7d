/**
 * The template language of every page: text tagged `html`, which is the name that editors look for to highlight markup inside of scripts.
 * What is put in is escaped unless it is HTML already.
 */

import { htmlText } from '../outputs/htmlText.ts';
import { foldedTemplate } from './foldedTemplate.ts';

/** A finished piece of HTML. */
export interface Html {
  readonly html: string;
}

type Piece = Html | null | false;

type Insert = string | number | Piece | readonly Piece[];

function inserted(value: Insert): string {
  if (value === null || value === false) return '';
  if (typeof value === 'string') return htmlText(value);
  if (typeof value === 'number') return String(value);
  if ('html' in value) return value.html;
  let written = '';
  for (const piece of value) if (piece) written += piece.html;
  return written;
}

/**
 * HTML with values put in, safe between tags and inside of quoted attributes. Nothing is written for null and false. Line breaks and
 * indentation of the template are folded as `foldedTemplate` says; the values put in stay as they are.
 */
export function html(template: TemplateStringsArray, ...values: readonly Insert[]): Html {
  const text = foldedTemplate(template);
  let written = text[0]!;
  for (let index = 0; index < values.length; index += 1) {
    written += inserted(values[index]!) + text[index + 1]!;
  }
  return { html: written };
}

/** Text that is HTML already, such as rendered Markdown or a drawing. Whoever calls this answers for its being safe. */
export function safeHtml(text: string): Html {
  return { html: text };
}

/**
 * An attribute with the space before it: `<a href="/"${attribute('aria-current', 'page')}>`. Written without a value for true, and not at all
 * for null and false.
 */
export function attribute(name: string, value: string | boolean | null): Html | null {
  if (value === null || value === false) return null;
  return value === true ? { html: ` ${name}` } : { html: ` ${name}="${htmlText(value)}"` };
}
