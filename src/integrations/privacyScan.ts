/**
 * Looks for what is private in what is about to be published: the words of private notes, names of private figures, and photographs as
 * they came from the camera. Nothing should ever be found; the scan is there for the day somebody changes a page.
 */

/** Looked for in windows of this many bytes: long enough that ordinary words are not taken for a note. */
const WINDOW = 11;
/** Size of the table that says which windows are worth comparing, bits as a power of two. */
const TABLE_BITS = 20;
const MULTIPLIER = 0x01000193;

/** Keys under which private figures stand in the records or in values of the program. */
const privateNames = ['private_note', '"space_week', '"sell_through', '"costFloor"', '"requests":'];

/** Signs that are written the same in text, HTML and JSON. */
const plainRun = /[A-Za-z0-9 ,.;:()-]+/g;

/** The longest part of a note that no format writes otherwise; null for a note too short to be told from public words. */
export function tellingPart(note: string): string | null {
  const flat = note.replace(/\s+/g, ' ');
  const longest = (flat.match(plainRun) ?? []).reduce(
    (a, b) => (b.trim().length > a.length ? b.trim() : a),
    '',
  );
  return longest.length >= WINDOW ? longest : null;
}

function hashAt(bytes: Uint8Array, at: number): number {
  let hash = 0;
  for (let index = 0; index < WINDOW; index += 1)
    hash = (Math.imul(hash, MULTIPLIER) + bytes[at + index]!) | 0;
  return hash;
}

/** Multiplier of the byte that leaves the window. */
const leaving = (() => {
  let power = 1;
  for (let index = 1; index < WINDOW; index += 1) power = Math.imul(power, MULTIPLIER);
  return power;
})();

export interface PrivacyScan {
  /** The private text a file shows; null when it shows none. */
  found: (bytes: Buffer) => string | null;
}

/** Up to so many texts, searching for each in turn is faster than one pass for all: 0.01 ms a text against 0.25 ms for a page of 27 kB. */
const FEW_TEXTS = 20;

/** A scan for the given private notes and for the names of private figures. */
export function privacyScan(notes: readonly string[]): PrivacyScan {
  const texts = [...privateNames, ...notes.map(tellingPart).filter(part => part !== null)];
  return texts.length <= FEW_TEXTS ? oneByOne(texts) : allAtOnce(texts);
}

function oneByOne(texts: readonly string[]): PrivacyScan {
  const wanted = texts.map(text => ({ text, bytes: Buffer.from(text) }));
  return { found: bytes => wanted.find(each => bytes.includes(each.bytes))?.text ?? null };
}

/** Takes time in proportion to the bytes, however many texts there are. */
function allAtOnce(texts: readonly string[]): PrivacyScan {
  const encoder = new TextEncoder();
  const table = new Uint8Array(1 << (TABLE_BITS - 3));
  const byHash = new Map<number, { text: string; bytes: Uint8Array }[]>();
  for (const text of texts) {
    const bytes = encoder.encode(text);
    const hash = hashAt(bytes, 0);
    const slot = hash >>> (32 - TABLE_BITS);
    table[slot >> 3]! |= 1 << (slot & 7);
    byHash.set(hash, [...(byHash.get(hash) ?? []), { text, bytes }]);
  }
  const standsAt = (bytes: Uint8Array, at: number, wanted: Uint8Array) =>
    at + wanted.length <= bytes.length && wanted.every((byte, index) => bytes[at + index] === byte);

  return {
    found(bytes) {
      if (bytes.length < WINDOW) return null;
      let hash = hashAt(bytes, 0);
      for (let at = 0; ; at += 1) {
        const slot = hash >>> (32 - TABLE_BITS);
        if (table[slot >> 3]! & (1 << (slot & 7))) {
          const here = byHash.get(hash)?.find(({ bytes: wanted }) => standsAt(bytes, at, wanted));
          if (here) return here.text;
        }
        const next = at + WINDOW;
        if (next >= bytes.length) return null;
        hash = (Math.imul(hash - Math.imul(bytes[at]!, leaving), MULTIPLIER) + bytes[next]!) | 0;
      }
    },
  };
}

/** Throws when a file that is about to be published shows something private. */
export function refusePrivate(scan: PrivacyScan, file: string, bytes: Buffer): void {
  const found = scan.found(bytes);
  if (found !== null)
    throw new Error(`the site was not published: ${file} would show "${found}", which is private`);
}
