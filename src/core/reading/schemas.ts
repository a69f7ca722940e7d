/** JSON Schemas of the records, for completion and help in editors. */

import { z } from 'zod';
import { writtenCultivar } from '../records/cultivar.ts';
import { writtenGuide } from '../records/guide.ts';
import { writtenLots } from '../records/lot.ts';
import { writtenPlace } from '../records/place.ts';
import { writtenPrivateCultivar, writtenPrivateLots, writtenPrivateYard } from '../records/private.ts';
import { writtenSpecies } from '../records/species.ts';
import { writtenVideo } from '../records/video.ts';
import { writtenYard } from '../records/yard.ts';

const written: Record<string, { schema: z.ZodType; title: string }> = {
  yard: { schema: writtenYard, title: 'content/yard.yaml' },
  species: { schema: writtenSpecies, title: 'content/species/ID.yaml' },
  cultivar: { schema: writtenCultivar, title: 'Front matter of content/cultivars/ID.md' },
  lots: { schema: writtenLots, title: 'content/lots/*.yaml' },
  place: { schema: writtenPlace, title: 'content/places/ID.yaml' },
  guide: { schema: writtenGuide, title: 'Front matter of content/guides/ID.md' },
  video: { schema: writtenVideo, title: 'content/videos/ID.yaml' },
  'private-yard': { schema: writtenPrivateYard, title: 'content/private/yard.yaml' },
  'private-cultivar': { schema: writtenPrivateCultivar, title: 'content/private/cultivars/ID.yaml' },
  'private-lots': { schema: writtenPrivateLots, title: 'content/private/lots/*.yaml' },
};

/** File name to text of a JSON Schema (draft-07) of what a grower may write. */
export function recordSchemas(): Map<string, string> {
  return new Map(
    Object.entries(written).map(([name, { schema, title }]) => {
      const { $schema, ...rest } = z.toJSONSchema(schema, { io: 'input', target: 'draft-7' });
      return [`${name}.schema.json`, `${JSON.stringify({ $schema, title, ...rest }, null, 2)}\n`];
    }),
  );
}
