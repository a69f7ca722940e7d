/** Whether a parcel can leave now, and if not, when and why not. */
import { type Day, dayInWords, dayOfYear } from '../days.ts';
import type { Reason } from '../records/common.ts';
import type { Place } from '../records/place.ts';
import type { SendingRules } from '../records/yard.ts';
import { temperatureInWords } from '../units.ts';
import type { SendingWeek, TravelAnswer } from './answers.ts';
import { LARGEST_TRIP_RISK, sendingDays, sendingWeeks, type TripRisks } from './sending.ts';
import { modelled, ours, yearsOfTen } from './words.ts';

export interface TripEnd {
  readonly name: string;
  readonly risks: TripRisks;
}

export type Destination = TripEnd & Pick<Place, 'region' | 'country'>;
export type Origin = TripEnd & Pick<Place, 'country'>;

/** A rule names a region or a country code; one that begins with "Outside" is for every country but the yard's own. */
function barredBy({ notTo }: SendingRules, home: Origin, { region, country }: Destination) {
  return notTo.find(
    rule =>
      rule.region === region ||
      rule.region === country ||
      (/^outside\b/i.test(rule.region) && country !== home.country),
  );
}

/** The first sending day on or after a day among open weeks. */
function firstOpenDay(weeks: readonly SendingWeek[], rules: SendingRules, asOf: Day): Day | null {
  for (const { monday, open } of weeks) {
    const leaving = open ? sendingDays(monday, rules.weekdays).find(each => each >= asOf) : undefined;
    if (leaving !== undefined) return leaving;
  }
  return null;
}

/** The next sending day whatever the weather: today's question is about the parcel that would leave on it. */
function nextSendingDay(weeks: readonly SendingWeek[], rules: SendingRules, asOf: Day): Day | null {
  return firstOpenDay(
    weeks.map(week => ({ ...week, open: true })),
    rules,
    asOf,
  );
}

/** What stands against a parcel that leaves on a day, one reason per end and limit, the likelier first. */
function against(ends: readonly TripEnd[], rules: SendingRules, leaving: Day): Reason[] {
  const at = dayOfYear(leaving) - 1;
  const chances = ends.flatMap(({ name, risks }) => [
    {
      name,
      chance: risks.cold[at] as number,
      what: `a night of ${temperatureInWords(rules.coldestC)} or colder`,
    },
    {
      name,
      chance: risks.heat[at] as number,
      what: `a day of ${temperatureInWords(rules.hottestC)} or hotter`,
    },
  ]);
  return chances
    .filter(({ chance }) => chance >= LARGEST_TRIP_RISK / 2)
    .sort((a, b) => b.chance - a.chance)
    .map(({ name, chance, what }) =>
      modelled(
        `A parcel that leaves on ${dayInWords(leaving)} meets ${what} at ${name} ${yearsOfTen(chance)}.`,
      ),
    );
}

const rule = ours(
  'We send in weeks in which the chance of that, at either end of the way, is at most one in ten.',
);

/** The answer for one destination on a day. */
export function canTravelNow(
  home: Origin,
  destination: Destination,
  rules: SendingRules,
  asOf: Day,
): TravelAnswer {
  const barred = barredBy(rules, home, destination);
  if (barred) {
    const text = `We do not send there (${barred.region}). ${barred.why} Last checked ${dayInWords(barred.checked)}; ask the plant health authority there, whose word counts.`;
    return { answer: { state: 'no-route', from: null }, because: [{ text, standing: 'ours' }] };
  }
  const { weeks } = sendingWeeks(home.risks, destination.risks, rules, asOf);
  const from = firstOpenDay(weeks, rules, asOf);
  const next = nextSendingDay(weeks, rules, asOf);
  const ends = home.risks === destination.risks ? [home] : [home, destination];
  if (from !== null && from === next) {
    const text = `Parcels leave on ${dayInWords(from)}, and neither end of the way is likely to freeze or cook them.`;
    return { answer: { state: 'now', from }, because: [modelled(text), rule] };
  }
  const because = [...(next === null ? [] : against(ends, rules, next)), rule];
  return { answer: { state: from === null ? 'never' : 'wait', from }, because };
}
