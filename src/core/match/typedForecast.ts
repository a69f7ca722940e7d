/** Whether a tree can leave on a day, by this week's forecast as somebody typed it in: lows and highs of both ends. */
import { addDays, type Day, dayInWords } from '../days.ts';
import { type Form, forms } from '../records/formNames.ts';
import { longestWay } from '../records/longestWay.ts';
import { type Lining, linings, type SendingRules, type TripLimits } from '../records/sending.ts';
import { fahrenheitToCelsius, temperatureInWords } from '../units.ts';
import { breachesOf, type DayAtEnd } from './trips.ts';

export type TypedDays = { ok: true; days: DayAtEnd[] } | { ok: false; text: string };

const pair = /^(-?\d{1,3}(?:\.\d)?)\/(-?\d{1,3}(?:\.\d)?)$/;
/** Beyond these a day is a slip or in the other unit, C. */
const COLDEST_C = -60;
const HOTTEST_C = 55;

/**
 * Lows and highs day by day, as in `28/45,31/50`: one pair for each of `count` days. `name` says whose they are in messages.
 * Nothing is guessed: a number too many or too few, or a low above its high, is told.
 */
export function typedDays(text: string, count: number, celsius: boolean, name: string): TypedDays {
  const cells = text.split(/[\s,;]+/).filter(cell => cell !== '');
  const inC = (value: number) => (celsius ? value : fahrenheitToCelsius(value));
  const days: DayAtEnd[] = [];
  for (const [index, cell] of cells.entries()) {
    const found = pair.exec(cell);
    const day = `day ${index + 1} of ${name}`;
    if (!found) return { ok: false, text: `${day} is "${cell}"; write low/high, such as 28/45` };
    const [tminC, tmaxC] = [inC(Number(found[1])), inC(Number(found[2]))];
    if (tminC > tmaxC)
      return { ok: false, text: `${day} has its low above its high, ${cell}; write low/high` };
    if (tminC < COLDEST_C || tmaxC > HOTTEST_C) {
      return {
        ok: false,
        text: `${day}, ${cell}, is no air temperature in ${celsius ? 'C' : 'F'}; check the unit`,
      };
    }
    days.push({ tminC, tmaxC });
  }
  if (days.length !== count) {
    return {
      ok: false,
      text: `${name} has ${days.length} days where ${count} are needed: the day of leaving and each day on the way`,
    };
  }
  return { ok: true, days };
}

export interface TypedTrip {
  leaving: Day;
  here: { name: string; days: readonly DayAtEnd[] };
  there: { name: string; days: readonly DayAtEnd[] };
}

export interface TypedAnswer {
  form: Form;
  yes: boolean;
  /** The plainest carton that will do; null where none will. */
  carton: Lining | null;
  /** What stands against it, in the carton that takes it furthest. */
  against: string[];
}

/** Nights and days that break a limit at one end. */
function against({ name, days }: TypedTrip['here'], leaving: Day, limits: TripLimits): string[] {
  return days.flatMap((day, index) => {
    const on = dayInWords(addDays(leaving, index));
    return breachesOf([day], limits).map(breach =>
      breach === 'cold'
        ? `${name}, ${on}: a night of ${temperatureInWords(day.tminC)}, limit ${temperatureInWords(limits.coldestC)}`
        : `${name}, ${on}: a day of ${temperatureInWords(day.tmaxC)}, limit ${temperatureInWords(limits.hottestC)}`,
    );
  });
}

/** Yes or no for every form. The rule is the limits alone: nothing is reckoned about the inside of a carton. */
export function judgeTyped({ leaving, here, there }: TypedTrip, rules: SendingRules): TypedAnswer[] {
  return forms.map(form => {
    const closed = rules.byHand.find(
      span =>
        span.state === 'closed' && span.forms.includes(form) && span.from <= leaving && leaving <= span.to,
    );
    if (closed) return { form, yes: false, carton: null, against: [`closed by hand: ${closed.why}`] };
    let reasons: string[] = [];
    for (const lining of linings) {
      const limits = rules.limits[form][lining];
      if (limits === null) continue;
      const longest = longestWay[form][lining];
      reasons =
        rules.transitDays > longest
          ? [`${rules.transitDays} days on the way, at most ${longest} for this form`]
          : [here, there].flatMap(end => against(end, leaving, limits));
      if (reasons.length === 0) return { form, yes: true, carton: lining, against: [] };
    }
    return { form, yes: false, carton: null, against: reasons };
  });
}
