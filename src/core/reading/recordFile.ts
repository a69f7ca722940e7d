/** One file to one record or one list of lots. */

import type { z } from 'zod';
import { normaliseLot, writtenLot } from '../records/lot.ts';
import type { Entry, LotEntry, LotPlace } from './draft.ts';
import { type Split, splitFrontMatter } from './frontMatter.ts';
import { stem } from './layout.ts';
import { atValue, type Problem, show, wholeFile } from './problem.ts';
import { schemaProblems } from './schemaProblems.ts';
import { type WrittenText, writtenText } from './writtenText.ts';
import { readYaml, type YamlSource } from './yamlText.ts';

export interface ReadRecord<Written, Value> {
  entry: Entry<Written, Value> | null;
  problems: Problem[];
  /** Where positions are looked up; null when the file could not be taken apart. */
  source: YamlSource | null;
}

/** Reads a file that holds one record in YAML. */
export function readRecord<Written, Value>(
  file: string,
  text: string,
  schema: z.ZodType<Written>,
  normalise: (id: string, written: Written) => Value,
): ReadRecord<Written, Value> {
  return readFrom({ file, text, firstLine: 1 }, schema, normalise);
}

/** Reads a Markdown file with a record as front matter. */
export function readMarkdown<Written, Value>(
  file: string,
  text: string,
  schema: z.ZodType<Written>,
  normalise: (id: string, written: Written, body: Split['body']) => Value,
): ReadRecord<Written, Value> {
  const split = splitFrontMatter(file, text);
  if ('problem' in split) return { entry: null, problems: [split.problem], source: null };
  return readFrom(split.yaml, schema, (id, written) => normalise(id, written, split.body));
}

function readFrom<Written, Value>(
  source: YamlSource,
  schema: z.ZodType<Written>,
  normalise: (id: string, written: Written) => Value,
): ReadRecord<Written, Value> {
  const { file } = source;
  const read = readYaml(source);
  if ('problems' in read) return { entry: null, problems: read.problems, source };
  const { value } = read;
  if (value === null) return { entry: null, problems: [onlyComments(file)], source };
  const parsed = schema.safeParse(value);
  if (!parsed.success) {
    const checked = { file, schema, value, base: [], written: writtenText(source) };
    return { entry: null, problems: schemaProblems(checked, parsed.error.issues), source };
  }
  const id = stem(file);
  return {
    entry: { file, id, written: parsed.data, value: normalise(id, parsed.data) },
    problems: [],
    source,
  };
}

function onlyComments(file: string): Problem {
  return {
    rule: 'file-empty',
    file,
    spot: wholeFile,
    message: 'the file holds nothing but blank lines and comments',
    remedy: 'write a record in it, or delete the file.',
  };
}

export interface ReadLots {
  entries: LotEntry[];
  /** Ids of all lots in the file, with or without errors. */
  places: LotPlace[];
  /** Whether every lot's id could be read. */
  allKnown: boolean;
  problems: Problem[];
  source: YamlSource;
}

/** Reads a list of lots. A lot with errors does not hide the others. */
export function readLots(file: string, text: string, currency: string): ReadLots {
  const source: YamlSource = { file, text, firstLine: 1 };
  const read = readYaml(source);
  if ('problems' in read)
    return { entries: [], places: [], allKnown: false, problems: read.problems, source };
  const { value } = read;
  if (value === null)
    return { entries: [], places: [], allKnown: false, problems: [onlyComments(file)], source };
  if (!Array.isArray(value))
    return { entries: [], places: [], allKnown: false, problems: [notAList(file, value)], source };
  const lots: ReadLots = {
    entries: [],
    places: [],
    allKnown: true,
    problems: value.length === 0 ? [noLots(file)] : [],
    source,
  };
  const written = writtenText(source);
  for (const [index, item] of value.entries()) readLot(lots, item, index, currency, written);
  return lots;
}

function readLot(lots: ReadLots, item: unknown, index: number, currency: string, written: WrittenText): void {
  const { file } = lots.source;
  const id = (item as { lot?: unknown } | null)?.lot;
  if (typeof id === 'string') lots.places.push({ id, file, index });
  else lots.allKnown = false;
  const parsed = writtenLot.safeParse(item);
  if (parsed.success) {
    const value = normaliseLot(parsed.data, { file, index }, currency);
    lots.entries.push({ file, id: parsed.data.lot, index, written: parsed.data, value });
    return;
  }
  const checked = { file, schema: writtenLot, value: item, base: [index], written };
  lots.problems.push(...schemaProblems(checked, parsed.error.issues));
}

function notAList(file: string, value: unknown): Problem {
  return {
    rule: 'wrong-type',
    file,
    spot: atValue(),
    got: show(value),
    expected: 'a list of lots',
    message: `the file holds ${show(value)} where a list of lots is needed`,
    remedy:
      'start every lot with a hyphen: "- lot: bellwether-2601", and indent its other keys by two spaces.',
  };
}

function noLots(file: string): Problem {
  return {
    rule: 'list-length',
    file,
    spot: atValue(),
    got: 'an empty list',
    expected: 'at least one lot',
    message: 'the list of lots is empty',
    remedy: 'add a lot, or delete the file.',
  };
}
