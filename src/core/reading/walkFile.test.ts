/** Walks as they come back from spreadsheets, clipboards and telephones. */

import { describe, expect, test } from 'vitest';
import { readWalk } from './walkFile.ts';

const read = (text: string) => readWalk('walks/2026-11-21.csv', text);
const rows = (text: string) => read(text).walk?.rows.map(({ lot, left, heightCm }) => [lot, left, heightCm]);
const problems = (text: string) =>
  read(text).problems.map(({ rule, spot, remedy }) => ({ rule, spot, remedy }));

describe('a sheet that a spreadsheet saved', () => {
  test('with columns in another order, in capitals, with blanks and semicolons is read', () => {
    expect(rows('\ufeffHeight in;LEFT;Lot\r\n50;9;a-1\r\n')).toEqual([['a-1', 9, 127]]);
    expect(rows('Lot\tLeft\na-1\t9\n')).toEqual([['a-1', 9, null]]);
    expect(rows('lot,left,,\na-1,9,,\n,,,\n')).toEqual([['a-1', 9, null]]);
  });

  test('with decimal commas is told the number to write, cell by cell', () => {
    const found = problems('Lot;Height in;Caliper mm\na-1;31,5;8,5\n');
    expect(found).toMatchObject([
      { rule: 'wrong-type', spot: { line: 2, column: 'height_in' }, remedy: 'write only the number: 31.5.' },
      { rule: 'wrong-type', spot: { line: 2, column: 'caliper_mm' }, remedy: 'write only the number: 8.5.' },
    ]);
  });

  test('with a column of its own is told which columns there are', () => {
    expect(problems('lot,left,price\na-1,9,45\n')).toMatchObject([{ rule: 'unknown-column' }]);
    expect(problems('lot,left,lot\na-1,9,a-2\n')).toMatchObject([{ rule: 'duplicate-column' }]);
  });
});

describe('half a sheet', () => {
  test('of whole rows is a walk: who was not looked at has no row', () => {
    expect(rows('lot,left,height_in\na-1,9,\n')).toEqual([['a-1', 9, null]]);
    expect(problems('lot,left,height_in\na-1,9,\n')).toEqual([]);
  });

  test('that was cut off in a row, or inside quotes, is told with its line', () => {
    expect(problems('lot,left,height_in\na-1,9,31\na-2,8')).toMatchObject([
      { rule: 'ragged-row', spot: { line: 3 } },
    ]);
    expect(problems('lot,left,note\na-1,9,"two spl')).toMatchObject([{ rule: 'csv-syntax' }]);
  });
});
