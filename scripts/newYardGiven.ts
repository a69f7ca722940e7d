/** The answers of npm run new-yard given by flags, and what is made of answers. */

import type { Day } from '../src/core/days.ts';
import type { CultivarRequest } from '../src/core/recording/newCultivar.ts';
import type { LotRequest } from '../src/core/recording/newLot.ts';
import type { SendingDay, YardSettings } from '../src/core/recording/newYardText.ts';
import type { FileChange, YardToAddTo } from '../src/core/recording/openYard.ts';
import { forms, methods } from '../src/core/records/common.ts';
import type { Ask, Offered } from './ask.ts';
import { UsageError } from './command.ts';
import { askCultivar, requestOf, traitFlags } from './cultivarTraits.ts';
import { countGiven, listGiven, wordGiven } from './given.ts';
import { askLot } from './lotQuestions.ts';
import { findPlaces, homeOf } from './newYardPlace.ts';
import {
  daysGiven,
  faults,
  flagGiven,
  partsOf,
  speciesGiven,
  transitGiven,
  type YardAnswers,
} from './newYardQuestions.ts';

const text = { type: 'string' } as const;
const truth = { type: 'boolean' } as const;

export const yardFlags = {
  ...traitFlags,
  name: text,
  address: text,
  email: text,
  place: text,
  'place-name': text,
  region: text,
  'time-zone': text,
  currency: text,
  species: text,
  forms: text,
  containers: text,
  days: text,
  'transit-days': text,
  'not-to': text,
  price: text,
  'price-pot': text,
  cultivar: text,
  'cultivar-species': text,
  flavor: text,
  length: text,
  width: text,
  mothers: text,
  origin: text,
  method: text,
  raised: text,
  container: text,
  started: text,
  severed: text,
  rootstock: text,
  replace: truth,
  'no-build': truth,
  show: truth,
} as const;

export interface NewYard {
  answers: YardAnswers;
  files: FileChange[];
  /** The first cultivar and lot in words. */
  said: string;
}

export interface FirstTree {
  cultivar: CultivarRequest;
  lot: Omit<LotRequest, 'cultivar'>;
}

type Values = Readonly<Record<string, string | boolean | undefined>>;

/** Text of a flag; undefined where it is not given. */
const given = (values: Values, flag: string): string | undefined =>
  typeof values[flag] === 'string' ? values[flag] : undefined;

function needed(values: Values, flags: readonly string[]): string[] {
  const missing = flags.filter(flag => given(values, flag) === undefined);
  if (missing.length > 0)
    throw new UsageError(`give ${missing.map(flag => `--${flag}`).join(', ')} too. Try --help.`);
  return flags.map(flag => given(values, flag)!);
}

/** Throws a UsageError for what is missing or wrong. */
export async function yardGiven(values: Values, species: readonly Offered[]): Promise<YardAnswers> {
  const [name, place, raised, pots, price] = needed(values, [
    'name',
    'place',
    'species',
    'containers',
    'price',
  ]) as [string, string, string, string, string];
  const [found] = await findPlaces(place);
  const home = homeOf(found!, { name: given(values, 'place-name'), region: given(values, 'region') });
  const checked = (flag: string, fault: (typed: string) => string | undefined, otherwise: string) =>
    flagGiven(given(values, flag) ?? otherwise, flag, fault);
  const containers = partsOf(pots).map(each => flagGiven(each, 'containers', faults.pot));
  const listedForms = given(values, 'forms');
  return {
    name: flagGiven(name, 'name', faults.name),
    home,
    address: checked('address', faults.address, 'https://trees.example'),
    email: given(values, 'email') && flagGiven(given(values, 'email')!, 'email', faults.email),
    timeZone: checked('time-zone', faults.timeZone, Intl.DateTimeFormat().resolvedOptions().timeZone),
    currency: checked('currency', faults.currency, home.country === 'US' ? 'USD' : ''),
    species: speciesGiven(raised, species),
    forms: listedForms === undefined ? [...forms] : listGiven(listedForms, forms, 'form'),
    containers,
    days: daysGiven(given(values, 'days') ?? 'mon,tue'),
    transitDays: transitGiven(given(values, 'transit-days')),
    notTo: partsOf(given(values, 'not-to') ?? ''),
    price: Number(flagGiven(price, 'price', faults.price)),
    pricePot: checked('price-pot', faults.pot, containers.includes('#1') ? '#1' : containers[0]!),
  };
}

export function settingsOf(answers: YardAnswers, today: Day): YardSettings {
  const { home, days, price, pricePot, containers, ...rest } = answers;
  return {
    ...rest,
    home: home.id,
    days: days as SendingDay[],
    containers: [...new Set([...containers, pricePot])],
    price: { amount: price, container: pricePot },
    inches: home.country === 'US',
    today,
  };
}

/** Throws a UsageError for what is missing or wrong. */
export function treeGiven(
  values: Values,
  answers: YardAnswers,
  today: Day,
  dayOf: (text: string | undefined) => Day | undefined,
): FirstTree {
  const [name, flavor, length, width, method, raised, container] = needed(values, [
    'cultivar',
    'flavor',
    'length',
    'width',
    'method',
    'raised',
    'container',
  ]) as [string, string, string, string, string, string, string];
  const known = {
    name,
    species: wordGiven(given(values, 'cultivar-species') ?? answers.species[0]!, answers.species, 'species'),
    flavor,
    mothers: countGiven(given(values, 'mothers') ?? '0', '--mothers', 0),
    origin: given(values, 'origin'),
  };
  return {
    cultivar: requestOf(known, values as Record<string, string | undefined>, length, width),
    lot: {
      method: wordGiven(method, methods, 'method'),
      raised: countGiven(raised, '--raised'),
      container: flagGiven(container, 'container', faults.pot),
      started: dayOf(given(values, 'started')) ?? today,
      severed: dayOf(given(values, 'severed')),
      rootstock: given(values, 'rootstock'),
      forms: answers.forms,
    },
  };
}

export async function treeAsked(
  yard: YardToAddTo,
  answers: YardAnswers,
  ask: Ask,
  today: Day,
): Promise<FirstTree> {
  return {
    cultivar: await askCultivar(yard, ask),
    lot: await askLot(yard, ask, { today, usual: answers.forms }),
  };
}
