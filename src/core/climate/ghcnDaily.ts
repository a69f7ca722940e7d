/**
 * Station files of GHCN-Daily in the two forms without a header: CSV by station (`ID,YYYYMMDD,ELEMENT,VALUE,MFLAG,QFLAG,SFLAG,OBSTIME`)
 * and lines of fixed width by month (`.dly`). Values are tenths of a degree C; a quality flag means the value failed a check.
 * Source: NOAA National Centers for Environmental Information, GHCN-Daily readme, sections II and III, and readme of the by-station files.
 */

import { type Day, daysInMonth, parseDay } from '../days.ts';
import { COLDEST_EVER_C, Faults, type FoundDay, flagged, HOTTEST_EVER_C } from './dailyRows.ts';

type Element = 'TMIN' | 'TMAX';
const keyOf = { TMIN: 'tminC', TMAX: 'tmaxC' } as const;
const MISSING = '-9999';

const stationLine = /^[A-Z]{2}[A-Z0-9_-]{9},\d{8},[A-Z0-9]{4},-?\d+,/;
const fixedLine = /^[A-Z]{2}[A-Z0-9_-]{9}\d{6}[A-Z0-9]{4}[ -]*\d/;

/** Which of the two forms a text is in, by its first line; null for any other. */
export function ghcnForm(text: string): 'by-station' | 'fixed-width' | null {
  const first = text.replace(/^\uFEFF/, '').split(/\r?\n/, 1)[0] ?? '';
  if (stationLine.test(first)) return 'by-station';
  return fixedLine.test(first) ? 'fixed-width' : null;
}

export interface GhcnReading {
  stations: Set<string>;
  days: FoundDay[];
  faults: Faults;
}

/** Reads either form. Elements other than the day's lowest and highest temperature are passed over. */
export function readGhcnDaily(text: string): GhcnReading {
  const days = new Map<Day, FoundDay>();
  const stations = new Set<string>();
  const faults = new Faults();
  const put = (on: string, element: Element, value: string, quality: string, line: number) => {
    const day = parseDay(`${on.slice(0, 4)}-${on.slice(4, 6)}-${on.slice(6, 8)}`);
    if (day === null) return faults.add('error', `"${on}" is no day`, line, 'no day');
    const found = days.get(day) ?? { day, tminC: null, tmaxC: null, line };
    days.set(day, found);
    if (value.trim() === MISSING || value.trim() === '') return;
    if (quality.trim() !== '') return faults.add('warning', flagged, line);
    const celsius = Number(value) / 10;
    if (!(celsius >= COLDEST_EVER_C && celsius <= HOTTEST_EVER_C)) {
      return faults.add(
        'error',
        `"${value.trim()}" tenths of a degree C has never been measured`,
        line,
        'range',
      );
    }
    const before = found[keyOf[element]];
    if (before !== null && before !== celsius) {
      return faults.add('error', 'the day stands in the file twice with different values', line);
    }
    found[keyOf[element]] = celsius;
  };
  const isWanted = (element: string): element is Element => element === 'TMIN' || element === 'TMAX';
  const isFixed = ghcnForm(text) === 'fixed-width';
  for (const [index, row] of text
    .replace(/^\uFEFF/, '')
    .split(/\r?\n/)
    .entries()) {
    if (row === '') continue;
    const line = index + 1;
    if (isFixed ? !fixedLine.test(row) : !stationLine.test(row)) {
      faults.add('error', 'the line is not like the others: the file was not downloaded whole', line);
      continue;
    }
    stations.add(row.slice(0, 11));
    if (!isFixed) {
      const [, on = '', element = '', value = '', , quality = ''] = row.split(',');
      if (isWanted(element)) put(on, element, value, quality, line);
      continue;
    }
    const [month, element] = [row.slice(11, 17), row.slice(17, 21)];
    if (!isWanted(element)) continue;
    const length = daysInMonth(Number(month.slice(0, 4)), Number(month.slice(4)));
    for (let date = 1; date <= length; date += 1) {
      const at = 21 + (date - 1) * 8;
      put(
        `${month}${String(date).padStart(2, '0')}`,
        element,
        row.slice(at, at + 5),
        row.slice(at + 6, at + 7),
        line,
      );
    }
  }
  return { stations, days: [...days.values()], faults };
}
