/** How many plants a lot has: from the newest count, and what was noted after it. */

import { type Day, dayInWords } from '../days.ts';
import type { Reason } from '../records/common.ts';
import type { Lot } from '../records/lot.ts';
import type { StockCount } from './answers.ts';
import type { Sighting } from './walkIndex.ts';

const plants = (count: number) => `${count} ${count === 1 ? 'plant' : 'plants'}`;

const heldOn = ({ reserved }: Lot, on: Day) =>
  reserved.filter(({ since, until }) => since <= on && (until === null || on <= until));

/** How many plants are set aside for buyers on a day, and how many of those left can be bought. */
function reservedOf(lot: Lot, left: number, on: Day): Pick<StockCount, 'reserved' | 'free'> {
  const held = heldOn(lot, on).reduce((sum, { plants: count }) => sum + count, 0);
  const reserved = Math.min(held, left);
  return { reserved, free: left - reserved };
}

function reservedReasons(lot: Lot, on: Day): Reason[] {
  return heldOn(lot, on).map(({ plants: count, since, until }) => ({
    text: `${plants(count)} set aside for a buyer on ${dayInWords(since)}${until ? `, until ${dayInWords(until)}` : ''}.`,
    standing: 'seen',
  }));
}

/**
 * The stock of a lot on a day, from what was seen up to then. `raised + returned = left + sold + lost` holds whatever the walks say: a count that is too high for it is
 * cut to what can be there, and the reason says so. `sold` is what is neither left nor lost.
 */
export function stockOf(lot: Lot, sightings: readonly Sighting[], on: Day): StockCount {
  const countAt = sightings.findLastIndex(({ row }) => row.left !== null);
  const counted = countAt < 0 ? null : sightings[countAt]!;
  const later = sightings.slice(countAt + 1);
  const total = (rows: readonly Sighting[], field: 'lost' | 'returned') =>
    rows.reduce((sum, { row }) => sum + (row[field] ?? 0), 0);

  const returned = total(sightings, 'returned');
  const possible = lot.raised + returned;
  const lost = Math.min(total(sightings, 'lost'), possible);
  const since = total(later, 'returned') - total(later, 'lost');
  const expected = counted ? counted.row.left! + since : possible - lost;
  const left = Math.min(Math.max(expected, 0), possible - lost);

  const because: Reason[] = [];
  if (counted) {
    because.push({
      text: `${plants(counted.row.left!)} counted on ${dayInWords(counted.on)}.`,
      standing: 'seen',
    });
  } else {
    because.push({
      text: `${plants(lot.raised)} started on ${dayInWords(lot.started)}; not counted since.`,
      standing: 'seen',
    });
  }
  for (const { on, row } of later) {
    if (row.lost) because.push({ text: `${plants(row.lost)} lost by ${dayInWords(on)}.`, standing: 'seen' });
    if (row.returned)
      because.push({ text: `${plants(row.returned)} came back by ${dayInWords(on)}.`, standing: 'seen' });
  }
  if (expected > left) {
    because.push({
      text: `Only ${plants(left)} can be left of those raised; the count wants checking.`,
      standing: 'seen',
    });
  }
  return {
    raised: lot.raised,
    returned,
    left,
    sold: possible - left - lost,
    lost,
    ...reservedOf(lot, left, on),
    countedOn: counted?.on ?? null,
    because: [...because, ...reservedReasons(lot, on)],
  };
}
