/**
 * What of the demonstration stayed behind in the folder of a yard that was begun by replacing its files. Most of it names the demonstration; its
 * list of addresses and its temperatures are known by how they begin.
 */

import { atLine, type Problem, wholeFile } from './problem.ts';

/** Address of the demonstration yard; a yard with another one is somebody's own. */
export const demonstrationAddress = 'https://kettlewise.example';
const itsName = /kettlewise/i;

/** The first row of each table that names nobody. The list of addresses only grows at its end. */
const openings: Readonly<Record<string, string>> = {
  'addresses.csv': '/cultivars/wren-foot/,2025-03-01,',
  'temperatures.csv': '2026-06-01,13.3,24.8',
};
/** As far as a table is looked into. */
const openingSigns = 400;

/** Tables of which a leftover would give an error for each row, and says nothing of this yard. */
export const leftUnread: ReadonlySet<string> = new Set([
  'addresses.csv',
  'changes.jsonl',
  'temperatures.csv',
]);

function leftLine(path: string, text: string): number | null {
  const opening = openings[path];
  if (opening !== undefined && text.slice(0, openingSigns).includes(opening)) return 2;
  const at = text.search(itsName);
  return at < 0 ? null : text.slice(0, at).split(/\r\n|\n|\r/).length;
}

/** Tells of a file of the demonstration in a yard with another address; null for any other file. */
export function leftOfDemonstration(path: string, text: string, address: string | undefined): Problem | null {
  if (address === undefined || address === demonstrationAddress) return null;
  const line = leftLine(path, text);
  if (line === null) return null;
  const unread = leftUnread.has(path);
  return {
    rule: 'demonstration-left',
    file: path,
    spot: unread ? wholeFile : atLine(line),
    got: 'a file of the demonstration',
    expected: 'your own, or none',
    message: unread
      ? 'the file belongs to the demonstration yard, not to yours'
      : 'this belongs to the demonstration yard, not to yours',
    remedy: unread
      ? 'delete it; the build begins the list anew, and a temperature log is your own or none.'
      : 'write your own words here, or delete the file; npm run new-yard begins a yard with nothing of it.',
  };
}
