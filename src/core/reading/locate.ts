/** Gives problems their line and column: one parse per file that has problems, and none for the others. */

import { isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import { cellColumn, type TableText } from './csvText.ts';
import type { Diagnostic } from './diagnostic.ts';
import { keyName } from './plainValue.ts';
import type { KeyPath, Problem, Spot } from './problem.ts';
import { rules } from './rules.ts';
import { longestMessage, shortened, visible, whereToRead } from './visible.ts';
import { type PlacedDocument, parsePlaced, placeOf, type YamlSource } from './yamlText.ts';

/** Texts of the files that problems may point into. */
export interface Sources {
  yaml: Map<string, YamlSource>;
  tables: Map<string, TableText>;
}

interface Place {
  line: number;
  column: number;
}

/** Problems as diagnostics with their places, sorted by file, line, column and rule. */
export function locate(problems: readonly Problem[], sources: Sources): Diagnostic[] {
  const byFile = Map.groupBy(problems, problem => problem.file);
  const others = new OtherPlaces(sources);
  const diagnostics = [...byFile].flatMap(([file, group]) => locateInFile(file, group, sources, others));
  return diagnostics.sort(inOrder);
}

/** Places that messages speak of besides their own; each file is parsed once. */
class OtherPlaces {
  readonly #sources: Sources;
  readonly #placed = new Map<string, PlacedDocument | null>();

  constructor(sources: Sources) {
    this.#sources = sources;
  }

  /** `lots/2026.yaml:14` */
  textOf({ file, path }: NonNullable<Problem['see']>): string {
    const source = this.#sources.yaml.get(file);
    if (!source) return file;
    if (!this.#placed.has(file)) this.#placed.set(file, parsePlaced(source));
    const placed = this.#placed.get(file);
    if (!placed) return file;
    const node = nodeAt(placed.document.contents, path, 'value');
    return `${file}:${placeOf(source, placed.lines, node?.range?.[0] ?? 0).line}`;
  }
}

function locateInFile(
  file: string,
  problems: readonly Problem[],
  sources: Sources,
  others: OtherPlaces,
): Diagnostic[] {
  const source = sources.yaml.get(file);
  const placed = source && problems.some(({ spot }) => spot.kind === 'path') ? parsePlaced(source) : null;
  return problems.map(problem => {
    const { line, column } = placeOfSpot(problem, source, placed, sources.tables.get(file));
    return {
      level: rules[problem.rule].level,
      rule: problem.rule,
      file,
      line,
      column,
      path: pathText(problem.spot),
      got: forTerminal(problem.got ?? ''),
      expected: forTerminal(problem.expected ?? ''),
      message: forTerminal(
        problem.see ? problem.message.replace('{see}', () => others.textOf(problem.see!)) : problem.message,
      ),
      remedy: forTerminal(problem.remedy, ` ${whereToRead(problem.rule)}`),
    };
  });
}

/** What a file holds, in a form that a terminal only shows. */
function forTerminal(text: string, end?: string): string {
  return shortened(visible(text), longestMessage, end);
}

function placeOfSpot(
  { spot }: Problem,
  source: YamlSource | undefined,
  placed: PlacedDocument | null,
  table: TableText | undefined,
): Place {
  if (spot.kind === 'known') return { line: spot.line, column: spot.column };
  if (spot.kind === 'cell') {
    return { line: spot.line, column: table ? cellColumn(table, spot.line, spot.column) : 1 };
  }
  if (spot.kind === 'path' && source && placed) {
    const node = nodeAt(placed.document.contents, spot.path, spot.at);
    return placeOf(source, placed.lines, node?.range?.[0] ?? 0);
  }
  return { line: 0, column: 0 };
}

/** The node a path leads to, or the deepest one on the way that exists: the group a missing key belongs in. */
export function nodeAt(root: unknown, path: KeyPath, at: 'key' | 'value'): Node | null {
  let node = root as Node | null;
  for (const [depth, step] of path.entries()) {
    const last = depth === path.length - 1;
    if (isMap(node)) {
      const pair = pairOf(node.items, String(step));
      if (!pair) return node;
      if (last && at === 'key') return pair.key as Node;
      node = hasText(pair.value) ? (pair.value as Node) : (pair.key as Node);
    } else if (isSeq(node)) {
      const item = node.items[Number(step)];
      if (item === undefined) return node;
      node = item as Node;
    } else {
      return node;
    }
  }
  return node;
}

function pairOf(pairs: readonly Pair[], name: string): Pair | undefined {
  return pairs.find(({ key }) => keyName(key) === name);
}

/** Whether anything was written: `key:` alone has a value of nothing, whose place is less use than the key's. */
function hasText(value: unknown): boolean {
  if (value === null) return false;
  return !(isScalar(value) && value.value === null && value.source === '');
}

/** The path as people write it: `3.cultivar`; a cell of a table as its line and column name: `7.left`. */
function pathText(spot: Spot): string {
  if (spot.kind === 'cell') return `${spot.line}.${spot.column}`;
  if (spot.kind === 'path') return spot.path.join('.');
  return spot.kind === 'known' ? (spot.path ?? []).join('.') : '';
}

/** By file, line, column and rule. */
export function inOrder(a: Diagnostic, b: Diagnostic): number {
  return (
    byText(a.file, b.file) ||
    a.line - b.line ||
    a.column - b.column ||
    byText(a.rule, b.rule) ||
    byText(a.path, b.path) ||
    byText(a.message, b.message)
  );
}

/** By code unit, so that the order is the same on every machine. */
export function byText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
