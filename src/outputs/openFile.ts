/** What the open files share: schema pieces, and the JSON Schema that is published beside each file. */

import { z } from 'zod';
import type { Money } from '../core/money.ts';
import { type Reason, standings } from '../core/records/common.ts';

/** Makes an absolute address of a path on the site. */
export type AddressOf = (path: string) => string;

export const openId = z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/);
export const openDay = z.iso.date();
export const openUrl = z.url();

export const openPrice = z
  .strictObject({
    amount: z.int().min(0).describe('Whole minor units of the currency, such as cents.'),
    currency: z.string().length(3).describe('ISO 4217 code.'),
  })
  .describe('Price of one plant, without carriage.');

export const openReasons = z
  .array(
    z.strictObject({
      text: z.string().min(1),
      standing: z
        .enum(standings)
        .describe(
          'seen in the yard, published, common practice, our working figure, or modeled from weather.',
        ),
      source: z.string().optional().describe('Where a published figure comes from.'),
    }),
  )
  .describe('The evidence.');

export function priceOf({ minor, currency }: Money): z.infer<typeof openPrice> {
  return { amount: minor, currency };
}

export function reasonsOf(because: readonly Reason[]): z.infer<typeof openReasons> {
  return because.map(({ text, standing, source }) =>
    source === undefined ? { text, standing } : { text, standing, source },
  );
}

/** The published JSON Schema (draft 2020-12) of an open file, with a title. */
export function publishedSchema(schema: z.ZodType, title: string): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'output' });
  return { $schema, title, ...rest };
}
