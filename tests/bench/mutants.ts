/** Random small changes to a folder of the core: comparisons moved or turned, signs swapped, numbers moved by a tenth. */

import { readdirSync, readFileSync } from 'node:fs';
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
