/** The questions of npm run new-yard about the yard itself; those about its first tree are asked as npm run cultivar and lot ask them. */

import { sendingDays } from '../src/core/recording/newYardText.ts';
import { type Form, forms } from '../src/core/records/common.ts';
import { containerPattern } from '../src/core/records/container.ts';
import type { Ask, Offered } from './ask.ts';
import { UsageError } from './command.ts';
import { countGiven, listGiven } from './given.ts';
import { type FoundPlace, findPlaces, homeOf } from './newYardPlace.ts';

/** What is known of the yard before its first tree, as it was typed. */
export interface YardAnswers {
  name: string;
  home: FoundPlace;
  address: string;
  email: string | undefined;
  timeZone: string;
  currency: string;
  species: string[];
  forms: Form[];
  containers: string[];
  days: string[];
  transitDays: number;
  notTo: string[];
  price: number;
  pricePot: string;
}

export const addressLike = /^https?:\/\/[^\s/?#@\\]+$/;

/** What is wrong with an answer; undefined where nothing is. The same for flags and for questions. */
export const faults = {
  name: (typed: string) => {
    if (typed.trim() === '') return 'This is needed.';
    return typed.trim().length > 60 ? 'At most 60 letters.' : undefined;
  },
  address: (typed: string) =>
    addressLike.test(typed.trim()) ? undefined : 'An address without a path, such as https://trees.example.',
  email: (typed: string) =>
    typed.trim() === '' || /^[^\s@]+@[^\s@]+\.[^\s@]+$/.test(typed.trim())
      ? undefined
      : 'An address such as yard@trees.example.',
  timeZone: (typed: string) => {
    try {
      new Intl.DateTimeFormat('en', { timeZone: typed.trim() });
      return undefined;
    } catch {
      return 'A time zone such as America/Chicago.';
    }
  },
  currency: (typed: string) =>
    Intl.supportedValuesOf('currency').includes(typed.trim()) ? undefined : 'A code such as USD, CAD or EUR.',
  price: (typed: string) =>
    /^\d{1,6}(?:\.\d{1,2})?$/.test(typed.trim()) && Number(typed) > 0
      ? undefined
      : 'A price such as 30 or 31.5, without the sign of the currency.',
  pot: (typed: string) => (containerPattern.test(typed.trim()) ? undefined : 'A pot such as #1, SP4 or 3 L.'),
} as const;

/** Throws a UsageError where a flag does not hold what it should. */
export function flagGiven(text: string, flag: string, fault: (typed: string) => string | undefined): string {
  const wrong = fault(text);
  if (wrong) throw new UsageError(`--${flag} "${text}" will not do. ${wrong}`);
  return text.trim();
}

/** Parts between commas, without blanks around them. */
export const partsOf = (text: string): string[] =>
  text
    .split(',')
    .map(each => each.trim())
    .filter(each => each !== '');

export function speciesGiven(text: string, known: readonly Offered[]): string[] {
  return listGiven(
    text,
    known.map(({ value }) => value),
    'species that is shipped',
  );
}

const usualPots = ['SP4', 'SP5', '#1', '#2', '#3', '#5', '#7'];
const dayNames: Record<(typeof sendingDays)[number], string> = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday',
};

async function askHome(ask: Ask): Promise<FoundPlace> {
  const nowhere = (problem: unknown) => {
    if (problem instanceof UsageError) return problem.message;
    throw problem;
  };
  let message = 'Where is it? A ZIP code, or a town with a weather station';
  // A name that is not found is asked again, with what is near it.
  for (let tries = 0; tries < 20; tries += 1) {
    const typed = (await ask.line(message, { problem: faults.name }))!;
    const found = await findPlaces(typed).catch(nowhere);
    if (typeof found === 'string') {
      message = `${found} Once more`;
      continue;
    }
    const chosen =
      found.length === 1
        ? found[0]!.value
        : await ask.choice(
            'Which weather station speaks for it best? The nearest is not always as high up',
            found,
          );
    const place = found.find(({ value }) => value === chosen)!;
    const region = place.needsRegion
      ? await ask.line('State, province or part of the country?', { problem: faults.name })
      : undefined;
    return homeOf(place, { region });
  }
  throw new UsageError('no such place; npm run climate says what is known around a position.');
}

const trimmed = (typed: string | undefined) => typed?.trim() ?? '';
const asOffered = (words: readonly string[]): Offered[] => words.map(value => ({ value, label: value }));

/** Asks about the yard. `species` are those shipped. */
export async function askYard(ask: Ask, species: readonly Offered[]): Promise<YardAnswers> {
  const name = (await ask.line('What is the yard called?', { problem: faults.name }))!;
  const home = await askHome(ask);
  const address = await ask.line('Which web address will its site have? It can be changed later', {
    initial: 'https://trees.example',
    problem: faults.address,
  });
  const email = await ask.line('To which mail address do customers write? (Enter for none yet)', {
    problem: faults.email,
  });
  const timeZone = await ask.line('In which time zone?', {
    initial: Intl.DateTimeFormat().resolvedOptions().timeZone,
    problem: faults.timeZone,
  });
  const currency = await ask.line('In which currency are your prices?', {
    ...(home.country === 'US' ? { initial: 'USD' } : {}),
    problem: faults.currency,
  });
  const raised = await ask.choices('Which species do you raise? Others can be added later', species);
  const sold = await ask.choices('In which forms do you sell?', asOffered(forms), forms);
  const containers = await ask.choices('In which pots?', asOffered(usualPots));
  const days = await ask.choices(
    'On which days do parcels leave?',
    sendingDays.map(value => ({ value, label: dayNames[value] })),
    ['mon', 'tue'],
  );
  const transitDays = await ask.wholeNumber('How many days is a parcel on its way?', 1, 3);
  const notTo = await ask.line('To which states or countries do you not send? (commas; Enter for none)');
  const pricePot = containers.includes('#1') ? '#1' : containers[0]!;
  const known = species.find(({ value }) => value === raised[0])!.label;
  const price = await ask.line(`What does a tree of ${known} in ${pricePot} cost?`, {
    problem: faults.price,
  });
  return {
    name,
    home,
    address: trimmed(address),
    email,
    timeZone: trimmed(timeZone),
    currency: trimmed(currency),
    species: raised,
    forms: sold as Form[],
    containers,
    days,
    transitDays,
    notTo: partsOf(notTo ?? ''),
    price: Number(price),
    pricePot,
  };
}

export const daysGiven = (text: string) => listGiven(text, sendingDays, 'day of the week');
export const transitGiven = (text: string | undefined) => countGiven(text ?? '3', '--transit-days');
