/**
 * Who bought, who has plants set aside and who waits: tables of the private folder. They name people, so nothing of them is ever published,
 * and they are no part of the records the site is made from.
 */

import type { Day } from '../days.ts';
import type { Form } from './common.ts';

/** File private/sales.csv: one row for each sale. */
export const saleColumns = {
  day: 'The day of the sale.',
  lot: 'Id of the lot.',
  plants: 'How many plants.',
  form: 'leafed-pot, dormant-pot or bare-root.',
  price: 'What one plant was sold for, such as 45 or 45.50.',
  to: 'Who bought them.',
  note: 'Anything else.',
} as const;

/** File private/reservations.csv: plants set aside for a buyer. */
export const reservationColumns = {
  since: 'The day they were set aside.',
  lot: 'Id of the lot.',
  plants: 'How many plants.',
  until: 'The last day they are kept.',
  to: 'For whom.',
  note: 'Anything else.',
} as const;

/** File private/waiting.csv: people who wait for a cultivar. */
export const waitingColumns = {
  since: 'The day they asked.',
  cultivar: 'Id of the cultivar.',
  plants: 'How many plants.',
  form: 'leafed-pot, dormant-pot or bare-root; blank where any will do.',
  to: 'Who asked.',
  note: 'Anything else.',
} as const;

interface Row {
  plants: number;
  to: string | null;
  note: string | null;
  /** 1-based line in the file. */
  line: number;
}

export interface Sale extends Row {
  day: Day;
  lot: string;
  form: Form | null;
  /** Minor units of the yard's currency for one plant; null where it was not written down. */
  priceMinor: number | null;
}

export interface Reservation extends Row {
  since: Day;
  lot: string;
  until: Day | null;
}

export interface Waiting extends Row {
  since: Day;
  cultivar: string;
  form: Form | null;
}

export interface Orders {
  sales: Sale[];
  reservations: Reservation[];
  waiting: Waiting[];
}
