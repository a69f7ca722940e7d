/** First and last freezes in the annual normals, turned from the agency's way of counting into ours. */

import { type DateQuantiles, type FreezeThresholdF, freezeThresholdsF } from '../figures.ts';
import { dateCell, numberCell } from './cell.ts';
import type { OfficialTable } from './table.ts';

export interface StationFreeze {
  /** p10 the early date, p90 the late one. */
  first: DateQuantiles;
  last: DateQuantiles;
  /** Share of years without such a freeze; null when the file does not say. */
  none: number | null;
}

/** Percent columns used of the nine given. */
const percents = [10, 50, 90] as const;

interface Dates {
  byPercent: Map<number, string | null>;
  /** Null when all are known. */
  unknown: 'missing' | 'always' | null;
}

/**
 * Dates at the three percents. A blank date is "not that often" only where the file's own chance of the freeze is no larger than
 * the percent; otherwise it is not known.
 */
function datesOf(table: OfficialTable, prefix: string, chancePercent: number | null): Dates {
  const byPercent = new Map<number, string | null>();
  for (const percent of percents) {
    const cell = dateCell(table, 0, `${prefix}FP${percent}`);
    if ('value' in cell) byPercent.set(percent, cell.value);
    else if (cell.absent === 'always') return { byPercent, unknown: 'always' };
    else if (cell.absent === 'never' || (chancePercent !== null && chancePercent <= percent)) {
      byPercent.set(percent, null);
    } else return { byPercent, unknown: 'missing' };
  }
  return { byPercent, unknown: null };
}

/**
 * Freeze dates at each threshold. The agency counts a last freeze by the chance of a later one, so its 10 % date is the late p90.
 * A threshold with unknown dates, or with a risk in every month, is left out and told in `notes`.
 */
export function freezeDates(
  table: OfficialTable,
  notes: string[],
): Map<FreezeThresholdF, StationFreeze> | null {
  const freezes = new Map<FreezeThresholdF, StationFreeze>();
  for (const thresholdF of freezeThresholdsF) {
    const chance = numberCell(table, 0, `ANN-TMIN-PRBOCC-LSTH0${thresholdF}`, 10);
    const chancePercent = 'value' in chance ? chance.value : null;
    const first = datesOf(table, `ANN-TMIN-PRBFST-T${thresholdF}`, chancePercent);
    const last = datesOf(table, `ANN-TMIN-PRBLST-T${thresholdF}`, chancePercent);
    const unknown = first.unknown ?? last.unknown;
    if (unknown !== null) {
      notes.push(
        unknown === 'always'
          ? `${thresholdF} F: the risk lasts all year, so there are no dates; left to the model.`
          : `${thresholdF} F: the file has no freeze dates; left to the model.`,
      );
      continue;
    }
    const at = (dates: Dates, percent: number) => dates.byPercent.get(percent) ?? null;
    freezes.set(thresholdF, {
      first: { p10: at(first, 10), p50: at(first, 50), p90: at(first, 90) },
      last: { p10: at(last, 90), p50: at(last, 50), p90: at(last, 10) },
      none: chancePercent === null ? null : Math.round(100 - chancePercent) / 100,
    });
  }
  return freezes.size > 0 ? freezes : null;
}
