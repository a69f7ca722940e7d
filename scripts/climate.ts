/** `npm run climate`: what the weather stations around say of the climate of any point, with its error. */

import { readFile } from 'node:fs/promises';
import { absurdMonths } from '../src/core/climate/anywhere/absurdMonths.ts';
import { stationNetwork } from '../src/core/climate/anywhere/network.ts';
import { figuresAt } from '../src/core/climate/anywhere/pointFigures.ts';
import {
  type PointReport,
  pointReport,
  type RefusedReport,
} from '../src/core/climate/anywhere/pointReport.ts';
import type { Point } from '../src/core/climate/anywhere/samples.ts';
import type { StationPeriod } from '../src/core/climate/anywhere/station.ts';
import { monthInWords } from '../src/core/days.ts';
import { readStations } from '../src/stations/read.ts';
import { readPoints } from './climatePoints.ts';
import { readFlags, refuseLooseWords, runIfMain, UsageError } from './command.ts';

const help = `Works out the climate of any point from the weather stations around it.

  npm run climate -- --at 35.6,-82.55,650        latitude, longitude (south and west negative), height in m
  npm run climate -- --points points.csv         many points: columns id, lat, lon, elevation_m

Flags
  --json                 as JSON, a list with an entry for each point
  --leave-out KM         stations closer than this do not count: to try the method where the answer is known
  --period PERIOD        2003-2021 (when left out), or 1981-2010 (United States only)

Dates are MM-DD. p10 is always the early date: of ten years, one has its last freeze by then, or its first.
`;

/** Weather years drawn for a point. */
const SEASONS = 500;
const periods = ['2003-2021', '1981-2010'] as const satisfies readonly StationPeriod[];

function pointOf(text: string): Point {
  const parts = text.split(/[,;\s]+/).map(Number);
  const [lat, lon, elevationM] = parts;
  if (parts.length !== 3 || !parts.every(Number.isFinite)) {
    throw new UsageError(
      `--at "${text}": expected three numbers, latitude,longitude,meters, such as 35.6,-82.55,650.`,
    );
  }
  return { lat, lon, elevationM } as Point;
}

function kmOf(text: string | undefined): number {
  const km = text === undefined ? 0 : Number(text);
  if (!(km >= 0)) throw new UsageError(`--leave-out "${text}": expected kilometers, such as 10.`);
  return km;
}

function periodOf(text: string | undefined): StationPeriod {
  const found = periods.find(period => period === (text ?? periods[0]));
  if (!found) throw new UsageError(`--period "${text}": expected ${periods.join(' or ')}.`);
  return found;
}

const degrees = (values: readonly number[]) => values.map(value => value.toFixed(1).padStart(6)).join('');

function reportText(report: PointReport | RefusedReport): string {
  if ('refused' in report) return `${report.id}: nothing can be said. ${report.refused}\n`;
  const { errors, nearest, freeze, annualMinC, winterZone, seasonDays, heat } = report;
  const { last, first, none } = freeze['32F'];
  const dates = ({ p10, p50, p90 }: typeof last) => `${p10 ?? 'never'}  ${p50 ?? 'never'}  ${p90 ?? 'never'}`;
  const off = (days: number | null) => (days === null ? '' : `   middle date off by about ${days} days`);
  return `${report.id}: means of ${report.period}; nearest station ${nearest.name} (${nearest.id}), ${nearest.km} km away at ${nearest.elevationM} m

               Jan   Feb   Mar   Apr   May   Jun   Jul   Aug   Sep   Oct   Nov   Dec
  Tmin, C   ${degrees(report.tminC)}   off by about ${errors.tminC}
  Tmax, C   ${degrees(report.tmaxC)}   off by about ${errors.tmaxC}

  32 F freeze            10 %   50 %   90 %${none > 0.005 ? `   (${Math.round(none * 100)} of 100 winters without)` : ''}
    last of spring      ${dates(last)}${off(errors.lastFreezeDays)}
    first of fall       ${dates(first)}${off(errors.firstFreezeDays)}
  Season, days          ${seasonDays.p10}  ${seasonDays.p50}  ${seasonDays.p90}
  Coldest night, C      ${annualMinC.mean} in a usual winter, ${annualMinC.p10} in one of ten; off by about ${errors.annualMinC}
  Winter zone           ${winterZone.zone} (${winterZone.basis})
  Heat, degree days     ${heat.base8cap36.mean} C above 8 C up to 36 C; ${heat.base50F.mean} F above 50 F
`;
}

export async function main(words: string[]): Promise<number> {
  const { values, positionals } = readFlags(words, help, {
    at: { type: 'string' },
    points: { type: 'string' },
    json: { type: 'boolean' },
    'leave-out': { type: 'string' },
    period: { type: 'string' },
  });
  refuseLooseWords(positionals);
  if ((values.at === undefined) === (values.points === undefined)) {
    throw new UsageError('Give --at LAT,LON,METERS or --points FILE.csv. Try --help.');
  }
  const asked = { leaveOutKm: kmOf(values['leave-out']), period: periodOf(values.period) };
  const points =
    values.at === undefined
      ? readPoints(values.points as string, await textOf(values.points as string))
      : [{ id: values.at, point: pointOf(values.at) }];
  const stations = readStations();
  const absurd = absurdMonths(stations);
  for (const { id, name, month, what, givenC, likelyC } of absurd) {
    process.stderr.write(
      `Left out: ${name} (${id}), whose mean ${what} of ${monthInWords(month + 1)} is ${givenC} C; its neighbors make about ${likelyC.toFixed(0)} C likely.\n`,
    );
  }
  const leftOut = new Set(absurd.map(({ id }) => id));
  const network = stationNetwork(stations.filter(({ id }) => !leftOut.has(id)));
  const reports = points.map(each =>
    'refused' in each
      ? { id: each.id, refused: each.refused }
      : pointReport(each.id, figuresAt(network, { ...each.point, ...asked }), SEASONS),
  );
  if (values.json) process.stdout.write(`${JSON.stringify(reports)}\n`);
  else process.stdout.write(reports.map(reportText).join('\n'));
  return 0;
}

async function textOf(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8');
  } catch {
    throw new UsageError(`--points ${file}: there is no such file.`);
  }
}

await runIfMain(import.meta, main);
