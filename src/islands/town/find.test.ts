/** Looking up towns: what is typed wrongly, and what is asked of the host for it. */

import { describe, expect, it } from 'vitest';
import { fileStarts, namedTowns, nameFiles } from '../../core/towns/nameFiles.ts';
import type { Town } from '../../core/towns/town.ts';
import type { TownRow } from '../../core/towns/townRow.ts';
import { tellsNoPlace } from '../myPlace/near.ts';
import { type FoundTowns, findTown, isZip, townInWords } from './find.ts';

const town = (name: string, division: string, people: number, lat: number, country = 'US'): Town => ({
  ...{ name, division, people, lat, country, otherNames: [], lon: -80, heightM: 300, seat: false },
});
const towns = [
  town('Boone', 'North Carolina', 18_156, 36.2),
  town('Boone', 'Iowa', 12_692, 42),
  town('Hilo', 'Hawaii', 43_263, 19.7),
  town('Hagåtña', '', 1100, 13.5, 'GU'),
];
const rowOf = ({ name, division, country, lat, lon, heightM, people }: Town): TownRow => [
  ...([name, division, country, lat, lon, heightM, people, ''] as const),
];
const files = nameFiles(namedTowns(towns));
const site: Record<string, unknown> = {
  '/towns/names.json': { from: fileStarts(files) },
  ...Object.fromEntries(
    files.map((named, i) => [`/towns/names/${i}.json`, { rows: named.map(each => rowOf(each.town)) }]),
  ),
  '/towns/zip/286.json': { zips: { '28607': [0] }, rows: [rowOf(towns[0]!)] },
  '/towns/zip/969.json': { zips: { '96910': [0] }, rows: [rowOf(towns[3]!)] },
};

async function asked(typed: string): Promise<{ found: FoundTowns; paths: string[] }> {
  const paths: string[] = [];
  const fetchJson = async <T>(path: string): Promise<T> => {
    paths.push(path);
    if (!(path in site)) throw new Error(`${path}: 404`);
    return site[path] as T;
  };
  return { found: await findTown(typed, fetchJson, tellsNoPlace), paths };
}

const words = ({ found }: { found: FoundTowns }) =>
  found.ok ? found.rows.map(([name, region]) => `${name}, ${region}`) : found.text;

describe('a town', () => {
  it('is asked for by the file of its sound, and nothing that was typed is sent', async () => {
    const { paths } = await asked('Boone, Iowa');
    expect(paths).toEqual(['/towns/names.json', '/towns/names/0.json']);
  });

  it('is told apart from others of its name by its region', async () => {
    expect(words(await asked('Boone, IA'))).toEqual(['Boone, Iowa']);
    expect(words(await asked('boone'))).toEqual(['Boone, North Carolina', 'Boone, Iowa']);
  });

  it('is said with its elevation in feet first', () => {
    // 300 m are 984.3 ft (international foot, 0.3048 m).
    expect(townInWords(rowOf(towns[0]!))).toBe(
      'Boone, North Carolina, United States: elevation 980 ft (300 m), 18,156 people',
    );
  });

  it.each(['Atlantis', '????', '      ', 'b'.repeat(5000), '<img src=x>', '0\u0000'])(
    'that there is none of is said to be unknown: %j',
    async typed => {
      const { found } = await asked(typed);
      expect(found.ok).toBe(false);
      if (!found.ok) expect(found.text).not.toMatch(/undefined|NaN/);
    },
  );
});

describe('a ZIP code', () => {
  it('is known by its digits', () => {
    expect(['28607', '286', '28607-1234'].map(isZip)).toEqual([true, true, true]);
    expect(['Boone', '100 Mile House', ''].map(isZip)).toEqual([false, false, false]);
  });

  it('leads to the towns around it', async () => {
    expect(words(await asked('28607'))).toEqual(['Boone, North Carolina']);
    expect(words(await asked('28607-1234'))).toEqual(['Boone, North Carolina']);
  });

  it('that covers no area leads to the largest towns of its prefix, and says so', async () => {
    const { found } = await asked('28699');
    expect(found.ok && found.note).toMatch(/covers no area of its own/);
  });

  it('of Guam leads to a town there', async () => {
    expect(words(await asked('96910'))).toEqual(['Hagåtña, ']);
  });

  it.each([
    ['09012', /armed forces/],
    ['96201', /armed forces/],
    ['00000', /no ZIP codes that begin with 000/],
    ['28', /is no ZIP code/],
    ['286071', /is no ZIP code/],
  ])('%s tells no place, and why is said', async (typed, says) => {
    expect(words(await asked(typed))).toMatch(says);
  });
});
