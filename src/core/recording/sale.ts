/**
 * A sale written down: one row of the walk of that day with the count that is left, worked out as reading it does, and one row of the
 * private table of sales with the buyer and the price.
 */

import { type Day, dayInWords } from '../days.ts';
import { type OpenTable, openTable, withCell, withColumn, withRow, wordsAt } from '../editing/editTable.ts';
import { stockOf } from '../lots/stock.ts';
import { indexWalks } from '../lots/walkIndex.ts';
import { type Money, parseAmount, priceInWords } from '../money.ts';
import { plural } from '../reading/problem.ts';
import type { Form } from '../records/common.ts';
import { type FileChange, lotOf, type OpenYard, type Planned } from './openYard.ts';
import { orderRow } from './orderRow.ts';
import { reservationsOf, withoutReserved } from './reservation.ts';

export interface SaleRequest {
  lot: string;
  plants: number;
  /** The day of the sale. */
  on: Day;
  /** Who bought; private. */
  to?: string | undefined;
  form?: Form | undefined;
  /** What one plant was sold for, as text; private. */
  price?: string | undefined;
  /** Private. */
  note?: string | undefined;
}

/** The walk of a day with another count for a lot: its row changed where it has one, else a row more. */
function countedRow(table: OpenTable, lot: string, left: number): string {
  const open = table.columns.includes('left') ? table : openTable(withColumn(table, 'left'));
  const row = open.rows.find(each => wordsAt(open, each, 'lot') === lot);
  return row ? withCell(open, row, 'left', String(left)) : withRow(open, { lot, left: String(left) });
}

/** Writes a sale down, or says why it cannot have been. */
export function planSale(yard: OpenYard, request: SaleRequest): Planned {
  const { lot: id, plants, on, price } = request;
  const lot = lotOf(yard, id);
  if ('refused' in lot) return lot;
  if (!Number.isInteger(plants) || plants < 1)
    return { refused: 'say how many plants were sold, such as 2.' };
  if (on > yard.today) return { refused: `${dayInWords(on)} has not come yet.` };
  if (on < lot.started)
    return { refused: `lot ${id} was started on ${dayInWords(lot.started)}, after that day.` };
  const { currency } = yard.records.yard;
  const minor = price === undefined ? null : parseAmount(price, currency);
  if (price !== undefined && minor === null)
    return { refused: `"${price}" is no price; write it as 45 or 45.50, without the sign of the currency.` };

  const stock = stockOf(lot, indexWalks(yard.records.walks, on).get(id) ?? [], on);
  if (plants > stock.left) {
    const there = stock.left === 0 ? 'none is' : stock.left === 1 ? 'only 1 is' : `only ${stock.left} are`;
    const counted =
      stock.countedOn === null ? 'of those raised' : `by the count of ${dayInWords(stock.countedOn)}`;
    return {
      refused: `${plural(plants, 'plant')} of ${id} cannot be sold: ${there} left ${counted}. If there are more, count again on a walk, or write those that came back under "returned".`,
    };
  }
  const buyer = request.to === undefined ? [] : reservationsOf(yard, id, request.to);
  const kept = buyer.length === 1 ? buyer[0]! : null;
  const open = stock.free + buyer.reduce((sum, { plants: count }) => sum + count, 0);
  if (plants > open)
    return {
      refused: `${plural(plants, 'plant')} of ${id} cannot be sold: of ${stock.left} left, ${stock.left - open} are set aside for others. Let some go with npm run reserve -- ${id} --off.`,
    };
  const left = stock.left - plants;
  const path = `walks/${on}.csv`;
  const walk = openTable(yard.texts.get(path) ?? 'lot,left\n');
  if (!walk.columns.includes('lot'))
    return { refused: `content/${path} has no column "lot"; npm run check says what is wrong with it.` };
  const changes: FileChange[] = [{ path, text: countedRow(walk, id, left) }];
  if (request.to || request.note || minor !== null || request.form) {
    const { form, to, note } = request;
    changes.push(
      orderRow(yard, 'sales', { day: on, lot: id, plants: String(plants), form, price, to, note }),
    );
  }
  const release = kept && withoutReserved(yard, lot, kept, Math.min(plants, kept.plants));
  if (release && 'refused' in release) return release;
  if (release) changes.push(...release);
  const each: Money | null = minor === null ? null : { minor, currency };
  const amount = each ? ` at ${priceInWords(each)}` : '';
  return {
    changes,
    said: `${plural(plants, 'plant')} of ${id} sold on ${dayInWords(on)}${amount}; ${left} left.`,
  };
}
