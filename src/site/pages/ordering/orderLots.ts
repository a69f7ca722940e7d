/** What the list of an order has to know of every lot that is for sale; made for the script of this site, the documented file is stock.json. */

import { shortAddress } from '../../../core/addresses/paths.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { CartonFit } from '../../../core/lots/answers.ts';
import type { OrderedTrees } from '../../../core/lots/orderParcels.ts';
import type { Form } from '../../../core/records/common.ts';
import type { Delivery } from '../../../core/records/delivery.ts';
import type { Carton, ParcelRule } from '../../../core/records/yard.ts';
import { lotPath } from '../../addresses/paths.ts';
import { sentNow } from '../../parts/sentNow.ts';
import { stateView } from '../../words/state.ts';
import { formWords } from '../../words/words.ts';
import { cartonViews } from '../lots/lot.ts';

export interface OrderForm {
  form: Form;
  name: string;
  /** Minor units; null: the yard has given none. */
  price: number | null;
  /** Ready in the yard today. */
  ready: boolean;
  /** How it stands and how it is sent. */
  words: string;
  /** Carton and what carriers bill it as. */
  carton: string;
  /** How one tree is packed; null where nothing is known of it. */
  packed: Pick<OrderedTrees, 'carton' | 'perCarton' | 'treeLb'> | null;
}

export interface OrderLot {
  lot: string;
  cultivar: string;
  left: number;
  /** Whole address, the shortest there is. */
  address: string;
  forms: OrderForm[];
}

export interface OrderFile {
  currency: string;
  email: string | null;
  yard: string;
  cartons: Pick<Carton, 'name' | 'outerIn' | 'tareLb'>[];
  /** The rows that parcels are weighed by: that of the delivery prices, or all where the yard gives no prices. */
  rules: ParcelRule[];
  delivery: Delivery | null;
  lots: OrderLot[];
}

function packedIn(fit: CartonFit | undefined, cartons: readonly Carton[]): OrderForm['packed'] {
  if (fit === undefined) return null;
  const { carton, plants, weightLb } = fit;
  const tareLb = cartons.find(({ name }) => name === carton)?.tareLb ?? 0;
  return { carton, perCarton: plants, treeLb: Number((weightLb - tareLb).toFixed(2)) };
}

export function orderFile(all: Catalogue, absolute: (path: string) => string): OrderFile {
  const { yard, codes, asOf } = all;
  const lots = all.lots
    .filter(({ soldOut }) => !soldOut)
    .map((entry): OrderLot => {
      const { lot, cultivar, stock, forms, tiers } = entry;
      const path = lotPath(lot.id);
      const code = codes.get(path);
      const cartons = cartonViews(entry);
      return {
        lot: lot.id,
        cultivar: cultivar.name,
        left: stock.free,
        address: absolute(code === undefined ? path : shortAddress(code)),
        forms: forms.map(answer => {
          const { form } = answer;
          const carton = cartons.find(({ formName }) => formName === formWords[form]);
          return {
            form,
            name: formWords[form],
            price: tiers[form]?.answer.price.minor ?? null,
            ready: answer.state === 'ready',
            words: stateView(answer, asOf, sentNow(all)[form]).words,
            packed: packedIn(entry.cartons[form]?.answer, yard.cartons),
            carton: carton === undefined ? '' : [carton.carton, ...carton.billable].join('; '),
          };
        }),
      };
    });
  const { currency, contact, name, cartons, parcelRules, delivery } = yard;
  return {
    currency,
    email: contact.email,
    yard: name,
    cartons: cartons.map(({ name: called, outerIn, tareLb }) => ({ name: called, outerIn, tareLb })),
    rules: parcelRules.filter(rule => delivery === null || rule.name === delivery.billedBy),
    delivery,
    lots,
  };
}
