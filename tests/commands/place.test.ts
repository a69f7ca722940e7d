/** `npm run place` from end to end: files and flags in, a record or a plain refusal out. */

import { linkSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { parse } from 'yaml';
import { endPlainly } from '../../scripts/command.ts';
import { main } from '../../scripts/place.ts';
import { type WrittenPlace, writtenPlace } from '../../src/core/records/place.ts';

const fixtures = resolve(import.meta.dirname, '../fixtures');
const official = (name: string) => join(fixtures, 'official', `${name}.csv`);
const belleMina = join(fixtures, 'daily/belle-mina-2010-2022.csv');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'leafdrop-place-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => {
  vi.stubEnv('CONTENT_DIR', folder);
  vi.stubEnv('INIT_CWD', folder);
});
afterEach(() => {
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
});

async function run(...words: string[]) {
  const heard = { out: '', err: '' };
  vi.spyOn(process.stdout, 'write').mockImplementation(text => {
    heard.out += text;
    return true;
  });
  vi.spyOn(process.stderr, 'write').mockImplementation(text => {
    heard.err += text;
    return true;
  });
  const code = await endPlainly(() => main(words));
  vi.restoreAllMocks();
  return { code, ...heard };
}

function recordIn(text: string): WrittenPlace {
  return writtenPlace.parse(parse(text));
}

function file(name: string, text: string | Uint8Array): string {
  writeFileSync(join(folder, name), text);
  return name;
}

const adelaide = [
  '--name=Adelaide',
  '--region=South Australia',
  '--country=au',
  ...['--lat', '-34.95', '--lon', '138.52', '--elevation-m', '8'],
  ...['--tmax-c', '29 28 26 22.9 18.9 16.1 15.3 16.3 19 22.2 25.3 27'],
  ...['--tmin-c', '17.1 16.8 15.1 12.5 10.1 7.8 7.5 7.7 9.4 11.2 13.9 15.5'],
  ...['--period', '2003-2021', '--source', 'Deutscher Wetterdienst, CLIMAT', '--terms', 'named'],
];
/** The same answers with some replaced. */
function adelaideBut(...changes: string[]): string[] {
  return [...adelaide, ...changes];
}

describe('from the stations that come with the project', () => {
  test('by part of the name', async () => {
    const { code, out, err } = await run('--station', 'asheville rgnl', '--print');
    expect(code).toBe(0);
    expect(err).toMatch(/official freeze dates of 1981-2010/);
    const record = recordIn(out);
    expect(record).toMatchObject({ name: 'Asheville', region: 'North Carolina', elevation_m: 645.3 });
    expect(record.source).toContain('USW00003812');
    expect(record.sd?.tmin_c).toHaveLength(12);
  });

  test('by WMO number, with what the table does not say given', async () => {
    const { out } = await run('--station', '10865', '--name', 'Munich', '--region', 'Bavaria', '--print');
    expect(recordIn(out)).toMatchObject({
      country: 'DE',
      period: '2003-2021',
      annual_min_c: { mean: -11.3 },
    });
  });

  test('by ZIP code, the nearest, with the others named; a code that is none is told', async () => {
    const { code, out, err } = await run('--zip', '28801', '--print');
    expect(code).toBe(0);
    // The station in the city, NOAA USW00013872; its position is in src/stations.
    expect(recordIn(out)).toMatchObject({
      region: 'North Carolina',
      country: 'US',
      lat: 35.5953,
      lon: -82.5567,
    });
    expect(err).toMatch(/taken: Asheville.+less than 1 km away\. Also near, for --station: Bent Creek/);
    expect((await run('--zip', '00000', '--print')).err).toMatch(/there is no ZIP code 00000/);
    expect((await run('--zip', '2880', '--print')).err).toMatch(/is no ZIP code; write five digits/);
    expect((await run('--zip', '28801', '--station', 'Asheville', '--print')).err).toMatch(/one of them/);
  });

  test('a name of several is answered with their ids, an unknown one with a remedy', async () => {
    const several = await run('--station', 'asheville a', '--print');
    expect(several.code).toBe(2);
    expect(several.err).toMatch(/give the id of one:[\s\S]*USW00003812/);
    const none = await run('--station', 'nowhere at all', '--print');
    expect(none.err).toMatch(/No station is called/);
  });
});

describe('from normals', () => {
  const files = ['monthly', 'daily', 'annual'].map(kind => official(`1991-2020-${kind}-lebanon`));

  test('writes the record with the published figures in their own unit', async () => {
    const { code, out, err } = await run(...files);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toBe(`${join(folder, 'places/lebanon-nh.yaml')}\n`);
    const record = recordIn(readFileSync(join(folder, 'places/lebanon-nh.yaml'), 'utf8'));
    expect(record).toMatchObject({
      name: 'Lebanon',
      region: 'New Hampshire',
      country: 'US',
      tmin_f: [9.3, 11, 20.7, 31.9, 43.7, 52.4, 57.8, 56.2, 48.6, 37.4, 27.7, 18.1],
      period: '1991-2020',
    });
    expect(record.sd?.about).toBe('curve');
    expect(record.freeze?.['32F']?.last).toEqual({ p10: '04-27', p50: '05-09', p90: '05-24' });
  });

  test('never overwrites without being told', async () => {
    const path = join(folder, 'places/lebanon-nh.yaml');
    writeFileSync(path, 'mine\n');
    const refused = await run(...files);
    expect(refused.code).toBe(2);
    expect(refused.err).toBe(
      `leafdrop: ${path} exists already; add --replace to overwrite it, or --id for another name.\n`,
    );
    expect(readFileSync(path, 'utf8')).toBe('mine\n');
    // Under this name the file of before stays, whole, as it would for somebody who reads it meanwhile.
    linkSync(path, join(folder, 'before.yaml'));
    expect((await run(...files, '--replace')).code).toBe(0);
    expect(readFileSync(join(folder, 'before.yaml'), 'utf8')).toBe('mine\n');
    expect(readFileSync(path, 'utf8')).toContain('name: Lebanon');
  });

  test('says what a monthly file alone leaves to the model; --print writes nothing', async () => {
    const { code, out, err } = await run(
      official('1981-2010-monthly-richmond'),
      '--print',
      '--id',
      'elsewhere',
    );
    expect(code).toBe(0);
    expect(recordIn(out)).toMatchObject({ name: 'Richmond', region: 'Virginia', period: '1981-2010' });
    expect(err).toBe(
      'note: No standard deviation of daily values: it will be estimated. The daily file has it.\n' +
        'note: No freeze dates: they will be modeled. The annual file has them.\n',
    );
    expect(() => readFileSync(join(folder, 'places/elsewhere.yaml'))).toThrow();
  });

  test('flags win over the file', async () => {
    const { out } = await run(
      ...files,
      '--print',
      '--name',
      'Home',
      '--zone',
      '5a',
      '--zone-basis',
      '2023 map',
    );
    expect(recordIn(out)).toMatchObject({ name: 'Home', winter_zone: { zone: '5a', basis: '2023 map' } });
  });

  test('a file cut short is refused by its name', async () => {
    const whole = readFileSync(official('1991-2020-monthly-lebanon'), 'utf8');
    const cut = file('cut.csv', whole.split('\n').slice(0, 6).join('\n'));
    expect(await run(cut)).toMatchObject({
      code: 2,
      err: 'leafdrop: cut.csv: The monthly file has 5 rows instead of 12 months: it is not whole.\n',
    });
  });
});

describe('from a daily record', () => {
  const where = [
    '--name=Belle Mina',
    '--region=Alabama',
    '--country=US',
    '--lon=-86.88',
    '--elevation-m=184',
  ];

  test('means, spread, freeze dates, winter low and zone are taken from it', async () => {
    const { code, out, err } = await run(belleMina, ...where, '--lat', '34.69', '--print');
    expect(code).toBe(0);
    const record = recordIn(out);
    expect(record.tmin_c?.[0]).toBe(-1.43);
    expect(record.lag1).toBe(0.71);
    expect(record.freeze?.['32F']?.first).toEqual({ p10: '10-21', p50: '10-31', p90: '11-10' });
    expect(record.freeze?.source).toMatch(/12 seasons with at most 10 days missing; not an official table$/);
    expect(record.annual_min_c?.mean).toBe(-11.6);
    expect(record.winter_zone).toMatchObject({ zone: '8a' });
    expect(record.winter_zone?.basis).toMatch(/not an official zone$/);
    expect(err).toBe('note: 7 days of 4414 have no reading of both temperatures.\n');
  });

  test('few years are warned about and give no freeze dates', async () => {
    const { out, err } = await run(belleMina, ...where, '--lat=34.69', '--years=2015-2018', '--print');
    expect(recordIn(out).freeze).toBeUndefined();
    expect(recordIn(out).period).toBe('2015-01-01 to 2018-12-31');
    expect(err).toMatch(/note: Only 3 whole years: fewer than 10 say little about a climate/);
  });

  test('needs a latitude and a unit', async () => {
    expect((await run(belleMina, ...where)).err).toBe(
      'leafdrop: belle-mina-2010-2022.csv: the latitude decides when winter is; give --lat.\n',
    );
    const unnamed = file('unnamed.csv', 'date,tmin,tmax\n2024-01-01,1,2\n');
    expect((await run(unnamed, ...where, '--lat=34')).err).toMatch(
      /the unit is not said.*--unit tenths-C\.\n$/,
    );
    expect((await run(unnamed, '--unit', 'K')).err).toBe(
      'leafdrop: "K" is no unit; give one of C, F, tenths-C.\n',
    );
  });

  test('Fahrenheit under Celsius headings is asked about', async () => {
    const inF = readFileSync(belleMina, 'utf8')
      .trimEnd()
      .split('\n')
      .map((line, i) =>
        i === 0 ? line : line.replace(/,([^,]+)/g, (_, c) => `,${Math.round(Number(c) * 1.8 + 32)}`),
      )
      .join('\n');
    const { code, err } = await run(file('f.csv', inF), ...where, '--lat=34.69');
    expect(code).toBe(2);
    expect(err).toMatch(
      /no such temperature has ever been measured in C; is the file in F\? \(lines 2, 2, 3/,
    );
  });

  test('every fault of the file is told at once', async () => {
    const bad = file(
      'bad.csv',
      'date,tmin_c,tmax_c\n2024-01-01,x,2\n2024-01-02,1,2\n2024-01-02,1,3\n2024-13-01,1,2\n',
    );
    expect((await run(bad, ...where, '--lat=34')).err).toBe(
      [
        'leafdrop: bad.csv: "x" is no temperature; leave a cell empty when nothing was read (line 2).',
        '  bad.csv: the day stands in the file twice with different values (line 4).',
        '  bad.csv: "2024-13-01" is no day; write days as 2026-01-31 (line 5).\n',
      ].join('\n'),
    );
  });
});

describe('a long record', () => {
  /** Fifty years that warm by 0.1 C a year, with cold and mild days in turn. Values made up. */
  const warming = (header: string, line: (day: string, low: number) => string) =>
    [
      header,
      ...Array.from({ length: 50 * 365 }, (_, i) => {
        const on = new Date(Date.UTC(1970, 0, 1 + i)).toISOString().slice(0, 10);
        const low = -5 - 15 * Math.cos((2 * Math.PI * (i % 365)) / 365) + i / 3650 + ((i * 7919) % 11) - 5;
        return line(on, low);
      }),
    ].join('\n');
  const where = [
    '--name=Somewhere',
    '--region=Somewhere',
    '--country=GB',
    '--lat=51.5',
    '--lon=-0.45',
    '--elevation-m=25',
  ];

  test('stands for its last thirty years, and says so', async () => {
    const path = file(
      'long.csv',
      warming('date,tmin_c,tmax_c', (on, low) => `${on},${low.toFixed(2)},${(low + 10).toFixed(2)}`),
    );
    const recent = await run(path, ...where, '--print');
    expect(recent.code).toBe(0);
    expect(recent.err).toContain(
      'note: The record begins on 1970-01-01; its last thirty years are taken, 1990-01-01 to 2019-12-19.',
    );
    const asked = await run(path, ...where, '--print', '--years=1990-2019');
    expect(recordIn(recent.out).tmin_c).toEqual(recordIn(asked.out).tmin_c);
    const early = await run(path, ...where, '--print', '--years=1970-1999');
    expect(recordIn(recent.out).tmin_c![0]! - recordIn(early.out).tmin_c![0]!).toBeGreaterThan(1.5);
  });

  test('of another country says whose terms apply, and is read without a header', async () => {
    const path = file(
      'UKM00003772.csv',
      warming('', (on, low) =>
        ['TMIN', 'TMAX']
          .map(
            (element, i) =>
              `UKM00003772,${on.replaceAll('-', '')},${element},${Math.round(low * 10) + i * 100},,,S,`,
          )
          .join('\n'),
      ).trimStart(),
    );
    const { code, out, err } = await run(path, ...where, '--print');
    expect(code).toBe(0);
    expect(recordIn(out).terms).toMatch(/^Read by another country's weather service/);
    expect(recordIn(out).source).toContain('GHCN-Daily, station UKM00003772;');
    expect(err).toContain('look them up and give them with --terms');
  });
});

describe('published figures on the command line', () => {
  const sd = ['--sd-tmin-c=3 3 3 3 3 2 2 2 3 3 3 3', '--sd-tmax-c=4 4 4 4 4 3 3 3 4 4 4 4'];

  test('spread, freeze dates and coldest night are written', async () => {
    const { code, out } = await run(
      ...adelaide,
      ...sd,
      ...['--sd-about=curve', '--sd-source', 'Tables of spread'],
      ...['--last-freeze', '06-01 07-10 08-20; 28F 07-20', '--first-freeze=07-01'],
      ...['--freeze-source', 'Tables of freezes'],
      ...['--coldest-night-f', '32.9'],
      '--print',
    );
    expect(code).toBe(0);
    expect(recordIn(out)).toMatchObject({
      sd: { tmin_c: [3, 3, 3, 3, 3, 2, 2, 2, 3, 3, 3, 3], about: 'curve', source: 'Tables of spread' },
      freeze: {
        '32F': { first: { p50: '07-01' }, last: { p10: '06-01', p50: '07-10', p90: '08-20' } },
        '28F': { last: { p50: '07-20' } },
        source: 'Tables of freezes',
      },
      annual_min_c: { mean: 0.5, source: 'Deutscher Wetterdienst, CLIMAT' },
    });
  });

  test.each([
    [['--last-freeze=May 4'], 'last_freeze: "May" is no date; write the middle date (10-15)'],
    [['--last-freeze=05-04 05-10'], 'last_freeze: 2 dates; write'],
    [['--freeze-source=Tables'], 'freeze_source: give the dates with it (--last-freeze).'],
    [sd.slice(0, 1), 'sd: give both --sd-tmin-c and --sd-tmax-c.'],
    [[...sd, '--sd-about=year'], 'sd_about: "year" is none of month, curve.'],
    [['--sd-about=curve'], 'sd: give --sd-tmin-c and --sd-tmax-c with it.'],
    [[sd[0]!, '--sd-tmax-c=4 4'], 'sd_tmax_c: 2 numbers instead of twelve, January to December.'],
    [[sd[0]!, '--sd-tmax-c=44 4 4 4 4 4 4 4 4 4 4 4'], 'sd: "44" does not fit.'],
    [['--coldest-night-c=cold'], 'coldest_night_c: "cold" is no number.'],
    [['--coldest-night-c=-90'], 'annual_min_c: "-90" does not fit.'],
    [['--coldest-night-c=-9', '--coldest-night-f=15'], 'coldest_night_c: give it in C or in F, not both.'],
  ])('%j is told', async (change, message) => {
    const { code, err } = await run(...adelaideBut(...change));
    expect(code).toBe(2);
    expect(err).toContain(`leafdrop: ${message}`);
  });
});

describe('from answers', () => {
  test('a whole record, with an id of name and country', async () => {
    const { code, out } = await run(...adelaide);
    expect(code).toBe(0);
    expect(out).toBe(`${join(folder, 'places/adelaide-au.yaml')}\n`);
  });

  test.each([
    [
      'eleven months',
      ['--tmin-c', '17 16 15 12 10 7 7 7 9 11 13'],
      'tmin_c: 11 numbers instead of twelve, January to December.',
    ],
    [
      'a word among them',
      ['--tmin-c=17 16 15 12 ten'],
      'tmin_c: "ten" is no number; write twelve numbers, January to December.',
    ],
    [
      'Fahrenheit as Celsius',
      ['--tmax-c=84 82 79 73 66 61 60 61 66 72 78 81'],
      'tmax_c: "84" does not fit. Mean daily maximum, C. Twelve numbers, January to December. Are these degrees F? Then give tmax_f.',
    ],
    [
      'a latitude beyond the pole',
      ['--lat=-134.95'],
      'lat: "-134.95" does not fit. Latitude in degrees, south negative.',
    ],
    [
      'a country in words',
      ['--country=Australia'],
      'country: "AUSTRALIA" does not fit. ISO 3166 two-letter code, such as US.',
    ],
    ['no number', ['--lon=east'], 'lon: "east" is no number.'],
    ['a zone that is none', ['--zone=14c'], 'winter_zone: "14c" does not fit.'],
  ])('%s', async (_, change, message) => {
    const { code, err } = await run(...adelaideBut(...change));
    expect(code).toBe(2);
    expect(err).toContain(`leafdrop: ${message}`);
  });

  test('Fahrenheit that would pass the range is asked about', async () => {
    const change = [
      '--tmax-c=57 56 50 45 40 35 33 36 41 46 50 55',
      '--tmin-c=40 39 38 37 35 30 29 30 33 35 37 39',
    ];
    expect((await run(...adelaideBut(...change))).err).toMatch(
      /^leafdrop: Are these temperatures in F\? In C no such place is known\./,
    );
  });

  test('a latitude with the wrong sign for its country', async () => {
    expect((await run(...adelaideBut('--lat=34.95'))).err).toBe(
      'leafdrop: This position is not in AU. Got latitude 34.95, longitude 138.52; expected latitude -34.95, longitude 138.52. South and west are negative; latitude comes before longitude.\n',
    );
  });

  test('a minimum above the maximum', async () => {
    const { err } = await run(...adelaideBut('--tmin-c=17 16 15 12 10 7 18 7 9 11 13 15'));
    expect(err).toMatch(/^leafdrop: In July the mean minimum is above the mean maximum\./);
  });

  test('what is missing is asked for by its flag', async () => {
    const { err } = await run(
      ...adelaide.filter(word => !word.startsWith('--name') && word !== '--terms' && word !== 'named'),
    );
    expect(err).toBe('leafdrop: name is not known; give --name.\n  terms is not known; give --terms.\n');
  });
});

describe('what is no source', () => {
  test.each<[string, string | Uint8Array, string]>([
    ['notes.txt', 'my notes\n', '1 column: "my notes"'],
    ['other.csv', 'a,b,c,d,e,f,g,h\n', '8 columns: "a", "b", "c", "d", "e", "f", ...'],
    ['page.html', '<!doctype html>', 'a web page'],
    ['packed.csv.gz', new Uint8Array([0x1f, 0x8b, 8]), 'a gzip archive; unpack it first'],
    ['book.xlsx', new Uint8Array([0x50, 0x4b, 3, 4]), 'a zip archive or spreadsheet; save it as CSV first'],
    ['picture.bin', new Uint8Array([1, 2, 0, 0]), 'a file that is no text'],
    ['empty.csv', '', 'an empty file'],
  ])('%s: seen and expected are named', async (name, content, seen) => {
    const { code, err } = await run(file(name, content));
    expect(code).toBe(2);
    expect(err).toBe(
      `leafdrop: ${name} is no file a place can be made from. Seen: ${seen}. Expected: a station file of the U.S. Climate Normals (monthly, daily or annual), a daily record or the export of a weather station (CSV with date, tmin_c and tmax_c, or tmin_f and tmax_f), or a station file of GHCN-Daily (CSV or .dly).\n`,
    );
  });

  test('a file that is not there, and files of two kinds', async () => {
    expect((await run('nowhere.csv')).err).toBe('leafdrop: nowhere.csv cannot be read; is the name right?\n');
    expect((await run(belleMina, official('1991-2020-monthly-lebanon'))).err).toBe(
      'leafdrop: Give the normals files of one station, or one daily record.\n',
    );
  });
});

describe('the command line', () => {
  test('--help names every flag', async () => {
    const { code, out } = await run('--help');
    expect(code).toBe(0);
    for (const flag of [
      '--tmax-c',
      '--rain-in',
      '--zone-basis',
      '--unit',
      '--years',
      '--print',
      '--replace',
    ]) {
      expect(out).toContain(flag);
    }
  });

  test('nothing at all, and an unknown flag', async () => {
    expect(await run()).toMatchObject({
      code: 2,
      err: 'leafdrop: give a file or the figures of the place. Try --help.\n',
    });
    expect(await run('--nmae=x')).toMatchObject({
      code: 2,
      err: expect.stringMatching(/--nmae.*Try --help\.\n$/),
    });
  });

  test('an id that is none', async () => {
    expect((await run(...adelaide, '--id', 'Ad elaide')).err).toBe(
      'leafdrop: "Ad elaide" is no id: use a to z, 0 to 9 and single hyphens (--id).\n',
    );
  });
});
