/** The points of a CSV file, for `npm run climate -- --points`. */

import type { Point } from '../src/core/climate/anywhere/samples.ts';
import { cellColumn, readCsv, showCell } from '../src/core/reading/csvText.ts';
import { UsageError } from './command.ts';

const columns = ['id', 'lat', 'lon', 'elevation_m'] as const;

export type ReadPoint = { id: string } & ({ point: Point } | { refused: string });

/** Every row of the file, in its order; a row with a cell that is no number is refused with its place. Throws a UsageError for a file without the columns. */
export function readPoints(file: string, text: string): ReadPoint[] {
  const table = readCsv(file, text.replace(/^\uFEFF/, ''));
  if ('problem' in table) {
    throw new UsageError(`${file}: ${table.problem.message}; ${table.problem.remedy}`);
  }
  const at = columns.map(name => table.header.indexOf(name));
  const missing = columns.filter((_, i) => (at[i] as number) < 0);
  if (missing.length > 0) {
    throw new UsageError(
      `${file}:${table.headerLine}: the header has no ${missing.join(', ')}; expected the columns ${columns.join(', ')}, got ${table.header.map(showCell).join(', ')}.`,
    );
  }
  return table.rows.map(({ cells, line }) => {
    const [id, ...written] = at.map(i => cells[i] ?? '') as [string, string, string, string];
    const numbers = written.map(cell => (cell === '' ? Number.NaN : Number(cell)));
    const bad = numbers.findIndex(value => !Number.isFinite(value));
    if (bad >= 0) {
      const name = columns[bad + 1] as string;
      const spot = `${file}:${line}:${cellColumn(table, line, name)}`;
      return {
        id,
        refused: `${spot}: ${name} is ${showCell(written[bad] as string)}; expected a number, with a point for decimals.`,
      };
    }
    const [lat, lon, elevationM] = numbers as [number, number, number];
    return { id, point: { lat, lon, elevationM } };
  });
}
