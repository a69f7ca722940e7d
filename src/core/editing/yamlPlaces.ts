/** Where the parts of a YAML text start and end, for edits that leave every other byte as it is. */

import { isCollection, isMap, isPair, isScalar, type Node, type Pair, Scalar, type YAMLMap } from 'yaml';

export type YamlPath = readonly (string | number)[];

/** Every node that was parsed has its range; one without was made by the program. */
export function rangeOf(node: Node): [start: number, valueEnd: number] {
  if (!node.range) throw new Error('a node without a place in the text');
  return [node.range[0], node.range[1]];
}

const isBlockText = (node: unknown): boolean =>
  isScalar(node) && (node.type === Scalar.BLOCK_FOLDED || node.type === Scalar.BLOCK_LITERAL);

/**
 * Offset behind the last sign of what a node says, without the comments and line ends that the parser counts with it. Null for a key
 * without a value, which takes no room.
 */
export function contentEnd(text: string, node: unknown): number | null {
  if (isPair(node)) return contentEnd(text, node.value) ?? contentEnd(text, node.key);
  if (isCollection(node) && !node.flow) return contentEnd(text, node.items.at(-1));
  if (!isScalar(node) && !isCollection(node)) return null;
  const [start, end] = rangeOf(node as Node);
  if (isScalar(node) && node.source === '' && node.type === Scalar.PLAIN) return null;
  return isBlockText(node) ? start + text.slice(start, end).trimEnd().length : end;
}

/** Offset of the end of the line an offset is in, before its line end. */
export function lineEnd(text: string, offset: number): number {
  const feed = text.indexOf('\n', offset);
  const end = feed < 0 ? text.length : feed;
  return end > offset && text[end - 1] === '\r' ? end - 1 : end;
}

/** Offset of the start of the line an offset is in; behind a byte order mark. */
export function lineStart(text: string, offset: number): number {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return start === 0 && text.startsWith('\ufeff') ? 1 : start;
}

/** Offset of the line after the one an offset is in. */
export function nextLine(text: string, offset: number): number {
  const feed = text.indexOf('\n', offset);
  return feed < 0 ? text.length : feed + 1;
}

/** The line end of a text: that of its first line; a line feed where it has none. */
export function lineEndOf(text: string): '\n' | '\r\n' {
  const feed = text.indexOf('\n');
  return feed > 0 && text[feed - 1] === '\r' ? '\r\n' : '\n';
}

export function pairOf(map: YAMLMap, key: string | number): Pair<Node, Node | null> | undefined {
  return map.items.find(({ key: each }) => isScalar(each) && each.value === key) as
    | Pair<Node, Node | null>
    | undefined;
}

/** The collection that holds what a path leads to, with the collections around it; null where the path leaves the text. */
export function holderOf(contents: unknown, path: YamlPath): { holder: unknown; inFlow: boolean } | null {
  let holder = contents;
  let inFlow = false;
  for (const step of path.slice(0, -1)) {
    if (!isCollection(holder)) return null;
    inFlow ||= holder.flow === true;
    holder = isMap(holder) ? pairOf(holder, step)?.value : holder.items[step as number];
  }
  return isCollection(holder) ? { holder, inFlow: inFlow || holder.flow === true } : null;
}
