/** Text from files as it may stand in a message: on a terminal, in a log, on a page of the host. */

/**
 * Control characters, which terminals obey; line and paragraph ends; signs that turn the direction of writing or hide letters (Unicode
 * Standard Annex 9 and UTR 36, 2.10.5); halves of letters.
 */
const unseen =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for.
  /[\u0000-\u001f\u007f-\u009f\u00ad\u061c\u180e\u200b\u200e\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb\u{e0000}-\u{e007f}]|\p{Surrogate}/gu;

const short: Record<string, string> = { '\n': '\\n', '\r': '\\r', '\t': '\\t' };

function escaped(letter: string): string {
  const code = letter.codePointAt(0) ?? 0;
  return (
    short[letter] ??
    (code > 0xffff ? `\\u{${code.toString(16)}}` : `\\u${code.toString(16).padStart(4, '0')}`)
  );
}

/** The text with everything unseen written out: a line break as \n, a sign that turns the writing as \u202e. */
export function visible(text: string): string {
  return text.replace(unseen, escaped);
}

/** The same, with line breaks as they are: for messages of several lines. */
export function visibleLines(text: string): string {
  return text.split('\n').map(visible).join('\n');
}

/** Signs of one message at most, so that it can be read at a glance and a slip of a paste does not fill the screen. */
export const longestMessage = 400;

/** The text, cut where it is longer; `end` then says where the rest is. */
export function shortened(text: string, most: number, end = ''): string {
  const letters = [...text];
  if (letters.length <= most) return text;
  return `${letters.slice(0, Math.max(0, most - 3 - [...end].length)).join('')}...${end}`;
}

/** Where more is said about a problem than fits in its message. */
export function whereToRead(rule: string): string {
  return `See npm run check -- --rules ${rule}.`;
}
