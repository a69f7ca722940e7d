import { expect, test } from 'vitest';
import { readStations } from '../../stations/read.ts';
import { stationTables } from './stationTables.ts';

/** The southern Appalachians and the plains beside them: enough stations to hold some out, few enough to be quick. */
const some = readStations().filter(({ lat, lon }) => lat > 33 && lat < 38 && lon > -87 && lon < -77);

test('stations held out are met within the stated errors', () => {
  const [table] = stationTables(some);
  const row = (what: RegExp) => table?.rows.find(each => what.test(each.what));
  expect(row(/^Monthly minimum, \d+ stations/)).toMatchObject({ ok: true, standing: 'measured' });
  expect(row(/^Monthly maximum/)?.ok).toBe(true);
  expect(row(/^Middle last 32 F freeze,/)?.got).toBeGreaterThan(0);
  expect(row(/^Middle last 32 F freeze,/)?.got).toBeLessThan(8);
  expect(row(/^Degree days a year above 50 F,/)?.ok).toBe(true);
  // What is said to come in one year in ten does not come in one of three, nor never.
  for (const what of [/by the official early date/, /after the official late date/]) {
    expect(row(what)?.got).toBeGreaterThan(5);
    expect(row(what)?.got).toBeLessThan(25);
  }
});
