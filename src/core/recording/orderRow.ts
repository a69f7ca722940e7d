/** Rows of the private tables of sales, reservations and people who wait. */

import { openTable, withColumn, withRow } from '../editing/editTable.ts';
import { orderFiles } from '../reading/checks/orders.ts';
import { reservationColumns, saleColumns, waitingColumns } from '../records/orders.ts';
import type { FileChange, OpenYard } from './openYard.ts';

const columns = { sales: saleColumns, reservations: reservationColumns, waiting: waitingColumns } as const;
export type OrderTable = keyof typeof columns;

/** A row more in a table of the private folder; the table is begun, and columns that it lacks are added, as they are needed. */
export function orderRow(
  { texts }: OpenYard,
  table: OrderTable,
  values: Readonly<Record<string, string | undefined>>,
): FileChange {
  const path = orderFiles[table];
  const header = `${Object.keys(columns[table]).join(',')}\n`;
  const row = Object.fromEntries(
    Object.entries(values).filter(
      (each): each is [string, string] => each[1] !== undefined && each[1] !== '',
    ),
  );
  let open = openTable(texts.get(path) ?? header);
  for (const name of Object.keys(row)) {
    if (!open.columns.includes(name)) open = openTable(withColumn(open, name));
  }
  return { path, text: withRow(open, row) };
}
