/** All evidence tables, in the order of the page and of the command. */
import { careTables } from './careTables.ts';
import { curveTables } from './curveTables.ts';
import { degreeDayTables } from './degreeDayTables.ts';
import { freezeChainTables } from './freezeChainTables.ts';
import { hourlyTables } from './hourlyTables.ts';
import { lotsTables } from './lotsTables.ts';
import { matchTables } from './matchTables.ts';
import { placeTables } from './placeTables.ts';
import { spreadTables } from './spreadTables.ts';
import { sunTables } from './sunTables.ts';
import type { EvidenceTable } from './table.ts';
import { winterTripTables } from './winterTripTables.ts';
import { zoneTables } from './zoneTables.ts';

/**
 * Every table: first how far modeled places and ripening are off, then the formulas against what is printed, then care, measures and prices.
 * Models some ninety places, so it takes a few seconds; the result never changes between runs.
 */
export function evidenceTables(): EvidenceTable[] {
  return [
    ...placeTables(),
    ...spreadTables(),
    ...freezeChainTables(),
    ...matchTables(),
    ...curveTables(),
    ...degreeDayTables(),
    ...sunTables(),
    ...hourlyTables(),
    ...zoneTables(),
    ...careTables(),
    ...winterTripTables(),
    ...lotsTables,
  ];
}
