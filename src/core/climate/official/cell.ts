/** One value of a normals station file, with its special numbers and flags. */

import type { OfficialTable } from './table.ts';

/**
 * Why a cell holds no value: `missing` (not computed), `never` (the event is too rare for a date: "too warm to compute"),
 * `always` (the risk lasts all year: "too cold to compute"). A value that rounds to zero counts as 0.
 */
type Absence = 'missing' | 'never' | 'always';

export type Cell<T> = { value: T } | { absent: Absence };

/** Special numbers of the 1981-2010 normals; later files use -9999 with a flag, and keep the others' meaning. */
const specialNumbers = new Map<number, Cell<number>>([
  [-9999, { absent: 'missing' }],
  [-8888, { absent: 'missing' }],
  [-7777, { value: 0 }],
  [-6666, { absent: 'never' }],
  [-4444, { absent: 'always' }],
]);

/** Measurement flags of the 1991-2020 normals that say why a value is special. */
const specialFlags = new Map<string, Cell<number>>([
  ['M', { absent: 'missing' }],
  ['V', { absent: 'always' }],
  ['X', { value: 0 }],
  ['Y', { absent: 'missing' }],
  ['Z', { absent: 'missing' }],
]);

/** The cell's text, or what stands for it when it is special. */
function rawCell(table: OfficialTable, row: number, column: string): { text: string } | Cell<number> {
  const cells = table.rows[row];
  const text = (cells?.get(column) ?? '').trim();
  const flag = (cells?.get(`meas_flag_${column}`) ?? '').trim();
  const special = specialFlags.get(flag) ?? specialNumbers.get(Number(text === '' ? Number.NaN : text));
  if (special) return special;
  return text === '' ? { absent: 'missing' } : { text };
}

/**
 * A number in the unit people use (F, in, %). Whole-numbered files are divided by `scale`: 10 for tenths of a degree or a percent,
 * 100 for hundredths of an inch.
 */
export function numberCell(table: OfficialTable, row: number, column: string, scale: 10 | 100): Cell<number> {
  const raw = rawCell(table, row, column);
  if (!('text' in raw)) return raw;
  const value = Number(raw.text);
  if (!Number.isFinite(value)) return { absent: 'missing' };
  return { value: table.layout === '1981-2010' ? value / scale : value };
}

/** A date as `MM-DD`. */
export function dateCell(table: OfficialTable, row: number, column: string): Cell<string> {
  const raw = rawCell(table, row, column);
  if ('absent' in raw) return raw;
  const match = 'text' in raw ? /^(\d{2})\/(\d{2})$/.exec(raw.text) : null;
  return match ? { value: `${match[1]}-${match[2]}` } : { absent: 'missing' };
}
