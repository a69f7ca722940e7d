/** A place record from a daily record of a weather station. */

import {
  type DailyRecordFigures,
  dailyRecordFigures,
  FEWEST_WHOLE_YEARS,
  lastNormalYears,
} from '../climate/dailyRecord.ts';
import type { DailyRecord } from '../climate/dailyRecordText.ts';
import { winterZone } from '../climate/winterZone.ts';
import { roundTo } from '../units.ts';
import type { Draft, Drafted } from './draft.ts';
import { stationPlace } from './stationName.ts';

/** Stations of GHCN-Daily: country, network and number in eleven signs (NOAA GHCN-Daily readme). */
const ghcnStation = /^[A-Z]{2}[A-Z0-9_-]{9}$/;

/** Freeze dates, winter low and zone of a record long enough to stand for its climate. */
function observedIn({ freeze, annualMinMeanC, seasons }: DailyRecordFigures, about: string): Draft {
  if (seasons < FEWEST_WHOLE_YEARS || freeze === null || annualMinMeanC === null) return {};
  const at = [...freeze].map(([thresholdF, { first, last, none }]) => [
    `${thresholdF}F`,
    { first, last, none: roundTo(none, 0.01) },
  ]);
  const source = `Computed from ${about}: ${seasons} seasons with at most 10 days missing; not an official table`;
  return {
    freeze: { ...Object.fromEntries(at), source },
    annual_min_c: {
      mean: roundTo(annualMinMeanC, 0.1),
      source: `Computed from ${about}, ${seasons} winters`,
    },
    winter_zone: {
      zone: winterZone(annualMinMeanC),
      basis: `Computed by the definition of the USDA map from ${about}, ${seasons} winters; not an official zone`,
    },
  };
}

/** Prefixes of the United States and its territories in station numbers: FIPS 10-4 country codes (NOAA GHCN-Daily, ghcnd-countries.txt). */
const unitedStates = new Set(['US', 'AQ', 'CQ', 'GQ', 'JQ', 'LQ', 'MQ', 'RQ', 'VQ', 'WQ']);
/** Network code of volunteers' gauges, whose readings are not the work of an agency (NOAA GHCN-Daily readme, network codes). */
const VOLUNTEERS = '1';

/** Under which terms readings of a GHCN-Daily station may be used. The file says nothing of it, so only the country and network tell. */
export function ghcnTerms(station: string): string {
  const isAgencyOfUs = unitedStates.has(station.slice(0, 2)) && station[2] !== VOLUNTEERS;
  if (isAgencyOfUs) return 'US Government work, public domain in the United States.';
  return station[2] === VOLUNTEERS && station.startsWith('US')
    ? 'Read by volunteers of a network and passed on by NOAA; the terms of that network apply. Look them up and give them here.'
    : "Read by another country's weather service and passed on by NOAA; the terms of that service apply. Look them up and give them here.";
}

export interface YearRange {
  from: number;
  to: number;
}

/**
 * Figures of a daily record; with `years` of those calendar years only, otherwise of the last thirty where there are more. `lat` decides when a season starts. A problem in words when
 * no figures can be taken.
 */
export function dailyDraft(
  record: DailyRecord,
  lat: number,
  file: string,
  years: YearRange | null,
): Drafted | { problem: string } {
  const { station } = record;
  const isAsked = ({ day }: { day: string }) => {
    const year = Number(day.slice(0, 4));
    return years !== null && year >= years.from && year <= years.to;
  };
  const rows = years === null ? lastNormalYears(record.rows) : record.rows.filter(isAsked);
  const figures = dailyRecordFigures(rows, lat);
  if (figures === null) {
    return {
      problem: `${file}: some months of the year have no run of 20 days with a reading; no climate can be taken from it.`,
    };
  }
  const where = stationPlace(station.name ?? '');
  const isGhcn = station.station !== null && ghcnStation.test(station.station);
  const about = `${isGhcn ? `the GHCN-Daily record of station ${station.station}` : `the daily record ${file}`}, ${figures.from} to ${figures.to}`;
  const round = (values: number[], step: number) => values.map(value => roundTo(value, step));
  const draft: Draft = {
    ...(where.name === null ? {} : { name: where.name }),
    ...(where.region === null ? {} : { region: where.region }),
    ...(where.country === null ? {} : { country: where.country }),
    ...(station.lat === null ? {} : { lat: station.lat }),
    ...(station.lon === null ? {} : { lon: station.lon }),
    ...(station.elevationM === null ? {} : { elevation_m: station.elevationM }),
    tmax_c: round(figures.tmaxC, 0.01),
    tmin_c: round(figures.tminC, 0.01),
    sd: {
      tmin_c: round(figures.sdTminC, 0.01),
      tmax_c: round(figures.sdTmaxC, 0.01),
      about: 'curve',
      source: `Computed from ${about}`,
    },
    lag1: roundTo(figures.lag1, 0.01),
    ...observedIn(figures, about),
    period: `${figures.from} to ${figures.to}`,
    source: isGhcn
      ? `NOAA National Centers for Environmental Information, GHCN-Daily, station ${station.station}${station.name === null ? '' : ` (${station.name})`}; monthly means, spread and lag-1 computed from the daily record.`
      : `Own weather station, daily record ${file}; monthly means, spread and lag-1 computed from it.`,
    terms: isGhcn ? ghcnTerms(station.station ?? '') : 'Own readings.',
  };
  return {
    draft,
    notes: [
      ...record.problems.map(({ message }) => `${file}: ${message}.`),
      ...(years === null && rows.length < record.rows.length
        ? [
            `The record begins on ${record.rows[0]?.day}; its last thirty years are taken, ${figures.from} to ${figures.to}. --years takes others.`,
          ]
        : []),
      ...(isGhcn && !ghcnTerms(station.station ?? '').startsWith('US Government')
        ? ['The terms of this station are those of who read it: look them up and give them with --terms.']
        : []),
      ...figures.notes.map(({ text }) => text),
    ],
  };
}
