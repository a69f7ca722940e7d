/** Reads a file of dated observations and compares each row with what the core computes. */

import { readFileSync } from 'node:fs';
import { stationNetwork } from '../src/core/climate/anywhere/network.ts';
import { doyFromMonthDay } from '../src/core/days.ts';
import { compareRow } from '../src/core/evidence/phenology/comparison.ts';
import type { Observation, ObservedEvent } from '../src/core/evidence/phenology/observation.ts';
import {
  observationReport,
  observationText,
  type ReportRow,
} from '../src/core/evidence/phenology/observationReport.ts';
import { type ClimateAt, climateAt } from '../src/core/evidence/phenology/pointClimate.ts';
import { LARGEST_DAYS_OFF_CLASS, middleOf } from '../src/core/phenology/seenDate.ts';
import { type RawTable, readCsv, showCell } from '../src/core/reading/csvText.ts';
import { crops, ripeningClasses } from '../src/core/records/common.ts';
import type { Species } from '../src/core/records/species.ts';
import { readStations } from '../src/stations/read.ts';
import { UsageError } from './command.ts';

const neededColumns = [
  'id',
  'species',
  'crop',
  'ripening_class',
  'event',
  'date_from',
  'date_to',
  'place',
  'lat',
  'lon',
  'elevation_m',
] as const;
type Column = (typeof neededColumns)[number];
type Cells = Record<Column, string>;

/** Events of the file that the core computes. */
const events: Readonly<Record<string, ObservedEvent>> = {
  harvest_begin: 'first-ripe',
  full_bloom: 'full-bloom',
  budbreak: 'budbreak',
  leafout: 'leafout',
  leaf_fall: 'leaf-fall',
};

function tableOf(file: string): RawTable {
  let text: string;
  try {
    text = readFileSync(file, 'utf8').replace(/^\uFEFF/, '');
  } catch {
    throw new UsageError(`${file} cannot be read. Give the path of a CSV file after --observations.`);
  }
  const table = readCsv(file, text);
  if ('problem' in table) {
    const { message, remedy, spot } = table.problem;
    const line = 'line' in spot ? spot.line : 1;
    throw new UsageError(
      text.trim() === ''
        ? `${file}:1: the file is empty. Write the columns in the first line: ${neededColumns.join(',')}.`
        : `${file}:${line}: ${message}; ${remedy}`,
    );
  }
  const missing = neededColumns.filter(name => !table.header.includes(name));
  if (missing.length > 0) {
    throw new UsageError(
      `${file}:${table.headerLine}: the header has no column ${missing.join(', ')}. Needed are ${neededColumns.join(', ')}.`,
    );
  }
  if (table.rows.length === 0)
    throw new UsageError(
      `${file}:${table.headerLine}: no row follows the header. Write one observation a line.`,
    );
  return table;
}

/** A range that is longer runs over the new year by mistake: its ends are swapped, days. */
const LONGEST_RANGE_DAYS = 182;

const within = (text: string, least: number, most: number) =>
  text.trim() !== '' && Number(text) >= least && Number(text) <= most;

/** What is wrong with the cells of a row, in words; null when nothing is. */
function faultOf(cells: Cells): string | null {
  for (const name of ['date_from', 'date_to'] as const) {
    if (!/^\d\d-\d\d$/.test(cells[name]) || doyFromMonthDay(cells[name]) === null) {
      return `${name} is ${showCell(cells[name])}, not a month and day such as 08-20`;
    }
  }
  const days = 2 * middleOf({ from: cells.date_from, to: cells.date_to }).half;
  if (days > LONGEST_RANGE_DAYS) {
    return `the range from ${cells.date_from} to ${cells.date_to} is ${days} days long; the two may be swapped`;
  }
  if (cells.species.trim() === '') return 'species is an empty cell, not a botanical name';
  if (!within(cells.lat, -90, 90)) return `lat is ${showCell(cells.lat)}, not a latitude from -90 to 90`;
  if (!within(cells.lon, -180, 180)) return `lon is ${showCell(cells.lon)}, not a longitude from -180 to 180`;
  if (!within(cells.elevation_m, -450, 6000)) {
    return `elevation_m is ${showCell(cells.elevation_m)}, not a height from -450 to 6000 m`;
  }
  if (events[cells.event] === undefined)
    return `the event ${showCell(cells.event)} is not one the core computes (${Object.keys(events).join(', ')})`;
  return cells.event === 'harvest_begin' ? cropFaultOf(cells) : null;
}

/** Words of the file for a row that does not tell its crop or class apart. */
const UNTOLD = ['', 'any'];

/** What is wrong with the crop and the class of a row of ripe fruit; that nothing is told of them is for the comparison to say. */
function cropFaultOf({ crop, ripening_class: name }: Cells): string | null {
  if (!UNTOLD.includes(crop) && !crops.some(each => each === crop))
    return `crop is ${showCell(crop)}, not one of ${crops.join(', ')}`;
  return UNTOLD.includes(name) || ripeningClasses.some(each => each === name)
    ? null
    : `ripening_class is ${showCell(name)}, not one of ${ripeningClasses.join(', ')}`;
}

function observationOf(cells: Cells): Observation {
  const { id, species, place, date_from: from, date_to: to } = cells;
  return {
    id,
    species,
    place,
    event: events[cells.event] as ObservedEvent,
    crop: crops.find(crop => crop === cells.crop) ?? null,
    class: ripeningClasses.find(name => name === cells.ripening_class) ?? null,
    from,
    to,
    lat: Number(cells.lat),
    lon: Number(cells.lon),
    elevationM: Number(cells.elevation_m),
  };
}

/** Every row of the file with its comparison; a row that cannot be compared says why, with its line. */
function comparedRows(table: RawTable, species: readonly Species[], at: ClimateAt): ReportRow[] {
  return table.rows.map(({ cells, line }) => {
    const cell = (name: Column) => cells[table.header.indexOf(name)] ?? '';
    const named = Object.fromEntries(neededColumns.map(name => [name, cell(name)])) as Cells;
    const fault = faultOf(named);
    const own = {
      id: named.id,
      species: named.species,
      class: named.ripening_class,
      event: named.event,
      place: named.place,
      observed: [named.date_from, named.date_to] as const,
      line,
    };
    if (fault !== null) return { ...own, computed: null, errorDays: null, reason: fault, note: null };
    const { computed, errorDays, reason, note } = compareRow(observationOf(named), species, at);
    return { ...own, computed, errorDays, reason, note };
  });
}

/** What a reader of the file has to look at again, a line for each row: rows that were not computed, and rows that contradict their class. */
function remarksOf(file: string, rows: readonly ReportRow[]): string[] {
  return rows.flatMap(({ id, line, event, class: name, reason, computed, errorDays }) => {
    if (reason !== null) return [`${file}:${line}: ${id} was not computed: ${reason}`];
    if (event !== 'harvest_begin' || errorDays === null || Math.abs(errorDays) <= LARGEST_DAYS_OFF_CLASS)
      return [];
    const weeks = Math.round(Math.abs(errorDays) / 7);
    const side = errorDays > 0 ? 'before' : 'after';
    return [
      `${file}:${line}: ${id} lies about ${weeks} weeks ${side} ${computed}, where its class "${name}" is computed ripe; look at the date, the place and the class again`,
    ];
  });
}

/** Prints the comparison, and on the error stream the rows to look at again, each with its line. */
export function compareFile(file: string, asJson: boolean, species: readonly Species[]): number {
  const table = tableOf(file);
  const rows = comparedRows(table, species, climateAt(stationNetwork(readStations())));
  process.stdout.write(
    asJson ? `${JSON.stringify(observationReport(rows), null, 2)}\n` : observationText(rows),
  );
  for (const remark of remarksOf(file, rows)) process.stderr.write(`${remark}\n`);
  return 0;
}
