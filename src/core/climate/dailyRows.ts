/** What readers of daily records share: the rows they make, the station they are of, and the faults they meet. */

import type { Day } from '../days.ts';

export interface DayRow {
  day: Day;
  /** Null when it was not read. */
  tminC: number | null;
  tmaxC: number | null;
}

export interface RecordProblem {
  level: 'error' | 'warning';
  /** Line of the file, 1 the header; 0 when no line is meant. */
  line: number;
  message: string;
}

/** What a file of an agency says about its station. */
export interface DailyStation {
  station: string | null;
  name: string | null;
  lat: number | null;
  lon: number | null;
  elevationM: number | null;
}

export const noStation: DailyStation = {
  station: null,
  name: null,
  lat: null,
  lon: null,
  elevationM: null,
};

/** Lowest and highest air temperature measured on earth, C (WMO World Weather and Climate Extremes Archive: Vostok, Furnace Creek). */
export const COLDEST_EVER_C = -89.2;
export const HOTTEST_EVER_C = 56.7;

/** Share of days whose minimum may lie above the maximum before the columns must be wrong. Our working figure. */
const CROSSED_SHARE = 0.01;

const crossed = 'the minimum is above the maximum; the day is left out';
export const flagged = 'the agency flagged the value as doubtful; it is left out';

function lines(numbers: readonly number[]): string {
  const shown = numbers.slice(0, 5).join(', ');
  const more = numbers.length > 5 ? ` and ${numbers.length - 5} more` : '';
  return `${numbers.length === 1 ? 'line' : 'lines'} ${shown}${more}`;
}

/**
 * Faults met row by row, gathered so that each kind becomes one message, however many lines have it: a spreadsheet can spoil all the days
 * of a file at once. A message shows the first cell of its kind.
 */
export class Faults {
  readonly #kinds = new Map<string, { level: RecordProblem['level']; message: string; at: number[] }>();

  /** `kind` defaults to the message: faults that quote a cell need one. */
  add(level: RecordProblem['level'], message: string, line: number, kind = message): void {
    const known = this.#kinds.get(kind) ?? { level, message, at: [] };
    known.at.push(line);
    this.#kinds.set(kind, known);
  }

  count(kind: string): number {
    return this.#kinds.get(kind)?.at.length ?? 0;
  }

  /** One of each kind, by the first line that has it. */
  problems(): RecordProblem[] {
    return [...this.#kinds.values()]
      .map(({ level, message, at }) => ({ level, line: at[0] ?? 0, message: `${message} (${lines(at)})` }))
      .sort((a, b) => a.line - b.line);
  }
}

/** A day as it stands in a file, and where. */
export interface FoundDay extends DayRow {
  line: number;
}

/** Days in order, each once; days whose temperatures are crossed are emptied, and those that stand twice told. */
export function inOrder(
  found: Iterable<FoundDay>,
  faults: Faults,
): { rows: DayRow[]; problems: RecordProblem[] } {
  const byDay = new Map<Day, DayRow>();
  for (const { day, line, ...read } of found) {
    let { tminC, tmaxC } = read;
    if (tminC !== null && tmaxC !== null && tminC > tmaxC) {
      faults.add('warning', crossed, line);
      [tminC, tmaxC] = [null, null];
    }
    const before = byDay.get(day);
    if (before === undefined) byDay.set(day, { day, tminC, tmaxC });
    else if (before.tminC === tminC && before.tmaxC === tmaxC) {
      faults.add('warning', 'the day stands in the file twice with the same values', line);
    } else faults.add('error', 'the day stands in the file twice with different values', line);
  }
  const problems = faults.problems();
  if (faults.count(crossed) > CROSSED_SHARE * byDay.size) {
    problems.push({
      level: 'error',
      line: 1,
      message: 'so many minima above the maximum: are the columns swapped?',
    });
  }
  if (byDay.size === 0) problems.push({ level: 'error', line: 0, message: 'the file has no days' });
  return { rows: [...byDay.values()].sort((a, b) => (a.day < b.day ? -1 : 1)), problems };
}
