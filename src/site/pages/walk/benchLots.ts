/** The lots of a yard as they stand on the bench, for a walk on the phone: nothing that the site does not show anyway. */

import type { Catalogue, LotEntry } from '../../../core/catalogue.ts';
import type { Day } from '../../../core/days.ts';
import type { Seen } from '../../../core/lots/answers.ts';
import { classOf } from '../../../core/records/container.ts';
import { cmToInches, roundTo } from '../../../core/units.ts';
import type { BenchLot, TypedColumn } from '../../../core/walking/entry.ts';
import { standInWords } from '../../words/measures.ts';

/** What the page of a walk loads. */
export interface WalkFile {
  /** Day the page was made for, and that of the newest walk in it; null before there was one. */
  made: Day;
  lastWalk: Day | null;
  /** Column that heights are typed in. */
  height: 'height_in' | 'height_cm';
  /** Address of the form for a new file at the host of the repository, with `{name}` and `{text}`; null where the yard names none. */
  newFile: string | null;
  /** In the order in which they stand: as in the records. */
  lots: BenchLot[];
}

function typed<T>(
  seen: Seen<T> | null,
  text: (value: T) => string = String,
): { text: string; on: Day } | undefined {
  return seen === null ? undefined : { text: text(seen.value), on: seen.on };
}

function seenOf({ signs }: LotEntry, height: WalkFile['height']): BenchLot['seen'] {
  const inUnit = (cm: number) => String(roundTo(height === 'height_in' ? cmToInches(cm) : cm, 1));
  const seen: [TypedColumn, { text: string; on: Day } | undefined][] = [
    [height, typed(signs.heightCm, inUnit)],
    ['caliper_mm', typed(signs.caliperMm, mm => String(roundTo(mm, 0.1)))],
    ['roots', typed(signs.roots)],
    ['leaves', typed(signs.leaves)],
    ['wood', typed(signs.wood)],
    ['health', typed(signs.health)],
    ['where', typed(signs.where)],
  ];
  return Object.fromEntries(seen.filter(([, value]) => value !== undefined));
}

/** Class of the pot it stands in; null for none. */
function potOf({ size }: LotEntry): string | null {
  const { container } = size.answer;
  return container === null ? null : (classOf(container)?.name ?? null);
}

/** By file, then by the place in it. */
function inBenchOrder(a: LotEntry, b: LotEntry): number {
  return a.lot.file === b.lot.file ? a.lot.index - b.lot.index : a.lot.file < b.lot.file ? -1 : 1;
}

export function walkFile({ asOf, home, yard, lots }: Catalogue): WalkFile {
  const height = home.country === 'US' ? 'height_in' : 'height_cm';
  const days = lots.flatMap(({ signs }) => signs.lastLooked ?? []).sort();
  const here = lots.filter(({ soldOut }) => !soldOut).sort(inBenchOrder);
  return {
    made: asOf,
    lastWalk: days.at(-1) ?? null,
    height,
    newFile: yard.newFile,
    lots: here.map(entry => ({
      id: entry.lot.id,
      name: `${entry.cultivar.name}, ${standInWords(entry)}`,
      pot: potOf(entry),
      raised: entry.lot.raised,
      left: entry.stock.left,
      countedOn: entry.stock.countedOn,
      seen: seenOf(entry, height),
    })),
  };
}
