/** Values as YAML text, in the manner of the records: short lists, and the tables of a list, on one line each. */

import { Document, isMap, isScalar, Scalar } from 'yaml';

export type YamlValue =
  | string
  | number
  | boolean
  | readonly YamlValue[]
  | { readonly [key: string]: YamlValue };

/** Nothing is folded, and a text stays on its line whatever its length: an edit of one value is an edit of one line. */
const settings = { lineWidth: 0, blockQuote: false } as const;

const isList = (value: YamlValue): value is readonly YamlValue[] => Array.isArray(value);

/** The quotes that stood around the text of before stay around the new one. */
function keptQuotes(before: unknown): Scalar.Type | null {
  const type = isScalar(before) ? before.type : null;
  return type === Scalar.QUOTE_DOUBLE || type === Scalar.QUOTE_SINGLE ? type : null;
}

interface Around {
  /** Between brackets, where a comma ends a value. */
  inFlow: boolean;
  /** What stood there before. */
  before?: unknown;
}

/** One text, number or truth value; what YAML 1.2 would read as something else is put in quotes. */
function scalarText(value: string | number | boolean, { inFlow, before }: Around): string {
  const document = new Document({ key: value }, { schema: 'core' });
  const { contents } = document;
  if (!isMap(contents)) throw new Error('no table');
  const node = contents.items[0]!.value;
  if (isScalar(node) && typeof value === 'string') node.type = keptQuotes(before) ?? Scalar.PLAIN;
  contents.flow = inFlow;
  const text = document.toString(settings).trimEnd();
  return inFlow ? text.slice('{ key: '.length, -' }'.length) : text.slice('key: '.length);
}

function keyText(key: string): string {
  return scalarText(key, { inFlow: true });
}

/** One value on one line. */
export function inlineText(value: YamlValue, around: Around): string {
  if (typeof value !== 'object') return scalarText(value, around);
  const inside = (each: YamlValue) => inlineText(each, { inFlow: true });
  if (isList(value)) return `[${value.map(inside).join(', ')}]`;
  const pairs = Object.entries(value).map(([key, each]) => `${keyText(key)}: ${inside(each)}`);
  return `{ ${pairs.join(', ')} }`;
}

function linesOfKey(key: string, value: YamlValue, indent: number): string[] {
  const start = `${' '.repeat(indent)}${keyText(key)}:`;
  if (typeof value !== 'object') return [`${start} ${scalarText(value, { inFlow: false })}`];
  if (!isList(value)) return [start, ...linesOfTable(value, indent + 2)];
  if (value.every(each => typeof each !== 'object'))
    return [`${start} ${inlineText(value, { inFlow: false })}`];
  const margin = ' '.repeat(indent + 2);
  return [start, ...value.map(each => `${margin}- ${inlineText(each, { inFlow: false })}`)];
}

function linesOfTable(table: { readonly [key: string]: YamlValue }, indent: number): string[] {
  return Object.entries(table).flatMap(([key, value]) => linesOfKey(key, value, indent));
}

/** `key: value` as lines indented by so many spaces, without the last line end. */
export function keyLines(key: string, value: YamlValue, indent: number, lineEnd: string): string {
  return linesOfKey(key, value, indent).join(lineEnd);
}

/** An item of a list, its dash indented by so many spaces, without the last line end. */
export function itemLines(value: YamlValue, indent: number, lineEnd: string): string {
  const margin = ' '.repeat(indent);
  if (typeof value !== 'object' || isList(value)) return `${margin}- ${inlineText(value, { inFlow: false })}`;
  const [first = '', ...rest] = linesOfTable(value, indent + 2);
  return [`${margin}- ${first.trimStart()}`, ...rest].join(lineEnd);
}

/** A record as the lines of a file of its own, with line feeds. */
export function yamlFile(table: { readonly [key: string]: YamlValue }): string {
  return `${linesOfTable(table, 0).join('\n')}\n`;
}
