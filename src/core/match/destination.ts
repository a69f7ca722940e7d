/** What the weather years of a place mean to parcels: counted once for each place and kept. */
import type { FreezeOdds } from '../climate/freezes.ts';
import type { WeatherYears } from '../climate/weatherYears.ts';
import { type Form, forms } from '../records/formNames.ts';
import type { SendingRules, TripLimits } from '../records/sending.ts';
import { arrivalYear } from './receiving.ts';
import type { Destination, TripEnd } from './sending.ts';
import { passingDays, tripRisks, tripWaits } from './trips.ts';

/** The part of the rules that the counts depend on. */
export type CountedRules = Pick<SendingRules, 'weekdays' | 'transitDays' | 'limits'>;

/** Days of the home yard on which a trip passes at its own end, by form. */
export type HomeDays = Readonly<Record<Form, Uint8Array>>;

/** Makes one thing of each form, and of forms with the same limits only one. */
function perForm<T>(make: (form: Form) => T): Record<Form, T> {
  return Object.fromEntries(forms.map(form => [form, make(form)])) as Record<Form, T>;
}

function oncePerLimits<T>(make: (limits: TripLimits) => T): (limits: TripLimits) => T {
  const made = new Map<string, T>();
  return limits => {
    const key = `${limits.coldestC} ${limits.hottestC}`;
    const known = made.get(key);
    if (known !== undefined) return known;
    const fresh = make(limits);
    made.set(key, fresh);
    return fresh;
  };
}

/** The carton that takes a form furthest: the lined one where the yard has it. */
const widest = ({ limits }: CountedRules, form: Form): TripLimits => limits[form].lined ?? limits[form].plain;

/** For each form the days on which a trip keeps to the limits here, in its best carton. */
export function homeDays(years: WeatherYears, rules: CountedRules): HomeDays {
  const daysOf = oncePerLimits(limits => passingDays(years, limits, rules.transitDays));
  return perForm(form => daysOf(widest(rules, form)));
}

/** One end of the way. */
export function tripEndOf(
  name: string,
  years: WeatherYears,
  freeze32F: FreezeOdds,
  rules: CountedRules,
): TripEnd {
  const risksOf = oncePerLimits(limits => tripRisks(years, limits, rules.transitDays));
  const risks: TripEnd['risks'] = perForm(form => {
    const { plain, lined } = rules.limits[form];
    return { plain: risksOf(plain), lined: lined && risksOf(lined) };
  });
  return { name, risks, year: arrivalYear(years, freeze32F) };
}

/** Everything that sending to a place needs to know of it. Costs about 5 ms for a thousand years. */
export function destinationOf(
  name: string,
  years: WeatherYears,
  freeze32F: FreezeOdds,
  rules: CountedRules,
  home: HomeDays,
): Destination {
  const waitsOf = oncePerLimits(limits => {
    const form = forms.find(each => widest(rules, each) === limits) as Form;
    return tripWaits(home[form], passingDays(years, limits, rules.transitDays), rules.weekdays);
  });
  const waits = perForm(form => waitsOf(widest(rules, form)));
  return { ...tripEndOf(name, years, freeze32F, rules), waits };
}
