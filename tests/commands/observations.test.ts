/** `npm run evidence -- --observations`: a file of dated observations beside computed days. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { compareFile } from '../../scripts/observations.ts';
import { realSpecies, speciesIds } from '../care/realPlaces.ts';

const folder = mkdtempSync(join(tmpdir(), 'observations-'));
afterAll(() => rmSync(folder, { recursive: true }));

const species = speciesIds.map(realSpecies);

const header = 'id,species,crop,ripening_class,event,date_from,date_to,place,region,lat,lon,elevation_m,note';

function run(lines: readonly string[], json: boolean) {
  const file = join(folder, 'seen.csv');
  writeFileSync(file, `${[header, ...lines].join('\n')}\n`);
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
      ],
      true,
    );
    const report = JSON.parse(out());
    expect(report.rows.every((row: { computed: unknown }) => row.computed === null)).toBe(true);
    expect(report.species['Ficus carica']).toEqual({ n: 1, meanAbsoluteDays: null, never: 1 });
    expect(report.species['Asimina triloba']).toEqual({ n: 0, meanAbsoluteDays: null, never: 0 });
    const lines = err().trim().split('\n');
    expect(lines.map(line => line.slice(line.indexOf('seen.csv') + 10))).toEqual([
      'E was not computed: no species record for Asimina triloba',
      'F was not computed: line 3: date_from is "13-01", not a month and day such as 08-20',
      expect.stringMatching(/^G was not computed: no climate: /),
      'I was not computed: the row does not say which ripening class it is of',
      expect.stringMatching(
        /^J was not computed: line 7: the event "harvest_end" is not one the core computes/,
      ),
      'K was not computed: line 8: elevation_m is "high", not a height from -450 to 6000 m',
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

  it('need a file with the columns', () => {
    expect(() => compareFile(join(folder, 'none.csv'), true, species)).toThrow(/cannot be read/);
    writeFileSync(join(folder, 'short.csv'), 'id,species\nA,Ficus carica\n');
    expect(() => compareFile(join(folder, 'short.csv'), true, species)).toThrow(
      /short\.csv:1: the header has no column crop, ripening_class/,
    );
  });
});
