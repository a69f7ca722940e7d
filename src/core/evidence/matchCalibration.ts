/** The stated chance that a heat need is met before the killing freeze, beside the share of observed years. */
import type { ClimateFigures } from '../climate/figures.ts';
import { nothingPublished } from '../climate/figures.ts';
import { weatherYears } from '../climate/weatherYears.ts';
import { ripeningOdds } from '../match/ripeningOdds.ts';
import { killingFreezeAt } from '../phenology/endOfSeason.ts';
import { fahrenheitToCelsius } from '../units.ts';
import { type SupplyRules, type SupplyStation, supplyRules, supplyStations } from './data/heatSupply.ts';
import { allNumbersOf, type EvidenceRow, type EvidenceTable, rowsFrom } from './table.ts';

/** Points of a hundred that a stated chance may be off. */
const TOLERANCE_POINTS = 10;
/** Least share of cases within that tolerance. */
const CASES_WITHIN = 0.9;
/** Shares of observed years at which a need is set for the harder comparison. */
const hardShares = [0.1, 0.25, 0.5, 0.75, 0.9] as const;

function figuresOf(station: SupplyStation): ClimateFigures {
  return {
    lat: station.lat,
    tmaxC: allNumbersOf(station.tmaxC),
    tminC: allNumbersOf(station.tminC),
    sdTminC: allNumbersOf(station.sdTminC),
    sdTmaxC: allNumbersOf(station.sdTmaxC),
    sdAbout: 'month',
    lag1: station.lag1,
    rainMm: null,
    dewPointC: null,
    published: nothingPublished,
  };
}

interface CalibrationCase {
  readonly what: string;
  readonly source: string;
  readonly observed: number;
  /** What the site states: how little is known of the need is counted. */
  readonly stated: number;
  /** The same for a need taken at its word, which only the weather can miss. */
  readonly sharp: number;
}

function casesOf(station: SupplyStation): { usual: CalibrationCase[]; hard: CalibrationCase[] } {
  const years = weatherYears(figuresOf(station));
  const source = `NOAA NCEI, GHCN-Daily ${station.id}, ${station.period}`;
  const usual: CalibrationCase[] = [];
  const hard: CalibrationCase[] = [];
  for (const [key, rules] of Object.entries<SupplyRules>(supplyRules)) {
    const supply = allNumbersOf(station.supply[key as keyof typeof supplyRules]).sort((a, b) => a - b);
    const hardNeeds = hardShares.map(share => supply[Math.floor(share * supply.length)] as number);
    const needs = [...rules.needs, ...hardNeeds];
    const [odds] = ripeningOdds(years, rules.baseC, 36, [
      {
        rules: {
          heatFrom: 0,
          budbreakHeat: rules.budbreakHeat,
          leafDamageC: rules.leafDamageC,
          end: killingFreezeAt(Math.min(fahrenheitToCelsius(28), rules.leafDamageC)),
        },
        needs: needs.map(heat => ({
          by: 'heat',
          heat: heat + rules.budbreakHeat,
          budbreakHeat: 0,
          leastDays: 0,
        })),
        headStart: null,
      },
    ]);
    needs.forEach((need, i) => {
      const found = odds?.outdoors[i];
      if (!found) throw new RangeError(`no odds for ${need}`);
      (i < rules.needs.length ? usual : hard).push({
        what: `${station.name}: ${need} degree days above ${rules.baseC} C`,
        source,
        observed: supply.filter(each => each >= need).length / supply.length,
        stated: found.share,
        sharp: found.sharpShare,
      });
    });
  }
  return { usual, hard };
}

export interface Calibration {
  readonly usual: CalibrationCase[];
  readonly hard: CalibrationCase[];
  /** Share of the usual cases within 10 points, stated and sharp. */
  readonly statedWithin: number;
  readonly sharpWithin: number;
  /** Mean error over the hard cases, points. */
  readonly hardMeanPoints: number;
}

/** Runs every station. Costs about a tenth of a second. */
export function calibration(): Calibration {
  const all = supplyStations.map(casesOf);
  const usual = all.flatMap(each => each.usual);
  const hard = all.flatMap(each => each.hard);
  const within = (of: (each: CalibrationCase) => number) =>
    usual.filter(each => Math.abs(of(each) - each.observed) * 100 <= TOLERANCE_POINTS).length / usual.length;
  const errors = hard.map(({ sharp, observed }) => Math.abs(sharp - observed) * 100);
  return {
    usual,
    hard,
    statedWithin: within(({ stated }) => stated),
    sharpWithin: within(({ sharp }) => sharp),
    hardMeanPoints: errors.reduce((sum, error) => sum + error, 0) / errors.length,
  };
}

/** Largest mean error allowed where the weather alone decides, points: a record of 20 to 50 years is itself good to 5 to 10. */
const HARD_TOLERANCE_POINTS = 10;

/** Cases this close to every year or none need no row of their own. */
const PLAIN_POINTS = 2;
/** How far a single case may be off. */
const CASE_TOLERANCE_POINTS = 25;

export function calibrationTable(): EvidenceTable {
  const { usual, statedWithin, sharpWithin, hardMeanPoints } = calibration();
  const from = rowsFrom('NOAA NCEI, GHCN-Daily, six stations', 'measured');
  const summary: EvidenceRow[] = [
    from.number(
      'cases whose stated chance is within 10 points',
      100,
      statedWithin * 100,
      100 - CASES_WITHIN * 100,
      '%',
    ),
    from.number(
      'the same, the need taken at its word',
      100,
      sharpWithin * 100,
      100 - CASES_WITHIN * 100,
      '%',
    ),
    from.number(
      'mean error for needs on the edge of what the place gives',
      0,
      hardMeanPoints,
      HARD_TOLERANCE_POINTS,
      'points',
    ),
  ];
  const plain = ({ observed, stated }: CalibrationCase) =>
    (observed === 0 || observed === 1) && Math.abs(observed - stated) * 100 <= PLAIN_POINTS;
  const shown = usual.filter(each => !plain(each));
  const cases = shown.map(({ what, source, observed, stated }) =>
    // One case in ten may lie outside; the summary rows judge that, so a single case only has to be near.
    rowsFrom(source, 'measured').number(
      what,
      observed * 100,
      stated * 100,
      CASE_TOLERANCE_POINTS,
      '% of years',
    ),
  );
  return {
    id: 'ripening-calibration',
    title: 'Chance of ripening beside observed years',
    about:
      'For every heat need in our species records: the chance the model states from monthly figures, and the share of observed years in which the need was met before the killing freeze.',
    weak: 'The observed share of 14 to 51 years is itself good only to 5 to 13 points.',
    rows: [...summary, ...cases],
    notChecked: [
      {
        what: `${usual.length - shown.length} cases`,
        why: 'the need was met in every year or in none, and the model says so; counted in the first rows, not shown',
      },
    ],
  };
}
