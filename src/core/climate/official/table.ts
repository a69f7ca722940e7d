/**
 * Station files of the U.S. Climate Normals (NOAA National Centers for Environmental Information, by-station CSV) in both layouts:
 * 1991-2020 and 2006-2020 with a measurement flag, a completeness flag and the years used beside each value; 1981-2010 with
 * whole numbers in tenths or hundredths and one ATTRIBUTES column beside each value. Columns are found by name.
 * Source: NCEI readme "By-Variable By-Station Normals Files" (1991-2020) and NCDC readme of the 1981-2010 normals.
 */

import { parse } from 'csv-parse/sync';

export type OfficialKind = 'monthly' | 'daily' | 'annual';
type OfficialLayout = '1981-2010' | '1991-2020';

export interface OfficialTable {
  layout: OfficialLayout;
  kind: OfficialKind;
  station: string;
  /** As the agency writes it: `LEBANON MUNI AP, NH US`. */
  name: string;
  lat: number;
  lon: number;
  elevationM: number;
  /** One row per month (12), per day (365 or 366) or per year (1), in the order of the calendar. */
  rows: ReadonlyMap<string, string>[];
}

/** What the file is and why it is refused, in words; null fields where nothing could be made out. */
export interface OfficialRefusal {
  refused: string;
}

const prefixes: readonly [prefix: string, kind: OfficialKind, rows: readonly number[]][] = [
  ['MLY-', 'monthly', [12]],
  ['DLY-', 'daily', [365, 366]],
  ['ANN-', 'annual', [1]],
];

/** Whether a header is one of these station files (of any kind, hourly ones included). */
export function isOfficialHeader(header: readonly string[]): boolean {
  return header.includes('STATION') && header.some(title => /^(?:MLY|DLY|ANN|HLY)-/.test(title));
}

function kindOf(header: readonly string[]) {
  return prefixes.find(([prefix]) => header.some(title => title.startsWith(prefix)));
}

/** A row's place in the calendar, `MM` or `MM-DD`, or '' in annual files. */
function dateOf(row: ReadonlyMap<string, string>): string {
  return (row.get('DATE') ?? '').trim();
}

/** Reads one station file. Never throws. */
export function readOfficialTable(text: string): OfficialTable | OfficialRefusal {
  let lines: string[][];
  try {
    lines = parse(text, { bom: true, relax_column_count: true, skip_empty_lines: true });
  } catch {
    return { refused: 'The file breaks off inside a quoted cell: it was not downloaded whole.' };
  }
  const header = (lines[0] ?? []).map(title => title.trim());
  if (!isOfficialHeader(header)) return { refused: 'This is no station file of the U.S. Climate Normals.' };
  const found = kindOf(header);
  if (!found) return { refused: 'These are hourly normals; the monthly, daily and annual files are needed.' };
  const [, kind, counts] = found;

  const body = lines.slice(1);
  const short = body.findIndex(cells => cells.length !== header.length);
  if (short >= 0) {
    const width = (body[short] as string[]).length;
    return {
      refused: `Line ${short + 2} has ${width} of ${header.length} columns: the file was not downloaded whole.`,
    };
  }
  const rows = body.map(cells => new Map(header.map((title, i) => [title, cells[i] as string])));
  const stations = new Set(rows.map(row => row.get('STATION')?.trim()));
  if (stations.size > 1)
    return { refused: `The file holds ${stations.size} stations; give the file of one.` };
  if (!counts.includes(rows.length)) {
    const expected = counts.length > 1 ? '365 or 366 days' : counts[0] === 12 ? '12 months' : '1 row';
    return { refused: `The ${kind} file has ${rows.length} rows instead of ${expected}: it is not whole.` };
  }
  rows.sort((a, b) => (dateOf(a) < dateOf(b) ? -1 : 1));
  if (new Set(rows.map(dateOf)).size !== rows.length) {
    return { refused: `A ${kind === 'daily' ? 'day' : 'month'} stands in the file twice.` };
  }
  const first = rows[0] as ReadonlyMap<string, string>;
  const number = (title: string) => Number(first.get(title) ?? Number.NaN);
  return {
    layout: header.some(title => title.startsWith('meas_flag_')) ? '1991-2020' : '1981-2010',
    kind,
    station: (first.get('STATION') ?? '').trim(),
    name: (first.get('NAME') ?? '').trim(),
    lat: number('LATITUDE'),
    lon: number('LONGITUDE'),
    elevationM: number('ELEVATION'),
    rows,
  };
}
