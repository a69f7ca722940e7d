/**
 * Geometry of the year ribbon: usual highs and lows, their spread, and the chance of a freeze along the base. Pure: a summary in,
 * paths, ticks and words out. The growing season lies in the middle: the year starts in January, south of the equator in July.
 */

import { DAYS_PER_YEAR, monthLengths } from '../../core/climate/calendar.ts';
import type { YearRibbon } from '../../core/climate/ribbon.ts';
import { monthDay, monthInWords } from '../../core/days.ts';
import { celsiusToFahrenheit, roundTo, temperatureInWords } from '../../core/units.ts';
import { monthDayInWords, shortMonth } from '../words/yearDays.ts';

/** The drawing is 365 wide, a unit a day, and 100 high; it is stretched to the room there is. */
export const RIBBON_WIDTH = DAYS_PER_YEAR;
export const RIBBON_HEIGHT = 100;
/** Temperatures fill the upper part, the chance of a freeze a strip at the base. */
const TEMPERATURES_TO = 84;
const STRIP_FROM = 87;

/**
 * Ends of the scale, C, the same for every place, so that two ribbons can be compared; a place beyond them widens its own.
 * All but a few of the world's orchards fit between them.
 */
const SCALE_FROM_C = -35;
const SCALE_TO_C = 45;
const LINE_EVERY_C = 10;
const WIDEN_BY_C = 5;

/** Days between the points of a curve: a straight line over five days is good to the width of the pen. */
const STEP_DAYS = 5;
/** Width of the mark of five days; the rest is the gap. */
const MARK_WIDTH = 3.8;
/** Chances below this draw no mark. */
const LEAST_CHANCE = 0.005;

const JULY = 6;

interface RibbonLine {
  /** Share of the height, 0 to 100, from the top. */
  y: number;
  fahrenheit: string;
  celsius: string;
  freezing: boolean;
}

interface RibbonMonth {
  /** Share of the width, 0 to 100: first day and middle. */
  from: number;
  middle: number;
  name: string;
}

export interface RibbonDrawing {
  /** Area from the cold lows to the hot highs. */
  spread: string;
  /** Area from the usual lows to the usual highs. */
  usual: string;
  low: string;
  high: string;
  /** One mark for five nights, as high as the chance of a freeze. */
  freezes: string;
  lines: RibbonLine[];
  months: RibbonMonth[];
  /** Where the strip of the marks begins and ends, shares of the height. */
  strip: { from: number; to: number };
  /** The picture in words. */
  description: string;
}

/** Day of the year, from 0, at which the ribbon of a latitude starts. */
function startOf(lat: number): number {
  return lat < 0 ? monthLengths.slice(0, JULY).reduce((sum, length) => sum + length, 0) : 0;
}

/** Months in the order of the ribbon, 0 to 11. */
export function ribbonMonths(lat: number): number[] {
  const first = lat < 0 ? JULY : 0;
  return monthLengths.map((_, index) => (first + index) % monthLengths.length);
}

const tenth = (value: number) => String(roundTo(value, 0.1));

/** Points of a daily table along the ribbon, `[x, value]`, both ends of the year included. */
function points(table: Float64Array, start: number): [number, number][] {
  return Array.from({ length: DAYS_PER_YEAR / STEP_DAYS + 1 }, (_, index) => {
    const x = index * STEP_DAYS;
    return [x, table[(start + x) % DAYS_PER_YEAR] as number];
  });
}

function scaleOf({ coldLowC, hotHighC }: YearRibbon): { from: number; to: number } {
  const coldest = Math.min(SCALE_FROM_C, ...coldLowC);
  const hottest = Math.max(SCALE_TO_C, ...hotHighC);
  return {
    from: Math.floor(coldest / WIDEN_BY_C) * WIDEN_BY_C,
    to: Math.ceil(hottest / WIDEN_BY_C) * WIDEN_BY_C,
  };
}

function freezeMarks(chance: Float64Array, start: number): string {
  const marks: string[] = [];
  for (let x = 0; x < DAYS_PER_YEAR; x += STEP_DAYS) {
    let sum = 0;
    for (let ahead = 0; ahead < STEP_DAYS; ahead += 1) {
      sum += chance[(start + x + ahead) % DAYS_PER_YEAR] as number;
    }
    const mean = sum / STEP_DAYS;
    if (mean < LEAST_CHANCE) continue;
    const height = tenth(mean * (RIBBON_HEIGHT - STRIP_FROM));
    marks.push(
      `M${tenth(x + (STEP_DAYS - MARK_WIDTH) / 2)} ${RIBBON_HEIGHT}v-${height}h${MARK_WIDTH}v${height}z`,
    );
  }
  return marks.join('');
}

/** The month, 0 to 11, whose days have the lowest and the highest mean of a table. */
function extremes(table: Float64Array) {
  let [lowest, highest] = [0, 0];
  for (let day = 1; day < table.length; day += 1) {
    if ((table[day] as number) < (table[lowest] as number)) lowest = day;
    if ((table[day] as number) > (table[highest] as number)) highest = day;
  }
  const at = (day: number) => ({
    temperature: temperatureInWords(table[day] as number),
    month: monthInWords(Number(monthDay(day + 1).slice(0, 2))),
  });
  return { low: at(lowest), high: at(highest) };
}

function freezeWords(chance: Float64Array, start: number): string {
  const likely = Array.from({ length: DAYS_PER_YEAR }, (_, into) => (start + into) % DAYS_PER_YEAR).filter(
    day => (chance[day] as number) >= 0.5,
  );
  const highest = Math.max(...chance);
  if (highest < LEAST_CHANCE) return 'No night freezes in as many as one year of two hundred.';
  if (likely.length === 0) {
    return `On the likeliest night it freezes in ${roundTo(highest * 100, 1)} years in 100.`;
  }
  // The winter may lie across the end of the year: it starts where the night before is not likely to freeze.
  const first = likely.find(day => (chance[(day + DAYS_PER_YEAR - 1) % DAYS_PER_YEAR] as number) < 0.5);
  const last = likely.findLast(day => (chance[(day + 1) % DAYS_PER_YEAR] as number) < 0.5);
  if (first === undefined || last === undefined) return 'Every night of the year is likely to freeze.';
  const between = [first, last].map(day => monthDayInWords(monthDay(day + 1)));
  return `More than half of the nights freeze between about ${between[0]} and ${between[1]}.`;
}

function describe({ lowC, highC, freezeChance }: YearRibbon, start: number): string {
  const [lows, highs] = [extremes(lowC), extremes(highC)];
  return [
    `Usual highs run from ${highs.low.temperature} in ${highs.low.month} to ${highs.high.temperature} in ${highs.high.month},`,
    `usual lows from ${lows.low.temperature} in ${lows.low.month} to ${lows.high.temperature} in ${lows.high.month}.`,
    freezeWords(freezeChance, start),
  ].join(' ');
}

/** The ribbon of a place at a latitude. */
export function ribbonDrawing(ribbon: YearRibbon, lat: number): RibbonDrawing {
  const start = startOf(lat);
  const scale = scaleOf(ribbon);
  const yOf = (tC: number) => ((scale.to - tC) / (scale.to - scale.from)) * TEMPERATURES_TO;
  const along = (table: Float64Array) => points(table, start).map(([x, tC]) => `${x} ${tenth(yOf(tC))}`);
  const line = (table: Float64Array) => `M${along(table).join('L')}`;
  const area = (upper: Float64Array, lower: Float64Array) =>
    `M${[...along(upper), ...along(lower).reverse()].join('L')}z`;
  const firstLine = Math.ceil(scale.from / LINE_EVERY_C) * LINE_EVERY_C;
  const lineCount = Math.floor((scale.to - firstLine) / LINE_EVERY_C) + 1;
  let from = 0;
  return {
    spread: area(ribbon.hotHighC, ribbon.coldLowC),
    usual: area(ribbon.highC, ribbon.lowC),
    low: line(ribbon.lowC),
    high: line(ribbon.highC),
    freezes: freezeMarks(ribbon.freezeChance, start),
    lines: Array.from({ length: lineCount }, (_, index) => {
      const tC = firstLine + index * LINE_EVERY_C;
      return {
        y: roundTo(yOf(tC), 0.1),
        fahrenheit: `${roundTo(celsiusToFahrenheit(tC), 1)} F`,
        celsius: `${tC} C`,
        freezing: tC === 0,
      };
    }),
    months: ribbonMonths(lat).map(month => {
      const length = monthLengths[month] as number;
      const share = (days: number) => roundTo((days / DAYS_PER_YEAR) * 100, 0.1);
      const placed = { from: share(from), middle: share(from + length / 2), name: shortMonth(month + 1) };
      from += length;
      return placed;
    }),
    strip: { from: STRIP_FROM, to: RIBBON_HEIGHT },
    description: describe(ribbon, start),
  };
}
