/** When trees of each form can be sent to a place, in words. */

import type { Catalogue } from '../../../core/catalogue.ts';
import { type Day, rangeInWords } from '../../../core/days.ts';
import type { FormTravel, SendingRun, SendingState } from '../../../core/match/answers.ts';
import type { Receiving } from '../../../core/match/receiving.ts';
import { sendingRuns, sendingWeeks } from '../../../core/match/sending.ts';
import { canTravelNow, type Route } from '../../../core/match/travel.ts';
import { type Form, forms } from '../../../core/records/formNames.ts';
import type { SendingRules } from '../../../core/records/sending.ts';
import type { Outlooks, PlaceAnswers } from '../../../outlooks.ts';
import { briefReady } from '../../words/briefState.ts';
import { reserveWords, type SeasonWords, seasonWords } from '../../words/sendingWords.ts';
import { comingDay } from '../../words/state.ts';
import { type Told, told } from '../../words/verdict.ts';
import { countInWords, formWords } from '../../words/words.ts';

/** How one form stands today: `state` also for a mark beside the words. */
export interface FormTravelView {
  form: Form;
  formName: string;
  state: SendingState;
  /** `By forecast: about every second week passes`. */
  words: string;
  /** After `Ready,` in a list: `sent by forecast`. */
  short: string;
  /** Of what is ready, in a cell of a list. */
  brief: string;
  /** What the button does that orders one: `Reserve: sent from April 5, 2027`. */
  buy: string;
  /** What follows from it, in one or two sentences; empty where nothing does. */
  more: string;
  because: Told[];
}

/** `no`: the yard does not send there, and why. */
export type TravelView =
  | { route: true; season: SeasonWords; forms: readonly FormTravelView[] }
  | { route: false; because: Told[] };

/** How often a trip passes, as weeks: a buyer thinks in weeks, not in shares of years. */
export function weeksInWords(share: number): string {
  if (share < 0.4) return 'about every third week';
  if (share < 0.6) return 'about every second week';
  return share < 0.75 ? 'about two weeks in three' : 'about four weeks in five';
}

/** Longer than this a wait is told as the time when it gets better, not in days. */
const TOLD_WAIT_DAYS = 42;

const daysInWords = (days: number) => countInWords(days, 'day');

function waitWords({ middle, late }: FormTravel['wait']): string {
  if (middle === null || middle > TOLD_WAIT_DAYS) return '';
  const usual = `The usual wait for a day that passes is ${daysInWords(middle)}`;
  return late === null || late > TOLD_WAIT_DAYS || late === middle
    ? `${usual}.`
    : `${usual}, and ${daysInWords(late)} in a bad year.`;
}

const receivingWords: Readonly<Record<Receiving, string>> = {
  plant: 'The ground is open: plant or pot it as it comes.',
  hold: 'Keep it at 33 to 40 F (1 to 4 C), roots moist, up to four weeks, or plant it in a mild spell.',
  'cold-store':
    'The ground is usually frozen: only for someone with cold storage at 33 to 40 F (1 to 4 C), such as a cold garage.',
  settle: 'Three days on the way at most; take it indoors the same day.',
  freezing: '',
};

const nextWords: Readonly<Record<SendingState, string>> = {
  open: 'from',
  'by-forecast': 'by forecast from',
  closed: '',
};

function closedWords({ week, from }: FormTravel, asOf: Day): string {
  const hand = week.closedBy === 'hand' ? 'Closed this week' : 'Not now';
  return from === null
    ? `${hand}, and no better week in the coming year`
    : `${hand}; ${nextWords[from.state]} ${comingDay(from.monday, asOf)}`;
}

/** How it is sent, in the words of a list. */
function shortWords({ state, from }: FormTravel, asOf: Day): string {
  if (state === 'open') return 'sent this week';
  if (state === 'by-forecast') return 'sent by forecast';
  if (from === null) return 'not sent in the coming year';
  return `sent ${nextWords[from.state]} ${comingDay(from.monday, asOf)}`;
}

function travelWords(travel: FormTravel, asOf: Day): Pick<FormTravelView, 'words' | 'more'> {
  const { state, leaving, week, wait, withoutStore } = travel;
  if (state === 'closed') return { words: closedWords(travel, asOf), more: week.byHand ?? '' };
  const store =
    week.receiving === 'cold-store' && withoutStore !== null
      ? `Without one, from ${comingDay(withoutStore, asOf)}.`
      : '';
  const lined = week.lining === 'lined' ? 'In a lined carton.' : '';
  const after = [week.byHand ?? '', lined, receivingWords[week.receiving], store];
  if (state === 'open') {
    return {
      words: `Open: the next parcels leave on ${comingDay(leaving, asOf)}`,
      more: after.filter(Boolean).join(' '),
    };
  }
  return {
    words: `By forecast: ${weeksInWords(week.share)} passes; we watch the forecast`,
    more: [waitWords(wait), ...after].filter(Boolean).join(' '),
  };
}

function routeTo(all: Catalogue, outlooks: Outlooks, { place, parcels }: PlaceAnswers): Route {
  const home = outlooks.get(all.home.id);
  if (home === undefined) throw new RangeError(`no outlook of the home place ${all.home.id}`);
  const { region, country } = place;
  return { home: { ...home.parcels, country: all.home.country }, there: { ...parcels, region, country } };
}

/** Whether and how a tree of each form can be sent to a place now, and why. */
export function travelView(all: Catalogue, outlooks: Outlooks, to: PlaceAnswers): TravelView {
  return travelOn(routeTo(all, outlooks, to), all.yard.sending, all.asOf);
}

/** The same for a route, on a day. */
export function travelOn(route: Route, sending: SendingRules, asOf: Day): TravelView {
  const answer = canTravelNow(route, sending, asOf);
  if (!answer.route) return { route: false, because: answer.because.map(told) };
  const byForm = Object.fromEntries(answer.forms.map(travel => [travel.form, travel])) as Record<
    Form,
    FormTravel
  >;
  return {
    route: true,
    season: seasonWords(byForm, asOf),
    forms: answer.forms.map(travel => ({
      form: travel.form,
      formName: formWords[travel.form],
      state: travel.state,
      ...travelWords(travel, asOf),
      short: shortWords(travel, asOf),
      brief: briefReady(travel, asOf),
      buy: reserveWords(travel, travel.wait.middle, asOf),
      because: travel.because.map(told),
    })),
  };
}

/** The runs of open weeks and of weeks by forecast of every form; none where the yard does not send. */
export function sendingRunsTo(
  all: Catalogue,
  outlooks: Outlooks,
  to: PlaceAnswers,
): { form: Form; runs: SendingRun[] }[] {
  return runsOn(routeTo(all, outlooks, to), all.yard.sending, all.asOf);
}

/** The same for a route, from a day on. */
export function runsOn(route: Route, sending: SendingRules, asOf: Day): { form: Form; runs: SendingRun[] }[] {
  if (!canTravelNow(route, sending, asOf).route) return [];
  return forms.map(form => ({
    form,
    runs: sendingRuns(sendingWeeks(route.home, route.there, form, sending, asOf)),
  }));
}

/** One line of the table of sending weeks. */
interface RunView {
  days: string;
  state: SendingState;
  /** `open`, `by forecast, about every second week passes`. */
  words: string;
}

export interface SendingView {
  now: TravelView;
  /** Runs of weeks of each form; empty where the yard does not send. */
  table: { form: Form; formName: string; runs: RunView[] }[];
}

const meanOf = (shares: readonly number[]) => shares.reduce((sum, share) => sum + share, 0) / shares.length;

/** A run of weeks in words, which lists and pages share. */
function runView({ from, to, state, needsStore, shares }: SendingRun): RunView {
  const words = state === 'open' ? 'open' : `by forecast, ${weeksInWords(meanOf(shares))} passes`;
  return {
    days: rangeInWords({ from, to }),
    state,
    words: needsStore ? `${words}; only to cold storage` : words,
  };
}

export function sendingTable(of: readonly { form: Form; runs: SendingRun[] }[]): SendingView['table'] {
  return of.map(({ form, runs }) => ({ form, formName: formWords[form], runs: runs.map(runView) }));
}

/** The weeks of the coming year in which trees of each form go to a place. */
export function sendingView(all: Catalogue, outlooks: Outlooks, to: PlaceAnswers): SendingView {
  return { now: travelView(all, outlooks, to), table: sendingTable(sendingRunsTo(all, outlooks, to)) };
}
