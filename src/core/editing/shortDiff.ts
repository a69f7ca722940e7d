/** What an edit did, as few lines as tell it. */

/** Lines shown of each side at most. */
const mostShown = 6;

function cut(lines: readonly string[], sign: string): string[] {
  const shown = lines.slice(0, mostShown).map(line => `${sign} ${line}`);
  const more = lines.length - shown.length;
  return more > 0 ? [...shown, `${sign} ... and ${more} more ${more === 1 ? 'line' : 'lines'}`] : shown;
}

/** Lines that were taken out with `-` and lines put in with `+`, from the first to the last that differ. Null `before`: a new file. */
export function shortDiff(before: string | null, after: string): string[] {
  const linesOf = (text: string) => text.replace(/^\ufeff/, '').split(/\r?\n/);
  const [old, now] = [before === null ? [] : linesOf(before), linesOf(after)];
  let start = 0;
  while (start < old.length && start < now.length && old[start] === now[start]) start += 1;
  let end = 0;
  while (end < Math.min(old.length, now.length) - start && old.at(-1 - end) === now.at(-1 - end)) end += 1;
  const added = now.slice(start, now.length - end);
  return [
    ...cut(old.slice(start, old.length - end), '-'),
    ...cut(before === null ? trimmed(added) : added, '+'),
  ];
}

/** Without the empty line behind the last line end. */
function trimmed(lines: string[]): string[] {
  return lines.at(-1) === '' ? lines.slice(0, -1) : lines;
}
