/**
 * Plants set aside for buyers, and people who wait. How many are set aside stands with the lot, so that they are not for sale; for whom stands in
 * the private folder only.
 */

import { type Day, dayInWords } from '../days.ts';
import { openTable, withCell, withoutRow } from '../editing/editTable.ts';
import type { YamlChange } from '../editing/editYaml.ts';
import { stockOf } from '../lots/stock.ts';
import { indexWalks } from '../lots/walkIndex.ts';
import { orderFiles } from '../reading/checks/orders.ts';
import { plural, quote } from '../reading/problem.ts';
import type { Form } from '../records/common.ts';
import type { Lot } from '../records/lot.ts';
import type { Reservation } from '../records/orders.ts';
import { planLotChanges } from './lotKeys.ts';
import { type FileChange, lotOf, type OpenYard, type Planned, unknown } from './openYard.ts';
import { orderRow } from './orderRow.ts';

const samePerson = (a: string | null, b: string) => a?.trim().toLowerCase() === b.trim().toLowerCase();

/** An entry of a lot's list as it stands in its file. */
function asWritten({ plants, since, until }: Lot['reserved'][number]): Record<string, string | number> {
  return { plants, since, ...(until === null ? {} : { until }) };
}

export interface ReserveRequest {
  lot: string;
  plants: number;
  /** For whom; private. */
  to: string;
  /** The last day they are kept. */
  until?: Day | undefined;
  on: Day;
  note?: string | undefined;
}

/** Sets plants of a lot aside. */
export function planReserve(yard: OpenYard, request: ReserveRequest): Planned {
  const { lot: id, plants, to, until, on, note } = request;
  const lot = lotOf(yard, id);
  if ('refused' in lot) return lot;
  if (!to.trim()) return { refused: 'say for whom they are set aside; it stays in the private folder.' };
  if (until !== undefined && until < on)
    return { refused: `${dayInWords(until)} is over already; give a later day with --until.` };
  const { free, left } = stockOf(lot, indexWalks(yard.records.walks, on).get(id) ?? [], on);
  if (plants > free)
    return {
      refused: `${plural(plants, 'plant')} of ${id} cannot be set aside: ${left} left, and ${left - free} of them are set aside already.`,
    };
  const entry = asWritten({ plants, since: on, until: until ?? null });
  const change: YamlChange =
    lot.reserved.length === 0
      ? { kind: 'set', path: ['reserved'], value: [entry] }
      : { kind: 'append', path: ['reserved'], value: entry };
  const kept = until ? ` until ${dayInWords(until)}` : '';
  const said = `${plural(plants, 'plant')} of ${id} set aside for ${to}${kept}; ${free - plants} can be bought.`;
  const planned = planLotChanges(yard, lot, [change], said);
  if ('refused' in planned) return planned;
  const row = orderRow(yard, 'reservations', { since: on, lot: id, plants: String(plants), until, to, note });
  return { changes: [...planned.changes, row], said };
}

/** The reservations of a lot, or those of one person there. */
export function reservationsOf({ orders }: OpenYard, lot: string, to: string | undefined): Reservation[] {
  return orders.reservations.filter(
    each => each.lot === lot && (to === undefined || samePerson(each.to, to)),
  );
}

/** The changes of the lot's own list when so many plants of a reservation go; none where its list has no such entry. */
function released({ reserved }: Lot, { plants, since, until }: Reservation, gone: number): YamlChange[] {
  const same = reserved.findIndex(
    each => each.plants === plants && each.until === until && each.since === since,
  );
  const index = same >= 0 ? same : reserved.findIndex(each => each.plants === plants);
  if (index < 0) return [];
  const rest = reserved
    .map((each, at) => (at === index ? { ...each, plants: each.plants - gone } : each))
    .filter(each => each.plants > 0);
  const removed: YamlChange = { kind: 'remove', path: ['reserved'] };
  return rest.length === 0
    ? [removed]
    : [removed, { kind: 'set', path: ['reserved'], value: rest.map(asWritten) }];
}

/** A private table with fewer plants in the row of a line, or without the row where none are left. */
function withFewer(yard: OpenYard, path: string, line: number, left: number): FileChange {
  const table = openTable(yard.texts.get(path) ?? '');
  const lineOf = (start: number) => table.text.slice(0, start).split(/\r\n|\n|\r/).length;
  const row = table.rows.find(cells => lineOf(cells[0]!.start) === line)!;
  return { path, text: left > 0 ? withCell(table, row, 'plants', String(left)) : withoutRow(table, row) };
}

/** Files when so many plants of a reservation are no longer set aside. */
export function withoutReserved(
  yard: OpenYard,
  lot: Lot,
  reservation: Reservation,
  gone: number,
): FileChange[] | { refused: string } {
  const changes = released(lot, reservation, gone);
  const planned = changes.length > 0 ? planLotChanges(yard, lot, changes, '') : { changes: [] };
  if ('refused' in planned) return planned;
  const left = reservation.plants - gone;
  return [...planned.changes, withFewer(yard, orderFiles.reservations, reservation.line, left)];
}

/** Lets plants that were set aside go again. */
export function planRelease(
  yard: OpenYard,
  { lot: id, to }: { lot: string; to?: string | undefined },
): Planned {
  const lot = lotOf(yard, id);
  if ('refused' in lot) return lot;
  const found = reservationsOf(yard, id, to);
  const [first, second] = found;
  if (!first)
    return { refused: `nothing of ${id} is set aside${to === undefined ? '' : ` for ${quote(to)}`}.` };
  if (second)
    return {
      refused: `${found.length} buyers have plants of ${id} set aside: ${found.map(each => each.to ?? 'somebody').join(', ')}. Say whose with --to.`,
    };
  const changes = withoutReserved(yard, lot, first, first.plants);
  if ('refused' in changes) return changes;
  return {
    changes,
    said: `${plural(first.plants, 'plant')} of ${id} no longer set aside for ${first.to ?? 'somebody'}.`,
  };
}

export interface WaitRequest {
  cultivar: string;
  plants: number;
  form?: Form | undefined;
  to: string;
  on: Day;
  note?: string | undefined;
}

/** Puts somebody on the waiting list of a cultivar; private. */
export function planWait(yard: OpenYard, { cultivar, plants, form, to, on, note }: WaitRequest): Planned {
  const { cultivars } = yard.records;
  const known = cultivars.get(cultivar);
  if (!known) return unknown('cultivar', cultivar, cultivars.keys());
  if (!to.trim()) return { refused: 'say who waits; it stays in the private folder.' };
  const values = { since: on, cultivar, plants: String(plants), form, to, note };
  return {
    changes: [orderRow(yard, 'waiting', values)],
    said: `${to} waits for ${plural(plants, 'plant')} of ${known.name}.`,
  };
}

/** Takes somebody off the waiting list. */
export function planWaitOver(yard: OpenYard, { cultivar, to }: { cultivar: string; to: string }): Planned {
  const found = yard.orders.waiting.filter(each => each.cultivar === cultivar && samePerson(each.to, to));
  const [first] = found;
  if (!first) return { refused: `${to} does not wait for ${cultivar}.` };
  return {
    changes: [withFewer(yard, orderFiles.waiting, first.line, 0)],
    said: `${to} no longer waits for ${plural(first.plants, 'plant')} of ${cultivar}.`,
  };
}
