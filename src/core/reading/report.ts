/** Diagnostics in words: the only place where a line of a report is put together. */

import type { Diagnostic, Level } from './diagnostic.ts';
import { largeFirst, plural } from './problem.ts';
import { longestMessage, shortened, visible, whereToRead } from './visible.ts';

/** A file as people find it: `content/lots/2026.yaml`. `folder` is how the content folder is shown. */
function shownFile(folder: string, file: string): string {
  const prefix = folder.replace(/[\\/]+$/, '');
  // A private folder elsewhere: content/../secret is secret.
  const whole = file === '' ? prefix : `${prefix}/${file}`;
  return visible(file.startsWith('../') ? whole.replace(/[^/\\]+\/\.\.\//, '') : whole);
}

/** One line: `content/lots/2026-layers.yaml:14:9 lot-cultivar: no cultivar "bellweather"; did you mean "bellwether"?` */
export function formatDiagnostic(diagnostic: Diagnostic, folder: string): string {
  const { file, line, column, rule, message, remedy } = diagnostic;
  const place = line > 0 ? `:${line}:${Math.max(column, 1)}` : '';
  const words = message.endsWith('?') ? `${message} ${largeFirst(remedy)}` : `${message}; ${remedy}`;
  const start = `${shownFile(folder, file)}${place} ${rule}: `;
  return start + shortened(words, Math.max(longestMessage - [...start].length, 100), ` ${whereToRead(rule)}`);
}

const groups: readonly { level: Level; title: string }[] = [
  { level: 'error', title: 'Errors, to be put right before anything is published:' },
  { level: 'warning', title: 'Warnings:' },
  { level: 'info', title: 'Good to know:' },
];

/** The whole report: errors, then warnings, then the rest, each sorted by file and line; last a line with the counts. */
export function textReport(diagnostics: readonly Diagnostic[], folder: string): string {
  const parts = groups.flatMap(({ level, title }) => {
    const lines = diagnostics
      .filter(each => each.level === level)
      .map(each => formatDiagnostic(each, folder));
    return lines.length === 0 ? [] : [[title, ...lines].join('\n')];
  });
  return [...parts, countsLine(diagnostics)].join('\n\n');
}

/** `2 errors, 1 warning`. */
function countsLine(diagnostics: readonly Diagnostic[]): string {
  const count = (level: Level) => diagnostics.filter(each => each.level === level).length;
  return `${plural(count('error'), 'error')}, ${plural(count('warning'), 'warning')}`;
}

/** The report for programs: an array of `{level, rule, file, line, column, path, got, expected, message, remedy}`. */
export function jsonReport(diagnostics: readonly Diagnostic[], folder: string): string {
  const rows = diagnostics.map(
    ({ level, rule, file, line, column, path, got, expected, message, remedy }) => ({
      level,
      rule,
      file: shownFile(folder, file),
      line,
      column,
      path,
      got,
      expected,
      message,
      remedy,
    }),
  );
  return JSON.stringify(rows, null, 2);
}
