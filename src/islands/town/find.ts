/** Looking up a town by its name or by US ZIP code: asks for the one or two files that may hold it, and for nothing else. */

import { filesFor } from '../../core/towns/nameFiles.ts';
import type { NameFile, NameIndex, TownRow, ZipFile } from '../../core/towns/townRow.ts';
import { findTowns, MOST_TOWNS, townQuestion } from '../../core/towns/townSearch.ts';

/** How files of the site are fetched: by path, as JSON. Rejects where there is none. */
export type FetchJson = <T>(path: string) => Promise<T>;

export type FoundTowns =
  | {
      readonly ok: true;
      /** Likeliest first; never none. */
      readonly rows: readonly TownRow[];
      /** What to say above them; empty for a town that is called what was typed. */
      readonly note: string;
    }
  | { readonly ok: false; readonly text: string };

const digitsOnly = /^\d{3}(?:\d{2})?$/;

/** Whether what was typed is meant as a ZIP code. */
export function isZip(typed: string): boolean {
  return /^\d[\d -]*$/.test(typed.trim());
}

/** What was typed, as it is said back: an address may carry more than a field takes. */
const shown = (typed: string) => typed.trim().slice(0, 60);

async function byName(typed: string, fetchJson: FetchJson): Promise<FoundTowns> {
  const question = townQuestion(typed);
  const { from } = await fetchJson<NameIndex>('/towns/names.json');
  const { holding, beside } = filesFor(from, question.name);
  const rowsOf = async (files: readonly number[]) => {
    const fetched = files.map(index => fetchJson<NameFile>(`/towns/names/${index}.json`));
    return (await Promise.all(fetched)).flatMap(({ rows }) => rows);
  };
  let found = findTowns(await rowsOf(holding), question, countryName);
  if (found.length === 0) found = findTowns(await rowsOf(beside), question, countryName);
  const [first] = found;
  if (first === undefined) {
    return {
      ok: false,
      text: `We know of no town called “${shown(typed)}”, nor of one that is spelled nearly so. Try the next larger town, or a US ZIP code.`,
    };
  }
  const rows = found.map(({ row }) => row);
  if (first.slips === 0) return { ok: true, rows, note: rows.length > 1 ? 'Which one?' : '' };
  return { ok: true, rows, note: `We know of no town called “${shown(typed)}”. Did you mean one of these?` };
}

/** `why` says of a prefix why it tells no place, where that is known. */
async function byZip(
  typed: string,
  fetchJson: FetchJson,
  why: (prefix: string) => string | null,
): Promise<FoundTowns> {
  const digits = typed.trim().replace(/[ -].*$/, '');
  if (!digitsOnly.test(digits)) {
    return { ok: false, text: `“${shown(typed)}” is no ZIP code: give its first three digits, or all five.` };
  }
  const prefix = digits.slice(0, 3);
  const known = why(prefix);
  if (known !== null) return { ok: false, text: known };
  let file: ZipFile;
  try {
    file = await fetchJson<ZipFile>(`/towns/zip/${prefix}.json`);
  } catch (problem) {
    if (!(problem instanceof Error && problem.message.endsWith(': 404'))) throw problem;
    return { ok: false, text: `We know of no ZIP codes that begin with ${prefix}. Try the name of a town.` };
  }
  const { zips, rows } = file;
  const near = zips[digits];
  if (near !== undefined) {
    const towns = near.map(index => rows[index]).filter(row => row !== undefined);
    return { ok: true, rows: towns, note: `The towns nearest to the middle of ZIP ${digits}:` };
  }
  const largest = [...rows].sort((a, b) => b[6] - a[6]).slice(0, MOST_TOWNS);
  const exact = digits.length === 5 ? `ZIP ${digits} covers no area of its own. ` : '';
  return { ok: true, rows: largest, note: `${exact}The largest towns where ZIP codes begin with ${prefix}:` };
}

const countries = new Intl.DisplayNames(['en'], { type: 'region', fallback: 'code' });

function countryName(code: string): string {
  try {
    return countries.of(code) ?? code;
  } catch {
    // Codes that are none, such as that of a country that is not recognized everywhere.
    return code;
  }
}

/** `North Carolina, United States`, without what the town is called itself. */
export function whereabouts([name, region, country]: TownRow): string {
  return [region, countryName(country)].filter(part => part !== '' && part !== name).join(', ');
}

export function findTown(
  typed: string,
  fetchJson: FetchJson,
  why: (prefix: string) => string | null,
): Promise<FoundTowns> {
  return isZip(typed) ? byZip(typed, fetchJson, why) : byName(typed, fetchJson);
}

const M_IN_A_FOOT = 0.3048;

/** `3,230 ft (984 m)` */
export function heightInWords(meters: number): string {
  const feet = Math.round(meters / M_IN_A_FOOT / 10) * 10;
  return `${feet.toLocaleString('en-US')} ft (${Math.round(meters).toLocaleString('en-US')} m)`;
}

/** `Boone, North Carolina, United States: elevation 3,230 ft (984 m), 18,156 people` */
export function townInWords(row: TownRow): string {
  const [name, , , , , heightM, people] = row;
  const where = whereabouts(row);
  const lived = people === 0 ? '' : `, ${people.toLocaleString('en-US')} people`;
  return `${[name, where].filter(part => part !== '').join(', ')}: elevation ${heightInWords(heightM)}${lived}`;
}
