/** Whether a tree of each form can leave for a place now, and if not, when and why not. */
import { addDays, type Day, dayInWords, dayOfYear, daysBetween } from '../days.ts';
import type { Reason } from '../records/common.ts';
import { type Form, forms } from '../records/formNames.ts';
import { longestWay } from '../records/longestWay.ts';
import type { Place } from '../records/place.ts';
import type { Lining, SendingRules, TripLimits } from '../records/sending.ts';
import { temperatureInWords } from '../units.ts';
import type { FormTravel, SendingWeek, TravelAnswer } from './answers.ts';
import {
  type Destination,
  mayLeaveOn,
  nextSendingDay,
  OPEN_SHARE,
  sendingWeeks,
  type TripEnd,
  waitFrom,
} from './sending.ts';
import { LONGEST_WAIT_DAYS } from './trips.ts';
import { modeled, ours } from './words.ts';

type Whither = Pick<Place, 'region' | 'country'>;

/** A rule names a region or a country code; one that begins with "Outside" is for every country but the yard's own. */
function barredBy(
  { notTo }: SendingRules,
  homeCountry: string,
  { region, country }: Whither,
): SendingRules['notTo'][number] | undefined {
  return notTo.find(
    rule =>
      rule.region === region ||
      rule.region === country ||
      (/^outside\b/i.test(rule.region) && country !== homeCountry),
  );
}

const cartonWords: Readonly<Record<Lining, string>> = { plain: 'a plain carton', lined: 'a lined carton' };

/** `no night of 20 F (-7 C) or colder and no day of 80 F (27 C) or hotter`. */
export function limitsInWords({ coldestC, hottestC }: TripLimits): string {
  return `no night of ${temperatureInWords(coldestC)} or colder and no day of ${temperatureInWords(hottestC)} or hotter`;
}

/** `3 trips in 10`, never none or all where it is neither. */
export function tripsOfTen(share: number): string {
  if (share > 0.95) return 'nearly all trips';
  if (share < 0.05) return 'hardly any trip';
  const tenths = Math.max(1, Math.round(share * 10));
  return `${tenths} ${tenths === 1 ? 'trip' : 'trips'} in 10`;
}

/** Chance of a limit at one end from which it is named. Standing: ours. */
const NAMED_FROM = 1 - OPEN_SHARE;

/** What stands against a parcel that leaves on a day, the likelier first. */
function against(
  ends: readonly TripEnd[],
  form: Form,
  limits: TripLimits,
  leaving: Day,
  lining: Lining,
): Reason[] {
  const at = dayOfYear(leaving) - 1;
  return ends
    .flatMap(({ name, risks }) => {
      const risk = risks[form][lining];
      if (risk === null) return [];
      const cold = `a night of ${temperatureInWords(limits.coldestC)} or colder`;
      const heat = `a day of ${temperatureInWords(limits.hottestC)} or hotter`;
      return [
        { name, chance: risk.cold[at] as number, what: cold },
        { name, chance: risk.heat[at] as number, what: heat },
      ];
    })
    .filter(({ chance }) => chance >= NAMED_FROM)
    .sort((a, b) => b.chance - a.chance)
    .map(({ name, chance, what }) => {
      const trips = tripsOfTen(chance);
      return modeled(
        `At ${name} ${trips} that ${trips.startsWith('1 ') || trips.startsWith('hardly') ? 'leaves' : 'leave'} on ${dayInWords(leaving)} would meet ${what}.`,
      );
    });
}

function closedReason(
  { closedBy, byHand }: SendingWeek,
  form: Form,
  { transitDays }: SendingRules,
): Reason | null {
  switch (closedBy) {
    case 'hand':
      return { text: `We have closed this week: ${byHand}`, standing: 'seen' };
    case 'long-way':
      return ours(
        `Our parcels take ${transitDays} days, and this form is sent for ${longestWay[form].plain} days at most.`,
      );
    case 'awake':
      return modeled('Our trees do not sleep at this time of the year, and this form is sent asleep.');
    case 'freezes-there':
      return modeled(
        'A tree in leaf would come among freezes. We send none to be stored: it would lose its leaves and wake again.',
      );
    default:
      return null;
  }
}

function reasonsOf(
  ends: readonly TripEnd[],
  form: Form,
  week: SendingWeek,
  leaving: Day,
  rules: SendingRules,
): Reason[] {
  const limits = rules.limits[form][week.lining] ?? rules.limits[form].plain;
  const rule = ours(
    `In ${cartonWords[week.lining]} we send this form when, for the ${rules.transitDays} days from pick-up to porch, both ends have ${limitsInWords(limits)}. The limits are our own: no carrier publishes any.`,
  );
  const closed = closedReason(week, form, rules);
  const stands = against(ends, form, limits, leaving, week.lining);
  if (closed) {
    if (week.closedBy === 'hand') return [closed];
    return week.closedBy === 'freezes-there' ? [closed, ...stands, rule] : [closed, rule];
  }
  if (week.byHand !== null)
    return [{ text: `We have opened this week: ${week.byHand}`, standing: 'seen' }, rule];
  const passing = modeled(
    `Of a thousand simulated years, ${tripsOfTen(week.share)} of that week ${week.share < 0.15 ? 'keeps' : 'keep'} to our limits.`,
  );
  return [passing, ...stands, rule];
}

/**
 * Days until a trip that passes can start, counted from the first sending day on which trees of the form may leave at all; null where that is
 * not in sight, or where by then they no longer may.
 */
function waitOf(
  home: TripEnd,
  there: Destination,
  form: Form,
  rules: SendingRules,
  asOf: Day,
): FormTravel['wait'] {
  const may = (day: Day) => mayLeaveOn(home, there, form, rules, day);
  let first = nextSendingDay(rules, asOf);
  while (!may(first) && daysBetween(asOf, first) < LONGEST_WAIT_DAYS)
    first = nextSendingDay(rules, addDays(first, 1));
  const ahead = daysBetween(asOf, first);
  const { middle, late } = waitFrom(there, form, rules, first, LONGEST_WAIT_DAYS - ahead);
  const told = (days: number | null) => (days !== null && may(addDays(first, days)) ? ahead + days : null);
  return { middle: told(middle), late: told(late) };
}

const rank = { closed: 0, 'by-forecast': 1, open: 2 } as const;

function travelOf(home: TripEnd, there: Destination, form: Form, rules: SendingRules, asOf: Day): FormTravel {
  const leaving = nextSendingDay(rules, asOf);
  const weeks = sendingWeeks(home, there, form, rules, leaving);
  const week = weeks[0] as SendingWeek;
  const { state } = week;
  const better = weeks.find(other => rank[other.state] > rank[state]);
  const storeless = weeks.find(other => other.state !== 'closed' && other.receiving !== 'cold-store');
  const ends = home.year === there.year ? [home] : [home, there];
  return {
    form,
    state,
    leaving,
    week,
    wait: waitOf(home, there, form, rules, asOf),
    from: better ? { state: better.state, monday: better.monday } : null,
    withoutStore: week.receiving === 'cold-store' ? (storeless?.monday ?? null) : null,
    because: reasonsOf(ends, form, week, leaving, rules),
  };
}

export interface Route {
  readonly home: TripEnd & Pick<Place, 'country'>;
  readonly there: Destination & Whither;
}

/** The answer for one destination on a day, form by form. */
export function canTravelNow({ home, there }: Route, rules: SendingRules, asOf: Day): TravelAnswer {
  const barred = barredBy(rules, home.country, there);
  if (barred) {
    const text = `We do not send there (${barred.region}). ${barred.why} Last checked ${dayInWords(barred.checked)}; ask the plant health authority there, whose word counts.`;
    return { route: false, because: [{ text, standing: 'ours' }] };
  }
  return { route: true, forms: forms.map(form => travelOf(home, there, form, rules, asOf)) };
}
