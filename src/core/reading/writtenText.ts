/** How values stand in the file: looked up only when a message needs it. */

import { isScalar } from 'yaml';
import { nodeAt } from './locate.ts';
import type { KeyPath } from './problem.ts';
import { type PlacedDocument, parsePlaced, type YamlSource } from './yamlText.ts';

export interface WrittenText {
  /** A scalar as written, without quotes: `45.50`. Null for anything else. */
  at(path: KeyPath): string | null;
  /** The comment that stands where a value should: `#1` of `container: #1`. Null when there is none. */
  commentAfter(path: KeyPath): string | null;
}

export function writtenText(source: YamlSource): WrittenText {
  let placed: PlacedDocument | null | undefined;
  const node = (path: KeyPath, at: 'key' | 'value') => {
    placed ??= parsePlaced(source);
    return placed ? nodeAt(placed.document.contents, path, at) : null;
  };
  return {
    at(path) {
      const found = node(path, 'value');
      return isScalar(found) ? (found.source ?? null) : null;
    },
    commentAfter(path) {
      const end = node(path, 'key')?.range?.[1];
      if (end === undefined) return null;
      const line = source.text.slice(end).split('\n', 1)[0] ?? '';
      return /^\s*:\s+(#\S+)/.exec(line)?.[1] ?? null;
    },
  };
}
