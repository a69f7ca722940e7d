/** Text in HTML. */

const escapes: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};
const special = /[&<>"']/;

/** Text safe between tags and inside quoted attributes. */
export function htmlText(text: string): string {
  return special.test(text) ? text.replace(/[&<>"']/g, sign => escapes[sign]!) : text;
}
