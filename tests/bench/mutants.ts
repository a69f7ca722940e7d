/** Random small changes to a folder of the core, each tried against the tests of the core that reach it: a change that fails none shows what no test holds. */

import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { randomFromText } from '../../src/core/random.ts';

export interface Mutant {
  /** Path below the project. */
  path: string;
  /** Counted from 1. */
  line: number;
  /** Characters of the file that are replaced. */
  from: number;
  to: number;
  before: string;
  after: string;
}

/** A comparison moved by its bound or turned round, by its token. */
const comparisons: ReadonlyMap<ts.SyntaxKind, readonly string[]> = new Map([
  [ts.SyntaxKind.LessThanToken, ['<=', '>']],
  [ts.SyntaxKind.LessThanEqualsToken, ['<', '>=']],
  [ts.SyntaxKind.GreaterThanToken, ['>=', '<']],
  [ts.SyntaxKind.GreaterThanEqualsToken, ['>', '<=']],
  [ts.SyntaxKind.EqualsEqualsEqualsToken, ['!==']],
  [ts.SyntaxKind.ExclamationEqualsEqualsToken, ['===']],
]);
const signs: ReadonlyMap<ts.SyntaxKind, readonly string[]> = new Map([
  [ts.SyntaxKind.PlusToken, ['-']],
  [ts.SyntaxKind.MinusToken, ['+']],
  [ts.SyntaxKind.PlusEqualsToken, ['-=']],
  [ts.SyntaxKind.MinusEqualsToken, ['+=']],
]);

/** All small changes of one file: comparisons turned, signs swapped, numbers other than 0 moved up by a tenth. */
function mutantsOf(path: string, text: string): Mutant[] {
  const source = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const found: Mutant[] = [];
  const add = (node: ts.Node, after: string) => {
    const [from, to] = [node.getStart(source), node.getEnd()];
    const line = source.getLineAndCharacterOfPosition(from).line + 1;
    found.push({ path, line, from, to, before: text.slice(from, to), after });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node) || ts.isImportDeclaration(node)) return;
    if (ts.isBinaryExpression(node)) {
      const { kind } = node.operatorToken;
      for (const after of comparisons.get(kind) ?? signs.get(kind) ?? []) add(node.operatorToken, after);
    }
    if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken)
      add(node, node.operand.getText(source));
    if (ts.isNumericLiteral(node) && Number(node.text) !== 0)
      add(node, String(Number((Number(node.text) * 1.1).toPrecision(12))));
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function sourcesOf(root: string, folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && /(?<!\.test)\.ts$/.test(entry.name))
    .map(entry => relative(root, join(entry.parentPath, entry.name)).replaceAll('\\', '/'))
    .sort();
}

/** So many different changes by chance, every one as likely, the same for one seed. */
export function pickMutants(root: string, folder: string, count: number, seed: number): Mutant[] {
  const all = sourcesOf(root, folder).flatMap(path =>
    mutantsOf(path, readFileSync(join(root, path), 'utf8')),
  );
  const random = randomFromText(`mutants of ${folder}, seed ${seed}`);
  return all
    .map(mutant => ({ mutant, rank: random.uniform() }))
    .sort((a, b) => a.rank - b.rank)
    .slice(0, count)
    .map(({ mutant }) => mutant);
}

/** Long ones come last: most changes fail a quick one. */
const longTests = ['tests/care/calendar.properties.test.ts', 'tests/care/steps.test.ts'];
/** A change may make a loop endless; the tests of the core take under a minute, ms. */
const HANGS_MS = 240_000;

/** Whether the tests of the core that reach a file pass in a copy of the project. */
function testsPass(copy: string, path: string): boolean {
  const vitest = join(copy, 'node_modules/vitest/vitest.mjs');
  const run = (words: readonly string[]) =>
    spawnSync(
      process.execPath,
      [vitest, ...words, '--run', '--project', 'pure', '--bail', '1', '--passWithNoTests'],
      {
        cwd: copy,
        stdio: 'ignore',
        timeout: HANGS_MS,
      },
    ).status === 0;
  return (
    run(['related', path, ...longTests.flatMap(test => ['--exclude', test])]) && run(['run', ...longTests])
  );
}

/**
 * Tries changes one by one in a copy of the project below `scratch`, and tells each as it is tried. Answers with those that failed no test.
 * Throws where the tests fail without any change.
 */
export function survivingMutants(
  root: string,
  scratch: string,
  mutants: readonly Mutant[],
  tell: (mutant: Mutant, failed: boolean) => void,
): Mutant[] {
  rmSync(scratch, { recursive: true, force: true });
  mkdirSync(scratch, { recursive: true });
  for (const name of [
    'src',
    'tests',
    'content',
    'scripts',
    'package.json',
    'tsconfig.json',
    'vitest.config.ts',
  ])
    cpSync(join(root, name), join(scratch, name), { recursive: true });
  symlinkSync(join(root, 'node_modules'), join(scratch, 'node_modules'), 'junction');
  const untouched = mutants[0];
  if (untouched && !testsPass(scratch, untouched.path))
    throw new Error('the tests of the core fail without a change');
  return mutants.filter(mutant => {
    const file = join(scratch, mutant.path);
    const text = readFileSync(file, 'utf8');
    writeFileSync(file, text.slice(0, mutant.from) + mutant.after + text.slice(mutant.to));
    const failed = !testsPass(scratch, mutant.path);
    writeFileSync(file, text);
    tell(mutant, failed);
    return !failed;
  });
}
