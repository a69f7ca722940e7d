import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { numberCell } from './cell.ts';
import { stationFigures } from './stationFigures.ts';
import { type OfficialTable, readOfficialTable } from './table.ts';

const fixture = (name: string) =>
  readFileSync(new URL(`../../../../tests/fixtures/official/${name}.csv`, import.meta.url), 'utf8');

function table(text: string): OfficialTable {
  const read = readOfficialTable(text);
  if ('refused' in read) throw new Error(read.refused);
  return read;
}

function refusal(text: string): string | null {
  const read = readOfficialTable(text);
  return 'refused' in read ? read.refused : null;
}

function figures(names: string[], period: string | null = null) {
  const result = stationFigures(
    names.map(name => table(fixture(name))),
    period,
  );
  if ('refused' in result) throw new Error(result.refused);
  return result.figures;
}

const monthly = '1991-2020-monthly-lebanon';
const daily = '1991-2020-daily-lebanon';
const annual = '1991-2020-annual-lebanon';

describe('Lebanon, New Hampshire, USW00094765, 1991-2020', () => {
  const lebanon = figures([annual, monthly, daily]);

  test('is known by its station', () => {
    expect(lebanon).toMatchObject({
      station: 'USW00094765',
      name: 'LEBANON MUNI AP, NH US',
      lat: 43.6264,
      lon: -72.3047,
      elevationM: 182.3,
      period: '1991-2020',
      notes: [],
    });
  });

  test('monthly normals as published, F and in', () => {
    expect(lebanon.tmaxF).toEqual([30.3, 33.9, 43, 56.6, 69.7, 77.9, 82.7, 81.1, 72.9, 59.8, 46.8, 35.5]);
    expect(lebanon.tminF).toEqual([9.3, 11, 20.7, 31.9, 43.7, 52.4, 57.8, 56.2, 48.6, 37.4, 27.7, 18.1]);
    expect(lebanon.rainIn).toEqual([2.29, 2.1, 2.7, 2.99, 3.32, 3.8, 3.99, 3.62, 3.44, 4, 2.98, 2.84]);
  });

  test('the spread is that of daily values, not of monthly means', () => {
    // DLY-TMIN-STDDEV of January runs from 13.2 to 14.2 F; MLY-TMIN-STDDEV of January is 6.1 F.
    expect(lebanon.sd?.tminF[0]).toBeGreaterThan(13.2);
    expect(lebanon.sd?.tminF[0]).toBeLessThan(14.2);
    expect(lebanon.sd?.tminF[6]).toBeCloseTo(6.1, 1);
  });

  test('freeze dates: PRBFST and PRBLST, the last counted from its late end', () => {
    expect(lebanon.freeze?.get(32)).toEqual({
      first: { p10: '09-23', p50: '10-06', p90: '10-19' },
      last: { p10: '04-27', p50: '05-09', p90: '05-24' },
      none: 0,
    });
    expect(lebanon.freeze?.get(20)?.first).toEqual({ p10: '10-26', p50: '11-08', p90: '11-23' });
  });

  test('the daily file alone gives the same means to a tenth, and says what it lacks', () => {
    const alone = figures([daily]);
    for (let month = 0; month < 12; month += 1) {
      expect(Math.abs(alone.tmaxF[month]! - lebanon.tmaxF[month]!)).toBeLessThan(0.05);
      expect(Math.abs(alone.tminF[month]! - lebanon.tminF[month]!)).toBeLessThan(0.05);
    }
    expect(alone.rainIn).toBeNull();
    expect(alone.notes).toEqual([
      'No rain for every month: it is left out.',
      'No freeze dates: they will be modeled. The annual file has them.',
    ]);
  });

  test('a set of at most 15 years asks for its period, since two sets look alike, and the period may be given', () => {
    const short = table(fixture(monthly).replaceAll(/"(?:1[6-9]|2\d|30)"/g, '"12"'));
    expect(stationFigures([short])).toEqual({
      refused:
        'No value uses more than 12 years, and the sets 1991-2020 and 2006-2020 look alike: say --period 2006-2020 or --period 1991-2020.',
    });
    const told = stationFigures([short], '2006-2020');
    expect('figures' in told && told.figures.period).toBe('2006-2020');
    expect(figures([monthly], '2006-2020').period).toBe('2006-2020');
  });

  test('files of both sets are not mixed without a word', () => {
    const short = table(fixture(annual).replaceAll(/"(?:1[6-9]|2\d|30)"/g, '"14"'));
    const mixed = [table(fixture(monthly)), short];
    const result = stationFigures(mixed);
    expect('refused' in result && result.refused).toMatch(
      /^The monthly file uses up to \d\d years, the annual file at most 14: .*Take all files from one set; if they are, say --period 1991-2020\.$/,
    );
    const told = stationFigures(mixed, '1991-2020');
    expect('figures' in told && told.figures.period).toBe('1991-2020');
  });
});

describe('the layout of 1981-2010', () => {
  test('Richmond, Virginia, USW00013740: tenths of F and hundredths of an inch', () => {
    const richmond = figures(['1981-2010-monthly-richmond']);
    expect(richmond.period).toBe('1981-2010');
    expect(richmond.tmaxF).toEqual([47.4, 51.3, 60, 70.3, 77.9, 86.1, 89.7, 87.6, 81.2, 71, 61.4, 50.7]);
    expect(richmond.tminF[0]).toBe(28.3);
    expect(richmond.rainIn?.[0]).toBe(3.04);
    expect(richmond.sd).toBeNull();
  });

  test('-7777 is zero', () => {
    const richmond = table(fixture('1981-2010-monthly-richmond'));
    expect(numberCell(richmond, 0, 'MLY-CLDD-BASE70', 10)).toEqual({ value: 0 });
  });

  test('Lebanon: freeze dates with a monthly file of the same station', () => {
    const text = fixture('1981-2010-monthly-richmond').replaceAll('USW00013740', 'USW00094765');
    const result = stationFigures([table(text), table(fixture('1981-2010-annual-lebanon'))]);
    const freeze = 'figures' in result ? result.figures.freeze : null;
    expect(freeze?.get(32)?.first).toEqual({ p10: '09-25', p50: '10-05', p90: '10-15' });
    expect(freeze?.get(28)?.last.p90).toBe('05-13');
    expect(freeze?.get(28)?.none).toBe(0);
  });
});

describe('freeze dates that are blank (rows made up)', () => {
  function freezeOf(name: string) {
    const [layout] = name.split('-annual') as [string];
    const means = layout === '1991-2020' ? monthly : '1981-2010-monthly-richmond';
    const station = table(fixture(name)).station;
    const text = fixture(means).replaceAll(/USW\d{8}/g, station);
    const result = stationFigures([table(text), table(fixture(name))]);
    if ('refused' in result) throw new Error(result.refused);
    return result.figures;
  }

  test('without frost: never that often, where the chance says so', () => {
    const { freeze } = freezeOf('1991-2020-annual-made-up-without-frost');
    const never = { p10: null, p50: null, p90: null };
    expect(freeze?.get(20)).toEqual({ first: never, last: never, none: 1 });
    expect(freeze?.get(28)).toEqual({ first: never, last: never, none: 0.96 });
    expect(freeze?.get(32)).toEqual({
      first: { p10: '12-28', p50: null, p90: null },
      last: { p10: null, p50: null, p90: '02-04' },
      none: 0.76,
    });
    expect(freeze?.get(36)).toEqual({
      first: { p10: '12-10', p50: '01-12', p90: null },
      last: { p10: null, p50: '01-20', p90: '02-20' },
      none: 0.38,
    });
  });

  test('too warm is never; too cold and missing are left to the model and told', () => {
    const { freeze, notes } = freezeOf('1981-2010-annual-made-up');
    expect(freeze?.get(24)).toMatchObject({ first: { p10: null }, last: { p90: null }, none: 0.92 });
    expect(freeze?.get(28)).toEqual({
      first: { p10: '11-20', p50: '12-15', p90: '01-25' },
      last: { p10: '01-30', p50: '02-20', p90: '03-20' },
      none: 0.01,
    });
    expect(freeze?.has(32)).toBe(false);
    expect(freeze?.has(36)).toBe(false);
    expect(notes).toContain('36 F: the risk lasts all year, so there are no dates; left to the model.');
    expect(notes).toContain('32 F: the file has no freeze dates; left to the model.');
  });

  test('the flag V is too cold as well', () => {
    const text = fixture(annual).replace('"   09/12","22"," "', '"   09/12","22","V"');
    const result = stationFigures([table(fixture(monthly)), table(text)]);
    expect('figures' in result && result.figures.notes).toEqual([
      'No standard deviation of daily values: it will be estimated. The daily file has it.',
      '36 F: the risk lasts all year, so there are no dates; left to the model.',
    ]);
  });
});

describe('what is refused, in words', () => {
  test('another file', () => {
    expect(refusal('date,tmin_c,tmax_c\n2024-01-01,1,2')).toBe(
      'This is no station file of the U.S. Climate Normals.',
    );
    expect(refusal('')).toBe('This is no station file of the U.S. Climate Normals.');
    expect(refusal('STATION,DATE,HLY-TEMP-NORMAL\nX,01-01,3')).toMatch(/^These are hourly normals/);
  });

  test('a file cut short: within a cell, a row, or the year', () => {
    const whole = fixture(monthly);
    const rows = whole.trimEnd().split('\n');
    expect(refusal(whole.slice(0, -20))).toMatch(/breaks off inside a quoted cell|was not downloaded whole/);
    expect(
      refusal([...rows.slice(0, 8), (rows[8] as string).split(',').slice(0, 9).join(',')].join('\n')),
    ).toBe('Line 9 has 8 of 29 columns: the file was not downloaded whole.');
    expect(refusal(rows.slice(0, 8).join('\n'))).toBe(
      'The monthly file has 7 rows instead of 12 months: it is not whole.',
    );
  });

  test('any cut of a file is refused or read, never thrown', () => {
    const whole = fixture(annual);
    for (let end = 0; end < whole.length; end += 97)
      expect(() => readOfficialTable(whole.slice(0, end))).not.toThrow();
  });

  test('a month twice, and two stations in one file', () => {
    const rows = fixture(monthly).trimEnd().split('\n');
    expect(refusal([...rows.slice(0, 12), rows[1]].join('\n'))).toBe('A month stands in the file twice.');
    const other = (rows[12] as string).replace('USW00094765', 'USW00094766');
    expect(refusal([...rows.slice(0, 12), other].join('\n'))).toMatch(/holds 2 stations/);
  });

  test('files that do not belong together', () => {
    const refused = (...names: string[]) => {
      const result = stationFigures(names.map(name => table(fixture(name))));
      return 'refused' in result ? result.refused : null;
    };
    expect(refused(annual)).toMatch(/no monthly temperatures; give the monthly file/);
    expect(refused(monthly, monthly)).toBe('Two monthly files are given.');
    expect(refused(monthly, '1981-2010-annual-lebanon')).toBe(
      'The files are of different periods: 1981-2010 and 1991-2020.',
    );
    expect(refused('1981-2010-monthly-richmond', '1981-2010-annual-lebanon')).toBe(
      'The files are of different stations: USW00013740 and USW00094765.',
    );
  });

  test('a station without temperatures', () => {
    const text = fixture(monthly).replace('"    30.3","22"," "', '" -9999.0","22","M"');
    const result = stationFigures([table(text)]);
    expect(result).toEqual({
      refused: 'Station USW00094765 has no normals of temperature for every month; choose another.',
    });
  });
});
