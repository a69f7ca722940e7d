/** places/ID.json: what is computed about one place for the coming year, for machines. */

import { z } from 'zod';
import type { Catalogue } from '../core/catalogue.ts';
import type { Place } from '../core/records/place.ts';
import { openDay, openId, publishedSchema } from './openFile.ts';
import { type FormRuns, openSending, openSendingOf } from './openSending.ts';

/** Raised when a field changes its meaning or goes away; new fields do not raise it. */
export const PLACE_FILE_VERSION = 1;

export const placeFileShape = z.strictObject({
  version: z.literal(PLACE_FILE_VERSION),
  asOf: openDay.describe('The day the weeks are counted from.'),
  place: openId.describe('Id in places.json.'),
  name: z.string(),
  sending: openSending.describe(
    'Weeks of the coming year in which trees of each form are sent here, by the weather of both ends; empty where the yard does not send.',
  ),
});

export type OpenPlaceFile = z.infer<typeof placeFileShape>;

/** The content of places/ID.json. */
export function openPlaceFile(
  { asOf }: Pick<Catalogue, 'asOf'>,
  { id, name }: Pick<Place, 'id' | 'name'>,
  sending: readonly FormRuns[],
): OpenPlaceFile {
  return { version: PLACE_FILE_VERSION, asOf, place: id, name, sending: openSendingOf(sending) };
}

/** JSON Schema of places/ID.json, published as place.schema.json. */
export function placeFileSchema(): Record<string, unknown> {
  return publishedSchema(placeFileShape, 'One place in the coming year');
}
