/** The text of the log of changes: lines are only ever added at its end. No packages: the publishing workflow uses it where none are installed. */

/** The log with lines at its end. */
export function withLines(log: string, lines: readonly string[]): string {
  if (lines.length === 0) return log;
  const closed = log === '' || /[\r\n]$/.test(log) ? log : `${log}\n`;
  return `${closed}${lines.map(line => `${line}\n`).join('')}`;
}

/** What tells two lines apart: the id of an event, else the whole line. */
function nameOf(line: string): string {
  return /^\{"id":("[^"]*")/.exec(line)?.[1] ?? line;
}

const linesOf = (log: string) => log.split(/\r\n|\n|\r/).filter(line => line.trim() !== '');

/** The lines of a published log that the log here lacks. */
export function unlogged(here: string, published: string): string[] {
  const known = new Set(linesOf(here).map(nameOf));
  return linesOf(published).filter(line => !known.has(nameOf(line)));
}
