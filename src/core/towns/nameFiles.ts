/** Towns shared out to files by the sound of their names, so that a look-up asks for one small file and tells no more than it. */

import { foldedName, soundsOf } from './searchName.ts';
import type { Town } from './town.ts';

/** A town under one of its names. */
export interface NamedTown {
  readonly name: string;
  readonly sounds: string;
  readonly town: Town;
}

/** Towns of so many people are also found under other names, and under how many. Standing: ours. */
const KNOWN_ABROAD = 100_000;
const OTHER_NAMES = 10;
/** Words as a language writes them. Transcriptions from other scripts stand in the table too, in small letters or cut up by apostrophes. */
const writtenName = /^\p{Lu}[\p{Ll}\p{Mark}]+(?:[ -]\p{L}[\p{Ll}\p{Mark}]+)*$/u;

/** The other names most worth a row: of names that sound alike the first, those sounds first that most languages share. */
function otherNames({ name, otherNames: others, people }: Town): string[] {
  if (people < KNOWN_ABROAD) return [];
  const own = soundsOf(name);
  const bySound = new Map<string, string[]>();
  for (const other of others) {
    if (!writtenName.test(other)) continue;
    const sounds = soundsOf(other);
    if (sounds === own || sounds === '') continue;
    bySound.set(sounds, [...(bySound.get(sounds) ?? []), other]);
  }
  return [...bySound.values()]
    .sort((a, b) => b.length - a.length)
    .slice(0, OTHER_NAMES)
    .map(([first]) => first as string);
}

const compared = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0);

/** Every town under each of its names, by sound, then the larger town first. */
export function namedTowns(towns: readonly Town[]): NamedTown[] {
  const named = towns.flatMap(town =>
    [town.name, ...otherNames(town)].map(name => ({ name, sounds: soundsOf(name), town })),
  );
  const folded = new Map(named.map(({ name }) => [name, foldedName(name)]));
  return named.sort(
    (a, b) =>
      compared(a.sounds, b.sounds) ||
      b.town.people - a.town.people ||
      compared(folded.get(a.name) as string, folded.get(b.name) as string) ||
      a.town.lat - b.town.lat ||
      a.town.lon - b.town.lon,
  );
}

/** Towns a file holds at most: with their figures they come to some 8.5 kB on the way. */
const TOWNS_A_FILE = 110;

/** The files: as many towns as one may hold, in order. Names that sound alike may go on in the next file. */
export function nameFiles(named: readonly NamedTown[]): NamedTown[][] {
  const files: NamedTown[][] = [];
  for (let from = 0; from < named.length; from += TOWNS_A_FILE) {
    files.push(named.slice(from, from + TOWNS_A_FILE));
  }
  return files;
}

/** Where files begin, by sound. */
export function fileStarts(files: readonly (readonly NamedTown[])[]): string[] {
  return files.map(([first]) => (first as NamedTown).sounds);
}

/**
 * The files a name may stand in, likeliest first: those that hold its sound, then the neighbors on both sides, where names end up whose sound
 * was changed by a slip.
 */
export function filesFor(starts: readonly string[], name: string): { holding: number[]; beside: number[] } {
  const sounds = soundsOf(name);
  if (sounds === '' || starts.length === 0) return { holding: [], beside: [] };
  const after = starts.findIndex(start => start > sounds);
  const last = Math.max(0, (after < 0 ? starts.length : after) - 1);
  let first = last;
  // A sound that begins a file may have begun in the one before.
  while (first > 0 && starts[first] === sounds) first -= 1;
  return {
    holding: Array.from({ length: last - first + 1 }, (_, i) => first + i),
    beside: [last + 1, first - 1].filter(index => index >= 0 && index < starts.length),
  };
}
