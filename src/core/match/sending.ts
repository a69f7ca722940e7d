/** In which weeks trees of each form can be sent to a place: open, by forecast or closed. */
import { wrapDoy } from '../climate/calendar.ts';
import { addDays, type Day, dayOfYear, dayParts, daysBetween, weekday } from '../days.ts';
import type { Form } from '../records/common.ts';
import { longestWay } from '../records/longestWay.ts';
import type { ByHand, Lining, SendingRules } from '../records/sending.ts';
import type { SendingRun, SendingState, SendingWeek } from './answers.ts';
import { type ArrivalYear, mayBeDormant, type Receiving, receivingOf } from './receiving.ts';
import type { TripRisks, WaitsFrom } from './trips.ts';

/** Share of years in which a trip passes, from which a week is open. Standing: ours. */
export const OPEN_SHARE = 0.9;
/** The same from which trees go by the forecast: below it a mild spell is too rare to wait for. Standing: ours. */
const FORECAST_SHARE = 0.3;
const WEEKS_AHEAD = 52;

/** What a place means to parcels that leave or reach it, for each form and carton of the yard. */
export interface TripEnd {
  readonly name: string;
  readonly risks: Readonly<Record<Form, { readonly plain: TripRisks; readonly lined: TripRisks | null }>>;
  readonly year: ArrivalYear;
}

/** The far end of the way, with the waits for a trip there. */
export interface Destination extends TripEnd {
  readonly waits: Readonly<Record<Form, ReadonlyMap<number, WaitsFrom>>>;
}

/** ISO 8601 week of a day: its Thursday decides the year. */
export function isoWeek(of: Day): { isoYear: number; isoWeek: number; monday: Day } {
  const monday = addDays(of, 1 - weekday(of));
  const thursday = addDays(monday, 3);
  const { year } = dayParts(thursday);
  const newYear = `${String(year).padStart(4, '0')}-01-01` as Day;
  return { isoYear: year, isoWeek: Math.floor(daysBetween(newYear, thursday) / 7) + 1, monday };
}

/** Days of a week on which parcels leave. */
export function sendingDays(monday: Day, weekdays: readonly number[]): Day[] {
  return [...weekdays].sort((a, b) => a - b).map(number => addDays(monday, number - 1));
}

/** Share of years in which a parcel that leaves on a day keeps to the limits at both ends. They count as independent, which errs low. */
export function passingShare(
  home: TripEnd,
  there: TripEnd,
  form: Form,
  lining: Lining,
  leaving: Day,
): number | null {
  const [here, away] = [home.risks[form][lining], there.risks[form][lining]];
  if (here === null || away === null) return null;
  const at = dayOfYear(leaving) - 1;
  const passesHere = 1 - (here.either[at] as number);
  return home.year === there.year ? passesHere : passesHere * (1 - (away.either[at] as number));
}

function stateOfShare(share: number): SendingState {
  if (share >= OPEN_SHARE) return 'open';
  return share >= FORECAST_SHARE ? 'by-forecast' : 'closed';
}

function handOn({ byHand }: SendingRules, form: Form, day: Day): ByHand | null {
  return byHand.find(({ from, to, forms }) => forms.includes(form) && from <= day && day <= to) ?? null;
}

interface Carried {
  share: number;
  lining: Lining;
}

/** The plain carton where it does as well as the lined one; the lined one where the weather calls for it. */
function carried(
  home: TripEnd,
  there: TripEnd,
  form: Form,
  days: readonly Day[],
  rules: SendingRules,
): Carried {
  const shareIn = (lining: Lining): number => {
    if (rules.transitDays > longestWay[form][lining]) return 0;
    const shares = days.map(day => passingShare(home, there, form, lining, day) ?? 0);
    return shares.reduce((sum, share) => sum + share, 0) / shares.length;
  };
  const plain = shareIn('plain');
  const lined = rules.limits[form].lined === null ? 0 : shareIn('lined');
  return lined > plain && stateOfShare(lined) !== stateOfShare(plain)
    ? { share: lined, lining: 'lined' }
    : { share: plain, lining: 'plain' };
}

/** Day of the year on which a parcel that leaves on a day arrives. */
function arrives(leaving: Day, { transitDays }: SendingRules): number {
  return wrapDoy(dayOfYear(leaving) + transitDays);
}

function closedBecause(
  home: TripEnd,
  form: Form,
  leaving: Day,
  receiving: Receiving,
  rules: SendingRules,
): SendingWeek['closedBy'] {
  const longest = Math.max(longestWay[form].plain, rules.limits[form].lined ? longestWay[form].lined : 0);
  if (rules.transitDays > longest) return 'long-way';
  if (form !== 'leafed-pot' && !mayBeDormant(home.year, form, dayOfYear(leaving))) return 'awake';
  return receiving === 'freezing' ? 'freezes-there' : null;
}

/** Whether trees of a form may leave on a day as far as the season, the way and the grower's hand go, whatever the weather. */
export function mayLeaveOn(
  home: TripEnd,
  there: TripEnd,
  form: Form,
  rules: SendingRules,
  day: Day,
): boolean {
  const hand = handOn(rules, form, day);
  if (hand !== null) return hand.state === 'open';
  return closedBecause(home, form, day, receivingOf(there.year, form, arrives(day, rules)), rules) === null;
}

/** One week of one form. The weather decides where neither the grower's hand, the season nor the way does. */
function weekOf(home: TripEnd, there: TripEnd, form: Form, rules: SendingRules, monday: Day): SendingWeek {
  const all = sendingDays(monday, rules.weekdays);
  const hands = all.map(day => handOn(rules, form, day));
  const days = all.filter((_, i) => hands[i]?.state !== 'closed');
  const leaving = days[0] ?? (all[0] as Day);
  const receiving = receivingOf(there.year, form, arrives(leaving, rules));
  const week = {
    ...isoWeek(monday),
    receiving,
    ...carried(home, there, form, days.length > 0 ? days : all, rules),
  };
  const opened = hands.find(hand => hand?.state === 'open');
  if (opened) return { ...week, state: 'open', closedBy: null, byHand: opened.why };
  if (days.length === 0) {
    return { ...week, state: 'closed', closedBy: 'hand', byHand: (hands[0] as ByHand).why };
  }
  const closedBy = closedBecause(home, form, leaving, receiving, rules);
  const state = closedBy === null ? stateOfShare(week.share) : 'closed';
  return {
    ...week,
    state,
    closedBy: state === 'closed' ? (closedBy ?? 'weather') : null,
    byHand: null,
  };
}

/** The 52 weeks of a form from the week of a day on. */
export function sendingWeeks(
  home: TripEnd,
  there: TripEnd,
  form: Form,
  rules: SendingRules,
  from: Day,
): SendingWeek[] {
  const { monday } = isoWeek(from);
  return Array.from({ length: WEEKS_AHEAD }, (_, i) =>
    weekOf(home, there, form, rules, addDays(monday, 7 * i)),
  );
}

const sameRun = (run: SendingRun, week: SendingWeek) =>
  run.state === week.state && run.needsStore === (week.receiving === 'cold-store');

/** Unbroken runs of weeks that are open or go by the forecast, and in which the receiver needs a cold store or does not. */
export function sendingRuns(weeks: readonly SendingWeek[]): SendingRun[] {
  const runs: SendingRun[] = [];
  weeks.forEach((week, i) => {
    const { state, monday, share, receiving } = week;
    if (state === 'closed') return;
    const to = addDays(monday, 6);
    const running = runs.at(-1);
    const before = weeks[i - 1];
    if (running && before && before.state !== 'closed' && sameRun(running, week)) {
      running.to = to;
      running.shares.push(share);
    } else {
      runs.push({ from: monday, to, state, needsStore: receiving === 'cold-store', shares: [share] });
    }
  });
  return runs;
}

/** First sending day on or after a day. */
export function nextSendingDay({ weekdays }: Pick<SendingRules, 'weekdays'>, from: Day): Day {
  const week = Array.from({ length: 7 }, (_, ahead) => addDays(from, ahead));
  return week.find(day => weekdays.includes(weekday(day))) ?? from;
}

/** Usual and longest likely wait from any day to a sending day whose trip passes, days; null where it is longer than is counted. */
export function waitFrom(
  { waits }: Destination,
  form: Form,
  rules: Pick<SendingRules, 'weekdays'>,
  from: Day,
  longest: number,
): { middle: number | null; late: number | null } {
  const first = nextSendingDay(rules, from);
  const counted = waits[form].get(weekday(first));
  if (counted === undefined) return { middle: null, late: null };
  const ahead = daysBetween(from, first);
  const at = dayOfYear(first) - 1;
  const told = (days: number) => (days >= longest ? null : ahead + days);
  return { middle: told(counted.middle[at] as number), late: told(counted.late[at] as number) };
}
