/**
 * Files beside the pages of records that people keep the address of: the calendar they subscribed to, the code on an end card, what a
 * browser fetches for a place it remembers. They are not in the list of addresses; they follow their page by rule.
 */

import type { Redirect } from './publication.ts';

interface Beside {
  /** Pages that have such files. */
  page: RegExp;
  /** The files, by what stands behind the page's address without its last slash. */
  file: RegExp;
}

const besidePages: readonly Beside[] = [
  { page: /^\/guides\/[^/#]+\/[^/#]+\/$/, file: /^(?:\.ics|\/[^/]+\.ics)$/ },
  { page: /^\/places\/[^/#]+\/$/, file: /^(?:\.json|\/verdicts\.json)$/ },
  { page: /^\/videos\/[^/#]+\/$/, file: /^\/(?:qr\.svg|qr\.png|description\.txt)$/ },
];

/** A file that is served at an old address as well, both from the root of the site: `/guides/old/london-gb.ics`. */
export interface MovedFile {
  from: string;
  to: string;
}

/** Addresses without their last slash of the pages that a file may lie beside: `/a/b` for `/a/b.ics`, `/a` for both. */
function pagesBeside(address: string): string[] {
  const folder = address.slice(0, address.lastIndexOf('/'));
  return [folder, address.replace(/\.[a-z]+$/, '')];
}

/**
 * What has to be served again at an old address, for pages that lead on to one of their own kind. `files` are paths below the output folder.
 */
export function movedFiles(redirects: readonly Redirect[], files: Iterable<string>): MovedFile[] {
  const moves = redirects.flatMap(({ from, to }) => {
    const kind = besidePages.find(({ page }) => page.test(from) && page.test(to));
    return kind === undefined ? [] : [{ from: from.slice(0, -1), to: to.slice(0, -1), file: kind.file }];
  });
  const addresses = new Set<string>();
  const beside = new Map<string, string[]>(moves.map(({ to }) => [to, []]));
  for (const file of files) {
    const address = `/${file}`;
    addresses.add(address);
    for (const page of pagesBeside(address)) beside.get(page)?.push(address);
  }
  return moves
    .flatMap(({ from, to, file }) =>
      beside
        .get(to)!
        .filter(address => file.test(address.slice(to.length)))
        .map(address => ({ from: from + address.slice(to.length), to: address })),
    )
    .filter(({ from }) => !addresses.has(from))
    .sort((a, b) => (a.from < b.from ? -1 : 1));
}
