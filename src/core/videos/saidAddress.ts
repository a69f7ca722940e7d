/** The address a video gives for what it speaks of. */

import { recordAddress, shortAddress } from '../addresses/paths.ts';
import type { ChapterLink } from '../records/video.ts';

/**
 * The path of what a link leads to, from the root of the site: the short address where its page has a code. A part of a guide is given in
 * full, since a short address on a file server is a page that leads on, and those need not keep the part's name.
 */
export function saidPath(
  { kind, id, part }: ChapterLink | { kind: 'video'; id: string; part: null },
  codeOf: (address: string) => string | undefined,
): string {
  const address = recordAddress(kind, id);
  if (part !== null) return `${address}#${part}`;
  const code = codeOf(address);
  return code === undefined ? address : shortAddress(code);
}
