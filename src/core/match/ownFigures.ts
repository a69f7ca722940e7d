/**
 * A climate from what a visitor knows of it: the usual last and first freeze and the usual coldest night of a winter.
 *
 * The nearest reference place lends its yearly curve, its rain and the spread of its days. Its temperatures are then moved
 * up or down until they fit: about the visitor's last freeze by what the curve of daily minima differs between the place's
 * last freeze and the visitor's; about the first freeze likewise; in midwinter by the difference of the coldest nights; at
 * midsummer by the mean of the two freeze shifts; straight lines between those four. Minima and maxima move alike, so a
 * frost hollow with warm days comes out a little too cool. Standing: ours.
 */
import { DAYS_PER_YEAR, daysForward, monthLengths, seasonStartDoy } from '../climate/calendar.ts';
import { dailyCurve } from '../climate/dailyCurve.ts';
import { type ClimateFigures, nothingPublished } from '../climate/figures.ts';
import { doyFromMonthDay } from '../days.ts';
import type { HeatStarts } from '../phenology/heatStart.ts';
import { fahrenheitToCelsius, temperatureInWords } from '../units.ts';
import type { PlaceClimate } from './placeOutlook.ts';
import { doyInWords } from './words.ts';

export interface OwnDates {
  /** Usual last 32 F freeze of spring, `MM-DD`. */
  readonly last: string;
  /** Usual first 32 F freeze of fall, `MM-DD`. */
  readonly first: string;
  /** Usual coldest night of a winter, C. */
  readonly coldestC: number;
}

export interface NearestPlace {
  readonly name: string;
  readonly figures: ClimateFigures;
  readonly climate: Pick<PlaceClimate, 'freeze' | 'annualMinC' | 'chill'>;
  readonly heatStarts: HeatStarts;
}

type OwnField = keyof OwnDates | 'place';
/**
 * `date` is none; `order` last and first are swapped or belong to the other half of the world; `unit` the night is likely
 * in F; `number` is none or beyond any winter; `far` does not fit near that place; `no-freeze` the place has no freezes to move.
 */
type OwnFault = 'date' | 'order' | 'unit' | 'number' | 'far' | 'no-freeze';

export interface OwnProblem {
  readonly field: OwnField;
  readonly fault: OwnFault;
  /** What is wrong and what to do, for the visitor. */
  readonly text: string;
}

export type OwnFigures =
  | { readonly ok: true; readonly figures: ClimateFigures; readonly notes: string[] }
  | { readonly ok: false; readonly problems: OwnProblem[] };

/** Coldest nights outside this are no winter of a place with fruit trees. Standing: ours. */
const COLDEST_POSSIBLE_C = -60;
const WARMEST_POSSIBLE_C = 30;
/** A larger move than this means another climate, not another corner of this one. Standing: ours. */
const LARGEST_MOVE_C = 9;
/** The night looks like F when it is this far off as C and at most half as far as F. Standing: ours. */
const UNIT_DOUBT_C = 8;

function problem(field: OwnField, fault: OwnFault, text: string): OwnProblem {
  return { field, fault, text };
}

function dateProblems({ last, first }: OwnDates): OwnProblem[] {
  return (['last', 'first'] as const).flatMap(field => {
    const given = field === 'last' ? last : first;
    if (doyFromMonthDay(given) !== null) return [];
    return [problem(field, 'date', `"${given}" is no date. Give month and day, such as 04-20.`)];
  });
}

/** The last freeze must come between midwinter and midsummer of the place's half of the world, the first after it. */
function orderProblems({ last, first }: OwnDates, lat: number): OwnProblem[] {
  const [lastDoy, firstDoy] = [doyFromMonthDay(last), doyFromMonthDay(first)];
  if (lastDoy === null || firstDoy === null) return [];
  const start = seasonStartDoy(lat);
  // In the season year, from midsummer to midsummer, the first freeze of a winter comes before its last.
  if (daysForward(start, firstDoy) < daysForward(start, lastDoy)) return [];
  const half = lat < 0 ? 'south' : 'north';
  const other = lat < 0 ? 'north' : 'south';
  return [
    problem(
      'last',
      'order',
      `${half === 'north' ? 'North' : 'South'} of the equator the last freeze of spring cannot be ${doyInWords(lastDoy)} when the first of fall is ${doyInWords(firstDoy)}. Swap the two dates, or, if you live ${other} of the equator, choose a reference place there.`,
    ),
  ];
}

function coldestProblems(
  { coldestC }: OwnDates,
  nearest: Pick<NearestPlace, 'name' | 'figures' | 'climate'>,
): OwnProblem[] {
  if (!Number.isFinite(coldestC))
    return [problem('coldestC', 'number', 'Give the coldest night as a number.')];
  if (coldestC < COLDEST_POSSIBLE_C || coldestC > WARMEST_POSSIBLE_C) {
    const text = `${temperatureInWords(coldestC)} is no coldest night of a winter. Check the unit.`;
    return [problem('coldestC', coldestC > WARMEST_POSSIBLE_C ? 'unit' : 'number', text)];
  }
  const usualC = nearest.climate.annualMinC.answer.mean;
  const off = Math.abs(coldestC - usualC);
  const offAsF = Math.abs(fahrenheitToCelsius(coldestC) - usualC);
  if (off > UNIT_DOUBT_C && offAsF <= off / 2) {
    const text = `Check the unit of the coldest night. As it is given it is ${temperatureInWords(coldestC)}, and at ${nearest.name} it is about ${temperatureInWords(usualC)}.`;
    return [problem('coldestC', 'unit', text)];
  }
  if (off > LARGEST_MOVE_C) {
    const text = `${temperatureInWords(coldestC)} does not fit ${nearest.name}, where the coldest night is about ${temperatureInWords(usualC)}. Choose a reference place with winters like yours.`;
    return [problem('coldestC', 'far', text)];
  }
  return [];
}

interface Anchor {
  readonly doy: number;
  readonly moveC: number;
}

/** Straight lines between anchors round the year, by `doy - 1`. Anchors in any order, on different days. */
function movesByDay(anchors: readonly Anchor[]): Float64Array {
  const sorted = [...anchors].sort((a, b) => a.doy - b.doy);
  return Float64Array.from({ length: DAYS_PER_YEAR }, (_, i) => {
    const doy = i + 1;
    const before = sorted.findLast(anchor => anchor.doy <= doy) ?? (sorted.at(-1) as Anchor);
    const after = sorted.find(anchor => anchor.doy > doy) ?? (sorted[0] as Anchor);
    const span = daysForward(before.doy, after.doy) || DAYS_PER_YEAR;
    const share = daysForward(before.doy, doy) / span;
    return before.moveC + (after.moveC - before.moveC) * share;
  });
}

function monthlyMeans(byDay: Float64Array): number[] {
  let from = 0;
  return monthLengths.map(length => {
    const month = byDay.subarray(from, from + length);
    from += length;
    return month.reduce((sum, move) => sum + move, 0) / length;
  });
}

/** Rounds of correction: averaging over months blunts a move, and each round takes back most of what is left. */
const FIT_ROUNDS = 5;

/** Monthly moves after which the curve through the months has moved at each anchor by what was asked. */
function fittedMoves(wanted: readonly Anchor[]): number[] {
  let anchors = wanted;
  let moves = monthlyMeans(movesByDay(anchors));
  for (let round = 0; round < FIT_ROUNDS; round += 1) {
    const moved = dailyCurve(moves);
    anchors = anchors.map(({ doy, moveC }, i) => ({
      doy,
      moveC: moveC + (wanted[i] as Anchor).moveC - (moved[doy - 1] as number),
    }));
    moves = monthlyMeans(movesByDay(anchors));
  }
  return moves;
}

function coldestDoy(curve: Float64Array): number {
  return curve.reduce((best, value, i) => (value < (curve[best] as number) ? i : best), 0) + 1;
}

/**
 * Figures for a visitor's own dates, or everything that is wrong with them. The figures go through the same model as any
 * place's; what was published about the reference place is left behind.
 */
export function figuresFromOwnDates(own: OwnDates, nearest: Omit<NearestPlace, 'heatStarts'>): OwnFigures {
  const { figures, climate } = nearest;
  const problems = [
    ...dateProblems(own),
    ...orderProblems(own, figures.lat),
    ...coldestProblems(own, nearest),
  ];
  const { first, last } = climate.freeze['32F'].answer;
  const usual = [last.p50, first.p50].map(date => (date === null ? null : doyFromMonthDay(date)));
  const [usualLast, usualFirst] = usual;
  if (typeof usualLast !== 'number' || typeof usualFirst !== 'number') {
    const text = `${nearest.name} hardly freezes, so freeze dates cannot be measured against it. Choose a reference place with freezes.`;
    problems.push(problem('place', 'no-freeze', text));
    return { ok: false, problems };
  }
  if (problems.length > 0) return { ok: false, problems };
  const curve = dailyCurve(figures.tminC);
  const at = (doy: number) => curve[doy - 1] as number;
  const [ownLast, ownFirst] = [doyFromMonthDay(own.last) as number, doyFromMonthDay(own.first) as number];
  const spring = at(usualLast) - at(ownLast);
  const fall = at(usualFirst) - at(ownFirst);
  for (const [field, move] of [
    ['last', spring],
    ['first', fall],
  ] as const) {
    if (Math.abs(move) > LARGEST_MOVE_C) {
      const text = `A ${field} freeze about ${doyInWords(field === 'last' ? ownLast : ownFirst)} does not fit ${nearest.name}, where it comes about ${doyInWords(field === 'last' ? usualLast : usualFirst)}. Choose a reference place more like yours.`;
      problems.push(problem(field, 'far', text));
    }
  }
  if (problems.length > 0) return { ok: false, problems };
  const moves = fittedMoves([
    { doy: ownLast, moveC: spring },
    { doy: ownFirst, moveC: fall },
    { doy: coldestDoy(curve), moveC: own.coldestC - climate.annualMinC.answer.mean },
    { doy: seasonStartDoy(figures.lat), moveC: (spring + fall) / 2 },
  ]);
  const moved = (monthly: readonly number[]) =>
    monthly.map((value, month) => value + (moves[month] as number));
  return {
    ok: true,
    figures: {
      ...figures,
      tminC: moved(figures.tminC),
      tmaxC: moved(figures.tmaxC),
      dewPointC: figures.dewPointC && moved(figures.dewPointC),
      published: nothingPublished,
    },
    notes: [
      `Your dates and your coldest night, combined with the climate of ${nearest.name}: its rain, and its ups and downs from day to day, are taken to be yours.`,
    ],
  };
}
