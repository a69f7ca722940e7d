/** Warnings that a change brings or takes away. */

import type { Diagnostic } from '../reading/diagnostic.ts';

export interface ProblemChanges {
  gained: Diagnostic[];
  gone: Diagnostic[];
}

/** What makes two problems the same one: everything but the line, which moves when lines are written above it. */
function nameOf({ level, rule, file, path, message }: Diagnostic): string {
  return [level, rule, file, path, message].join('\n');
}

/** The problems of `these` that are not in `those`, each of several alike counted. */
function beyond(these: readonly Diagnostic[], those: readonly Diagnostic[]): Diagnostic[] {
  const known = new Map<string, number>();
  for (const each of those) known.set(nameOf(each), (known.get(nameOf(each)) ?? 0) + 1);
  return these.filter(each => {
    const left = known.get(nameOf(each)) ?? 0;
    known.set(nameOf(each), left - 1);
    return left <= 0;
  });
}

/** Compares warnings and notes; errors are left out, since nothing is published with one. */
export function problemChanges(before: readonly Diagnostic[], after: readonly Diagnostic[]): ProblemChanges {
  const milder = (all: readonly Diagnostic[]) => all.filter(({ level }) => level !== 'error');
  return { gained: beyond(milder(after), milder(before)), gone: beyond(milder(before), milder(after)) };
}
