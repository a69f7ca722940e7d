/** Everything computed about one lot on one day. */

import type { Answer, Form } from '../records/common.ts';
import type { Lot } from '../records/lot.ts';
import type { Species } from '../records/species.ts';
import type { Carton, Costs, Yard } from '../records/yard.ts';
import type { CartonFit, LotAnswers, PriceTier, ScarcityClass, StockCount } from './answers.ts';
import { cartonFor, smallestFirst } from './carton.ts';
import { costFloor } from './cost.ts';
import { lookNextOf } from './lookNext.ts';
import { answerForms } from './readiness.ts';
import { signsOf } from './signs.ts';
import { sizeOf } from './sizeClass.ts';
import { pottingOn, type YardDay } from './subject.ts';
import { tierOf } from './tier.ts';
import type { Sighting } from './walkIndex.ts';

/** What all lots of a yard are answered with. */
export interface LotBench {
  today: YardDay;
  /** Private: read here, never passed on. */
  costs: Costs | null;
  cartons: readonly Carton[];
}

export function lotBench(today: YardDay): LotBench {
  return { today, costs: today.yard.costs, cartons: smallestFirst(today.yard.cartons) };
}

function perForm<T>(forms: readonly Form[], answer: (form: Form) => T): Partial<Record<Form, T>> {
  return Object.fromEntries(forms.map(form => [form, answer(form)]));
}

/** The price tier of each form of a lot in a size class (its place in `containerClasses`) and a class of scarcity. */
function tiersOf(
  lot: Lot,
  species: Species,
  { today, costs }: LotBench,
  classIndex: number,
  scarcity: ScarcityClass,
): Partial<Record<Form, Answer<PriceTier>>> {
  const { prices, currency }: Yard = today.yard;
  const base = prices.base[species.id];
  if (base === undefined) return {};
  const success = species.propagation[lot.method]?.success.value ?? null;
  const floor = costs && costFloor(lot, costs, success, today.asOf);
  const speciesName = species.common[0] ?? species.botanical;
  const own = lot.price && (lot.price.until === null || today.asOf <= lot.price.until) ? lot.price : null;
  return perForm(lot.forms, form =>
    tierOf({ prices, currency, base, speciesName, form, classIndex, scarcity, floor, own }),
  );
}

/** The lot's own stock is counted first, for all lots, since scarcity looks at the cultivar as a whole. */
export function answerLot(
  lot: Lot,
  species: Species,
  sightings: readonly Sighting[],
  stock: StockCount,
  scarcity: Answer<ScarcityClass>,
  bench: LotBench,
): LotAnswers {
  const { today, cartons } = bench;
  const signs = signsOf(sightings);
  const size = sizeOf(lot, signs, today.asOf, today.yard.prices.baseClassIndex);
  const { classIndex, heightCm } = size.answer;
  const pot = pottingOn(lot, today.asOf)?.container ?? null;
  const forms = answerForms({ lot, species, signs, stock }, today);
  const cartonFits: Partial<Record<Form, Answer<CartonFit>>> = perForm(lot.forms, form =>
    cartonFor(form, heightCm, pot, classIndex, today.yard, cartons),
  );
  return {
    signs,
    stock,
    forms,
    size,
    scarcity,
    tiers: tiersOf(lot, species, bench, classIndex, scarcity.answer),
    cartons: cartonFits,
    lookNext: lookNextOf(forms, today),
  };
}
