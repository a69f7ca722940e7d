/** Short codes for addresses that are read off a label, a film or a telephone. */

import { hashText, splitMix64 } from '../random.ts';
import type { AddressRow } from '../records/address.ts';
import { ledgerOf, resolve } from './ledger.ts';
import { codeOf } from './paths.ts';

/**
 * The signs of a code. A file server knows no likeness, so a sign is left out when it may be taken for another or another for
 * it: 0 o, 1 i l, 2 z, 5 s, 8 b, 9 g q, u v w, m (rn, nn). Without the vowels a and e no code spells a word. One case only.
 * Sixteen are left, so that a sign is four bits of a hash.
 */
export const codeSigns = '3467cdfhjknprtxy';

/** Four signs give 65,536 codes: enough for most of 6,000 pages, and as many as people carry in their head from screen to keyboard. */
export const shortestCode = 4;

const longestFromOneHash = 16;

/** Whether a text is a code that could have been given. */
export function isCode(text: string): boolean {
  return text.length >= shortestCode && [...text].every(sign => codeSigns.includes(sign));
}

/** Sixteen signs from the hash of a text. Codes are printed, and told from codes of other hands by this, so it never changes. */
function signsOf(text: string): string {
  const hash = splitMix64(hashText(text))();
  const digits = hash.toString(16).padStart(longestFromOneHash, '0');
  return [...digits].map(digit => codeSigns[Number.parseInt(digit, 16)]).join('');
}

/** The shortest code of an address that nothing has ever used. */
function freeCode(address: string, used: ReadonlySet<string>): string {
  // Every round tries codes of all lengths, so there are more of them than codes in use.
  for (let round = 0; round <= used.size; round += 1) {
    const signs = signsOf(round === 0 ? address : `${address}\n${round}`);
    for (let length = shortestCode; length <= longestFromOneHash; length += 1) {
      const code = signs.slice(0, length);
      if (!used.has(code)) return code;
    }
  }
  throw new RangeError(`no short code is left for ${address}`);
}

/**
 * Whether a code is one that the build gives to an address when it is first published: the beginning of its signs, as long as it had to be to be
 * new. (A further round would need all thirteen beginnings of the first to be taken, which is not waited for.)
 */
export function isCodeOf(code: string, address: string): boolean {
  return isCode(code) && signsOf(address).startsWith(code);
}

/**
 * The code of each target address. A code in the list stays with the page it leads to now, also after renames; any other target
 * gets the shortest code from the hash of its address that no line of the list has ever had. The order of `targets` does not matter.
 */
export function assignCodes(rows: readonly AddressRow[], targets: readonly string[]): Map<string, string> {
  const ledger = ledgerOf(rows);
  const used = new Set<string>();
  const held = new Map<string, string>();
  for (const { address } of rows) {
    const code = codeOf(address);
    if (code === null || used.has(code)) continue;
    used.add(code);
    const end = resolve(ledger, address);
    if ('to' in end && !held.has(end.to)) held.set(end.to, code);
  }
  const codes = new Map<string, string>();
  for (const target of [...targets].sort()) {
    const code = held.get(target) ?? freeCode(target, used);
    used.add(code);
    codes.set(target, code);
  }
  return codes;
}
