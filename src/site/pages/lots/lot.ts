/** A lot's page: exactly what the buyer gets, and why it is as it is. */

import type { LotEntry } from '../../../core/catalogue.ts';
import { type Day, dayInWords } from '../../../core/days.ts';
import type { Gate, LotSigns, Seen } from '../../../core/lots/answers.ts';
import { gateNames } from '../../../core/lots/answers.ts';
import { priceInWords } from '../../../core/money.ts';
import type { Form, Reason } from '../../../core/records/common.ts';
import { caliperInWords, lengthInWords, poundsToKg, weightInWords } from '../../../core/units.ts';
import { gradeInWords, standInWords } from '../../words/measures.ts';
import {
  countInWords,
  formWords,
  gateWords,
  healthWords,
  leafWords,
  listInWords,
  lowerFirst,
  rootWords,
  scarcityWords,
  sentence,
  startedWords,
  whereWords,
  woodWords,
} from '../../words/words.ts';

export interface Fact {
  label: string;
  value: string;
}

function historyInWords({ lot }: LotEntry): string {
  const steps = [`${startedWords[lot.method]} ${dayInWords(lot.started)}`];
  if (lot.severed) steps.push(`severed ${dayInWords(lot.severed)}`);
  if (lot.lifted) steps.push(`lifted ${dayInWords(lot.lifted)}`);
  return sentence(steps.join(', '));
}

function potFact(entry: LotEntry): string {
  const last = entry.lot.pottings.at(-1);
  if (!last || entry.size.answer.container === null) return sentence(standInWords(entry));
  const liters = last.container.liters.toFixed(1);
  const volume = last.container.written.endsWith(' L') ? '' : ` (about ${liters} L)`;
  return `${last.container.written}${volume} since ${dayInWords(last.date)}`;
}

function measured(value: number | null, inWords: (value: number) => string, on: Day | null): string {
  if (value === null) return 'Not yet measured';
  return on === null ? inWords(value) : `${inWords(value)}, measured ${dayInWords(on)}`;
}

function leftFact({ stock }: LotEntry): string {
  const counted = stock.countedOn === null ? 'not yet counted' : `counted ${dayInWords(stock.countedOn)}`;
  const aside = stock.reserved > 0 ? `, and ${stock.reserved} set aside for buyers` : '';
  return `${stock.free} of ${stock.raised} raised${aside}, ${counted}`;
}

/** What one plant of the lot is, in the order a buyer asks. */
export function lotFacts(entry: LotEntry): Fact[] {
  const { lot, signs, size } = entry;
  const { heightCm, caliperMm, measuredOn } = size.answer;
  return [
    { label: 'Pot', value: potFact(entry) },
    { label: 'Height', value: measured(heightCm, lengthInWords, signs.heightCm?.on ?? measuredOn) },
    { label: 'Stem', value: measured(caliperMm, caliperInWords, signs.caliperMm?.on ?? measuredOn) },
    { label: 'Graded', value: sentence(gradeInWords(size.answer)) },
    { label: 'Roots', value: lot.rootstock === null ? 'Its own' : `Grafted on ${lot.rootstock}` },
    { label: 'Raised', value: historyInWords(entry) },
    { label: 'Left', value: leftFact(entry) },
  ];
}

/** What was seen on the last walks, newest sign of each kind, with its day. */
export function signFacts(signs: LotSigns): Fact[] {
  const kinds: [string, Seen<string> | null][] = [
    ['Roots', worded(signs.roots, rootWords)],
    ['Leaves', worded(signs.leaves, leafWords)],
    ['Wood', worded(signs.wood, woodWords)],
    ['Health', worded(signs.health, healthWords)],
    ['Stands', worded(signs.where, whereWords)],
  ];
  return kinds.flatMap(([label, seen]) =>
    seen === null ? [] : [{ label, value: `${sentence(seen.value)}, ${dayInWords(seen.on)}` }],
  );
}

function worded<T extends string>(seen: Seen<T> | null, words: Record<T, string>): Seen<string> | null {
  return seen === null ? null : { value: words[seen.value], on: seen.on };
}

/** One question about a lot with the answer and what it rests on. */
export interface Why {
  question: string;
  answer: string;
  because: Reason[];
  /** Gives way where the yard does not send. */
  isPrice?: boolean;
}

function gateAnswer(gate: Gate): string {
  if (gate.state === 'passed') return 'Yes';
  if (gate.state === 'look') return 'Someone needs to look';
  return gate.state === 'opens' ? 'Not yet' : 'No';
}

function sameGate(a: Gate, b: Gate): boolean {
  return (
    a.state === b.state &&
    a.range?.from === b.range?.from &&
    a.range?.to === b.range?.to &&
    a.because.length === b.because.length &&
    a.because.every((reason, index) => reason.text === b.because[index]?.text)
  );
}

/** Readiness, gate by gate; a gate that stands the same for several forms is told once. Of a sold lot only the count matters. */
export function readinessWhy({ forms, soldOut }: LotEntry): Why[] {
  return gateNames.flatMap(name => {
    if (soldOut && name !== 'counted') return [];
    const told: { gate: Gate; forms: Form[] }[] = [];
    for (const answer of forms) {
      const gate = answer.gates.find(candidate => candidate.name === name);
      if (!gate) continue;
      const same = told.find(other => sameGate(other.gate, gate));
      if (same) same.forms.push(answer.form);
      else told.push({ gate, forms: [answer.form] });
    }
    return told.map(({ gate, forms: shared }) => ({
      question:
        told.length === 1
          ? gateWords[name]
          : `${gateWords[name]} (${listInWords(shared.map(form => lowerFirst(formWords[form])))})`,
      answer: gateAnswer(gate),
      because: gate.because,
    }));
  });
}

/** Size, scarcity and the price of each form; a sold lot has no price any more. */
export function gradeWhy({ size, scarcity, tiers, forms, soldOut }: LotEntry): Why[] {
  const prices = (soldOut ? [] : forms).flatMap(({ form }) => {
    const tier = tiers[form];
    if (!tier) return [];
    return [{ form, answer: priceInWords(tier.answer.price), because: tier.because }];
  });
  return [
    { question: 'Grade', answer: sentence(gradeInWords(size.answer)), because: size.because },
    { question: 'Scarcity', answer: scarcityWords[scarcity.answer], because: scarcity.because },
    ...prices.map(({ form, answer, because }) => ({
      question: `Price, ${lowerFirst(formWords[form])}`,
      answer,
      because,
      isPrice: true,
    })),
  ];
}

export interface CartonView {
  formName: string;
  carton: string;
  cutBack: string;
  weight: string;
  /** One line for each rule of the carriers. */
  billable: string[];
  because: Reason[];
}

/** How each form travels. */
export function cartonViews({ cartons, forms }: LotEntry): CartonView[] {
  return forms.flatMap(({ form }) => {
    const fit = cartons[form];
    if (!fit) return [];
    const { carton, plants, cutBackToCm, weightLb, billable } = fit.answer;
    const weightOf = (pounds: number) => weightInWords(poundsToKg(pounds));
    return [
      {
        formName: formWords[form],
        carton: carton === null ? 'None is long enough' : `${carton}, ${countInWords(plants, 'tree')}`,
        cutBack: cutBackToCm === null ? 'Not cut back' : lengthInWords(cutBackToCm),
        weight: weightOf(weightLb),
        billable: billable.map(({ rule, billableLb, over }) => {
          const limits = over.length === 0 ? '' : `, over its limit of ${listInWords(over)}`;
          return `${rule}: ${weightOf(billableLb)}${limits}`;
        }),
        because: fit.because,
      },
    ];
  });
}
