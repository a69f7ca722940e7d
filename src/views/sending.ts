/** When parcels can go to a place, in words. */

import type { Catalogue } from '../core/catalogue.ts';
import { type DayRange, daysBetween, rangeInWords } from '../core/days.ts';
import type { TravelAnswer } from '../core/match/answers.ts';
import { sendingWeeks } from '../core/match/sending.ts';
import { canTravelNow, type Destination } from '../core/match/travel.ts';
import type { Outlooks, PlaceAnswers } from '../outlooks.ts';
import { comingDay } from './state.ts';
import { type Told, told } from './verdict.ts';

export interface TravelView {
  state: TravelAnswer['answer']['state'];
  /** `Yes, parcels leave on 30 November`. */
  words: string;
  because: Told[];
}

function travelWords({ state, from }: TravelAnswer['answer'], { asOf }: Pick<Catalogue, 'asOf'>): string {
  if (state === 'no-route') return 'We do not send there';
  if (from === null || state === 'never') return 'In no week of the coming year is the way safe enough';
  return state === 'now'
    ? `Yes: the next parcels leave on ${comingDay(from, asOf)}`
    : `Not now: from ${comingDay(from, asOf)}`;
}

function ends(all: Catalogue, outlooks: Outlooks, { place, risks }: PlaceAnswers) {
  const home = outlooks.get(all.home.id);
  if (home === undefined) throw new RangeError(`no outlook of the home place ${all.home.id}`);
  const { name, region, country } = place;
  const destination: Destination = { name, region, country, risks };
  return { home: { name: all.home.name, country: all.home.country, risks: home.risks }, destination };
}

/** Whether a parcel can travel to a place now, and why or why not. */
export function travelView(all: Catalogue, outlooks: Outlooks, to: PlaceAnswers): TravelView {
  const { home, destination } = ends(all, outlooks, to);
  const { answer, because } = canTravelNow(home, destination, all.yard.sending, all.asOf);
  return { state: answer.state, words: travelWords(answer, all), because: because.map(told) };
}

export interface SendingView extends TravelView {
  /** Open runs of weeks with how many they are; empty where we do not send. */
  ranges: { words: string; weeks: number }[];
  /** Whether every week of the year is open. */
  always: boolean;
}

const weeksIn = ({ from, to }: DayRange) => (daysBetween(from, to) + 1) / 7;

/** The weeks of the coming year in which parcels go to a place. */
export function sendingView(all: Catalogue, outlooks: Outlooks, to: PlaceAnswers): SendingView {
  const travel = travelView(all, outlooks, to);
  const { home } = ends(all, outlooks, to);
  const { weeks, ranges } = sendingWeeks(home.risks, to.risks, all.yard.sending, all.asOf);
  if (travel.state === 'no-route') return { ...travel, ranges: [], always: false };
  return {
    ...travel,
    ranges: ranges.map(range => ({ words: rangeInWords(range), weeks: weeksIn(range) })),
    always: weeks.every(({ open }) => open),
  };
}
