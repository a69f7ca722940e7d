/** YAML text to plain values, in one fast pass; positions are worked out only when something is wrong. */

import { type Document, LineCounter, parseDocument, type YAMLError } from 'yaml';
import { tooDeepLine } from './depth.ts';
import { type Finding, plainValue, quoteBefore } from './plainValue.ts';
import { atLine, type Problem, wholeFile } from './problem.ts';
import {
  aliasWords,
  deepWords,
  duplicateWords,
  indentWords,
  keyWords,
  tabWords,
  tagWords,
  wordsFor,
} from './yamlErrors.ts';

/** A stretch of YAML in a file: the whole file, or the front matter of a Markdown file. */
export interface YamlSource {
  file: string;
  text: string;
  /** Line of the file that the text's first line is, 1-based. */
  firstLine: number;
}

/**
 * YAML 1.2 core: days stay text, `yes` stays text. Repeated keys are looked for by `plainValue`, since the parser's own
 * search takes time that grows with the square of the keys.
 */
const options = { schema: 'core', prettyErrors: false, logLevel: 'error', uniqueKeys: false } as const;

/** Beyond this many complaints about one file the rest is mostly echo of the first. */
const mostSyntaxProblems = 5;

/** Reads one YAML document. Gives a value or, when there is any complaint, the problems. */
export function readYaml(source: YamlSource): { value: unknown } | { problems: Problem[] } {
  const deep = tooDeepLine(source.text);
  if (deep !== null)
    return { problems: [{ ...deepWords, file: source.file, spot: atLine(deep + source.firstLine - 1) }] };
  try {
    const document = parseDocument(source.text, options);
    if (document.errors.length === 0 && document.warnings.length === 0) {
      const findings: Finding[] = [];
      const value = plainValue(document.contents, findings);
      if (findings.length === 0) return { value };
    }
  } catch {
    // Nested deeper than the stack; told apart below.
  }
  return { problems: syntaxProblems(source) };
}

/** A parsed document that knows its lines. */
export interface PlacedDocument {
  document: Document.Parsed;
  lines: LineCounter;
}

/** Parses again with line numbers: for files that have something to report. Null when the parser itself gives up. */
export function parsePlaced(source: YamlSource): PlacedDocument | null {
  const lines = new LineCounter();
  try {
    return { document: parseDocument(source.text, { ...options, lineCounter: lines }), lines };
  } catch {
    return null;
  }
}

/** Line and column in the file of an offset in the text. */
export function placeOf(
  source: YamlSource,
  lines: LineCounter,
  offset: number,
): { line: number; column: number } {
  const { line, col } = lines.linePos(Math.min(offset, source.text.length));
  return { line: Math.max(line, 1) + source.firstLine - 1, column: Math.max(col, 1) };
}

function syntaxProblems(source: YamlSource): Problem[] {
  const tooDeep: Problem = { ...deepWords, file: source.file, spot: wholeFile };
  const placed = parsePlaced(source);
  if (!placed) return [tooDeep];
  const { document } = placed;
  const complaints = withoutEcho([...document.errors, ...document.warnings]);
  const problems = complaints.map(complaint => problemOf(source, placed, complaint));
  if (problems.length === 0) problems.push(...findingsOf(source, placed));
  const tabs = problems.filter(({ rule }) => rule === 'yaml-tab');
  if (tabs.length > 0) return onceEach(tabs);
  return problems.length === 0 ? [tooDeep] : onceEach(problems).slice(0, mostSyntaxProblems);
}

/**
 * A line indented too deep is taken for more text of the line above, and complained about twice: there, as text with a colon, and here,
 * as a key that runs over two lines. Only the second helps.
 */
function withoutEcho(complaints: readonly YAMLError[]): YAMLError[] {
  const runOver = new Set(
    complaints.filter(({ code }) => code === 'MULTILINE_IMPLICIT_KEY').map(({ pos }) => pos[0]),
  );
  return complaints.filter(({ code, pos }) => code !== 'BLOCK_AS_IMPLICIT_KEY' || !runOver.has(pos[0]));
}

function problemOf(source: YamlSource, placed: PlacedDocument, complaint: YAMLError): Problem {
  const { offset, words } = slipOf(source.text, placed, complaint);
  const { line, column } = placeOf(source, placed.lines, offset);
  const got = source.text.slice(offset).split('\n', 1)[0]!.trim();
  return { ...words, file: source.file, spot: atLine(line, column), got };
}

/** What the slip is and where to point: the parser often notices it only further down, or names what follows from it. */
function slipOf(
  text: string,
  { document }: PlacedDocument,
  { code, message, pos: [start, end] }: YAMLError,
): { offset: number; words: ReturnType<typeof wordsFor> } {
  const words = wordsFor(code, message);
  const [first, last] = [lineAt(text, start), lineAt(text, end)];
  if (/^ *\t/.test(first.text)) return { offset: first.offset, words: tabWords };
  if (code === 'MULTILINE_IMPLICIT_KEY' && last.indent > first.indent) {
    return { offset: last.offset + last.indent, words: indentWords };
  }
  if (code === 'MISSING_CHAR' && message.includes('quote')) {
    return { offset: quoteBefore(document.contents, start), words };
  }
  return { offset: start, words };
}

/** The line an offset is in, with the offset it starts at. */
function lineAt(text: string, offset: number): { text: string; offset: number; indent: number } {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const line = text.slice(start).split('\n', 1)[0]!;
  return { text: line, offset: start, indent: line.length - line.trimStart().length };
}

/** The parser often says several things about one slip, and the same again further down; the first is the one to mend. */
function onceEach(problems: readonly Problem[]): Problem[] {
  const seen = new Set<string | number>();
  return problems.filter(({ spot, message }) => {
    const line = spot.kind === 'known' ? spot.line : 0;
    if (seen.has(line) || seen.has(message)) return false;
    seen.add(line).add(message);
    return true;
  });
}

function findingsOf(source: YamlSource, { document, lines }: PlacedDocument): Problem[] {
  const findings: Finding[] = [];
  try {
    plainValue(document.contents, findings);
  } catch {
    return [];
  }
  return findings.map(({ kind, name, offset }) => {
    const { line, column } = placeOf(source, lines, offset);
    const words = { alias: aliasWords, tag: tagWords, key: keyWords, duplicate: duplicateWords(name) }[kind];
    return { ...words, file: source.file, spot: atLine(line, column), got: name };
  });
}
