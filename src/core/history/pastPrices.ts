/** What the forms of a lot cost on any day of the past, by today's price settings and what was known on that day. */

import type { Day } from '../days.ts';
import { type LotBench, tiersOf } from '../lots/answerLot.ts';
import type { PriceTier, ScarcityClass, SizeClass } from '../lots/answers.ts';
import { costFloor } from '../lots/cost.ts';
import { noSupply, scarcityOf, withLot } from '../lots/scarcity.ts';
import { currencyDecimals } from '../money.ts';
import type { Answer, Form } from '../records/common.ts';
import type { Cultivar } from '../records/cultivar.ts';
import type { Species } from '../records/species.ts';
import type { LotPast } from './past.ts';

export interface PastPrice {
  size: Answer<SizeClass>;
  scarcity: Answer<ScarcityClass>;
  tiers: Partial<Record<Form, Answer<PriceTier>>>;
}

/** A cultivar and all its lots. */
export interface Family {
  cultivar: Cultivar;
  species: Species;
  /** By id. */
  pasts: readonly LotPast[];
}

export interface FamilyPrices {
  /** Everything about the price of a lot on a day, with reasons. */
  priceOn(past: LotPast, on: Day): PastPrice;
  /** Prices of the lot's forms in minor units: equal texts are equal prices. Far cheaper than the answers. */
  inShort(past: LotPast, on: Day): string;
}

/** Prices before a floor lifts them, shared by all families: thousands of lots have few different ones. */
export type PlainPrices = Map<string, readonly number[]>;

export function familyPrices(
  { cultivar, species, pasts }: Family,
  bench: LotBench,
  plainPrices: PlainPrices,
): FamilyPrices {
  const { costs, today } = bench;
  const minorPerMajor = 10 ** currencyDecimals(today.yard.currency);
  const success = (past: LotPast) => species.propagation[past.lot.method]?.success.value ?? null;
  const scarcities = new Map<Day, Answer<ScarcityClass>>();
  const scarcityOn = (on: Day): Answer<ScarcityClass> => {
    let scarcity = scarcities.get(on);
    if (!scarcity) {
      const supply = pasts
        .filter(({ lot }) => lot.started <= on)
        .reduce((sum, past) => withLot(sum, past.lot, past.stockOn(on), on), noSupply);
      scarcity = scarcityOf(cultivar, supply);
      scarcities.set(on, scarcity);
    }
    return scarcity;
  };
  const tiers = (past: LotPast, on: Day, classIndex: number, scarcity: ScarcityClass, floor: boolean) =>
    tiersOf(
      past.lot,
      species,
      { ...bench, costs: floor ? costs : null, today: past.todayOn(on) },
      classIndex,
      scarcity,
    );
  const minors = (of: Partial<Record<Form, Answer<PriceTier>>>) =>
    Object.values(of).map(({ answer }) => answer.price.minor);

  const shortOn = (past: LotPast, on: Day): string => {
    const { lot } = past;
    const { classIndex } = past.sizeOn(on).answer;
    const scarcity = scarcityOn(on).answer;
    const key = `${species.id} ${classIndex} ${scarcity} ${lot.forms} ${lot.price?.minor ?? ''}`;
    let plain = plainPrices.get(key);
    if (!plain) {
      plain = minors(tiers(past, on, classIndex, scarcity, false));
      plainPrices.set(key, plain);
    }
    const floor = costs ? costFloor(lot, costs, success(past), on) * minorPerMajor : 0;
    const lifted = plain.some(minor => minor < floor);
    return (lifted ? minors(tiers(past, on, classIndex, scarcity, true)) : plain).join(' ');
  };
  const shorts = new Map<string, string>();

  return {
    priceOn(past, on) {
      const [size, scarcity] = [past.sizeOn(on), scarcityOn(on)];
      return {
        size,
        scarcity,
        tiers: tiers(past, on, size.answer.classIndex, scarcity.answer, true),
      };
    },
    inShort(past, on) {
      const key = `${on} ${past.lot.id}`;
      let short = shorts.get(key);
      if (short === undefined) {
        short = shortOn(past, on);
        shorts.set(key, short);
      }
      return short;
    },
  };
}
