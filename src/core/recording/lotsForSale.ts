/** Lots to choose from at a keyboard. */

import { stockOf } from '../lots/stock.ts';
import { indexWalks } from '../lots/walkIndex.ts';
import type { OpenYard } from './openYard.ts';

export interface Choice {
  value: string;
  label: string;
}

/** Lots with plants left, by id: `26-cut-03 Two Ditches, 9 left`. */
export function lotsForSale({ records, today }: OpenYard): Choice[] {
  const walks = indexWalks(records.walks, today);
  return records.lots.flatMap(lot => {
    const { left } = stockOf(lot, walks.get(lot.id) ?? [], today);
    const name = records.cultivars.get(lot.cultivar)?.name ?? lot.cultivar;
    return left > 0 ? [{ value: lot.id, label: `${lot.id} ${name}, ${left} left` }] : [];
  });
}
