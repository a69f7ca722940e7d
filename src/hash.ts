/** The hash of plain data: the same for equal data, however it came about. */

import { createHash } from 'node:crypto';

/** Maps and sets by what is in them, which JSON would leave out. */
function withContents(_key: string, value: unknown): unknown {
  return value instanceof Map || value instanceof Set ? [value.constructor.name, ...value] : value;
}

/** Hash of texts and plain data, maps and sets included. */
export function hashOf(...data: unknown[]): string {
  const hash = createHash('sha256');
  for (const datum of data) {
    const text = typeof datum === 'string' ? datum : JSON.stringify(datum, withContents);
    hash.update(`${typeof datum} ${text?.length} `).update(text ?? '');
  }
  return hash.digest('base64url').slice(0, 32);
}
