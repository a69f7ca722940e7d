/** Twelve monthly figures typed in one line. */

/** Twelve numbers with spaces, commas or semicolons between them, or what is wrong with the text. */
export function readMonths(text: string): number[] | string {
  const words = text
    .trim()
    .split(/[\s,;]+/)
    .filter(word => word !== '');
  const wrong = words.find(word => !Number.isFinite(Number(word)));
  if (wrong !== undefined) return `"${wrong}" is no number; write twelve numbers, January to December`;
  if (words.length !== 12) {
    return `${words.length} ${words.length === 1 ? 'number' : 'numbers'} instead of twelve, January to December`;
  }
  return words.map(Number);
}
