/** What is wrong with a place record although every single value is allowed. Used by the check and by `npm run place`. */

import { doyFromMonthDay } from '../days.ts';
import { freezeThresholds, type Place, type WrittenPlace } from '../records/place.ts';
import { celsiusToFahrenheit, fahrenheitToCelsius, roundTo } from '../units.ts';
import { daysForward, seasonStartDoy } from './calendar.ts';
import { positionFault } from './countryBoxes.ts';

export interface PlaceFault {
  level: 'error' | 'warning';
  /** Permanent rule id. */
  rule:
    | 'place-months'
    | 'place-units'
    | 'place-unit'
    | 'place-crossed'
    | 'place-position'
    | 'place-freeze-order';
  /** Keys that lead to the value, such as `tmin_c.3`. */
  path: string;
  got: string;
  expected: string;
  message: string;
  remedy: string;
}

const monthNames =
  'January February March April May June July August September October November December'.split(' ');

const pairs = [
  ['tmax_c', 'tmax_f'],
  ['tmin_c', 'tmin_f'],
  ['rain_mm', 'rain_in'],
] as const;

function unitFaults(written: WrittenPlace): PlaceFault[] {
  return pairs
    .filter(([metric, other]) => written[metric] !== undefined && written[other] !== undefined)
    .map(([metric, other]) => ({
      level: 'error',
      rule: 'place-units',
      path: other,
      got: `${metric} and ${other}`,
      expected: `${metric} or ${other}`,
      message: `${metric} and ${other} are both given.`,
      remedy: `Keep one of the two.`,
    }));
}

function monthFaults(written: WrittenPlace): PlaceFault[] {
  const tmax = written.tmax_c ?? written.tmax_f;
  const tmin = written.tmin_c ?? written.tmin_f;
  if (written.daily === undefined && tmax && tmin) return [];
  if (written.daily !== undefined && !tmax && !tmin) return [];
  const fault = {
    level: 'error',
    rule: 'place-months',
    expected: 'tmax_ and tmin_ of twelve months, or daily',
  } as const;
  if (written.daily !== undefined) {
    return [
      {
        ...fault,
        path: 'daily',
        got: 'both',
        message: 'A daily record and monthly temperatures are both given.',
        remedy: 'Keep one of them: the monthly means can be taken from the daily record.',
      },
    ];
  }
  const missing = tmax ? 'tmin_c' : 'tmax_c';
  return [
    {
      ...fault,
      path: '',
      got: tmax || tmin ? `no ${missing}` : 'neither',
      message: 'The monthly temperatures are missing.',
      remedy:
        'Give tmax_c and tmin_c (or tmax_f and tmin_f), twelve numbers each, or the name of a daily record.',
    },
  ];
}

function crossedFaults(written: WrittenPlace, { tmaxC, tminC }: Place): PlaceFault[] {
  const key = written.tmin_f ? 'tmin_f' : 'tmin_c';
  return tminC.flatMap((low, month) => {
    const high = tmaxC[month];
    if (high === undefined || low <= high) return [];
    return [
      {
        level: 'error',
        rule: 'place-crossed',
        path: `${key}.${month}`,
        got: `minimum ${roundTo(low, 0.1)} C above maximum ${roundTo(high, 0.1)} C`,
        expected: 'a minimum below the maximum',
        message: `In ${monthNames[month]} the mean minimum is above the mean maximum.`,
        remedy: 'Look the two numbers up again; rows may have been swapped.',
      } satisfies PlaceFault,
    ];
  });
}

/** No place on earth has a month whose mean daily maximum is hotter. Our working figure; Death Valley's July is 47 C (NOAA). */
const HOTTEST_MONTH_C = 50;
/**
 * Upper edge of the yearly mean of the daily maximum: 42 C up to latitude 25, falling 0.55 C per degree beyond it. Our working
 * figure: the hottest of 363 stations looked at (Death Valley) stays 2 C below it, and every one of them passes it when its
 * Fahrenheit numbers are taken for Celsius.
 */
const HOTTEST_YEAR_C = 42;
const HOTTEST_YEAR_LAT = 25;
const HOTTEST_YEAR_FALL_C = 0.55;
/** Warmest month of a place where fruit trees are thought of: below this the numbers are likely Celsius. Our working figure. */
const COOLEST_SUMMER_C = 10;
const COOLEST_SUMMER_LAT = 60;
const COOLEST_SUMMER_HEIGHT_M = 2500;

/**
 * The unit twelve mean maxima are likely to be in when it is not the one they were given in; null when they may be right.
 * Takes the numbers as they stand in the record.
 */
function likelyUnit(
  tmax: readonly number[],
  unit: 'C' | 'F',
  { lat, elevationM }: { lat: number; elevationM: number },
): 'C' | 'F' | null {
  if (tmax.length === 0) return null;
  const warmest = Math.max(...tmax);
  if (unit === 'C') {
    const mean = tmax.reduce((sum, value) => sum + value, 0) / tmax.length;
    const edge = HOTTEST_YEAR_C - HOTTEST_YEAR_FALL_C * Math.max(0, Math.abs(lat) - HOTTEST_YEAR_LAT);
    return warmest > HOTTEST_MONTH_C || mean > edge ? 'F' : null;
  }
  const settled = Math.abs(lat) < COOLEST_SUMMER_LAT && elevationM < COOLEST_SUMMER_HEIGHT_M;
  return settled && fahrenheitToCelsius(warmest) < COOLEST_SUMMER_C ? 'C' : null;
}

function likelyUnitFaults(written: WrittenPlace): PlaceFault[] {
  const unit = written.tmax_c ? 'C' : 'F';
  const tmax = written.tmax_c ?? written.tmax_f ?? [];
  const other = likelyUnit(tmax, unit, { lat: written.lat, elevationM: written.elevation_m });
  if (other === null) return [];
  const warmest = Math.max(...tmax);
  const converted = other === 'F' ? celsiusToFahrenheit(warmest) : fahrenheitToCelsius(warmest);
  return [
    {
      level: 'error',
      rule: 'place-unit',
      path: unit === 'C' ? 'tmax_c' : 'tmax_f',
      got: `up to ${warmest} ${unit} (${roundTo(converted, 1)} ${other}) at latitude ${written.lat}`,
      expected: `a climate that exists; perhaps ${warmest} ${other}`,
      message: `Are these temperatures in ${other}? In ${unit} no such place is known.`,
      remedy: `If they are in ${other}, rename the keys to tmax_${other.toLowerCase()} and tmin_${other.toLowerCase()}.`,
    },
  ];
}

/** Latitude beyond which summer and winter can be told apart from monthly means. Our working figure. */
const SEASONS_FROM_LAT = 25;

function positionFaults(place: Place): PlaceFault[] {
  const { country, lat, lon, tmaxC } = place;
  const outside = positionFault(country, lat, lon);
  if (outside) {
    const { better } = outside;
    const wrong = better && better.lat === lat ? 'lon' : 'lat';
    return [
      {
        level: 'error',
        rule: 'place-position',
        path: wrong,
        got: `latitude ${lat}, longitude ${lon}`,
        expected: better ? `latitude ${better.lat}, longitude ${better.lon}` : `a position in ${country}`,
        message: `This position is not in ${country}.`,
        remedy: 'South and west are negative; latitude comes before longitude.',
      },
    ];
  }
  if (tmaxC.length !== 12 || Math.abs(lat) < SEASONS_FROM_LAT) return [];
  const sum = (months: number[]) => months.reduce((total, month) => total + (tmaxC[month] as number), 0);
  const warmInJuly = sum([5, 6, 7]) > sum([11, 0, 1]);
  if (warmInJuly === lat > 0) return [];
  return [
    {
      level: 'error',
      rule: 'place-position',
      path: 'lat',
      got: `latitude ${lat} with its summer in ${warmInJuly ? 'July' : 'January'}`,
      expected: `latitude ${-lat}, or months that start in January`,
      message: 'The warm months do not fit the latitude.',
      remedy: 'South is negative; the twelve numbers run from January to December in both hemispheres.',
    },
  ];
}

function freezeOrderFaults({ lat, freeze }: Place): PlaceFault[] {
  const start = seasonStartDoy(lat);
  return freezeThresholds.flatMap(threshold =>
    (['first', 'last'] as const).flatMap(which => {
      const dates = freeze?.at[threshold]?.[which];
      const given = [dates?.p10, dates?.p50, dates?.p90].filter(each => typeof each === 'string');
      const days = given.map(each => daysForward(start, doyFromMonthDay(each) ?? start));
      if (days.every((each, i) => i === 0 || each >= (days[i - 1] as number))) return [];
      return [
        {
          level: 'error',
          rule: 'place-freeze-order',
          path: `freeze.${threshold}.${which}`,
          got: given.join(', '),
          expected: 'p10 the early date, p90 the late one',
          message: `The ${which} ${threshold} freeze dates do not run from early to late.`,
          remedy:
            which === 'last'
              ? 'NOAA counts the last freeze by the chance of a later one: its 10 % date is p90 here, its 90 % date p10.'
              : 'Write the earliest date as p10.',
        } satisfies PlaceFault,
      ];
    }),
  );
}

/**
 * Everything that does not fit together in a place record. `place` is the same record normalised; a place that gives a daily
 * record may have its monthly means filled in from it first.
 */
export function placeFaults(written: WrittenPlace, place: Place): PlaceFault[] {
  const units = unitFaults(written);
  if (units.length > 0) return units;
  const likely = likelyUnitFaults(written);
  return [
    ...monthFaults(written),
    ...likely,
    ...crossedFaults(written, place),
    ...positionFaults(place),
    ...freezeOrderFaults(place),
  ];
}
