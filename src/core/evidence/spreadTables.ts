/** Evidence for the spread of daily values where a place record gives none: the spread of stations, withheld and estimated. */
import { estimatedSpread } from '../climate/dailySpread.ts';
import type { ClimateFigures, FreezeThresholdF } from '../climate/figures.ts';
import { findWinters, freezeOdds } from '../climate/freezes.ts';
import { weatherYears } from '../climate/weatherYears.ts';
import { halfZoneIndex, parseZone, winterLow } from '../climate/winterZone.ts';
import { doyFromMonthDay } from '../days.ts';
import { mean, meanError } from './comparedPlaces.ts';
import { freezeStations, placesWithZone } from './stationFigures.ts';
import { type EvidenceRow, type EvidenceTable, rowsFrom } from './table.ts';

/** Enough for middle dates good to half a day. */
const SEASONS = 400;
/** Sites where the freeze fails to come in more years than this have no middle date to compare. */
const MOST_WITHOUT = 0.1;

function withoutSpread(figures: ClimateFigures): ClimateFigures {
  return { ...figures, sdTminC: null, sdTmaxC: null };
}

/** Days from one date of the year to another, the short way round. */
function daysApart(from: string, to: string): number {
  const apart = (doyFromMonthDay(to) ?? 0) - (doyFromMonthDay(from) ?? 0);
  return apart - 365 * Math.round(apart / 365);
}

function spreadRows(): EvidenceRow[] {
  const from = rowsFrom('USDA Agricultural Research Service, CLIGEN station parameters', 'measured');
  return (['tmin', 'tmax'] as const).flatMap(of => {
    const errors = placesWithZone().flatMap(({ figures }) => {
      const given = of === 'tmin' ? figures.sdTminC : figures.sdTmaxC;
      const estimate = estimatedSpread(withoutSpread(figures), of);
      return given === null ? [] : given.map((sd, month) => (estimate[month] as number) - sd);
    });
    const what = of === 'tmin' ? 'daily lows' : 'daily highs';
    return [
      from.number(`${what}, mean error over ${errors.length} months`, 0, meanError(errors), 0.65, 'C'),
      from.number(`${what}, bias`, 0, mean(errors), 0.15, 'C'),
    ];
  });
}

interface Withheld {
  readonly first: readonly number[];
  readonly last: readonly number[];
  readonly low: readonly number[];
}

/** Errors of the middle freeze dates (days) and of the mean winter low (C) with the spread withheld. */
function errorsWithheld(thresholdF: FreezeThresholdF, coldestNightKnown: boolean): Withheld {
  const first: number[] = [];
  const last: number[] = [];
  const low: number[] = [];
  for (const { figures, freezes, annualMinC, source } of freezeStations()) {
    const observed = freezes.find(freeze => freeze.thresholdF === thresholdF);
    if (annualMinC === null || figures.sdTminC === null || !observed) continue;
    const annualMin = coldestNightKnown ? { meanC: annualMinC, p10C: null, source } : null;
    const bare = withoutSpread(figures);
    const winters = findWinters(
      weatherYears({ ...bare, published: { ...bare.published, annualMin } }, SEASONS),
    );
    low.push(winterLow(winters).meanC - annualMinC);
    if ((observed.none ?? 0) >= MOST_WITHOUT) continue;
    const odds = freezeOdds(winters, thresholdF);
    const [seenFirst, seenLast] = [observed.first[1], observed.last[1]];
    if (seenFirst && odds.first.p50) first.push(daysApart(seenFirst, odds.first.p50));
    if (seenLast && odds.last.p50) last.push(daysApart(seenLast, odds.last.p50));
  }
  return { first, last, low };
}

function withheldRows(): EvidenceRow[] {
  const from = rowsFrom('long daily records of the stations under freeze dates', 'measured');
  return [false, true].flatMap(known => {
    const { first, last, low } = errorsWithheld(32, known);
    const how = known ? 'coldest night known' : 'nothing but monthly means';
    return [
      from.number(
        `first 32 F freeze, ${how}, ${first.length} places`,
        0,
        meanError(first),
        known ? 6 : 7.5,
        'days',
      ),
      from.number(
        `last 32 F freeze, ${how}, ${last.length} places`,
        0,
        meanError(last),
        known ? 7.5 : 8.5,
        'days',
      ),
      from.number(`winter low, ${how}, ${low.length} places`, 0, meanError(low), known ? 0.6 : 3, 'C'),
    ];
  });
}

function zoneRows(): EvidenceRow[] {
  const from = rowsFrom(
    '2023 USDA Plant Hardiness Zone Map (USDA-ARS and Oregon State University), nearest ZIP code',
  );
  const off = placesWithZone().map(({ zone, figures }) => {
    const winters = findWinters(weatherYears(withoutSpread(figures), SEASONS));
    return halfZoneIndex(winterLow(winters).meanC) - (parseZone(zone) ?? 0);
  });
  const within = off.filter(half => Math.abs(half) <= 1).length / off.length;
  return [
    from.number(`winter zone, mean error over ${off.length} places`, 0, meanError(off), 0.8, 'half zones'),
    from.number('winter zone, share within one half zone', 1, within, 0.15, ''),
  ];
}

/** What is lost when a place gives no spread of daily values. */
export function spreadTables(): EvidenceTable[] {
  return [
    {
      id: 'estimated-spread',
      title: 'Where the spread of single days is estimated',
      about:
        'Places abroad often publish monthly means only. Here the spread of stations that do publish it is withheld and estimated, to see what that costs. Such answers are marked as modeled from an estimate.',
      weak: 'Freeze dates are then off by about a week. Where the mean coldest night of the winter is published the estimate is held to it, which mends the winter low and a little of the rest.',
      rows: [...spreadRows(), ...withheldRows(), ...zoneRows()],
      notChecked: [],
    },
  ];
}
