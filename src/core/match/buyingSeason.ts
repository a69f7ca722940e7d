/** Where a place stands in its year, as it matters to somebody who plants a bought tree. */
import { daysForward } from '../climate/calendar.ts';
import { type Day, dayOfYear, doyFromMonthDay } from '../days.ts';
import { growingCalendar } from '../phenology/growingYear.ts';
import type { PlaceOutlook } from './placeOutlook.ts';

/**
 * `growing`; `late`: too near the first freeze to root in; `winter`; `planting`: the weeks in which dormant trees go in;
 * `spring`: freezes still likely.
 */
type BuyingStage = 'growing' | 'late' | 'winter' | 'planting' | 'spring';

/** A leafed tree wants this long in the ground before the first freeze. Standing: ours. */
const ROOTING_IN_DAYS = 60;
/** Dormant trees are planted from eight weeks before the last 28 F night of a middle year. Standing: ours. */
const PLANTING_DAYS = 56;
/** Where it hardly freezes, dormant trees are planted from November to February, May to August south. Standing: ours. */
const MILD_PLANTING_BEFORE_MIDWINTER = 61;
const MILD_PLANTING_DAYS = 120;

export interface BuyingSeason {
  readonly stage: BuyingStage;
  /** Days until dormant trees can be planted; 0 while they can. */
  readonly daysToPlanting: number;
  /** First 32 F freeze of a middle year; null where there is none. */
  readonly firstFreezeDoy: number | null;
  /** Last 32 F freeze of a late year: leafed trees are safe outdoors after it. */
  readonly safeFromDoy: number | null;
}

const doy = (date: string | null) => (date === null ? null : doyFromMonthDay(date));

function mildSeason(lat: number, today: number): BuyingSeason {
  const from = growingCalendar(lat).firstDoy - MILD_PLANTING_BEFORE_MIDWINTER;
  const planting = daysForward(from, today) < MILD_PLANTING_DAYS;
  return {
    stage: planting ? 'planting' : 'growing',
    daysToPlanting: planting ? 0 : daysForward(today, from),
    firstFreezeDoy: null,
    safeFromDoy: null,
  };
}

/** Stage of the year at a place on a day. */
export function buyingSeason({ lat, freeze }: Pick<PlaceOutlook, 'lat' | 'freeze'>, asOf: Day): BuyingSeason {
  const today = dayOfYear(asOf);
  const first = doy(freeze['32F'].answer.first.p50);
  const safe = doy(freeze['32F'].answer.last.p90);
  const last = doy(freeze['32F'].answer.last.p50);
  if (first === null || safe === null || last === null) return mildSeason(lat, today);
  const lastHard = doy(freeze['28F'].answer.last.p50) ?? last;
  const plantFrom = lastHard - PLANTING_DAYS;
  const within = (from: number, to: number) => daysForward(from, today) < daysForward(from, to);
  const stage = within(plantFrom, lastHard)
    ? 'planting'
    : within(lastHard, safe)
      ? 'spring'
      : within(first - ROOTING_IN_DAYS, first)
        ? 'late'
        : within(first, plantFrom)
          ? 'winter'
          : 'growing';
  return {
    stage,
    daysToPlanting: stage === 'planting' ? 0 : daysForward(today, plantFrom),
    firstFreezeDoy: first,
    safeFromDoy: safe,
  };
}
