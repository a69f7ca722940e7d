/** Bytes to text: what an editor may save, and what is not text at all. */

import { atLine, type Problem, wholeFile } from './problem.ts';

/** 2 MiB: a list of 20,000 lots fits; a photograph or a spreadsheet put in by mistake is told apart at once. Our working figure. */
const largestFileBytes = 2 * 1024 * 1024;

/** 16 MiB: 200,000 lines of the address list, which is never cut. Our working figure. */
export const largestAddressListBytes = 16 * 1024 * 1024;

export type Decoded = { text: string } | { problem: Problem };

/** Reads UTF-8 with or without a byte order mark, and line ends of any kind, into text with `\n` line ends. */
export function decode(file: string, bytes: Uint8Array, mostBytes = largestFileBytes): Decoded {
  if (bytes.length > mostBytes) {
    const most = `${mostBytes / 1024 / 1024} MiB`;
    return {
      problem: {
        rule: 'file-too-large',
        file,
        spot: wholeFile,
        got: `${(bytes.length / 1024 / 1024).toFixed(1)} MiB`,
        expected: `at most ${most}`,
        message: `the file is ${(bytes.length / 1024 / 1024).toFixed(1)} MiB, larger than the ${most} a record may have`,
        remedy: 'split it into several files, or take it out of the content folder if it is no record.',
      },
    };
  }
  const text = utf8(bytes);
  const zero = bytes.indexOf(0);
  if (text === null || zero >= 0) {
    const valid = text === null ? goodLength(bytes) : bytes.length;
    return { problem: notText(file, bytes, zero < 0 ? valid : Math.min(zero, valid)) };
  }
  const normal = text.includes('\r') ? text.replace(/\r\n?/g, '\n') : text;
  if (normal.trim() === '') {
    return {
      problem: {
        rule: 'file-empty',
        file,
        spot: wholeFile,
        message: 'the file is empty',
        remedy: 'write a record in it, or delete the file.',
      },
    };
  }
  return { text: normal };
}

/** The text of UTF-8 bytes, or null when they are none. `cut` allows a letter to be cut off at the end. */
function utf8(bytes: Uint8Array, cut = false): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: cut });
  } catch {
    return null;
  }
}

/** Longest letter of UTF-8, in bytes. */
const longestLetter = 4;

/** How many bytes from the start are whole letters of UTF-8, in bytes that as a whole are not. */
function goodLength(bytes: Uint8Array): number {
  const length = lengthWithCutLetter(bytes);
  for (let shorter = length; shorter > length - longestLetter && shorter >= 0; shorter -= 1) {
    if (utf8(bytes.subarray(0, shorter)) !== null) return shorter;
  }
  return length;
}

/** The same, counting the bytes of a letter that breaks off. */
function lengthWithCutLetter(bytes: Uint8Array): number {
  let [good, bad] = [0, bytes.length];
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (utf8(bytes.subarray(0, middle), true) === null) bad = middle;
    else good = middle;
  }
  return good;
}

const lineFeed = 10;

function notText(file: string, bytes: Uint8Array, offset: number): Problem {
  let line = 1;
  for (const byte of bytes.subarray(0, offset)) if (byte === lineFeed) line += 1;
  const found = `byte 0x${(bytes[offset] ?? 0).toString(16).padStart(2, '0')}`;
  return {
    rule: 'file-not-text',
    file,
    spot: atLine(line),
    got: found,
    expected: 'text in UTF-8',
    message: `the file is not plain text (${found} in line ${line})`,
    remedy: 'open it in a text editor and save it as plain text with the encoding UTF-8.',
  };
}
