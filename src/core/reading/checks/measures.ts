import type { Day } from '../../days.ts';
import { implausible, type MeasureContext } from '../../lots/plausible.ts';
import { containerClasses } from '../../records/container.ts';
import type { Lot } from '../../records/lot.ts';
import type { Walk, WalkRow } from '../../records/walk.ts';
import type { Draft, TypedMeasure } from '../draft.ts';
import { atCell, type Problem } from '../problem.ts';
import type { Check } from './check.ts';

interface Sight {
  walk: Walk;
  row: WalkRow;
}

/** Class of the pot a lot stood in on a day; null where it stood in none. */
function potOn({ pottings }: Lot, day: Day): string | null {
  const potted = pottings.filter(({ date }) => date <= day).at(-1);
  return potted === undefined ? null : containerClasses[potted.container.classIndex]!.name;
}

/** The last sight of a measure before a walk. */
function lastOf(sights: readonly Sight[], before: Day, measure: 'heightCm' | 'caliperMm') {
  const last = sights.filter(({ walk, row }) => walk.day < before && row[measure] !== null).at(-1);
  return last === undefined ? null : { value: last.row[measure]!, on: last.walk.day };
}

function problemOf(typed: TypedMeasure, { walk, row }: Sight, context: MeasureContext): Problem[] {
  const found = implausible(typed.column, typed.value, context);
  if (found === null) return [];
  const { why, likely } = found;
  return [
    {
      rule: 'measure-implausible',
      file: walk.file,
      spot: atCell(typed.line, typed.column),
      got: String(typed.value),
      expected: likely ?? 'a measure that fits the pot and the walks before',
      message: `${typed.value} in ${typed.column} of ${row.lot} can hardly be right: ${why}`,
      remedy: likely
        ? `${likely} would fit: is the number right and the unit another?`
        : 'measure again, and look at the unit in the head of the column.',
    },
  ];
}

/**
 * The newest height and the newest stem of each lot can be those of a tree in its pot. Older ones are let be: the site goes by the newest.
 */
export const measures: Check = ({ lots, walks, typedMeasures }: Draft) => {
  const byId = new Map(lots.map(({ id, value }) => [id, value]));
  const sights = Map.groupBy(
    walks.flatMap(walk => walk.rows.map((row): Sight => ({ walk, row }))),
    ({ row }) => row.lot,
  );
  const typedAt = Map.groupBy(typedMeasures, ({ file, line }) => `${file}:${line}`);
  return [...sights].flatMap(([id, seen]) => {
    const lot = byId.get(id);
    if (!lot) return [];
    return (['heightCm', 'caliperMm'] as const).flatMap(measure => {
      const newest = seen.filter(({ row }) => row[measure] !== null).at(-1);
      if (!newest) return [];
      const { walk, row } = newest;
      const kind = measure === 'heightCm' ? 'height' : 'caliper';
      const typed = typedAt.get(`${walk.file}:${row.line}`)?.find(({ column }) => column.startsWith(kind));
      if (!typed) return [];
      return problemOf(typed, newest, {
        pot: potOn(lot, walk.day),
        heightCm: row.heightCm,
        caliperMm: row.caliperMm,
        last: {
          heightCm: lastOf(seen, walk.day, 'heightCm'),
          caliperMm: lastOf(seen, walk.day, 'caliperMm'),
        },
      });
    });
  });
};
