/** cultivars.json: every cultivar with its traits and its lots. */

import { z } from 'zod';
import type { Catalogue, CultivarEntry } from '../core/catalogue.ts';
import {
  airClasses,
  crops,
  ripeningClasses,
  seasonClasses,
  summerClasses,
  winterClasses,
} from '../core/records/common.ts';
import {
  eyes,
  fleshColors,
  fruitShapes,
  pollinationHabits,
  skinColors,
  tendencies,
} from '../core/records/cultivar.ts';
import { type AddressOf, openDay, openId, openUrl, publishedSchema } from './openFile.ts';

/** Raised when a field changes its meaning or goes away; new fields do not raise it. */
const CULTIVARS_FILE_VERSION = 1;

const openCultivar = z.strictObject({
  id: openId,
  name: z.string(),
  species: openId,
  synonyms: z.array(z.string()),
  flavor: z.strictObject({ id: openId, name: z.string() }).describe("The yard's own flavor class."),
  ripening: z.enum(ripeningClasses),
  crops: z.array(z.enum(crops)),
  pollination: z
    .enum(pollinationHabits)
    .describe(
      'partner: needs another tree; wasp-main: the main crop needs the fig wasp; wasp-all: all crops do.',
    ),
  fruit: z.strictObject({
    skin: z.enum(skinColors),
    blush: z.enum(skinColors).nullable(),
    flesh: z.enum(fleshColors),
    shape: z.enum(fruitShapes),
    lengthMm: z.number(),
    widthMm: z.number(),
    eye: z.enum(eyes),
    splits: z.enum(tendencies).describe('How readily it splits after rain.'),
    rain: z.enum(['good', 'fair', 'poor']).describe('How well it stands rain while ripening.'),
  }),
  suits: z
    .strictObject({
      winter: z.array(z.enum(winterClasses)),
      season: z.array(z.enum(seasonClasses)),
      summer: z.array(z.enum(summerClasses)).nullable().describe('null: any, or not said.'),
      air: z.array(z.enum(airClasses)),
    })
    .describe('The kinds of place it is meant for, as the grower knows it.'),
  url: openUrl,
  lots: z.array(openId).describe('Lots in stock.json.'),
});

const cultivarsFileShape = z.strictObject({
  version: z.literal(CULTIVARS_FILE_VERSION),
  asOf: openDay,
  yard: z.string(),
  cultivars: z.array(openCultivar),
});

export type CultivarsFile = z.infer<typeof cultivarsFileShape>;

function openCultivarOf(
  { cultivar, species, flavor, lots }: CultivarEntry,
  addressOf: AddressOf,
): CultivarsFile['cultivars'][number] {
  const { id, name, synonyms, ripening, crops, pollination, fruit, suits } = cultivar;
  return {
    id,
    name,
    species: species.id,
    synonyms,
    flavor: { id: flavor.id, name: flavor.name },
    ripening,
    crops,
    pollination,
    fruit,
    suits,
    url: addressOf(`/cultivars/${id}/`),
    lots: lots.map(({ lot }) => lot.id).sort(),
  };
}

/** The content of cultivars.json. `addressOf` makes absolute addresses of paths. */
export function cultivarsFile({ asOf, yard, cultivars }: Catalogue, addressOf: AddressOf): CultivarsFile {
  return {
    version: CULTIVARS_FILE_VERSION,
    asOf,
    yard: yard.name,
    cultivars: cultivars.map(entry => openCultivarOf(entry, addressOf)),
  };
}

/** JSON Schema of cultivars.json, published as cultivars.schema.json. */
export function cultivarsFileSchema(): Record<string, unknown> {
  return publishedSchema(cultivarsFileShape, 'Cultivars of a yard');
}
