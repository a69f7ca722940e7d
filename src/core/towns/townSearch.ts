/** Finding a town in the files of names. */

import { usStates } from '../places/usStates.ts';
import { editDistance } from '../reading/nearest.ts';
import { foldedName, soundsOf } from './searchName.ts';
import type { TownRow } from './townRow.ts';

export interface TownQuestion {
  /** The name as typed, folded. */
  readonly name: string;
  /** What was typed behind a comma, or as a state at the end; empty where nothing was. */
  readonly region: string;
}

const stateOfCode = (code: string) => usStates[code.toUpperCase()];

/** `Springfield, IL`, `Springfield IL` and `Springfield, Illinois` ask for one town. */
export function townQuestion(typed: string): TownQuestion {
  const [name = '', ...rest] = typed.split(',');
  const behind = rest.join(' ').trim();
  if (behind !== '') {
    return { name: foldedName(name), region: foldedName(stateOfCode(behind.replace(/\./g, '')) ?? behind) };
  }
  const code = /^(.*\S)\s+([A-Z]{2})$/.exec(name.trim());
  const state = code?.[2] === undefined ? undefined : stateOfCode(code[2]);
  return state === undefined
    ? { name: foldedName(name), region: '' }
    : { name: foldedName(code?.[1] ?? ''), region: foldedName(state) };
}

/** One slip in three letters. Standing: ours. */
const LETTERS_PER_SLIP = 3;
/** Share of letters in which names that sound alike may differ: Wien and Vienna. Standing: ours. */
const MOST_UNLIKE = 0.75;
export const MOST_TOWNS = 12;
/** A town so many times as large as the one of that name may be what was meant. Standing: ours. */
const MISSPELLED = 3;

/** How far a name is from the one asked for: 0 the same, 1 begins with it, then the slips; null when too far. */
function distanceOf(asked: string, askedSounds: string, name: string): number | null {
  const folded = foldedName(name);
  if (folded === asked) return 0;
  if (folded.startsWith(`${asked} `)) return 1;
  if (asked.length >= 3 && folded.startsWith(asked)) return 1.5;
  const most = Math.floor(asked.length / LETTERS_PER_SLIP);
  const slips = editDistance(asked, folded, Math.ceil(asked.length * MOST_UNLIKE));
  if (slips <= most) return 1 + slips;
  const alike = askedSounds.length >= 2 && slips !== Number.POSITIVE_INFINITY;
  return alike && soundsOf(name) === askedSounds ? 1 + slips : null;
}

export interface FoundTown {
  readonly row: TownRow;
  /** 0 where the name is the one asked for. */
  readonly slips: number;
}

/**
 * Towns that may be meant, likeliest first, the larger first of those of one name. Names spelled as typed leave out all others but
 * far larger towns that are spelled nearly so.
 * `countryName` turns an ISO 3166 code into words.
 */
export function findTowns(
  rows: readonly TownRow[],
  { name, region }: TownQuestion,
  countryName: (code: string) => string,
): FoundTown[] {
  if (name === '') return [];
  const sounds = soundsOf(name);
  const near = rows.flatMap(row => {
    const slips = distanceOf(name, sounds, row[8] ?? row[0]);
    return slips === null ? [] : [{ row, slips }];
  });
  const inRegion =
    region === ''
      ? near
      : near.filter(({ row: [, division, country] }) =>
          [division.replace(/^region of /, ''), countryName(country), country].some(part =>
            foldedName(part).startsWith(region),
          ),
        );
  const left = inRegion.length > 0 ? inRegion : near;
  const exact = left.filter(({ slips }) => slips === 0);
  const largest = Math.max(...exact.map(({ row }) => row[6]));
  const kept =
    exact.length > 0
      ? left.filter(({ slips, row }) => slips === 0 || (slips <= 2 && row[6] > largest * MISSPELLED))
      : left;
  const seen = new Set<string>();
  return kept
    .sort((a, b) => a.slips - b.slips || b.row[6] - a.row[6])
    .filter(({ row: [, , , lat, lon] }) => {
      const key = `${lat} ${lon}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .slice(0, MOST_TOWNS);
}
