/** All evidence about cultivars in places. */
import { calibrationTable } from './matchCalibration.ts';
import { ripeningDatesTable } from './matchRipening.ts';
import type { EvidenceTable } from './table.ts';

/** Computed when asked for: they draw weather years. */
export function matchTables(): EvidenceTable[] {
  return [ripeningDatesTable(), calibrationTable()];
}
