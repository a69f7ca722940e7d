/** The lines of an order list: as they are kept, and as they are written to the yard. */

import { priceInWords } from '../core/money.ts';
import type { OrderFile, OrderForm, OrderLot } from '../site/pages/ordering/orderLots.ts';

export interface OrderLine {
  lot: string;
  form: string;
  count: number;
}

/** Lines as they were kept; empty for anything else. */
export function parseLines(text: string | null): OrderLine[] {
  try {
    const kept: unknown = JSON.parse(text ?? '[]');
    if (!Array.isArray(kept)) return [];
    return kept.flatMap((line: Partial<OrderLine> | null) =>
      typeof line?.lot === 'string' &&
      typeof line.form === 'string' &&
      Number.isInteger(line.count) &&
      line.count! > 0
        ? [{ lot: line.lot, form: line.form, count: line.count! }]
        : [],
    );
  } catch {
    return [];
  }
}

/** What is written to the yard: every line with its lot, form, price and short address, the total, and where the trees will live. */
export function orderText(
  file: Pick<OrderFile, 'currency'>,
  known: readonly { lot: Pick<OrderLot, 'lot' | 'cultivar' | 'address'>; form: OrderForm; count: number }[],
  place: string | null,
): string {
  const money = (minor: number) => priceInWords({ minor, currency: file.currency });
  const written = known.map(({ lot, form, count }) => {
    const price = form.price === null ? 'price on request' : `${money(form.price)} each`;
    return `${count} x ${lot.cultivar}, lot ${lot.lot}, ${form.name.toLowerCase()}, ${price}\n  ${form.words}\n  ${lot.address}`;
  });
  const total = known.reduce((sum, { form, count }) => sum + (form.price ?? 0) * count, 0);
  const where = place === null ? 'They will live at (town and ZIP code):' : `They will live at ${place}.`;
  return [
    'Hello,',
    'I would like these trees:',
    ...written,
    `Together ${money(total)} without delivery.`,
    where,
    '',
  ].join('\n\n');
}
