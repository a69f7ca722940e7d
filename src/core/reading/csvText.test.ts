import { describe, expect, test } from 'vitest';
import { cellColumn, readCsv } from './csvText.ts';

function table(text: string) {
  const read = readCsv('walks/x.csv', text);
  if ('problem' in read) throw new Error(read.problem.message);
  return read;
}

/** RFC 4180, section 2: rules 1 to 7, with the line of each row. */
describe('RFC 4180', () => {
  test('records on lines of their own, with or without a last line break', () => {
    const rows = [
      { cells: ['1', '2'], line: 2 },
      { cells: ['3', '4'], line: 3 },
    ];
    expect(table('a,b\n1,2\n3,4\n').rows).toEqual(rows);
    expect(table('a,b\n1,2\n3,4').rows).toEqual(rows);
  });

  test('quoted cells may hold the separator, line breaks and doubled quotes', () => {
    expect(table('a,b\n"x, y","say ""hi"""\n"two\nlines",z\nlast,row\n').rows).toEqual([
      { cells: ['x, y', 'say "hi"'], line: 2 },
      { cells: ['two\nlines', 'z'], line: 3 },
      { cells: ['last', 'row'], line: 5 },
    ]);
  });
});

test('blank lines are passed over and do not shift the lines of other rows', () => {
  expect(table('\na,b\n\n1,2\n,\n3,4\n').rows).toEqual([
    { cells: ['1', '2'], line: 4 },
    { cells: ['3', '4'], line: 6 },
  ]);
});

test('finds the column a cell starts on', () => {
  const read = table('lot,note,left\n"a","x, y",  12\nb,,3\n');
  expect(cellColumn(read, 2, 'lot')).toBe(1);
  expect(cellColumn(read, 2, 'note')).toBe(5);
  expect(cellColumn(read, 2, 'left')).toBe(14);
  expect(cellColumn(read, 3, 'left')).toBe(4);
  expect(cellColumn(read, 3, 'nothing')).toBe(1);
  expect(cellColumn(read, 99, 'left')).toBe(1);
});
