/** Lists as spreadsheet programs and other systems leave them; RFC 4180 for tables, RFC 3629 6 for the byte order mark. */

import { describe, expect, test } from 'vitest';
import { day } from '../days.ts';
import { addressesFile, readAddresses } from '../reading/addressFile.ts';
import { emptyList, withRows } from './listText.ts';

const row = { address: '/lots/a/', since: day('2026-11-25'), leadsTo: null };
const led = { address: '/lots/b/', since: day('2026-11-25'), leadsTo: '/lots/a/' };

describe('lines are added in the way the list is written', () => {
  test.each([
    ['as the build writes it', emptyList, '/lots/a/,2026-11-25,\n/lots/b/,2026-11-25,/lots/a/\n'],
    [
      'with a byte order mark and carriage returns',
      '\ufeffaddress,since,leads_to\r\n/stock/,2026-01-01,\r\n',
      '/lots/a/,2026-11-25,\r\n/lots/b/,2026-11-25,/lots/a/\r\n',
    ],
    [
      'with semicolons, another order, and no end of the last line',
      'since;address;leads_to\n2026-01-01;/stock/;',
      '\n2026-11-25;/lots/a/;\n2026-11-25;/lots/b/;/lots/a/\n',
    ],
    [
      'with quotes and tabs',
      '"address"\t"since"\t"leads_to"\n"/stock/"\t"2026-01-01"\t""\n',
      '/lots/a/\t2026-11-25\t\n/lots/b/\t2026-11-25\t/lots/a/\n',
    ],
  ])('%s', (_, before, added) => {
    const after = withRows(before, [row, led]);
    expect(after).toBe(before + added);
    const { rows, problems } = readAddresses(addressesFile, after);
    expect(problems).toEqual([]);
    expect(rows.slice(-2).map(({ line: _line, ...rest }) => rest)).toEqual([row, led]);
    expect(withRows(after, [row, led])).toBe(after);
  });

  test('an empty file gets its header', () => {
    expect(withRows('', [row])).toBe(`${emptyList}/lots/a/,2026-11-25,\n`);
  });

  test('only the last line of an address counts for whether it is new', () => {
    const text = `${emptyList}/lots/b/,2026-01-01,\n/lots/b/,2026-02-01,/lots/a/\n`;
    expect(withRows(text, [led])).toBe(text);
    expect(withRows(text, [{ ...led, leadsTo: null }])).toBe(`${text}/lots/b/,2026-11-25,\n`);
  });
});
