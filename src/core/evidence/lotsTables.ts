/** Every table of evidence for lots: measures, prices, parcels, and our rules beside common practice. */

import { lotsMeasureTables } from './lotsMeasureTables.ts';
import { lotsParcelTables } from './lotsParcelTables.ts';
import { lotsPracticeTables } from './lotsPracticeTables.ts';
import { lotsPriceTables } from './lotsPriceTables.ts';
import type { EvidenceTable } from './table.ts';

export const lotsTables: readonly EvidenceTable[] = [
  ...lotsMeasureTables,
  ...lotsPriceTables,
  ...lotsParcelTables,
  ...lotsPracticeTables,
];
