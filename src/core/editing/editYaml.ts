/**
 * Changes single values in a YAML text and leaves every other byte as it is: comments, quotes, line ends and layout. Each change is proved
 * by reading the result again; what cannot be made so that nothing else changes is refused.
 */

import {
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Node,
  parseDocument,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import { sameValue } from './sameValue.ts';
import { type TextEdit, withEdits } from './textEdit.ts';
import {
  contentEnd,
  holderOf,
  lineEnd,
  lineEndOf,
  lineStart,
  nextLine,
  pairOf,
  rangeOf,
  type YamlPath,
} from './yamlPlaces.ts';
import { inlineText, itemLines, keyLines, type YamlValue } from './yamlWords.ts';

export type YamlChange =
  /** Gives a key its value, whether or not it is there. `order`: the keys of the table in their usual order, for one that is added. */
  | { kind: 'set'; path: YamlPath; value: YamlValue; order?: readonly string[] }
  /** Takes a key out with its value. */
  | { kind: 'remove'; path: YamlPath }
  /** Adds an item at the end of the list at the path; `[]` is the list that is the whole text. */
  | { kind: 'append'; path: YamlPath; value: YamlValue };

export type Edited = { text: string } | { refused: string };

const options = { schema: 'core', logLevel: 'error', prettyErrors: false, uniqueKeys: false } as const;

/** A change that the layout of the text does not allow. */
class Refusal extends Error {}

const shownPath = (path: YamlPath) => path.join('.') || 'the list';

/** The text with all changes made one after the other, or why it was left alone: one sentence without a full stop. */
export function editYaml(text: string, changes: readonly YamlChange[]): Edited {
  try {
    return { text: changes.reduce(changed, text) };
  } catch (problem) {
    if (problem instanceof Refusal) return { refused: problem.message };
    throw problem;
  }
}

function parsed(text: string): { contents: unknown; value: unknown } {
  const document = parseDocument(text, options);
  if (document.errors.length > 0) throw new Refusal('the file has mistakes; npm run check says which');
  return { contents: document.contents, value: document.toJS() };
}

function changed(text: string, change: YamlChange): string {
  const before = parsed(text);
  const result = withEdits(text, [editFor(text, before.contents, change)]);
  // Reading it again finds whatever the layout hid: an alias, a tag, a text over several lines.
  const { value } = parsed(result);
  if (sameValue(value, expectedAfter(before.value, change))) return result;
  throw new Refusal(
    `${shownPath(change.path)} is written in a way that cannot be changed by itself; edit the file`,
  );
}

/** What the text has to say after a change. */
function expectedAfter(value: unknown, { kind, path, ...rest }: YamlChange): unknown {
  const copy = structuredClone(value);
  const whole = { whole: copy } as Record<string, unknown>;
  let holder = whole as Record<string | number, unknown>;
  const steps = ['whole', ...path];
  for (const step of steps.slice(0, -1)) holder = holder[step] as Record<string | number, unknown>;
  const last = steps.at(-1)!;
  if (kind === 'remove') delete holder[last];
  else if (kind === 'set') holder[last] = (rest as { value: YamlValue }).value;
  else (holder[last] as unknown[]).push((rest as { value: YamlValue }).value);
  return whole.whole;
}

function editFor(text: string, contents: unknown, change: YamlChange): TextEdit {
  if (change.kind === 'append') return appending(text, contents, change.path, change.value);
  const { path } = change;
  const found = holderOf(contents, path);
  const key = path.at(-1)!;
  if (found === null) throw new Refusal(`there is no ${shownPath(path.slice(0, -1))} in the file`);
  const { holder, inFlow } = found;
  if (change.kind === 'set' && isSeq(holder))
    return replacing(text, holder.items[key as number], change.value, inFlow, path);
  if (!isMap(holder)) throw new Refusal(`${shownPath(path)} cannot be taken out of a list`);
  const pair = pairOf(holder, key);
  if (change.kind === 'remove') {
    if (!pair) throw new Refusal(`there is no ${shownPath(path)} in the file`);
    return removing(text, holder, pair, path);
  }
  if (!pair) return adding(text, holder, String(key), change.value, change.order ?? []);
  if (contentEnd(text, pair.value) !== null && isScalar(pair.value) && !isTable(change.value))
    return replacing(text, pair.value, change.value, inFlow, path);
  return replacingWhole(text, pair.key, pair.value, change.value, inFlow);
}

const isTable = (value: YamlValue) => typeof value === 'object';

function replacing(text: string, node: unknown, value: YamlValue, inFlow: boolean, path: YamlPath): TextEdit {
  if (!isScalar(node) || isTable(value)) throw new Refusal(`${shownPath(path)} is no single value`);
  const [start] = rangeOf(node as Node);
  const end = contentEnd(text, node);
  if (end === null) throw new Refusal(`${shownPath(path)} has no value in the list`);
  return { start, end, put: inlineText(value, { inFlow, before: node }) };
}

/** Puts another value, of one line or of several, behind the colon of a key. */
function replacingWhole(
  text: string,
  key: Node,
  before: unknown,
  value: YamlValue,
  inFlow: boolean,
): TextEdit {
  const [keyStart, keyEnd] = rangeOf(key);
  const start = text.indexOf(':', keyEnd) + 1;
  const end = contentEnd(text, before) ?? start;
  const inline =
    inFlow || !isTable(value) || Array.isArray(value) || (isCollection(before) && before.flow === true);
  if (inline) return { start, end, put: ` ${inlineText(value, { inFlow, before })}` };
  const indent = keyStart - lineStart(text, keyStart);
  const lines = keyLines('key', value, indent, lineEndOf(text));
  return { start, end, put: lines.slice(lines.indexOf(':') + 1) };
}

/** Adds a key behind the last of those that usually stand before it, else at the end of its table. */
function adding(
  text: string,
  map: YAMLMap,
  key: string,
  value: YamlValue,
  order: readonly string[],
): TextEdit {
  if (map.flow)
    return addingInFlow(text, map, `${key}: ${inlineText(value, { inFlow: true, before: null })}`);
  const place = order.indexOf(key);
  const earlier = map.items.filter(({ key: each }) => {
    const at = isScalar(each) ? order.indexOf(String(each.value)) : -1;
    return place < 0 || (at >= 0 && at < place);
  });
  const after = earlier.at(-1) ?? map.items.at(-1);
  const first = map.items[0]?.key;
  if (!after || !first) throw new Refusal('there is no key beside which to write another');
  const start = rangeOf(first as Node)[0];
  const at = endOfLines(text, after);
  const lines = keyLines(key, value, start - lineStart(text, start), lineEndOf(text));
  return { start: at, end: at, put: lineEndOf(text) + lines };
}

/** End of the last line of a pair or item, with the comment at its end. */
function endOfLines(text: string, node: unknown): number {
  const end = contentEnd(text, node);
  if (end === null) throw new Refusal('a value is missing in the file');
  return lineEnd(text, end);
}

function addingInFlow(text: string, collection: YAMLMap | YAMLSeq, put: string): TextEdit {
  const last = contentEnd(text, collection.items.at(-1));
  const [start] = rangeOf(collection as unknown as Node);
  if (last !== null) return { start: last, end: last, put: `, ${put}` };
  return { start: start + 1, end: start + 1, put: isMap(collection) ? ` ${put} ` : put };
}

function removing(
  text: string,
  map: YAMLMap,
  pair: { key: Node; value: Node | null },
  path: YamlPath,
): TextEdit {
  const index = map.items.indexOf(pair as never);
  if (map.items.length === 1) throw new Refusal(`${shownPath(path)} is the only key of its table`);
  const [keyStart, keyEnd] = rangeOf(pair.key);
  const end = contentEnd(text, pair.value) ?? text.indexOf(':', keyEnd) + 1;
  if (map.flow) {
    const before = contentEnd(text, map.items[index - 1]);
    if (index > 0 && before !== null) return { start: before, end, put: '' };
    return { start: keyStart, end: rangeOf(map.items[1]!.key as Node)[0], put: '' };
  }
  const start = lineStart(text, keyStart);
  if (text.slice(start, keyStart).trim() === '') return { start, end: nextLine(text, end), put: '' };
  // The first key of an item, behind its dash: the next one takes its place, with the comments between them.
  const next = rangeOf(map.items[1]!.key as Node)[0];
  const between = text.slice(nextLine(text, end), next);
  return between.includes('#')
    ? { start: keyStart, end: lineEnd(text, end), put: '' }
    : { start: keyStart, end: next, put: '' };
}

function appending(text: string, contents: unknown, path: YamlPath, value: YamlValue): TextEdit {
  const found = path.length === 0 ? contents : listAt(contents, path);
  if (!isSeq(found)) throw new Refusal(`there is no list ${shownPath(path)} in the file`);
  if (found.flow) return addingInFlow(text, found, inlineText(value, { inFlow: true, before: null }));
  const last = found.items.at(-1) as Node;
  const dash = text.lastIndexOf('-', rangeOf(last)[0] - 1);
  const indent = dash - lineStart(text, dash);
  let at = endOfLines(text, last);
  // Comments below the last item that are indented like its keys speak of it.
  for (let next = nextLine(text, at); next < text.length; next = nextLine(text, next)) {
    const line = text.slice(next, lineEnd(text, next));
    if (!/^\s*#/.test(line) || line.length - line.trimStart().length <= indent) break;
    at = lineEnd(text, next);
  }
  const eol = lineEndOf(text);
  const apart = found.items.length > 1 ? isApart(text, found) : path.length === 0;
  const lines =
    isMap(last) && last.flow
      ? `${' '.repeat(indent)}- ${inlineText(value, { inFlow: false })}`
      : itemLines(value, indent, eol);
  return { start: at, end: at, put: `${eol}${apart ? eol : ''}${lines}` };
}

function listAt(contents: unknown, path: YamlPath): unknown {
  const holder = holderOf(contents, path)?.holder;
  return isMap(holder)
    ? pairOf(holder, path.at(-1)!)?.value
    : isSeq(holder)
      ? holder.items[path.at(-1) as number]
      : null;
}

/** Whether blank lines stand between the items of a list. */
function isApart(text: string, list: YAMLSeq): boolean {
  const [before, last] = list.items.slice(-2) as [Node, Node];
  return /\n[ \t]*\r?\n/.test(text.slice(endOfLines(text, before), rangeOf(last)[0]));
}
