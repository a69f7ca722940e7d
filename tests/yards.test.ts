/** Whole yards as fixtures: a folder added in tests/yards is a test added. */

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { privatePrices } from '../src/core/comparison/privatePrices.ts';
import { type Reading, readRecords } from '../src/core/reading/read.ts';
import { textReport } from '../src/core/reading/report.ts';
import { ruleIds } from '../src/core/reading/rules.ts';
import { brokenYards, heavyYards } from './yards/brokenYards.ts';
import { loadYard, yardNames, yardsFolder } from './yards/loadYard.ts';

const names = yardNames();
const base = loadYard('base');

/** Each yard is read once, for its own test and for the one over all rules. */
const readings = new Map<string, Reading>();

function readingOf(name: string): Reading {
  const known = readings.get(name);
  if (known) return known;
  const breakYard = brokenYards[name];
  const otherPhotos = heavyYards[name];
  const { files, photos, asOf } = breakYard
    ? { ...base, files: breakYard(base.files) }
    : otherPhotos
      ? { ...base, photos: otherPhotos(base.photos) }
      : loadYard(name);
  const reading = readRecords(files, { asOf, photos });
  const diagnostics = [...reading.diagnostics, ...privatePrices(files, reading, asOf)];
  const withPrices = { ...reading, diagnostics };
  readings.set(name, withPrices);
  return withPrices;
}

/** Every yard with costs is told of them, so only the yards about that say it here. */
function diagnosticsOf(name: string) {
  const { diagnostics } = readingOf(name);
  return name.startsWith('private')
    ? diagnostics
    : diagnostics.filter(({ rule }) => !saidOfAll.includes(rule));
}
const saidOfAll = ['private-in-public', 'costs-missing'];

function reportOf(name: string): string {
  return `${textReport(diagnosticsOf(name), 'content')}\n`;
}

describe('yards', () => {
  test('the base yard gives no diagnostics and all its records', () => {
    const { records } = readingOf('base');
    expect(diagnosticsOf('base')).toEqual([]);
    expect(records?.lots.map(({ id }) => id)).toEqual(['bellwether-2601', 'bellwether-2602', 'inkpot-2501']);
    expect(records?.walks.map(({ day, rows }) => [day, rows.length])).toEqual([
      ['2026-09-05', 2],
      ['2026-10-17', 3],
    ]);
    expect([...(records?.cultivars.keys() ?? [])]).toEqual(['bellwether', 'inkpot']);
    expect(records?.temperatures.map(({ day }) => day)).toEqual(['2026-10-15', '2026-10-16']);
  });

  test.each(names.filter(name => name !== 'base'))('%s', async name => {
    await expect(reportOf(name)).toMatchFileSnapshot(join(yardsFolder, name, 'expected.txt'));
  });
});

describe('files that no editor writes', () => {
  test.each([...Object.keys(brokenYards), ...Object.keys(heavyYards)])('%s', async name => {
    await expect(reportOf(name)).toMatchFileSnapshot(
      join(import.meta.dirname, 'broken-yards', `${name}.txt`),
    );
  });
});

test('every rule speaks in some yard, and no other rule does', () => {
  const all = [...names, ...Object.keys(brokenYards), ...Object.keys(heavyYards)];
  expect(new Set(all).size).toBe(all.length);
  const spoken = new Set(all.flatMap(name => readingOf(name).diagnostics.map(({ rule }) => rule)));
  expect([...spoken].sort()).toEqual([...ruleIds].sort());
});
