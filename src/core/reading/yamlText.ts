/** YAML text to plain values, in one fast pass; positions are worked out only when something is wrong. */

import { type Document, LineCounter, parseDocument, type YAMLError } from 'yaml';
import { type Finding, plainValue } from './plainValue.ts';
import { atLine, type Problem, wholeFile } from './problem.ts';
import { aliasWords, deepWords, duplicateWords, keyWords, tagWords, wordsFor } from './yamlErrors.ts';

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
  const { document, lines } = placed;
  const complaints = [...document.errors, ...document.warnings];
  const problems = complaints.map(complaint => problemOf(source, lines, complaint));
  if (problems.length === 0) problems.push(...findingsOf(source, placed));
  return problems.length === 0 ? [tooDeep] : onePerLine(problems).slice(0, mostSyntaxProblems);
}

function problemOf(source: YamlSource, lines: LineCounter, { code, message, pos }: YAMLError): Problem {
  const { line, column } = placeOf(source, lines, pos[0]);
  const got = source.text.slice(pos[0], pos[1]).split('\n')[0]!.trim();
  return { ...wordsFor(code, message), file: source.file, spot: atLine(line, column), got };
}

/** The parser often says several things about one slip; the first on a line is the one to mend. */
function onePerLine(problems: Problem[]): Problem[] {
  const seen = new Set<number>();
  return problems.filter(({ spot }) => {
    if (spot.kind !== 'known' || seen.has(spot.line)) return false;
    seen.add(spot.line);
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
