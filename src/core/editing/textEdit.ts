/** Replacing stretches of a text and leaving every other byte as it is. */

export interface TextEdit {
  /** Offsets in the text as it was; `end` is the first that stays. */
  start: number;
  end: number;
  put: string;
}

/** The text with all edits made; they must not overlap. */
export function withEdits(text: string, edits: readonly TextEdit[]): string {
  let at = 0;
  let result = '';
  for (const { start, end, put } of [...edits].sort((a, b) => a.start - b.start)) {
    result += text.slice(at, start) + put;
    at = end;
  }
  return result + text.slice(at);
}
