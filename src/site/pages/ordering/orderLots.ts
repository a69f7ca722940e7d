/** What the list of an order has to know of every lot that is for sale; made for the script of this site, the documented file is stock.json. */

import { shortAddress } from '../../../core/addresses/paths.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { Form } from '../../../core/records/common.ts';
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
  lots: OrderLot[];
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
            carton: carton === undefined ? '' : [carton.carton, ...carton.billable].join('; '),
          };
        }),
      };
    });
  return { currency: yard.currency, email: yard.contact.email, yard: yard.name, lots };
}
