/** `npm run evidence -- --observations`: a file of dated observations beside computed days. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { compareFile } from '../../scripts/observations.ts';
import { doyFromMonthDay, monthDay } from '../../src/core/days.ts';
import { realSpecies, speciesIds } from '../care/realPlaces.ts';

const folder = mkdtempSync(join(tmpdir(), 'observations-'));
afterAll(() => rmSync(folder, { recursive: true }));

const species = speciesIds.map(realSpecies);

const header = 'id,species,crop,ripening_class,event,date_from,date_to,place,region,lat,lon,elevation_m,note';

/** Lines of the error stream from the number of the line on. */
const remarks = (err: string) =>
  err
    .trim()
    .split('\n')
    .map(line => line.slice(line.indexOf('seen.csv') + 'seen.csv:'.length));

function run(lines: readonly string[], json: boolean, lineEnd = '\n', mark = '') {
  const file = join(folder, 'seen.csv');
  writeFileSync(file, `${mark}${[header, ...lines].join(lineEnd)}${lineEnd}`);
  let [out, err] = ['', ''];
  const stdout = vi.spyOn(process.stdout, 'write').mockImplementation(text => {
    out += text;
    return true;
  });
  const stderr = vi.spyOn(process.stderr, 'write').mockImplementation(text => {
    err += text;
    return true;
  });
  try {
    return { code: compareFile(file, json, species), out: () => out, err: () => err };
  } finally {
    stdout.mockRestore();
    stderr.mockRestore();
  }
}

// Celeste at Hammond: LSU AgCenter, "When Picking a Fig Variety, You Have Choices", 2022. Chosi at Yeongam: Korean Journal of Breeding
// Science 51:424-427, 2019. Both also stand in the evidence tables.
const celeste = 'A,Ficus carica,main,early,harvest_begin,07-01,07-08,Hammond,,30.45,-90.9,15,';
const chosi = 'B,Diospyros kaki,main,early,harvest_begin,09-19,09-19,Yeongam,,34.8,126.7,20,';
const bloom = 'C,Diospyros kaki,main,early,full_bloom,05-30,05-30,Yeongam,,34.8,126.7,20,';
const south =
  'D,Diospyros kaki,main,late,harvest_begin,04-10,04-25,Camden,,-34.05,150.7,70,"a comma, quoted"';

describe('observations', () => {
  it('come out as JSON in one shape, errors from the middle of the range', () => {
    const { code, out, err } = run([celeste, chosi, bloom, south], true);
    const report = JSON.parse(out());
    expect(code).toBe(0);
    expect(err()).toBe('');
    expect(Object.keys(report)).toEqual(['rows', 'species']);
    for (const row of report.rows) {
      expect(Object.keys(row)).toEqual(['id', 'species', 'class', 'observed', 'computed', 'errorDays']);
      expect(row.computed).toMatch(/^\d\d-\d\d$/);
      expect(Math.abs(row.errorDays)).toBeLessThan(30);
    }
    const [first, second] = report.rows;
    expect(first).toMatchObject({
      id: 'A',
      species: 'Ficus carica',
      class: 'early',
      observed: ['07-01', '07-08'],
    });
    // July 1 to 8 has its middle half a day after July 4.
    const day = Number(first.computed.slice(3)) + (first.computed.startsWith('06') ? 0 : 30);
    expect(first.errorDays).toBeCloseTo(day - 34.5, 9);
    expect(report.species['Ficus carica']).toEqual({
      n: 1,
      meanAbsoluteDays: Math.abs(first.errorDays),
      never: 0,
    });
    // Bloom is compared and does not count among the dates of fruit.
    expect(report.species['Diospyros kaki']).toEqual({
      n: 2,
      meanAbsoluteDays: (Math.abs(second.errorDays) + Math.abs(report.rows[3].errorDays)) / 2,
      never: 0,
    });
  });

  it('that cannot be compared say why, and a crop that never ripens counts as never', () => {
    const { out, err } = run(
      [
        'E,Asimina triloba,main,mid,harvest_begin,08-30,09-10,Frankfort,,38.12,-84.89,240,',
        'F,Ficus carica,main,mid,harvest_begin,13-01,09-10,Frankfort,,38.12,-84.89,240,',
        'G,Ficus carica,main,mid,harvest_begin,08-30,09-10,Nowhere,,-50,-140,0,',
        'H,Ficus carica,main,late,harvest_begin,09-30,10-10,Reykjavik,,64.13,-21.9,50,',
        'I,Ficus carica,main,any,harvest_begin,08-30,09-10,Hammond,,30.45,-90.9,15,',
        'J,Ficus carica,main,early,harvest_end,08-30,09-10,Hammond,,30.45,-90.9,15,',
        'K,Ficus carica,main,early,harvest_begin,08-30,09-10,Hammond,,30.45,-90.9,high,',
        'L,Ficus carica,main,medium,harvest_begin,08-30,09-10,Hammond,,30.45,-90.9,15,',
        'M,Ficus carica,second,early,harvest_begin,08-30,09-10,Hammond,,30.45,-90.9,15,',
        'N,Ficus carica,main,early,harvest_begin,07-08,07-01,Hammond,,30.45,-90.9,15,',
        'O,,main,early,harvest_begin,07-01,07-08,Hammond,,30.45,-90.9,15,',
      ],
      true,
    );
    const report = JSON.parse(out());
    expect(report.rows.every((row: { computed: unknown }) => row.computed === null)).toBe(true);
    expect(report.species['Ficus carica']).toEqual({ n: 1, meanAbsoluteDays: null, never: 1 });
    expect(report.species['Asimina triloba']).toEqual({ n: 0, meanAbsoluteDays: null, never: 0 });
    expect(remarks(err())).toEqual([
      '2: E was not computed: no species record for Asimina triloba',
      '3: F was not computed: date_from is "13-01", not a month and day such as 08-20',
      expect.stringMatching(/^4: G was not computed: no climate: /),
      '6: I was not computed: the row does not say which ripening class it is of',
      expect.stringMatching(/^7: J was not computed: the event "harvest_end" is not one the core computes/),
      '8: K was not computed: elevation_m is "high", not a height from -450 to 6000 m',
      '9: L was not computed: ripening_class is "medium", not one of very-early, early, mid, late, very-late',
      expect.stringMatching(/^10: M was not computed: crop is "second", not one of /),
      '11: N was not computed: the range from 07-08 to 07-01 is 358 days long; the two may be swapped',
      '12: O was not computed: species is an empty cell, not a botanical name',
    ]);
  });

  it('are told as text by species and class', () => {
    const { out } = run([celeste, chosi, bloom], false);
    expect(out()).toMatch(
      /A {2}Hammond, early, harvest_begin: 07-01 to 07-08, computed \d\d-\d\d \([+-]?[\d.]+\)/,
    );
    expect(out()).toContain('first ripe, early: 1 rows');
    expect(out()).toContain('full_bloom: 1 rows');
    expect(out()).toContain('First ripe fruit of all species: 2 rows');
  });

  it('that contradict their class by more than two months are named with their line', () => {
    const { out, err } = run([celeste, celeste.replace('07-01,07-08', '10-01,10-08')], true);
    expect(JSON.parse(out()).rows).toHaveLength(2);
    expect(remarks(err())).toEqual([
      expect.stringMatching(
        /^3: A lies about 1[2-4] weeks after \d\d-\d\d, where its class "early" is computed ripe; look at/,
      ),
    ]);
  });

  it('contradict it from the sixty-first day on, on either side', () => {
    const computed = JSON.parse(run([celeste], true).out()).rows[0].computed as string;
    const seen = (daysLater: number) => {
      const on = monthDay(doyFromMonthDay(computed)! + daysLater);
      return celeste.replace('07-01,07-08', `${on},${on}`);
    };
    const told = run([seen(60), seen(61), seen(-60), seen(-61)], true).err();
    expect(remarks(told).map(text => text.slice(0, 1))).toEqual(['3', '5']);
  });

  it('are read alike as a spreadsheet on another system saves them', () => {
    const plain = run([celeste, chosi], true).out();
    expect(run([celeste, chosi], true, '\r\n', '\uFEFF').out()).toBe(plain);
    const semicolons = (line: string) => line.replaceAll(',', ';');
    writeFileSync(join(folder, 'semicolons.csv'), `${[header, celeste, chosi].map(semicolons).join('\n')}\n`);
    let out = '';
    const stdout = vi.spyOn(process.stdout, 'write').mockImplementation(text => {
      out += text;
      return true;
    });
    compareFile(join(folder, 'semicolons.csv'), true, species);
    stdout.mockRestore();
    expect(out).toBe(plain);
  });

  it('need a file with the columns', () => {
    writeFileSync(join(folder, 'empty.csv'), '');
    expect(() => compareFile(join(folder, 'empty.csv'), true, species)).toThrow(
      /empty\.csv:1: the file is empty/,
    );
    writeFileSync(join(folder, 'header.csv'), `${header}\n`);
    expect(() => compareFile(join(folder, 'header.csv'), true, species)).toThrow(
      /header\.csv:1: no row follows the header/,
    );
    writeFileSync(join(folder, 'quote.csv'), `${header}\nA,"Ficus carica,main\n`);
    expect(() => compareFile(join(folder, 'quote.csv'), true, species)).toThrow(/quote\.csv:2/);
    expect(() => compareFile(folder, true, species)).toThrow(/cannot be read/);
    expect(() => compareFile(join(folder, 'none.csv'), true, species)).toThrow(/cannot be read/);
    writeFileSync(join(folder, 'short.csv'), 'id,species\nA,Ficus carica\n');
    expect(() => compareFile(join(folder, 'short.csv'), true, species)).toThrow(
      /short\.csv:1: the header has no column crop, ripening_class/,
    );
  });
});
