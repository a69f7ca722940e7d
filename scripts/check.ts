/** `npm run check`: everything that is wrong in the content folder, with file, line and remedy. */

import { loadContent, shownFolder } from '../src/content.ts';
import { ruleManual, rulesManual } from '../src/core/reading/manual.ts';
import { nearest } from '../src/core/reading/nearest.ts';
import { jsonReport, textReport } from '../src/core/reading/report.ts';
import { type RuleId, ruleIds } from '../src/core/reading/rules.ts';
import { readFlags, runIfMain, UsageError } from './command.ts';

const help = `Checks every record in the content folder and names all problems, with file, line and remedy.

  npm run check
  npm run check -- --as-of 2026-11-25    as the yard was known on that day
  npm run check -- --json                the problems as JSON
  npm run check -- --rules               the manual of all rules, and of the words a guide may use
  npm run check -- --rules lot-dates     the manual of one rule

CONTENT_DIR names another content folder. Ends with code 1 when there are errors, 0 otherwise.
`;

function printManual(words: readonly string[]): number {
  const [asked] = words;
  if (asked === undefined) {
    process.stdout.write(rulesManual());
    return 0;
  }
  const id = ruleIds.find(each => each === asked);
  if (id === undefined) throw new UsageError(unknownRule(asked));
  process.stdout.write(`${ruleManual(id satisfies RuleId)}\n`);
  return 0;
}

function unknownRule(asked: string): string {
  const guess = nearest(asked, ruleIds);
  return `there is no rule "${asked}"; ${guess ? `did you mean "${guess}"?` : 'npm run check -- --rules lists all.'}`;
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, {
    'as-of': { type: 'string' },
    json: { type: 'boolean' },
    rules: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (values.help) {
    process.stdout.write(help);
    return 0;
  }
  if (values.rules) return printManual(positionals);
  if (positionals.length > 0) throw new UsageError(`"${positionals[0]}" is not understood here. Try --help.`);
  const { dir, asOf, reading } = await loadContent({ asOf: values['as-of'] });
  const { diagnostics } = reading;
  const report = values.json
    ? jsonReport(diagnostics, shownFolder(dir))
    : `Checked as of ${asOf}.\n\n${textReport(diagnostics, shownFolder(dir))}`;
  process.stdout.write(`${report}\n`);
  return diagnostics.some(({ level }) => level === 'error') ? 1 : 0;
}

await runIfMain(import.meta, main);
