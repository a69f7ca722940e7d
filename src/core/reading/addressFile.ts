/** The list of every address ever published, content/addresses.csv: read line by line, each line judged by itself. */

import { codeSigns, isCode } from '../addresses/codes.ts';
import { codeOf } from '../addresses/paths.ts';
import { isAddress, isTooLong, likelyAddress, longestAddress, longestName } from '../addresses/shape.ts';
import { type Day, parseDay } from '../days.ts';
import type { AddressRow } from '../records/address.ts';
import { checkColumns, missingColumn, type Table } from './columns.ts';
import { readCsv, showCell } from './csvText.ts';
import { dayWords } from './dates.ts';
import { atLine, meant, type Problem, quote, remedyOf } from './problem.ts';

/** Name of the list in the content folder. */
export const addressesFile = 'addresses.csv';

const addressColumns = ['address', 'since', 'leads_to'] as const;
type AddressColumn = (typeof addressColumns)[number];

/** Rows without problems, in the order of the file. */
export function readAddresses(file: string, text: string): { rows: AddressRow[]; problems: Problem[] } {
  const raw = readCsv(file, text);
  if ('problem' in raw) return { rows: [], problems: [raw.problem] };
  const { table, problems } = checkColumns(raw, addressColumns);
  const missing = addressColumns.filter(name => !raw.header.includes(name));
  problems.push(
    ...missing.map(name =>
      missingColumn(
        file,
        raw.headerLine,
        `the column ${quote(name)} is missing`,
        `${addressColumns.join(',')}.`,
      ),
    ),
  );
  if (!table || missing.length > 0) return { rows: [], problems };
  const rows: AddressRow[] = [];
  for (const row of table.rows) {
    const read = readRow(table, row);
    if ('problem' in read) problems.push(read.problem);
    else rows.push(read);
  }
  return { rows, problems };
}

function readRow(
  { file, at }: Table<AddressColumn>,
  { cells, line }: { cells: string[]; line: number },
): AddressRow | { problem: Problem } {
  const cell = (column: AddressColumn) => cells[at.get(column)!] ?? '';
  const [address, since, leadsTo] = [cell('address'), cell('since'), cell('leads_to')];
  const day = parseDay(since);
  const fault =
    addressFault('address', address) ??
    (day === null ? dayFault(since) : null) ??
    (leadsTo === '' ? null : addressFault('leads_to', leadsTo)) ??
    codeFault(address, leadsTo);
  if (fault) return { problem: { ...fault, file, spot: atLine(line) } };
  return { address, since: day as Day, leadsTo: leadsTo === '' ? null : leadsTo, line };
}

type Fault = Omit<Problem, 'file' | 'spot'>;

function addressFault(column: AddressColumn, text: string): Fault | null {
  if (isAddress(text)) return null;
  if (isTooLong(text)) return lengthFault(column, text);
  const expected = 'an address from the root of the site, such as /lots/26-layer-01/';
  return {
    rule: 'address-shape',
    got: quote(text),
    expected,
    message: `"${column}" is ${showCell(text)}, not an address of this site`,
    remedy: remedyOf(
      meant(likelyAddress(text)),
      'Write it from the root of the site, with a slash at both ends, such as /lots/26-layer-01/.',
    ),
  };
}

function lengthFault(column: AddressColumn, text: string): Fault {
  return {
    rule: 'address-shape',
    got: `${text.length} signs`,
    expected: `at most ${longestAddress} signs, and ${longestName} between two slashes`,
    message: `"${column}" is too long for the page that would stand there: ${text.length} signs, beginning with ${quote(text.slice(0, 40))}`,
    remedy: `an address has at most ${longestAddress} signs, and ${longestName} between two slashes; delete the row if nobody has the address, else shorten it.`,
  };
}

function dayFault(text: string): Fault {
  const expected = 'a day, YYYY-MM-DD';
  if (text !== '') return { rule: 'bad-date', got: quote(text), expected, ...dayWords('"since"', text) };
  return {
    rule: 'empty-value',
    got: 'nothing',
    expected,
    message: 'the row does not say since when',
    remedy: 'write the day from which the address holds.',
  };
}

function codeFault(address: string, leadsTo: string): Fault | null {
  const code = codeOf(address);
  if (code === null) return null;
  if (!isCode(code)) {
    return {
      rule: 'code-signs',
      got: quote(code),
      expected: `four or more of ${codeSigns}`,
      message: `the code ${quote(code)} is too short or has a sign that is easily taken for another`,
      remedy: `codes are made by the build and have four or more of the signs ${codeSigns}; delete the row if it was written by hand.`,
    };
  }
  if (leadsTo !== '') return null;
  return {
    rule: 'empty-value',
    got: 'nothing',
    expected: 'the page it leads to',
    message: `the short address ${address} leads nowhere`,
    remedy: 'write the page it leads to in the column leads_to, or delete the row.',
  };
}
