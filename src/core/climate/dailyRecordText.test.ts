import { describe, expect, test } from 'vitest';
import { isDailyHeader, readDailyRecord } from './dailyRecordText.ts';

const days = (...lines: string[]) => lines.join('\n');
const messages = (text: string, unit?: 'C' | 'F' | 'tenths-C') =>
  readDailyRecord(text, unit).problems.map(({ level, line, message }) => `${level} ${line}: ${message}`);

describe('columns', () => {
  test('are found by name, in any order, whatever else stands beside them', () => {
    const { rows, unit } = readDailyRecord(
      days('tmax_c,rain,DATE,tmin_c', '12.5,3,2024-01-02,-1', '8,0,2024-01-01,2.5'),
    );
    expect(unit).toBe('C');
    expect(rows).toEqual([
      { day: '2024-01-01', tminC: 2.5, tmaxC: 8 },
      { day: '2024-01-02', tminC: -1, tmaxC: 12.5 },
    ]);
  });

  test.each([
    ['date,tmin_f,tmax_f', '2024-01-01,32,50', null],
    ['date,TMIN (F),TMAX (F)', '2024-01-01,32,50', null],
    ['date,tmin,tmax', '2024-01-01,32,50', 'F'],
    ['"DATE","TMAX","TMIN"', '"2024-01-01","  100","    0"', 'tenths-C'],
  ] as const)('%s', (header, row, unit) => {
    expect(readDailyRecord(days(header, row), unit).rows).toEqual([
      { day: '2024-01-01', tminC: 0, tmaxC: 10 },
    ]);
  });

  test('a unit that is not said is asked for', () => {
    expect(messages(days('date,tmin,tmax', '2024-01-01,1,2'))).toEqual([
      'error 1: the unit is not said: name the columns tmin_c and tmax_c, or tmin_f and tmax_f',
    ]);
  });

  test('another kind of file is named by what was seen', () => {
    expect(messages(days('when,low,high', '1,2,3'))).toEqual([
      'error 1: a daily record has the columns date, tmin_c and tmax_c (or _f); seen: when, low, high',
    ]);
    expect(isDailyHeader(['STATION', 'DATE', 'TMAX', 'TMIN'])).toBe(true);
    expect(isDailyHeader(['STATION', 'DATE', 'MLY-TMAX-NORMAL'])).toBe(false);
  });

  test("an agency's station columns are read, and values it flagged are left out", () => {
    // Layout of NOAA GHCN-Daily station files: tenths of C; flags are measurement, quality, source. Values made up.
    const text = days(
      '"STATION","DATE","LATITUDE","LONGITUDE","ELEVATION","NAME","TMAX","TMAX_ATTRIBUTES","TMIN","TMIN_ATTRIBUTES"',
      '"USC00000000","2024-01-01","34.5","-86.9","180.0","SOMEWHERE, AL US","  156",",,7","  -22",",,7"',
      '"USC00000000","2024-01-02","34.5","-86.9","180.0","SOMEWHERE, AL US","  800",",X,7","    0",",,7"',
    );
    const record = readDailyRecord(text, 'tenths-C');
    expect(record.station).toEqual({
      station: 'USC00000000',
      name: 'SOMEWHERE, AL US',
      lat: 34.5,
      lon: -86.9,
      elevationM: 180,
    });
    expect(record.rows).toEqual([
      { day: '2024-01-01', tminC: -2.2, tmaxC: 15.6 },
      { day: '2024-01-02', tminC: 0, tmaxC: null },
    ]);
    expect(record.problems).toHaveLength(1);
  });
});

describe('cells', () => {
  test('blank and marked ones were not read', () => {
    const { rows, problems } = readDailyRecord(
      days('date,tmin_c,tmax_c', '2024-01-01,,M', '2024-01-02,-9999,NA'),
    );
    expect(rows.map(({ tminC, tmaxC }) => [tminC, tmaxC])).toEqual([
      [null, null],
      [null, null],
    ]);
    expect(problems).toEqual([]);
  });

  test('words, days that do not exist and impossible heat are errors with their lines', () => {
    expect(
      messages(
        days(
          'date,tmin_c,tmax_c',
          '2024-01-01,cold,5',
          '2024-02-30,1,2',
          '01/03/2024,1,2',
          '2024-01-04,60,84',
        ),
      ),
    ).toEqual([
      'error 2: "cold" is no temperature; leave a cell empty when nothing was read (line 2)',
      'error 3: "2024-02-30" is no day; write days as 2026-01-31 (line 3)',
      'error 4: "01/03/2024" is no day; write days as 2026-01-31 (line 4)',
      'error 5: no such temperature has ever been measured in C; is the file in F? (lines 5, 5)',
    ]);
  });

  test('many faults of one kind make one message', () => {
    const rows = Array.from({ length: 9 }, (_, i) => `2024-01-0${i + 1},60,84`);
    expect(messages(days('date,tmin_c,tmax_c', ...rows))).toEqual([
      'error 2: no such temperature has ever been measured in C; is the file in F? (lines 2, 2, 3, 3, 4 and 13 more)',
    ]);
  });
});

describe('days', () => {
  test('twice with the same values is a warning, with different values an error', () => {
    const header = 'date,tmin_c,tmax_c';
    expect(messages(days(header, '2024-01-01,1,2', '2024-01-01,1,2'))).toEqual([
      'warning 3: the day stands in the file twice with the same values (line 3)',
    ]);
    expect(messages(days(header, '2024-01-01,1,2', '2024-01-01,1,3'))).toEqual([
      'error 3: the day stands in the file twice with different values (line 3)',
    ]);
  });

  test('one crossed day is left out; many mean swapped columns', () => {
    const row = (i: number, low: number, high: number) =>
      `2024-${String(1 + Math.floor(i / 28)).padStart(2, '0')}-${String(1 + (i % 28)).padStart(2, '0')},${low},${high}`;
    const good = Array.from({ length: 200 }, (_, i) => row(i, 1, 9));
    const one = readDailyRecord(days('date,tmin_c,tmax_c', ...good, row(200, 9, 1)));
    expect(one.problems.map(({ level }) => level)).toEqual(['warning']);
    expect(one.rows.at(-1)).toMatchObject({ tminC: null, tmaxC: null });
    const all = messages(days('date,tmin_c,tmax_c', ...good.map((_, i) => row(i, 9, 1))));
    expect(all.at(-1)).toBe('error 1: so many minima above the maximum: are the columns swapped?');
  });

  test('an empty or broken file is an error, never an exception', () => {
    for (const text of ['', '\n', 'date,tmin_c,tmax_c', '\u0000\u0001', 'date,tmin_c,tmax_c\n"2024']) {
      expect(messages(text).join(), JSON.stringify(text)).toMatch(/^error/);
    }
  });
});
