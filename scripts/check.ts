/** `npm run check`: everything that is wrong in the content folder, with file, line and remedy. */

import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { loadContent, privateDir, shownFolder } from '../src/content.ts';
import { ruleManual, rulesManual } from '../src/core/reading/manual.ts';
import { nearest } from '../src/core/reading/nearest.ts';
import { jsonReport, textReport } from '../src/core/reading/report.ts';
import { type RuleId, ruleIds } from '../src/core/reading/rules.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';

const help = `Checks every record in the content folder and names all problems, with file, line and remedy.

  npm run check
  npm run check -- --as-of 2026-11-25    as the yard was known on that day
  npm run check -- --json                the problems as JSON
  npm run check -- --rules               the manual of all rules, and of the words a guide may use
  npm run check -- --rules lot-dates     the manual of one rule

CONTENT_DIR names another content folder, PRIVATE_DIR another private one (content/private/ otherwise). Ends with code 1 when there are errors, 0 otherwise.
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

/** On a terminal, what a public repository shows stands out (ECMA-48, select graphic rendition 1). */
function withEmphasis(report: string): string {
  if (!process.stdout.isTTY || process.env.NO_COLOR) return report;
  return report.replace(/^.* private-in-public: .*$/gm, line => `\x1b[1m${line}\x1b[22m`);
}

/** Tells when git would take the private folder along. */
function warnOfTracked(dir: string): void {
  const folder = privateDir(dir);
  if (!existsSync(folder)) return;
  const asked = spawnSync('git', ['-C', folder, 'check-ignore', '-q', '.']);
  // 0: left out by git; 128: in no repository. Without git nothing is published by it.
  if (asked.status !== 1) return;
  const bold = process.stdout.isTTY && !process.env.NO_COLOR ? ['\x1b[1m', '\x1b[22m'] : ['', ''];
  const shown = shownFolder(folder);
  process.stdout.write(
    `\n${bold[0]}Git does not leave ${shown} out, so a commit would publish it: add a line /${shown}/ to .gitignore.${bold[1]}\n`,
  );
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    'as-of': { type: 'string' },
    json: { type: 'boolean' },
    rules: { type: 'boolean' },
  });
  if (values.rules) return printManual(positionals);
  refuseLooseWords(positionals);
  const { dir, asOf, reading, files } = await loadContent({ asOf: values['as-of'] });
  const { privatePrices } = await import('../src/core/comparison/privatePrices.ts');
  const diagnostics = [...reading.diagnostics, ...privatePrices(files, reading, asOf)];
  const report = values.json
    ? jsonReport(diagnostics, shownFolder(dir))
    : `Checked as of ${asOf}.\n\n${textReport(diagnostics, shownFolder(dir))}`;
  process.stdout.write(`${values.json ? report : withEmphasis(report)}\n`);
  if (!values.json) warnOfTracked(dir);
  return diagnostics.some(({ level }) => level === 'error') ? 1 : 0;
}

await runIfMain(import.meta, main);
