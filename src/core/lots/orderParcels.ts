/** The parcels of an order, what they are billed as, and what the yard asks for delivering them. */

import type { Delivery, DeliveryArea } from '../records/delivery.ts';
import type { Carton, ParcelRule } from '../records/yard.ts';
import { billingOf } from './parcel.ts';

/** Trees of one lot and form. */
export interface OrderedTrees {
  form: string;
  count: number;
  /** Name of the smallest carton that takes one; null: none of the yard does. */
  carton: string | null;
  /** How many such trees the carton takes. */
  perCarton: number;
  /** Weight of one tree as it is packed, without the carton, lb. */
  treeLb: number;
}

export interface Parcel {
  carton: string;
  trees: number;
  /** With the carton, lb. */
  weightLb: number;
}

export interface Packed {
  parcels: Parcel[];
  /** Trees that no carton of the yard takes. */
  unpacked: number;
}

/**
 * Trees of one form that lie in the same carton in the same number share cartons, the heavier ones first; nothing else is put together,
 * so that the number of parcels is one the yard can keep to.
 */
export function parcelsOf(
  ordered: readonly OrderedTrees[],
  cartons: readonly Pick<Carton, 'name' | 'tareLb'>[],
): Packed {
  const shared = new Map<
    string,
    { carton: Pick<Carton, 'name' | 'tareLb'>; perCarton: number; trees: number[] }
  >();
  let unpacked = 0;
  for (const { form, count, carton: name, perCarton, treeLb } of ordered) {
    const carton = cartons.find(each => each.name === name);
    if (carton === undefined || perCarton < 1) {
      unpacked += count;
      continue;
    }
    const key = JSON.stringify([form, name, perCarton]);
    const group = shared.get(key) ?? { carton, perCarton, trees: [] };
    shared.set(key, group);
    for (let tree = 0; tree < count; tree += 1) group.trees.push(treeLb);
  }
  const parcels = [...shared.values()].flatMap(({ carton, perCarton, trees }): Parcel[] => {
    const heavyFirst = trees.toSorted((a, b) => b - a);
    return Array.from({ length: Math.ceil(trees.length / perCarton) }, (_, index) => {
      const inside = heavyFirst.slice(index * perCarton, (index + 1) * perCarton);
      return {
        carton: carton.name,
        trees: inside.length,
        weightLb: inside.reduce((sum, lb) => sum + lb, carton.tareLb),
      };
    });
  });
  return { parcels, unpacked };
}

/** What one parcel is billed as by a rule, whole lb; throws a RangeError for a carton the yard does not have. */
export function billedLb(
  { carton: name, weightLb }: Parcel,
  cartons: readonly Pick<Carton, 'name' | 'outerIn'>[],
  rule: ParcelRule,
): number {
  const carton = cartons.find(each => each.name === name);
  if (carton === undefined) throw new RangeError(`no carton "${name}"`);
  return billingOf(carton.outerIn, weightLb, rule).billableLb;
}

/** Where parcels go: a state or another division, empty where none is known, and an ISO 3166 code. */
export interface Whither {
  region: string;
  country: string;
}

/** The area of the delivery prices that a place belongs to: the one that names it, else the one for everywhere else; null where there is none. */
export function areaOf({ areas }: Delivery, { region, country }: Whither): DeliveryArea | null {
  const named = areas.find(({ regions }) => regions?.some(each => each === region || each === country));
  return named ?? areas.find(({ regions }) => regions === null) ?? null;
}

/** What one parcel of a billed weight (lb) costs in an area, in minor units; null: heavier than the prices go. */
export function parcelPrice({ prices }: DeliveryArea, billed: number): number | null {
  return prices.find(({ upToLb }) => billed <= upToLb)?.minor ?? null;
}
