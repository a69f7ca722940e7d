/** Numbers in the fields of a form. */

/** A number as people type it: decimal commas and a sign of any kind. Null for an empty box, NaN for no number. */
export function numberIn(box: HTMLInputElement): number | null {
  const text = box.value
    .trim()
    .replace(/[\u2212\u2013]/g, '-')
    .replace(/,(?=\d{3}\b)/g, '')
    .replace(',', '.');
  return text === '' ? null : Number(text);
}
