/** Whole yards as fixtures: a folder added in tests/yards is a test added. */

import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readRecords } from '../src/core/reading/read.ts';
import { textReport } from '../src/core/reading/report.ts';
import { ruleIds } from '../src/core/reading/rules.ts';
import { brokenYards } from './yards/brokenYards.ts';
import { type FixtureYard, loadYard, yardNames, yardsFolder } from './yards/loadYard.ts';

function reportOf({ files, photos, asOf }: FixtureYard): string {
  const { diagnostics } = readRecords(files, { asOf, photos });
  return `${textReport(diagnostics, 'content')}\n`;
}

const names = yardNames();

describe('yards', () => {
  test('the base yard gives no diagnostics and all its records', () => {
    const { files, photos, asOf } = loadYard('base');
    const { records, diagnostics } = readRecords(files, { asOf, photos });
    expect(diagnostics).toEqual([]);
    expect(records?.lots.map(({ id }) => id)).toEqual(['bellwether-2601', 'bellwether-2602', 'inkpot-2501']);
    expect(records?.walks.map(({ day, rows }) => [day, rows.length])).toEqual([
      ['2026-09-05', 2],
      ['2026-10-17', 3],
    ]);
    expect([...(records?.cultivars.keys() ?? [])]).toEqual(['bellwether', 'inkpot']);
    expect(records?.temperatures.map(({ day }) => day)).toEqual(['2026-10-15', '2026-10-16']);
  });

  test.each(names.filter(name => name !== 'base'))('%s', async name => {
    await expect(reportOf(loadYard(name))).toMatchFileSnapshot(join(yardsFolder, name, 'expected.txt'));
  });
});

describe('files that no editor writes', () => {
  const base = loadYard('base');
  test.each(Object.entries(brokenYards))('%s', async (name, breakYard) => {
    const report = reportOf({ ...base, files: breakYard(base.files) });
    await expect(report).toMatchFileSnapshot(join(import.meta.dirname, 'broken-yards', `${name}.txt`));
  });
});

test('every rule speaks in some yard, and no other rule does', () => {
  const base = loadYard('base');
  const yards = [
    ...names.map(loadYard),
    ...Object.values(brokenYards).map(breakYard => ({ ...base, files: breakYard(base.files) })),
  ];
  const spoken = new Set(
    yards.flatMap(({ files, photos, asOf }) =>
      readRecords(files, { asOf, photos }).diagnostics.map(({ rule }) => rule),
    ),
  );
  expect([...spoken].sort()).toEqual([...ruleIds].sort());
});
