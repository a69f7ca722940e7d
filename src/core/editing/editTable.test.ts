import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openTable, withCell, withColumn, withRow, wordsAt } from './editTable.ts';

const walk =
  '\ufeffNote;LOT;Left;"Height in"\r\n"a ""b""; c";26-cut-01; 9 ;"14,5"\r\n\r\n;26-cut-02;"7";\r\n';

describe('a walk as a spreadsheet saves it', () => {
  const table = openTable(walk);

  test('has its columns by whatever case and order', () => {
    expect(table.columns).toEqual(['note', 'lot', 'left', 'height_in']);
    expect(table.rows.map(row => wordsAt(table, row, 'lot'))).toEqual(['26-cut-01', '26-cut-02']);
    expect(wordsAt(table, table.rows[0]!, 'note')).toBe('a "b"; c');
  });

  test('changes one cell and no other byte', () => {
    expect(withCell(table, table.rows[0]!, 'left', '8')).toBe(walk.replace(' 9 ', ' 8 '));
    expect(withCell(table, table.rows[1]!, 'left', '6')).toBe(walk.replace('"7"', '"6"'));
    expect(withCell(table, table.rows[1]!, 'note', 'x; y')).toBe(walk.replace('\r\n;26', '\r\n"x; y";26'));
  });

  test('gets its rows at the end, with its own separator and line end', () => {
    expect(withRow(table, { lot: '26-cut-03', left: '4' })).toBe(`${walk.trimEnd()}\r\n;26-cut-03;4;\r\n`);
    expect(() => withRow(table, { lost: '1' })).toThrow(RangeError);
  });

  test('gets a column on the right', () => {
    const wider = openTable(withColumn(table, 'lost'));
    expect(wider.columns).toEqual(['note', 'lot', 'left', 'height_in', 'lost']);
    expect(wider.rows.every(row => row.length === 5)).toBe(true);
  });
});

const cell = fc.stringMatching(/^[a-z0-9 ,;"']{0,8}$/);
const tables = fc.record({
  rows: fc.array(fc.tuple(fc.stringMatching(/^[a-z]{3}$/), cell, cell), { minLength: 1, maxLength: 6 }),
  separator: fc.constantFrom(',', ';', '\t'),
  eol: fc.constantFrom('\n', '\r\n'),
  mark: fc.constantFrom('', '\ufeff'),
  last: fc.boolean(),
});

test('in any table an edit of a cell changes one line; csv-parse reads what was meant', () => {
  fc.assert(
    fc.property(tables, cell, fc.nat(), ({ rows, separator, eol, mark, last }, value, pick) => {
      const quoted = (each: string) =>
        /[,;"\t]|^ | $/.test(each) ? `"${each.replaceAll('"', '""')}"` : each;
      const lines = [['lot', 'left', 'note'], ...rows].map(row => row.map(quoted).join(separator));
      const text = mark + lines.join(eol) + (last ? eol : '');
      const table = openTable(text);
      const index = pick % rows.length;
      const result = withCell(table, table.rows[index]!, 'note', value);
      const differing = result.split(eol).filter((line, at) => line !== text.split(eol)[at]);
      expect(differing.length).toBeLessThanOrEqual(1);
      const read = (each: string) => parse(each, { delimiter: separator, bom: true }) as string[][];
      const wanted = read(text);
      wanted[index + 1]![2] = value;
      expect(read(result)).toEqual(wanted);
      expect(read(withRow(table, { lot: 'new', note: value })).at(-1)).toEqual(['new', '', value]);
    }),
    { numRuns: 300 },
  );
});
