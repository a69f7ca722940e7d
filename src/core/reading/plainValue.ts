/** The plain value of a parsed YAML tree, and what records do not allow in one. */

import { isAlias, isMap, isScalar, isSeq, type Node, type Scalar } from 'yaml';

/** Something YAML allows and records do not, with its offset in the text. */
export interface Finding {
  kind: 'alias' | 'tag' | 'key' | 'duplicate';
  name: string;
  offset: number;
}

/**
 * Objects, lists, text, numbers, true, false and null. Aliases and anchors are refused, since a few lines of them can stand
 * for millions of values; tags, since records have no types of their own; keys that are not one word; keys written twice.
 */
export function plainValue(node: unknown, findings: Finding[]): unknown {
  if (isAlias(node)) {
    findings.push({ kind: 'alias', name: `*${node.source}`, offset: offsetOf(node) });
    return null;
  }
  if (isScalar(node)) {
    noteProperties(node, findings);
    return isDecimal(node) ? node.value : node.source;
  }
  if (isSeq(node)) {
    noteProperties(node, findings);
    return node.items.map(item => plainValue(item, findings));
  }
  if (!isMap(node)) return null;
  noteProperties(node, findings);
  const value: Record<string, unknown> = {};
  for (const { key, value: held } of node.items) {
    const name = keyName(key);
    if (name === null) {
      findings.push({ kind: 'key', name: '', offset: offsetOf(key) || offsetOf(node) });
    } else if (Object.hasOwn(value, name)) {
      findings.push({ kind: 'duplicate', name, offset: offsetOf(key) });
    } else {
      define(value, name, plainValue(held, findings));
    }
  }
  return value;
}

/** False for a number in another notation than that of ten, 0x10 or 0o17: nobody types it for a count, so it stays text, which is told. */
function isDecimal({ format }: Scalar): boolean {
  return format !== 'HEX' && format !== 'OCT';
}

/** A key's text as written; null when it is a list, a group, nothing, or an alias. */
export function keyName(key: unknown): string | null {
  if (!isScalar(key) || key.value === null) return null;
  return typeof key.value === 'string' ? key.value : (key.source ?? String(key.value));
}

function offsetOf(node: unknown): number {
  return (node as Node | null)?.range?.[0] ?? 0;
}

/** Offset of the last text in quotes that starts at or before an offset; the offset itself when there is none. */
export function quoteBefore(root: unknown, offset: number): number {
  const found: number[] = [];
  const look = (node: unknown): void => {
    if (isScalar(node) && /^QUOTE/.test(node.type ?? '')) found.push(offsetOf(node));
    else if (isSeq(node)) node.items.forEach(look);
    else if (isMap(node)) {
      for (const { key, value } of node.items) {
        look(key);
        look(value);
      }
    }
  };
  look(root);
  return found.findLast(start => start <= offset) ?? offset;
}

function noteProperties(node: Node & { anchor?: string; tag?: string }, findings: Finding[]): void {
  if (node.anchor) findings.push({ kind: 'alias', name: `&${node.anchor}`, offset: offsetOf(node) });
  if (node.tag) findings.push({ kind: 'tag', name: node.tag, offset: offsetOf(node) });
}

/** Sets an own key whatever its name; plain assignment to `__proto__` would change the object's nature instead. */
function define(value: Record<string, unknown>, name: string, held: unknown): void {
  if (name !== '__proto__') value[name] = held;
  else
    Object.defineProperty(value, name, { value: held, enumerable: true, configurable: true, writable: true });
}
