/** A place in full: freezes, season, heat, chill, winter low, month by month, and where each figure comes from. */

import { DAYS_PER_YEAR, monthLengths } from '../../../core/climate/calendar.ts';
import {
  type DateQuantiles,
  type FreezeThresholdF,
  freezeThresholdsF,
} from '../../../core/climate/figures.ts';
import { HOT_DAY_C } from '../../../core/climate/heat.ts';
import type { ClimateSummary } from '../../../core/climate/summary.ts';
import { parseZone, zoneLowerBoundC } from '../../../core/climate/winterZone.ts';
import { monthInWords } from '../../../core/days.ts';
import type { Place } from '../../../core/records/place.ts';
import {
  celsiusToFahrenheit,
  cmToInches,
  fahrenheitToCelsius,
  roundTo,
  temperatureInWords,
} from '../../../core/units.ts';
import { ribbonMonths } from '../../drawing/ribbon.ts';
import { howKnown, knownInWords } from '../../words/climateWords.ts';
import { rainInWords } from '../../words/measures.ts';
import { countInWords, sentence } from '../../words/words.ts';
import { shortMonthDay } from '../../words/yearDays.ts';

const countries = new Intl.DisplayNames(['en'], { type: 'region', fallback: 'code' });

/** Name of a country by its ISO 3166 code. */
export function countryName(code: string): string {
  return countries.of(code) ?? code;
}

/** `North Carolina, United States`; a region called like the place or its country is not said twice. */
export function whereabouts({ name, region, country }: Pick<Place, 'name' | 'region' | 'country'>): string {
  const land = countryName(country);
  return [region, land].filter((word, index) => word !== name && (index === 1 || word !== land)).join(', ');
}

/** The same after the name: `Asheville, North Carolina, United States`; the name alone where that says it all. */
export function nameAndWhereabouts(place: Pick<Place, 'name' | 'region' | 'country'>): string {
  return [place.name, whereabouts(place)].filter(words => words !== '').join(', ');
}

/** One line of the freeze table; a null date means no such freeze in so many years. */
export interface FreezeLine {
  threshold: string;
  /** Early, middle and late date. */
  last: (string | null)[];
  first: (string | null)[];
  none: string;
  known: string;
  /** Said in place of the dates where there are none. */
  without: string | null;
}

const dates = ({ p10, p50, p90 }: DateQuantiles) =>
  [p10, p50, p90].map(date => (date === null ? null : shortMonthDay(date)));

/** A share of years as a percentage that never rounds a rare thing to nothing. */
export function shareInWords(share: number): string {
  const percent = roundTo(share * 100, 1);
  if (share > 0 && percent === 0) return 'under 1 %';
  if (share < 1 && percent === 100) return 'over 99 %';
  return `${percent} %`;
}

function freezeLine({ freeze }: ClimateSummary, thresholdF: FreezeThresholdF): FreezeLine {
  const found = freeze[`${thresholdF}F`];
  const { first, last, none } = found.answer;
  const hasDates = [...dates(last), ...dates(first)].some(date => date !== null);
  return {
    threshold: `${thresholdF} F (${roundTo(fahrenheitToCelsius(thresholdF), 0.5)} C)`,
    last: dates(last),
    first: dates(first),
    none: shareInWords(none),
    known: howKnown(found).standing,
    without: hasDates ? null : 'none in nine years in ten',
  };
}

/** Freezes from 36 to 20 F. */
export function freezeLines(climate: ClimateSummary): FreezeLine[] {
  return freezeThresholdsF.map(threshold => freezeLine(climate, threshold));
}

/** A figure with its value in words and how it is known. */
export interface PlaceFigure {
  label: string;
  value: string;
  known: string;
}

const whole = (value: number) => roundTo(value, 1).toLocaleString('en-US');

function seasonInWords({ p10, p50, p90 }: { p10: number; p50: number; p90: number }): string {
  if (p50 < 1)
    return p90 < 1 ? 'None: it can freeze in any month' : `None in most years; ${p90} days in a long one`;
  if (p10 >= DAYS_PER_YEAR) return 'The whole year';
  if (p50 >= DAYS_PER_YEAR) return `The whole year in most years, ${p10} days in a short one`;
  const long = p90 >= DAYS_PER_YEAR ? 'the whole year' : `${p90} days`;
  return `${p50} days; ${p10} days in a short year and ${long} in a long one`;
}

function spreadInWords({ p10, p50, p90 }: { p10: number; p50: number; p90: number }, unit: string): string {
  return `${whole(p50)} ${unit}; ${whole(p10)} in a poor winter and ${whole(p90)} in a good one`;
}

function zoneInWords(zone: string): string {
  const index = parseZone(zone);
  if (index === null) return zone;
  const [from, to] = [index, index + 1].map(half => temperatureInWords(zoneLowerBoundC(half)));
  return `${zone}: the mean of the coldest nights lies between ${from} and ${to}`;
}

function airInWords({ rainMm, deficitKpa, deficitShare }: ClimateSummary['ripeningAir']['answer']): string {
  const drying = `the air lacks ${roundTo(deficitKpa, 0.1)} kPa or ${roundTo(deficitShare * 100, 1)} % of the moisture it could hold`;
  return rainMm === null ? `Rain not known; ${drying}` : `${rainInWords(rainMm)} of rain a month; ${drying}`;
}

/** A chill total so small that its spread is noise. */
const HARDLY_ANY_PORTIONS = 1;

/** What is said about the season, winter, heat and air of a place. */
export function placeFigures(climate: ClimateSummary, lat: number): PlaceFigure[] {
  const { seasonDays, annualMinC, winterZone, hotDays, heat, chill, ripeningAir } = climate;
  const { base8cap36, base50F } = heat;
  const { portions, hours, utah } = chill.answer;
  const figures: [string, string, Parameters<typeof knownInWords>[0]][] = [
    ['Season between freezes', seasonInWords(seasonDays.answer), seasonDays],
    [
      'Coldest night',
      `${temperatureInWords(annualMinC.answer.mean)} in a usual winter, ${temperatureInWords(annualMinC.answer.p10)} or colder in one in ten`,
      annualMinC,
    ],
    ['Winter zone', zoneInWords(winterZone.answer.zone), { ...winterZone, source: winterZone.answer.basis }],
    [
      'Hot days',
      `${countInWords(roundTo(hotDays.answer.days, 1), 'day')} a year above ${temperatureInWords(HOT_DAY_C)}: heat zone ${hotDays.answer.zone} of 12`,
      hotDays,
    ],
    [
      'Heat from 46 to 97 F',
      `${whole(base8cap36.answer.mean)} degree-days C above 8 C, counted up to 36 C; two years of three within ${whole(base8cap36.answer.sd)} of it`,
      base8cap36,
    ],
    [
      'Heat above 50 F',
      `${whole(base50F.answer.mean)} degree-days F; two years of three within ${whole(base50F.answer.sd)} of it`,
      base50F,
    ],
    [
      'Winter chill',
      portions.p90 < HARDLY_ANY_PORTIONS ? 'Hardly any' : spreadInWords(portions, 'chill portions'),
      chill,
    ],
  ];
  if (portions.p90 >= HARDLY_ANY_PORTIONS) {
    figures.push(
      ['The same in hours', `${spreadInWords(hours, 'hours')}, from 32 to 45 F (0 to 7.2 C)`, chill],
      ['In Utah units', spreadInWords(utah, 'units'), chill],
    );
  }
  figures.push([
    lat < 0 ? 'Air, February to April' : 'Air, August to October',
    airInWords(ripeningAir.answer),
    ripeningAir,
  ]);
  return figures.map(([label, value, answer]) => ({ label, value, known: knownInWords(answer) }));
}

/** A temperature for two lines of a cell. */
interface BothScales {
  fahrenheit: string;
  celsius: string;
}

function bothScales(tC: number): BothScales {
  return { fahrenheit: `${roundTo(celsiusToFahrenheit(tC), 1)} F`, celsius: `${roundTo(tC, 0.5)} C` };
}

export interface MonthLine {
  name: string;
  high: BothScales;
  low: BothScales;
  /** One high in ten is hotter, one low in ten colder, in mid-month. */
  hot: BothScales;
  cold: BothScales;
  /** Null when the rain of the place is not known. */
  rain: string | null;
  /** Share of years in which the night of the 15th freezes. */
  freeze: string;
  deficit: string;
}

/** Index in a daily table of the 15th of each month. */
const midMonth = monthLengths.map(
  (_, month) => monthLengths.slice(0, month).reduce((sum, length) => sum + length, 0) + 14,
);

/** The table behind the ribbon, months in its order. */
export function monthLines(
  place: Pick<Place, 'lat' | 'tmaxC' | 'tminC' | 'rainMm'>,
  climate: ClimateSummary,
): MonthLine[] {
  const { ribbon, deficitKpa } = climate;
  return ribbonMonths(place.lat).map(month => {
    const middle = midMonth[month] as number;
    return {
      name: monthInWords(month + 1),
      high: bothScales(place.tmaxC[month] as number),
      low: bothScales(place.tminC[month] as number),
      hot: bothScales(ribbon.hotHighC[middle] as number),
      cold: bothScales(ribbon.coldLowC[middle] as number),
      rain: place.rainMm === null ? null : rainInWords(place.rainMm[month] as number),
      freeze: shareInWords(ribbon.freezeChance[middle] as number),
      deficit: (deficitKpa.answer[month] as number).toFixed(2),
    };
  });
}

/** `35.49 N, 82.61 W, 2,150 ft (656 m) above the sea`. */
function positionInWords({ lat, lon, elevationM }: Pick<Place, 'lat' | 'lon' | 'elevationM'>): string {
  const degrees = (value: number, signs: string) =>
    `${Math.abs(value).toFixed(2)} ${value < 0 ? signs[1] : signs[0]}`;
  const feet = roundTo(cmToInches(elevationM * 100) / 12, 10).toLocaleString('en-US');
  return `${degrees(lat, 'NS')}, ${degrees(lon, 'EW')}, ${feet} ft (${whole(elevationM)} m) above the sea`;
}

/** Where the figures of a place come from, in the order they are used. */
export function placeSources(place: Place): { label: string; value: string }[] {
  const { sd, dewC, freeze, annualMin, winterZone } = place;
  const given = (label: string, value: string | undefined) => (value === undefined ? [] : [{ label, value }]);
  return [
    { label: 'Position', value: positionInWords(place) },
    { label: 'Years', value: place.period },
    { label: 'Monthly figures', value: place.source },
    {
      label: 'Spread of single days',
      value: sd?.source ?? 'Not published for this place: estimated from its monthly means and latitude',
    },
    ...(dewC === null
      ? [{ label: 'Dew point', value: 'Not known: the low of the day stands in for it' }]
      : []),
    ...given('Freeze dates', freeze?.source),
    ...given('Coldest nights', annualMin?.source),
    ...given('Winter zone', winterZone?.basis),
    { label: 'Terms', value: place.terms },
  ].map(({ label, value }) => ({ label, value: sentence(value) }));
}
