/** The tables of the private folder: sales, plants set aside, people who wait. */

import type { Day } from '../days.ts';
import { parseAmount } from '../money.ts';
import { type Form, forms } from '../records/common.ts';
import {
  type Reservation,
  reservationColumns,
  type Sale,
  saleColumns,
  type Waiting,
  waitingColumns,
} from '../records/orders.ts';
import { type CellKind, readCell } from './cells.ts';
import { checkColumns, missingColumn } from './columns.ts';
import { type RawTable, readCsv } from './csvText.ts';
import { atCell, type Problem, quote } from './problem.ts';

type Column = keyof typeof saleColumns | keyof typeof reservationColumns | keyof typeof waitingColumns;

const kinds: Record<Column, CellKind> = {
  day: { kind: 'day' },
  since: { kind: 'day' },
  until: { kind: 'day' },
  lot: { kind: 'id' },
  cultivar: { kind: 'id' },
  plants: { kind: 'count', most: 100_000 },
  form: { kind: 'word', words: forms },
  price: { kind: 'text' },
  to: { kind: 'text' },
  note: { kind: 'text' },
};

type Values = Partial<Record<Column, string | number>>;

export interface ReadOrders<Row> {
  rows: Row[];
  problems: Problem[];
  table: RawTable | null;
}

function readTable<Row>(
  file: string,
  text: string,
  words: Partial<Record<Column, string>>,
  needed: readonly Column[],
  rowOf: (values: Values, line: number) => Row | Problem,
): ReadOrders<Row> {
  const raw = readCsv(file, text);
  if ('problem' in raw) return { rows: [], problems: [raw.problem], table: null };
  const { table, problems } = checkColumns(raw, Object.keys(words) as Column[]);
  for (const name of needed) {
    if (!raw.header.includes(name))
      problems.push(missingColumn(file, raw.headerLine, `the column "${name}" is missing`, words[name]!));
  }
  if (!table || problems.some(({ rule }) => rule === 'missing-column'))
    return { rows: [], problems, table: raw };
  const rows = table.rows.flatMap(({ cells, line }) => {
    const values: Values = {};
    const wrong: Problem[] = [];
    for (const [column, index] of table.at) {
      const read = readCell(column, cells[index] ?? '', kinds[column]);
      if ('words' in read) wrong.push({ ...read.words, file, spot: atCell(line, column) });
      else if (read.value !== null) values[column] = read.value;
    }
    for (const name of needed) {
      if ((cells[table.at.get(name)!] ?? '') === '') wrong.push(emptyCell(file, line, name, words[name]!));
    }
    const row = wrong.length === 0 ? rowOf(values, line) : null;
    if (row !== null && typeof row === 'object' && 'rule' in row) wrong.push(row);
    problems.push(...wrong);
    return wrong.length === 0 && row !== null ? [row as Row] : [];
  });
  return { rows, problems, table: raw };
}

function emptyCell(file: string, line: number, name: Column, expected: string): Problem {
  return {
    rule: 'empty-value',
    file,
    spot: atCell(line, name),
    got: 'nothing',
    expected,
    message: `the row has nothing in ${quote(name)}`,
    remedy: `fill the cell in, or delete the row. ${expected}`,
  };
}

const shared = (values: Values, line: number) => ({
  plants: values.plants as number,
  to: (values.to ?? null) as string | null,
  note: (values.note ?? null) as string | null,
  line,
});

/** Reads private/sales.csv. */
export function readSales(file: string, text: string, currency: string): ReadOrders<Sale> {
  return readTable(file, text, saleColumns, ['day', 'lot', 'plants'], (values, line): Sale | Problem => {
    const priceMinor = values.price === undefined ? null : parseAmount(String(values.price), currency);
    if (values.price !== undefined && priceMinor === null) {
      return {
        rule: 'bad-amount',
        file,
        spot: atCell(line, 'price'),
        got: quote(String(values.price)),
        expected: 'an amount such as 45 or 45.50',
        message: `"price" is ${quote(String(values.price))}, not an amount`,
        remedy:
          'write what one plant was sold for, with a point and without the sign of the currency: 45.50.',
      };
    }
    return {
      ...shared(values, line),
      day: values.day as Day,
      lot: String(values.lot),
      form: (values.form ?? null) as Form | null,
      priceMinor,
    };
  });
}

/** Reads private/reservations.csv. */
export function readReservations(file: string, text: string): ReadOrders<Reservation> {
  return readTable(file, text, reservationColumns, ['since', 'lot', 'plants'], (values, line) => ({
    ...shared(values, line),
    since: values.since as Day,
    lot: String(values.lot),
    until: (values.until ?? null) as Day | null,
  }));
}

/** Reads private/waiting.csv. */
export function readWaiting(file: string, text: string): ReadOrders<Waiting> {
  return readTable(file, text, waitingColumns, ['since', 'cultivar'], (values, line) => ({
    ...shared({ plants: 1, ...values }, line),
    since: values.since as Day,
    cultivar: String(values.cultivar),
    form: (values.form ?? null) as Form | null,
  }));
}
