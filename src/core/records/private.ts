/**
 * What only the yard may know, in a folder of its own that is not published with the rest: content/private/, or the folder that PRIVATE_DIR
 * names. The same keys may stand in the public files instead; a key in both places is an error.
 */

import { z } from 'zod';
import { count, id, text } from './common.ts';
import { writtenCosts } from './yard.ts';

const privateNote = () => text('For the yard only; never published.', 2000).optional();

/** File: private/yard.yaml. */
export const writtenPrivateYard = z.strictObject({
  costs: writtenCosts.optional(),
  private_note: privateNote(),
});
export type WrittenPrivateYard = z.infer<typeof writtenPrivateYard>;

/** Files: private/cultivars/ID.yaml, named after the cultivar. */
export const writtenPrivateCultivar = z.strictObject({
  requests: count('People waiting for it. Private: never published.', 100_000).optional(),
  private_note: privateNote(),
});
export type WrittenPrivateCultivar = z.infer<typeof writtenPrivateCultivar>;

/** Files: private/lots/*.yaml, each a list. */
export const writtenPrivateLots = z
  .array(
    z.strictObject({
      lot: id('Id of a lot.'),
      private_note: text('For the yard only; never published.', 2000),
    }),
  )
  .min(1);
export type WrittenPrivateLots = z.infer<typeof writtenPrivateLots>;
