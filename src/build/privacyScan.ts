/**
 * Looks for what is private in what is about to be published: the words of private notes and the names of private figures. Nothing should
 * ever be found; the scan is there for the day somebody changes a page. Words that are public anyway, since the grower has written them where
 * everybody may read them or the program says them of its own accord, are no find.
 */

import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Catalogue } from '../core/catalogue.ts';
import type { PrivateNote } from '../core/reading/read.ts';

/** Looked for in windows of this many bytes: long enough that ordinary words are not taken for a note. */
const WINDOW = 11;
/** Size of the table that says which windows are worth comparing, bits as a power of two. */
const TABLE_BITS = 20;
const MULTIPLIER = 0x01000193;

/** Keys under which private figures stand in the records or in values of the program. */
const privateNames = ['private_note', '"space_week', '"sell_through', '"costFloor"', '"requests":'];

/** Signs that are written the same in text, HTML and JSON. */
const plainRun = /[A-Za-z0-9 ,.;:()-]+/g;

/**
 * Notes of walks are many and made of the words of the trade, which a page may put together by chance; so only longer ones are looked for. Our
 * working figure.
 */
const TELLING_OF_WALK = 20;

/** The longest part of a note that no format writes otherwise; null for a note too short to be told from public words. */
export function tellingPart(note: string, least = WINDOW): string | null {
  const flat = note.replace(/\s+/g, ' ');
  const longest = (flat.match(plainRun) ?? []).reduce(
    (a, b) => (b.trim().length > a.length ? b.trim() : a),
    '',
  );
  return longest.length >= least ? longest : null;
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

/** What must not be published. */
export interface Secrets {
  notes: readonly PrivateNote[];
  /** Folder of the records, and how people know it. */
  content: string;
  shownContent: string;
}

interface Find {
  text: string;
  /** The note whose words these are; null for the name of a private figure. */
  note: PrivateNote | null;
}

export interface PrivacyScan {
  /** What is private in a file; null when there is nothing. */
  found: (bytes: Buffer) => Find | null;
}

/** Up to so many texts, searching for each in turn is faster than one pass for all: 0.01 ms a text against 0.25 ms for a page of 27 kB. */
const FEW_TEXTS = 20;

/** All texts in a value, in one. */
function textsIn(value: unknown): string {
  const seen = new Set<unknown>();
  const texts: string[] = [];
  const queue = [value];
  for (let at = 0; at < queue.length; at += 1) {
    const each = queue[at];
    if (typeof each === 'string') texts.push(each);
    if (typeof each !== 'object' || each === null || seen.has(each)) continue;
    seen.add(each);
    for (const part of each instanceof Map ? each.values() : Object.values(each)) queue.push(part);
  }
  return texts.join('\n').replace(/\s+/g, ' ');
}

let ofProgram: string | undefined;

/** The words of the program's own sources, read once; none where they are not at hand. */
function programWords(): string {
  ofProgram ??= readProgramWords();
  return ofProgram;
}

function readProgramWords(): string {
  try {
    const folder = resolve('src');
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter(name => /(?<!\.test)\.(?:ts|astro)$/.test(name))
      .map(name => readFileSync(join(folder, name), 'utf8').replace(/\s+/g, ' '))
      .join('\n');
  } catch {
    return '';
  }
}

/** Tells which words are public anyway. Costly, so nothing is gathered before the first question. */
function publicWords(all: Catalogue): (text: string) => boolean {
  const answers = new Map<string, boolean>();
  let words: string | undefined;
  return text => {
    words ??= `${textsIn(all)}\n${programWords()}`;
    const answer = answers.get(text) ?? words.includes(text);
    answers.set(text, answer);
    return answer;
  };
}

/** A scan of what a catalogue is shown as, for private notes and for the names of private figures. */
export function privacyScan({ notes }: Pick<Secrets, 'notes'>, all: Catalogue): PrivacyScan {
  const wanted: Find[] = privateNames.map(text => ({ text, note: null }));
  for (const note of notes) {
    const text = tellingPart(note.text, note.line === undefined ? WINDOW : TELLING_OF_WALK);
    if (text !== null) wanted.push({ text, note });
  }
  const isPublic = publicWords(all);
  const isPrivate = ({ text, note }: Find) => note === null || !isPublic(text);
  return wanted.length <= FEW_TEXTS ? oneByOne(wanted, isPrivate) : allAtOnce(wanted, isPrivate);
}

type IsPrivate = (find: Find) => boolean;

function oneByOne(wanted: readonly Find[], isPrivate: IsPrivate): PrivacyScan {
  const searched = wanted.map(find => ({ find, bytes: Buffer.from(find.text) }));
  return {
    found: page => searched.find(({ find, bytes }) => page.includes(bytes) && isPrivate(find))?.find ?? null,
  };
}

/** Takes time in proportion to the bytes, however many texts there are. */
function allAtOnce(wanted: readonly Find[], isPrivate: IsPrivate): PrivacyScan {
  const encoder = new TextEncoder();
  const table = new Uint8Array(1 << (TABLE_BITS - 3));
  const byHash = new Map<number, { find: Find; bytes: Uint8Array }[]>();
  for (const find of wanted) {
    const bytes = encoder.encode(find.text);
    const hash = hashAt(bytes, 0);
    const slot = hash >>> (32 - TABLE_BITS);
    table[slot >> 3]! |= 1 << (slot & 7);
    byHash.set(hash, [...(byHash.get(hash) ?? []), { find, bytes }]);
  }
  const standsAt = (bytes: Uint8Array, at: number, text: Uint8Array) =>
    at + text.length <= bytes.length && text.every((byte, index) => bytes[at + index] === byte);

  return {
    found(page) {
      if (page.length < WINDOW) return null;
      let hash = hashAt(page, 0);
      for (let at = 0; ; at += 1) {
        const slot = hash >>> (32 - TABLE_BITS);
        if (table[slot >> 3]! & (1 << (slot & 7))) {
          const here = byHash
            .get(hash)
            ?.find(({ bytes, find }) => standsAt(page, at, bytes) && isPrivate(find));
          if (here) return here.find;
        }
        const next = at + WINDOW;
        if (next >= page.length) return null;
        hash = (Math.imul(hash - Math.imul(page[at]!, leaving), MULTIPLIER) + page[next]!) | 0;
      }
    },
  };
}

/** Line of the private note that holds a text, in the text of its file: that of its key. 1 where it is not found. */
export function lineOfNote(source: string, text: string): number {
  const keys = [...source.matchAll(/\bprivate_note\b/g)].map(({ index }) => index);
  const within = (from: number) => source.slice(from).replace(/\s+/g, ' ').indexOf(text);
  const [nearest] = keys.filter(key => within(key) >= 0).sort((a, b) => within(a) - within(b));
  return source.slice(0, nearest ?? 0).split('\n').length;
}

function sourceOf(path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return '';
  }
}

/** Signs of a note that a message repeats. */
const mostShown = 60;

/** Throws when a file that is about to be published shows something private. */
export function refusePrivate(scan: PrivacyScan, secrets: Secrets, file: string, bytes: Buffer): void {
  const find = scan.found(bytes);
  if (find === null) return;
  const { text, note } = find;
  if (note === null)
    throw new Error(
      `the site was not published: ${file} would show ${text}, the name of a figure that is for the yard only. The fault is in the program, not in your records.`,
    );
  const line = note.line ?? lineOfNote(sourceOf(join(secrets.content, note.file)), text);
  const place = `${join(secrets.shownContent, note.file)}:${line}`;
  const shown = text.length > mostShown ? `${text.slice(0, mostShown)} ...` : text;
  const [key, elsewhere] =
    note.line === undefined
      ? ['private_note', '; if anybody may know it, put it in note']
      : ['the column note of a walk', ''];
  throw new Error(
    `the site was not published: ${file} would show "${shown}", which is private: it stands in ${key}, ${place}. If the page says so for another reason, word the private note differently${elsewhere}.`,
  );
}
