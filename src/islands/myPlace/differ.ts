/** How a town differs from the reference place most like it, in words. */

/** `your last freeze is about 6 days later, and your winters are half a zone colder.` */
export function differInWords(differs: readonly string[]): string {
  if (differs.length === 0) return 'the two hardly differ.';
  if (differs.length === 1) return `${differs[0]}.`;
  return `${differs.slice(0, -1).join(', ')}, and ${differs.at(-1)}.`;
}
