import { describe, expect, test } from 'vitest';
import { looksDaily, readDailyRecord } from './dailyRecordText.ts';

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
    expect(looksDaily('STATION,DATE,TMAX,TMIN')).toBe(true);
    expect(looksDaily('STATION,DATE,MLY-TMAX-NORMAL')).toBe(false);
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
      'error 3: "2024-02-30" is no day; write days as 2026-01-31 (lines 3, 4)',
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

describe('what once was read wrongly', () => {
  test('a quoted blank cell was not read: it is no 0 C', () => {
    const { rows, problems } = readDailyRecord(
      days('"date","tmin_c","tmax_c"', '"2024-01-01"," ","  "', '" 2024-01-02 "," -3 "," 4"'),
    );
    expect(rows).toEqual([
      { day: '2024-01-01', tminC: null, tmaxC: null },
      { day: '2024-01-02', tminC: -3, tmaxC: 4 },
    ]);
    expect(problems).toEqual([]);
  });

  test('what only a program would take for a number is none', () => {
    for (const cell of ['0x10', '1e1', 'Infinity', '1_0']) {
      expect(messages(days('date,tmin_c,tmax_c', `2024-01-01,${cell},20`))).toEqual([
        `error 2: "${cell}" is no temperature; leave a cell empty when nothing was read (line 2)`,
      ]);
    }
  });

  test('days that a spreadsheet rewrote are read where the column tells the order', () => {
    const us = readDailyRecord(days('date,tmin_c,tmax_c', '1/2/2024,1,5', '1/31/2024,2,6', '2/1/24,3,7'));
    expect(us.rows.map(({ day }) => day)).toEqual(['2024-01-02', '2024-01-31', '2024-02-01']);
    const uk = readDailyRecord(days('date,tmin_c,tmax_c', '2.1.2024,1,5', '31.1.2024,2,6'));
    expect(uk.rows.map(({ day }) => day)).toEqual(['2024-01-02', '2024-01-31']);
    expect([...us.problems, ...uk.problems]).toEqual([]);
  });

  test('and make one error where it does not, however many there are', () => {
    const rows = Array.from({ length: 400 }, (_, i) => `${1 + (i % 12)}/${1 + (i % 11)}/${2000 + i},1,5`);
    expect(messages(days('date,tmin_c,tmax_c', ...rows))).toEqual(
      [
        'error 0: the file has no days',
        'error 2: days such as "01/02/2026" do not tell the day from the month here; write days as 2026-01-31 (lines 2, 3, 4, 5, 6 and 395 more)',
      ]
        .sort()
        .reverse(),
    );
    const spoilt = Array.from({ length: 400 }, (_, i) => `day ${i},${i} C,5`);
    expect(messages(days('date,tmin_c,tmax_c', ...spoilt))).toHaveLength(2);
  });
});

describe('station files of GHCN-Daily without a header', () => {
  // Layout: NOAA GHCN-Daily readme, section III (.dly) and readme of the by-station files. Values made up.
  const byStation = days(
    'USC00000000,20240101,TMAX,156,,,7,0700',
    'USC00000000,20240101,TMIN,-22,,,7,0700',
    'USC00000000,20240101,PRCP,13,,,7,0700',
    'USC00000000,20240102,TMAX,800,,X,7,0700',
    'USC00000000,20240102,TMIN,0,,,7,',
  );
  const rows = [
    { day: '2024-01-01', tminC: -2.2, tmaxC: 15.6 },
    { day: '2024-01-02', tminC: 0, tmaxC: null },
  ];

  test('CSV by station', () => {
    expect(looksDaily(byStation)).toBe(true);
    const record = readDailyRecord(byStation);
    expect(record).toMatchObject({ rows, unit: 'tenths-C', station: { station: 'USC00000000' } });
    expect(record.problems.map(({ level, line }) => [level, line])).toEqual([['warning', 4]]);
  });

  test('lines of fixed width', () => {
    const line = (element: string, ...values: [number, string][]) =>
      `USC00000000202401${element}${Array.from({ length: 31 }, (_, i) => `${String(values[i]?.[0] ?? -9999).padStart(5)} ${values[i]?.[1] ?? ' '}7`).join('')}`;
    const text = days(
      line('TMAX', [156, ' '], [800, 'X']),
      line('TMIN', [-22, ' '], [0, ' ']),
      line('SNOW', [5, ' ']),
    );
    const record = readDailyRecord(text);
    expect(record.rows.slice(0, 2)).toEqual(rows);
    expect(record.rows).toHaveLength(31);
    expect(record.rows[30]).toEqual({ day: '2024-01-31', tminC: null, tmaxC: null });
    expect(record.problems.map(({ message }) => message)).toEqual([
      'the agency flagged the value as doubtful; it is left out (line 1)',
    ]);
  });

  test('cut short, of two stations, or with a day twice, they are errors', () => {
    expect(messages(byStation.slice(0, -20)).at(-1)).toMatch(/^error 5: the line is not like the others/);
    expect(messages(days(byStation, 'USC00000001,20240103,TMIN,0,,,7,'))).toEqual([
      'error 0: the file holds 2 stations; give the file of one',
    ]);
    expect(messages(days(byStation, 'USC00000000,20240102,TMIN,5,,,7,')).at(-1)).toMatch(
      /^error 6: the day stands in the file twice with different values/,
    );
  });
});

/** Common practice of station consoles, no source: a title, one or two rows of titles, several readings a day. Values made up. */
describe('exports of station consoles', () => {
  test('two rows of titles, tabs, readings by the hour, signs for what was not read', () => {
    const text = days(
      '\t\tTemp\tHi\tLow\tIn\tDew',
      'Date\tTime\tOut °F\tTemp °F\tTemp °F\tTemp\tPt.',
      ...Array.from(
        { length: 24 },
        (_, hour) => `1/13/24\t${hour}:00\t40\t${41 + hour}\t${40 - hour}\t70\t30`,
      ),
      ...Array.from(
        { length: 24 },
        (_, hour) =>
          `1/14/24\t${hour}:00\t---\t${hour === 3 ? 50 : '---'}\t${hour === 3 ? 32 : '---'}\t70\t30`,
      ),
      '1/15/24\t0:00\t40\t41\t40\t70\t30',
    );
    expect(looksDaily(text)).toBe(true);
    const { rows, unit, problems } = readDailyRecord(text);
    expect(unit).toBe('F');
    expect(rows[0]).toMatchObject({ day: '2024-01-13' });
    expect(rows[0]!.tminC).toBeCloseTo((17 - 32) / 1.8, 9);
    expect(rows[0]!.tmaxC).toBeCloseTo((64 - 32) / 1.8, 9);
    expect(rows[1]).toEqual({ day: '2024-01-14', tminC: 0, tmaxC: 10 });
    expect(rows[2]).toEqual({ day: '2024-01-15', tminC: null, tmaxC: null });
    expect(problems.map(({ message }) => message)).toEqual([
      'the day has fewer readings than most; it is left out (line 51)',
    ]);
  });

  test('one temperature with its time, below a title', () => {
    const text = days(
      'My station',
      'Timestamp,Outdoor Temperature (°C),Indoor Temperature (°C),Outdoor Humidity',
      '2024-01-01 00:05,2.5,20,80',
      '2024-01-01 12:05,8,21,60',
      '2024-01-02 00:05,-1,20,80',
      '2024-01-02 12:05,12.5,21,60',
    );
    expect(readDailyRecord(text)).toMatchObject({
      unit: 'C',
      rows: [
        { day: '2024-01-01', tminC: 2.5, tmaxC: 8 },
        { day: '2024-01-02', tminC: -1, tmaxC: 12.5 },
      ],
      problems: [],
    });
  });

  test('semicolons between cells and commas in numbers', () => {
    const text = days('Date;Min. temperature;Max. temperature', '2024-01-01;-1,5;8,25');
    expect(readDailyRecord(text, 'C').rows).toEqual([{ day: '2024-01-01', tminC: -1.5, tmaxC: 8.25 }]);
  });
});
