/** The price of one form of a lot: rungs of the ladder from the species' base price, each step told, never below cost. */

import { dayInWords } from '../days.ts';
import { currencyDecimals, fromMajor, priceInWords } from '../money.ts';
import type { Answer, Form, Reason } from '../records/common.ts';
import { containerClasses } from '../records/container.ts';
import type { Lot } from '../records/lot.ts';
import type { PriceSettings } from '../records/yard.ts';
import type { PriceTier, ScarcityClass } from './answers.ts';
import { nearestRung, roundPrice, rungValue } from './ladder.ts';

export interface TierQuestion {
  prices: PriceSettings;
  currency: string;
  /** Base price of the species, major units. */
  base: number;
  speciesName: string;
  form: Form;
  classIndex: number;
  scarcity: ScarcityClass;
  /** Private floor, major units; null where the yard keeps none. */
  floor: number | null;
  own: Lot['price'];
}

/** Rungs that a price may climb to its floor: more than twenty decades are a mistake in the records, not a price. */
const MOST_RUNGS = 400;

/** Told where a price is lifted to what the yard needs at least, which itself is private. */
export const FLOOR_WORDS = 'The yard sells no such tree for less.';

const formNames: Record<Form, string> = {
  'leafed-pot': 'Leafed in a pot',
  'dormant-pot': 'Dormant in a pot',
  'bare-root': 'Bare-root',
};

function rungsInWords(rungs: number): string {
  if (rungs === 0) return 'no change';
  return `${Math.abs(rungs)} ${Math.abs(rungs) === 1 ? 'rung' : 'rungs'} ${rungs > 0 ? 'up' : 'down'}`;
}

const ours = (text: string): Reason => ({ text, standing: 'ours' });

/**
 * The price tier. Larger or scarcer is never cheaper. An own price replaces the computed one, with its reason and its distance in
 * rungs; below the floor it is lifted to the next rung above it.
 */
export function tierOf(question: TierQuestion): Answer<PriceTier> {
  const { prices, currency, base, form, classIndex, scarcity, floor, own } = question;
  const { series, rounding } = prices;
  const minor = (major: number) => fromMajor(major, currency);
  const words = (major: number) => priceInWords({ minor: minor(major), currency });
  const priceAt = (rung: number) => roundPrice(rounding, rungValue(series, baseRung + rung));
  const floorMinor = floor === null ? 0 : Math.ceil(floor * 10 ** currencyDecimals(currency) - 1e-6);

  const baseRung = nearestRung(series, base);
  const sizeSteps = (classIndex - prices.baseClassIndex) * prices.stepsPerSize;
  const scarcitySteps = scarcity * prices.stepsPerScarcity;
  const formSteps = prices.formSteps[form];
  const because: Reason[] = [
    ours(
      `Base price, ${question.speciesName} in ${containerClasses[prices.baseClassIndex]!.name}: ${words(rungValue(series, baseRung))}.`,
    ),
    ours(`Size ${containerClasses[classIndex]!.name}: ${rungsInWords(sizeSteps)}.`),
    ours(`Scarcity ${scarcity} of 4: ${rungsInWords(scarcitySteps)}.`),
    ours(`${formNames[form]}: ${rungsInWords(formSteps)}.`),
  ];

  /** The lowest rung from one up whose price is not below the floor. */
  const heldAtFloor = (wanted: number) => {
    let held = wanted;
    while (minor(priceAt(held)) < floorMinor && held - wanted < MOST_RUNGS) held += 1;
    return held;
  };
  const wanted = sizeSteps + scarcitySteps + formSteps;
  const rung = heldAtFloor(wanted);
  const notBelow = ours(FLOOR_WORDS);
  if (rung > wanted) because.push(notBelow);
  because.push(
    ours(`On the ladder ${words(rungValue(series, baseRung + rung))}, rounded to ${words(priceAt(rung))}.`),
  );
  if (!own)
    return {
      answer: { rung, price: { minor: minor(priceAt(rung)), currency }, overrideRungs: null },
      because,
    };

  const rungOfOwn = nearestRung(series, Math.max(own.minor, 1) / 10 ** currencyDecimals(currency)) - baseRung;
  const tooLow = own.minor < floorMinor;
  // A price lifted to the floor itself would tell the floor; the next rung does not.
  const ownRung = tooLow ? heldAtFloor(rungOfOwn) : rungOfOwn;
  const price = { minor: tooLow ? minor(priceAt(ownRung)) : own.minor, currency };
  const overrideRungs = ownRung - rung;
  because.push(
    ours(
      `This lot has a price of its own, ${rungsInWords(overrideRungs)} from that${own.until ? `, until ${dayInWords(own.until)}` : ''}: ${own.why}`,
    ),
  );
  if (tooLow) because.push(notBelow);
  return { answer: { rung: ownRung, price, overrideRungs }, because };
}
