/** Names of the parts of a text: the fragment of each heading on its page. */

export interface NamedPart {
  /** The fragment, unique on the page. */
  id: string;
  text: string;
}

/** The part that a heading of these words opens; a name that is taken gets a number behind it. */
export function partNamed(text: string, before: readonly NamedPart[]): NamedPart {
  const slug =
    text
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'part';
  const taken = before.filter(({ id }) => id === slug || id.startsWith(`${slug}--`)).length;
  return { id: taken === 0 ? slug : `${slug}--${taken + 1}`, text };
}
