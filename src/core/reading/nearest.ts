/** Finds the word a writer most likely meant. */

/** Longest word compared; longer ones are never taken for typing slips of one another. */
const longestCompared = 80;

/**
 * Edit distance with swaps of neighboring letters counted as one (Damerau 1964; optimal string alignment):
 * the least number of letters inserted, deleted, replaced or swapped that turns one word into the other. Gives up beyond `most` and
 * says infinity.
 */
export function editDistance(from: string, to: string, most = Number.POSITIVE_INFINITY): number {
  const width = to.length + 1;
  let beforeLast: number[] = [];
  let last = Array.from({ length: width }, (_, column) => column);
  for (let row = 1; row <= from.length; row += 1) {
    const current = [row];
    for (let column = 1; column < width; column += 1) {
      const same = from[row - 1] === to[column - 1];
      let least = Math.min(last[column]! + 1, current[column - 1]! + 1, last[column - 1]! + (same ? 0 : 1));
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) least = Math.min(least, beforeLast[column - 2]! + 1);
      current.push(least);
    }
    if (Math.min(...current) > most && Math.min(...last) > most) return Number.POSITIVE_INFINITY;
    beforeLast = last;
    last = current;
  }
  return last[width - 1]! > most ? Number.POSITIVE_INFINITY : last[width - 1]!;
}

/** Differences of case, spaces, underscores and hyphens are slips of form, not of spelling. */
function plain(word: string): string {
  return word
    .toLowerCase()
    .trim()
    .replace(/[\s_-]+/g, '-');
}

/**
 * The known word nearest to a written one, or null when none is near: at most one slip per three letters of the known word.
 * Of equally near words the first in alphabetical order, so that the answer does not depend on the order of files.
 */
export function nearest(written: string, known: Iterable<string>): string | null {
  const wanted = plain(written);
  if (wanted === '' || wanted.length > longestCompared) return null;
  let best: string | null = null;
  let bestDistance = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const allowed = Math.max(1, Math.floor(Math.min(candidate.length, wanted.length + 1) / 3));
    const name = plain(candidate);
    if (Math.abs(name.length - wanted.length) > allowed) continue;
    const distance = editDistance(wanted, name, Math.min(allowed, bestDistance));
    if (distance === Number.POSITIVE_INFINITY) continue;
    if (distance === bestDistance && best !== null && best < candidate) continue;
    best = candidate;
    bestDistance = distance;
  }
  return best;
}
