/** Evidence for degree days: published worked examples. */
import { averageDegreeDays, sineDegreeDays, triangleDegreeDays } from '../climate/degreeDays.ts';
import { degreesFToC } from '../units.ts';
import {
  mcMaster1997,
  trenchR,
  ucIpmCases,
  ucIpmDays,
  ucIpmMonthEnds,
  ucIpmYear,
  zalom1983,
} from './data/degreeDays.ts';
import { espartoA2020 } from './data/espartoA2020.ts';
import type { EvidenceRow, EvidenceTable } from './table.ts';
import { rowsFrom } from './table.ts';

const fDays = 'F-degree-days';
const cDays = 'C-degree-days';

function zalomTable(): EvidenceTable {
  const from = rowsFrom('Zalom, Goodell, Wilson, Barnett, Bentley 1983, UC leaflet 21373, table 7');
  return {
    id: 'degree-days-zalom',
    title: 'Degree days of single days, 55 to 90 F',
    about:
      'The examples printed with the method itself. They cover every way a day can lie against the two thresholds.',
    weak: null,
    rows: zalom1983.flatMap(([tmin, tmax, triangle, sine]) => [
      from.number(`${tmin} to ${tmax} F, single sine`, sine, sineDegreeDays(tmin, tmax, 55, 90), 0.01, fDays),
      from.number(
        `${tmin} to ${tmax} F, single triangle`,
        triangle,
        triangleDegreeDays(tmin, tmax, 55, 90),
        0.01,
        fDays,
      ),
    ]),
    notChecked: [
      {
        what: 'double triangle and double sine columns',
        why: 'the site does not use the double methods; one of their printed values is thought to be a misprint',
      },
    ],
  };
}

const [BASE, CAP] = [50, 70];
const methods: readonly [string, (tmin: number, tmax: number) => number][] = [
  ['sine, horizontal', (tmin, tmax) => sineDegreeDays(tmin, tmax, BASE, CAP)],
  ['sine, vertical', (tmin, tmax) => sineDegreeDays(tmin, tmax, BASE, CAP, 'vertical')],
  ['triangle, horizontal', (tmin, tmax) => triangleDegreeDays(tmin, tmax, BASE, CAP)],
  ['triangle, vertical', (tmin, tmax) => triangleDegreeDays(tmin, tmax, BASE, CAP, 'vertical')],
];

/** Days of the Esparto year by month, as [tmin, tmax]. */
function espartoMonths(): [number, number][][] {
  return espartoA2020
    .trim()
    .split('\n')
    .map(line => line.split(' ').map(day => day.split('/').map(Number) as [number, number]));
}

/** Index into `ucIpmCases` of one day. */
function caseOf(tmin: number, tmax: number): number {
  if (tmax < BASE) return 0;
  if (tmin > CAP) return 4;
  if (tmin < BASE) return tmax > CAP ? 5 : 1;
  return tmax > CAP ? 3 : 2;
}

function runningRows(name: 'sine' | 'triangle'): EvidenceRow[] {
  const from = rowsFrom('UC IPM calculator, Esparto-A 2020, accumulated');
  const daily = name === 'sine' ? sineDegreeDays : triangleDegreeDays;
  let total = 0;
  return espartoMonths().map((days, month) => {
    for (const [tmin, tmax] of days) total += daily(tmin, tmax, BASE, CAP);
    return from.number(
      `${name}, horizontal, to the end of month ${month + 1}`,
      ucIpmMonthEnds[name][month] as number,
      total,
      0.02,
      fDays,
    );
  });
}

function ucIpmTable(): EvidenceTable {
  const from = rowsFrom(
    'UC IPM degree-day calculator, station Esparto-A 2020 (UC ANR IGIS validation challenge)',
  );
  const days = espartoMonths().flat();
  return {
    id: 'degree-days-uc-ipm',
    title: 'Degree days of a whole year in California, 50 to 70 F',
    about: 'Single days, the year and running totals from the web calculator that California growers use.',
    weak: null,
    rows: [
      ...ucIpmDays.flatMap(([date, tmin, tmax, ...expected]) =>
        methods.map(([name, of], i) =>
          from.number(`${date}, ${name}`, expected[i] as number, of(tmin, tmax), 0.01, fDays),
        ),
      ),
      ...methods.map(([name, of], i) =>
        from.number(
          `year, ${name}`,
          ucIpmYear[i] as number,
          days.reduce((sum, [tmin, tmax]) => sum + of(tmin, tmax), 0),
          0.02,
          fDays,
        ),
      ),
      ...runningRows('sine'),
      ...runningRows('triangle'),
      ...ucIpmCases.map(([what, expected], i) =>
        from.number(
          `days ${what}`,
          expected,
          days.filter(([low, high]) => caseOf(low, high) === i).length,
          0,
          'days',
        ),
      ),
    ],
    notChecked: [],
  };
}

function averageTable(): EvidenceTable {
  const mcMaster = rowsFrom('McMaster and Wilhelm 1997, Agric. For. Meteorol. 87:291-300, table 1');
  const iowa = rowsFrom('Iowa State University, Agronomy 541, lesson 2b (base 50 F, ceiling 86 F)');
  const mrcc = rowsFrom('Midwestern Regional Climate Center, growing degree day information');
  const wsu = rowsFrom(
    'Washington State University, vineyard degree days ((max + min) / 2 - 50 F, negatives to 0)',
  );
  const trench = rowsFrom('tests of the R package TrenchR, 12 to 33 C');
  const arithmetic = rowsFrom('NIST: a temperature difference of 1 C is 1.8 F', 'computed');
  return {
    id: 'degree-days-average',
    title: 'Simple averages and one-line examples',
    about:
      '"Average method" names two methods: hold the mean of the day to the thresholds, or its two extremes. They differ whenever the night is colder than the base.',
    weak: null,
    rows: [
      ...mcMaster1997.flatMap(([tmax, tmin, first, second]) => [
        mcMaster.number(
          `${tmax}/${tmin} C, method 1`,
          first,
          averageDegreeDays(tmin, tmax, 0, null, 'mean'),
          0,
          cDays,
        ),
        mcMaster.number(
          `${tmax}/${tmin} C, method 2`,
          second,
          averageDegreeDays(tmin, tmax, 0, null, 'extremes'),
          0,
          cDays,
        ),
      ]),
      iowa.number('70/50 F', 10, averageDegreeDays(50, 70, 50, 86, 'extremes'), 0, fDays),
      iowa.number('the greatest day', 36, averageDegreeDays(90, 110, 50, 86, 'extremes'), 0, fDays),
      mrcc.number('mean 75 F, base 65 F', 10, averageDegreeDays(70, 80, 65, null, 'mean'), 0, fDays),
      wsu.number('mean 45 F', 0, averageDegreeDays(40, 50, 50, null, 'mean'), 0, fDays),
      wsu.number('60/80 F', 20, averageDegreeDays(60, 80, 50, null, 'mean'), 0, fDays),
      ...trenchR.flatMap(([tmin, tmax, sine, triangle]) => [
        trench.number(`${tmin} to ${tmax} C, sine`, sine, sineDegreeDays(tmin, tmax, 12, 33), 0.01, cDays),
        trench.number(
          `${tmin} to ${tmax} C, triangle`,
          triangle,
          triangleDegreeDays(tmin, tmax, 12, 33),
          0.01,
          cDays,
        ),
      ]),
      arithmetic.number('100 F-degree-days', 55.56, degreesFToC(100), 0.005, cDays),
    ],
    notChecked: [
      {
        what: 'TrenchR sine case 35 to 40 C, printed as 5',
        why: 'it must be 33 - 12 = 21, as its triangle case has it',
      },
    ],
  };
}

/** Degree days of single days against published examples. */
export function degreeDayTables(): EvidenceTable[] {
  return [zalomTable(), ucIpmTable(), averageTable()];
}
