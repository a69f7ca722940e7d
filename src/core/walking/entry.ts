/** A walk as it is typed on the bench: what stands in the cells of each lot, and what is asked about it at once. */

import { type Day, daysBetween } from '../days.ts';
import { implausible, inCmOrMm, type MeasureColumn, measureColumns, unitOf } from '../lots/plausible.ts';
import { countWords } from '../reading/checks/counts.ts';
import { walkCells } from '../reading/walkCells.ts';
import type { WalkColumn } from '../records/walk.ts';

/** Columns that are filled in on a walk, besides the lot; heights and stems in one unit each. */
export const typedColumns = [
  'left',
  'lost',
  'returned',
  'height_in',
  'height_cm',
  'caliper_in',
  'caliper_mm',
  'roots',
  'leaves',
  'wood',
  'health',
  'where',
  'note',
] as const satisfies readonly WalkColumn[];
export type TypedColumn = (typeof typedColumns)[number];

/** What was typed for one lot, by column; what is left out was not looked at. */
export type Entry = Partial<Record<TypedColumn, string>>;

/** A lot as it stands on the bench, with what was seen last. All of it is public. */
export interface BenchLot {
  id: string;
  /** Cultivar, and what it stands in. */
  name: string;
  /** Class of its pot; null where it stands in none. */
  pot: string | null;
  raised: number;
  /** Plants left at the newest count, and its day; null where nobody has counted. */
  left: number;
  countedOn: Day | null;
  /** What was seen last of each, as it would be typed, with its day. */
  seen: Partial<Record<TypedColumn, { text: string; on: Day }>>;
}

const ask = (message: string, remedy: string) => `${message[0]?.toUpperCase()}${message.slice(1)}; ${remedy}`;

/** A measure in cm or mm, of what was typed or else seen last. */
function measured(kind: 'height' | 'caliper', texts: Entry): number | null {
  const column = measureColumns.find(each => each.startsWith(kind) && (texts[each] ?? '') !== '');
  return column === undefined ? null : inCmOrMm(column, Number(texts[column]));
}

function lastOf(lot: BenchLot, kind: 'height' | 'caliper') {
  const column = measureColumns.find(each => each.startsWith(kind) && lot.seen[each] !== undefined);
  const seen = column && lot.seen[column];
  return seen ? { value: inCmOrMm(column, Number(seen.text)), on: seen.on } : null;
}

function measureQuestion(lot: BenchLot, column: MeasureColumn, entry: Entry): string | null {
  const typed = entry[column];
  if (typed === undefined || typed === '') return null;
  const found = implausible(column, Number(typed), {
    pot: lot.pot,
    heightCm: measured('height', entry),
    caliperMm: measured('caliper', entry),
    last: { heightCm: lastOf(lot, 'height'), caliperMm: lastOf(lot, 'caliper') },
  });
  if (found === null) return null;
  const remedy = found.likely ? `${found.likely} would fit.` : 'Measure again, and look at the unit.';
  return `${typed} ${unitOf(column)} can hardly be right: ${found.why}. ${remedy}`;
}

function countQuestion(lot: BenchLot, entry: Entry): string | null {
  if (entry.left === undefined) return null;
  const number = (column: 'left' | 'lost' | 'returned') => Number(entry[column] ?? 0);
  const lost = number('lost');
  const known = {
    raised: lot.raised,
    plants: lot.left,
    countedOn: lot.countedOn,
    lost,
    returned: number('returned'),
    lostInAll: lost,
  };
  const words = countWords(known, number('left'));
  return words && ask(words.message, words.remedy);
}

/** What is asked about a number that is none, or that no tree in a pot can have; null for a blank and for a word. */
function numberQuestion(column: TypedColumn, text: string): string | null {
  const cell = walkCells[column];
  if (text === '' || (cell.kind !== 'count' && cell.kind !== 'measure')) return null;
  const value = Number(text);
  const called = column.replace('_', ', ').replace('caliper', 'stem');
  if (cell.kind === 'count' && !/^\d+$/.test(text))
    return `${text} is no count of plants: write a whole number.`;
  if (!Number.isFinite(value)) return `${text} is no number (${called}).`;
  const [low, high] = cell.kind === 'count' ? [0, cell.most] : [cell.low, cell.high];
  return value < low || value > high ? `${text} can hardly be right (${called}). Look at the unit.` : null;
}

/** What the page asks about an entry, by the same rules as the check of the records; none for one that fits. */
export function questionsOf(lot: BenchLot, entry: Entry): string[] {
  const given = (questions: readonly (string | null)[]) => questions.filter(question => question !== null);
  const unreadable = given(typedColumns.map(column => numberQuestion(column, entry[column] ?? '')));
  if (unreadable.length > 0) return unreadable;
  return given([
    countQuestion(lot, entry),
    ...measureColumns.map(column => measureQuestion(lot, column, entry)),
  ]);
}

/** Days by which a clock may be ahead of the day the page was made: a yard that publishes seldom. Standing: ours. */
const MOST_DAYS_AHEAD = 60;

/** What is asked about the day of the device; null for one that can be right. `made` is the day the page was made for, `lastWalk` the newest walk in it. */
export function dayQuestion(today: Day, made: Day, lastWalk: Day | null): string | null {
  if (lastWalk === today) {
    return `The yard has a walk of ${today} already: put these rows into its file, content/walks/${today}.csv, instead of a new one.`;
  }
  const ahead = daysBetween(made, today);
  if (ahead >= 0 && ahead <= MOST_DAYS_AHEAD) return null;
  return `The clock of this device says ${today}, and this page was made for ${made}. Is the day right? Set it below if not.`;
}
