/**
 * Monthly climate figures of a town as a short text: every value a whole number of steps, told as its difference from what is known before,
 * one sign each. Some 80 signs a town, of which packing in transit leaves about 50 bytes.
 */

import type { ClimateFigures } from '../climate/figures.ts';
import { nothingPublished } from '../climate/figures.ts';

/** What is told of the climate of a town. */
export interface TownFigures {
  /** Twelve months, January first: means of daily minima and maxima, C. */
  readonly tminC: readonly number[];
  readonly tmaxC: readonly number[];
  readonly rainMm: readonly number[] | null;
  readonly dewPointC: readonly number[] | null;
  /** Standard deviations of daily values about the mean of the month, C. */
  readonly sdTminC: readonly number[] | null;
  readonly sdTmaxC: readonly number[] | null;
  /** Mean absolute errors of a monthly mean, C. */
  readonly errors: { readonly tminC: number; readonly tmaxC: number };
}

/** Steps of the figures: small against their errors. Of rain, the square root of mm, so that dry months keep their say. */
const TEMPERATURE_STEP = 0.2;
const SPREAD_STEP = 0.1;
const DEW_STEP = 0.4;
const RAIN_STEP = 0.4;
const ERROR_STEP = 0.1;

/** Signs of one step each, from the lowest: printable ASCII without the quote, the backslash and the sign of far steps. */
const SIGNS = Array.from({ length: 126 - 35 }, (_, i) => String.fromCharCode(35 + i))
  .filter(sign => sign !== '\\')
  .join('');
const ZERO = 45;
/** Before a step further than one sign reaches, which takes two. */
const FAR = '~';
const FAR_ZERO = 4050;
const MISSING = '!';

class Writer {
  text = '';
  step(value: number): void {
    const sign = SIGNS[value + ZERO];
    if (sign !== undefined) {
      this.text += sign;
      return;
    }
    const far = value + FAR_ZERO;
    this.text += FAR + SIGNS[Math.floor(far / SIGNS.length)] + SIGNS[far % SIGNS.length];
  }

  /** Twelve values, each told from the one before. */
  months(steps: readonly number[] | null): void {
    if (steps === null) {
      this.text += MISSING;
      return;
    }
    steps.forEach((value, month) => {
      this.step(value - (month === 0 ? 0 : (steps[month - 1] as number)));
    });
  }
}

class Reader {
  at = 0;
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }

  private sign(): number {
    const value = SIGNS.indexOf(this.text[this.at] ?? '');
    if (value < 0) throw new RangeError('figures of a town that cannot be read');
    this.at += 1;
    return value;
  }

  step(): number {
    if (this.text[this.at] !== FAR) return this.sign() - ZERO;
    this.at += 1;
    return this.sign() * SIGNS.length + this.sign() - FAR_ZERO;
  }

  months(): number[] | null {
    if (this.text[this.at] === MISSING) {
      this.at += 1;
      return null;
    }
    let value = 0;
    return Array.from({ length: 12 }, () => {
      value += this.step();
      return value;
    });
  }
}

const inSteps = (values: readonly number[] | null, step: number) =>
  values?.map(value => Math.round(value / step)) ?? null;
const less = (values: readonly number[], other: readonly number[]) =>
  values.map((value, month) => value - (other[month] as number));

/** The text of the figures. */
export function packedFigures(figures: TownFigures): string {
  const { tminC, tmaxC, rainMm, dewPointC, sdTminC, sdTmaxC, errors } = figures;
  const writer = new Writer();
  writer.months(inSteps(tminC, TEMPERATURE_STEP));
  writer.months(inSteps(less(tmaxC, tminC), TEMPERATURE_STEP));
  writer.months(dewPointC && inSteps(less(tminC, dewPointC), DEW_STEP));
  writer.months(inSteps(rainMm?.map(Math.sqrt) ?? null, RAIN_STEP));
  writer.months(inSteps(sdTminC, SPREAD_STEP));
  writer.months(sdTminC && sdTmaxC && inSteps(less(sdTmaxC, sdTminC), SPREAD_STEP));
  writer.step(Math.round(errors.tminC / ERROR_STEP));
  writer.step(Math.round(errors.tmaxC / ERROR_STEP));
  return writer.text;
}

/** The figures a text was packed of, to the nearest step. Throws a RangeError for any other text. */
export function unpackedFigures(text: string): TownFigures {
  const reader = new Reader(text);
  const scaled = (values: readonly number[] | null, step: number) =>
    values?.map(value => Math.round(value * step * 10) / 10) ?? null;
  const months = (step: number) => scaled(reader.months(), step);
  const required = (values: number[] | null) => {
    if (values === null) throw new RangeError('figures of a town without temperatures');
    return values;
  };
  const plus = (values: readonly number[], other: readonly number[]) =>
    values.map((value, month) => Math.round((value + (other[month] as number)) * 10) / 10);
  const tminC = required(months(TEMPERATURE_STEP));
  const range = required(months(TEMPERATURE_STEP));
  const dewBelow = months(DEW_STEP);
  const rainRoots = months(RAIN_STEP);
  const sdTminC = months(SPREAD_STEP);
  const sdMore = months(SPREAD_STEP);
  const errors = { tminC: reader.step() * ERROR_STEP, tmaxC: reader.step() * ERROR_STEP };
  if (reader.at !== text.length) throw new RangeError('figures of a town with something behind them');
  return {
    tminC,
    tmaxC: plus(tminC, range),
    rainMm: rainRoots?.map(root => Math.round(root ** 2)) ?? null,
    dewPointC: dewBelow && less(tminC, dewBelow).map(value => Math.round(value * 10) / 10),
    sdTminC,
    sdTmaxC: sdTminC && sdMore && plus(sdTminC, sdMore),
    errors,
  };
}

/** What the model draws weather years of, at a latitude. */
export function figuresOfTown(lat: number, monthly: Omit<TownFigures, 'errors'>): ClimateFigures {
  return { lat, ...monthly, sdAbout: 'month', lag1: null, published: nothingPublished };
}
