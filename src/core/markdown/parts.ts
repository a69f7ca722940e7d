/** The named parts of a text: its headings, and the fragment each has on its page. */

import type { Heading, Root } from 'mdast';
import { type NamedPart, partNamed } from './partNames.ts';
import { nodesOf, plainText } from './tree.ts';

export type { NamedPart } from './partNames.ts';

/** The part a heading opens; a name that is taken gets a number behind it. */
export function partOpenedBy(heading: Heading, before: readonly NamedPart[]): NamedPart {
  return partNamed(plainText(heading), before);
}

/** Parts that the page of a cultivar has besides those of its text. */
export const cultivarParts: readonly string[] = [
  ...[
    'main',
    'here-place',
    'seek',
    'traits',
    'suits',
    'yours',
    'mine-place',
    'lots',
    'asked',
    'where',
    'map-title',
    'map-words',
  ],
  ...['trials', 'instead', 'seen-in', 'care-taken'],
];

/** The headings of a text with the parts they open, on a page that has other parts already. */
export function headingParts(tree: Root, others: readonly string[]): Map<Heading, NamedPart> {
  const before: NamedPart[] = others.map(id => ({ id, text: '' }));
  const parts = new Map<Heading, NamedPart>();
  for (const { node } of nodesOf(tree)) {
    if (node.type !== 'heading') continue;
    const part = partOpenedBy(node, before);
    before.push(part);
    parts.set(node, part);
  }
  return parts;
}
