/** What the yard asks for delivery: the part `delivery` of content/yard.yaml. */

import { z } from 'zod';
import type { Day } from '../days.ts';
import { fromMajor } from '../money.ts';
import { amount, date, text } from './common.ts';

export const writtenDelivery = z
  .strictObject({
    billed_by: text(
      'Name of the row of parcel_rules by which a parcel is weighed for these prices: the larger of its weight and its weight by size counts.',
      60,
    ),
    checked: date('When these prices were last looked through; customers read it.'),
    areas: z
      .array(
        z.strictObject({
          name: text('What customers read, such as "The Southeast".', 60),
          regions: z
            .array(text('State or province by its full name, or the ISO 3166 code of a country.', 60))
            .min(1)
            .optional()
            .describe(
              'What belongs to the area. Left out on the last line only: everywhere else you send to.',
            ),
          prices: z
            .array(
              z.strictObject({
                up_to_lb: z.number().min(0.1).max(500).describe('Parcels billed as this weight or less, lb.'),
                price: amount('What one such parcel costs, in quotes, such as "14.50".'),
              }),
            )
            .min(1)
            .describe('From light to heavy; a heavier parcel is asked for.'),
        }),
      )
      .min(1),
  })
  .describe(
    'Your own delivery prices for one parcel, by area and billed weight. The list of trees to order works them out; left out, it says cartons and weights only.',
  );

export interface DeliveryArea {
  name: string;
  /** Regions and country codes; null: everywhere else. */
  regions: string[] | null;
  /** From light to heavy; prices of one parcel in minor units. */
  prices: { upToLb: number; minor: number }[];
}

export interface Delivery {
  /** Name of a row of the parcel rules. */
  billedBy: string;
  checked: Day;
  areas: DeliveryArea[];
}

export function normaliseDelivery(written: z.infer<typeof writtenDelivery>, currency: string): Delivery {
  return {
    billedBy: written.billed_by,
    checked: written.checked as Day,
    areas: written.areas.map(({ name, regions, prices }) => ({
      name,
      regions: regions ?? null,
      prices: prices.map(({ up_to_lb, price }) => ({
        upToLb: up_to_lb,
        minor: fromMajor(Number(price), currency),
      })),
    })),
  };
}
