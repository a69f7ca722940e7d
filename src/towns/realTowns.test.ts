/** Looking up real towns in the whole table. Heights beside the names are those of the towns themselves or of the USGS, from memory, m. */

import { beforeAll, describe, expect, it } from 'vitest';
import { fileStarts, filesFor, type NamedTown, namedTowns, nameFiles } from '../core/towns/nameFiles.ts';
import type { Town } from '../core/towns/town.ts';
import type { TownRow } from '../core/towns/townRow.ts';
import { findTowns, townQuestion } from '../core/towns/townSearch.ts';
import { townsOfTable } from './townTable.ts';

let towns: Town[];
let files: NamedTown[][];
let starts: string[];
beforeAll(() => {
  towns = townsOfTable({ country: 'US', atHome: 0, elsewhere: 5000 });
  files = nameFiles(namedTowns(towns));
  starts = fileStarts(files);
});

function found(typed: string): { name: string; town: Town }[] {
  const question = townQuestion(typed);
  const { holding, beside } = filesFor(starts, question.name);
  for (const indexes of [holding, beside]) {
    const named = indexes.flatMap(index => files[index] ?? []);
    const rows = named.map(
      ({ name, town }): TownRow => [
        name,
        '',
        town.country,
        town.lat,
        town.lon,
        town.heightM,
        town.people,
        '',
      ],
    );
    const near = findTowns(rows, { ...question, region: '' }, code => code);
    if (near.length > 0) {
      return near.map(({ row }) => named[rows.indexOf(row)]!);
    }
  }
  return [];
}

describe('the towns of the table', () => {
  it('are all of the United States and those of 5,000 people elsewhere', () => {
    expect(towns.filter(({ country }) => country === 'US').length).toBeGreaterThan(15_000);
    expect(towns.filter(({ country, people }) => country !== 'US' && people < 5000)).toEqual([]);
  });

  it.each([
    ['Denver', 'CO', 1609],
    ['Asheville', 'NC', 650],
    ['Flagstaff', 'AZ', 2106],
    ['Alamosa', 'CO', 2299],
    ['Boise', 'ID', 824],
    ['New Orleans', 'LA', 0],
  ])('%s lies in %s at about %i m', (name, state, heightM) => {
    const town = towns.find(each => each.name === name && each.division === state);
    expect(Math.abs((town?.heightM ?? Number.NaN) - heightM)).toBeLessThan(40);
  });

  it.each([
    ['Ashville', 'Asheville'],
    ['Pittsburg', 'Pittsburgh'],
    ['Alburquerque', 'Albuquerque'],
    ['Cincinatti', 'Cincinnati'],
    ['Milwakee', 'Milwaukee'],
    ['Flagstaf', 'Flagstaff'],
    ['Mineapolis', 'Minneapolis'],
    ['Philadelfia', 'Philadelphia'],
    ['Tucsan', 'Tucson'],
    ['St Louis', 'St. Louis'],
    ['köln', 'Köln'],
    ['zurich', 'Zürich'],
  ])('are found by %s: %s', (typed, name) => {
    expect(found(typed).map(({ town }) => town.name)).toContain(name);
  });

  it.each([
    ['München', 'Munich'],
    ['Wien', 'Vienna'],
    ['Cologne', 'Köln'],
    ['Praha', 'Prague'],
  ])('are found by another name: %s for %s', (typed, name) => {
    expect(found(typed).map(({ town }) => town.name)).toContain(name);
  });

  it('are none for what no town is called', () => {
    expect(found('Qwrtzpl')).toEqual([]);
    expect(found('12345 !!')).toEqual([]);
  });
});
