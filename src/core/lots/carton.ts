/** The smallest carton that takes a plant, cut back to the sending height, and what the parcel is billed as. */

import type { Answer, Form, Reason } from '../records/common.ts';
import type { Container } from '../records/container.ts';
import type { Carton, Yard } from '../records/yard.ts';
import { cmToInches, kgToPounds, lengthInWords, weightInWords } from '../units.ts';
import type { CartonFit } from './answers.ts';
import { billingOf } from './parcel.ts';
import { packedPlant, type TransitPlant } from './plantInTransit.ts';

/** How many plants lie side by side along the longest side of a carton. */
export function plantsInCarton({ innerIn: [length, width, height] }: Carton, plant: TransitPlant): number {
  if (cmToInches(plant.lengthCm) > length) return 0;
  const across = cmToInches(plant.acrossCm);
  return Math.floor(width / across) * Math.floor(height / across);
}

const outerVolume = ({ outerIn: [a, b, c] }: Carton) => a * b * c;

/** Cartons from the smallest outer volume up; of two alike the one named first. */
export function smallestFirst(cartons: readonly Carton[]): Carton[] {
  return [...cartons].sort((a, b) => outerVolume(a) - outerVolume(b));
}

/** The carton for one plant of a form. `heightCm` null: not measured, so the full sending height is allowed for. */
export function cartonFor(
  form: Form,
  heightCm: number | null,
  pot: Container | null,
  classIndex: number,
  { sending, parcelRules }: Pick<Yard, 'sending' | 'parcelRules'>,
  /** As `smallestFirst` puts them. */
  cartons: readonly Carton[],
): Answer<CartonFit> {
  const tall = heightCm === null || heightCm > sending.cutBackCm;
  const travelsAt = tall ? sending.cutBackCm : heightCm;
  const plant = packedPlant(form, travelsAt, pot?.liters ?? null, classIndex);
  const cutBackToCm = tall && heightCm !== null ? sending.cutBackCm : null;
  const because: Reason[] = [];
  if (heightCm === null) {
    because.push({
      text: `Not measured yet: ${lengthInWords(travelsAt)} are allowed for.`,
      standing: 'ours',
    });
  } else if (tall) {
    because.push({
      text: `${lengthInWords(heightCm)} tall; cut back to ${lengthInWords(sending.cutBackCm)} for the carton.`,
      standing: 'practice',
    });
  }
  because.push({
    text: `Packed it takes ${lengthInWords(plant.lengthCm)} by ${lengthInWords(plant.acrossCm)} and weighs about ${weightInWords(plant.weightKg)}.`,
    standing: 'ours',
  });

  const carton = cartons.find(candidate => plantsInCarton(candidate, plant) > 0) ?? null;
  if (!carton) {
    because.push({
      text: 'No carton of the yard takes it: to be picked up, or asked for.',
      standing: 'ours',
    });
    const weightLb = kgToPounds(plant.weightKg);
    return { answer: { carton: null, plants: 0, cutBackToCm, weightLb, billable: [] }, because };
  }
  const plants = plantsInCarton(carton, plant);
  const weightLb = kgToPounds(plant.weightKg) + carton.tareLb;
  because.push({
    text: `${carton.name} is the smallest carton that takes it; it holds ${plants}.`,
    standing: 'ours',
  });
  const billable = parcelRules.map(rule => {
    const { billableLb, over } = billingOf(carton.outerIn, weightLb, rule);
    return { rule: rule.name, billableLb, over };
  });
  return { answer: { carton: carton.name, plants, cutBackToCm, weightLb, billable }, because };
}
