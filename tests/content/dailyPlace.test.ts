/** A place that gives a daily record: what the check of the content says about the record. */

import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { type ContentFiles, readContentFiles } from '../../src/contentFolder.ts';
import { day } from '../../src/core/days.ts';
import { readRecords } from '../../src/core/reading/read.ts';

const tests = resolve(import.meta.dirname, '..');
const belleMina = readFileSync(join(tests, 'fixtures/daily/belle-mina-2010-2022.csv'), 'utf8');
const place = `name: Belle Mina
region: Alabama
country: US
lat: 34.69
lon: -86.88
elevation_m: 184
daily: belle-mina.csv
period: 2010-2022
source: NOAA GHCN-Daily USC00010655
terms: US Government work, public domain.
`;

let yard: ContentFiles;
beforeAll(async () => {
  yard = await readContentFiles(join(tests, 'yards/base/content'));
});

function problems(daily: string) {
  const bytes = (text: string) => new TextEncoder().encode(text);
  const files = [
    ...yard.files,
    { path: 'places/belle-mina.yaml', bytes: bytes(place) },
    { path: 'places/belle-mina.csv', bytes: bytes(daily) },
  ];
  const { diagnostics, records } = readRecords(files, { asOf: day('2026-11-25'), photos: yard.photos });
  const about = diagnostics.filter(({ file }) => file.startsWith('places/belle-mina'));
  return {
    read: records !== null,
    said: about.map(({ level, rule, message }) => `${level} ${rule}: ${message}`),
  };
}

test('twelve seasons with seven days unread are nothing to mention', () => {
  expect(problems(belleMina)).toEqual({ read: true, said: [] });
});

test('fewer than ten whole years are a warning', () => {
  const { read, said } = problems(belleMina.split('\n').slice(0, 1800).join('\n'));
  expect(read).toBe(true);
  expect(said).toEqual([
    'warning daily-short: only 4 whole years: fewer than 10 say little about a climate; take official normals where there are some',
  ]);
});

test('a season voided by its gaps is a warning', () => {
  const gap = belleMina
    .split('\n')
    .filter(line => !line.startsWith('2015-01-0') && !line.startsWith('2015-01-1'));
  expect(problems(gap.join('\n')).said).toEqual([
    'warning daily-gaps: 1 month with under 20 days left out of the means',
    'warning daily-gaps: 1 season with more than 10 days missing left out of the freeze dates',
  ]);
});

test('words among the readings are errors', () => {
  const { read, said } = problems(belleMina.replace('2010-07-24,20.6', '2010-07-24,warm'));
  expect(read).toBe(false);
  expect(said[0]).toMatch(/^error daily-record: "warm" is no temperature/);
});
