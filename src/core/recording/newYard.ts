/**
 * A yard begun anew: its settings, the species it raises, the reference climates and guides that are shipped, and a first lot. Nothing of the
 * demonstration is in it, so no address, no change, no photograph and no temperature of another yard.
 */

import type { Day } from '../days.ts';
import { gather } from '../reading/gather.ts';
import { stem } from '../reading/layout.ts';
import type { Species } from '../records/species.ts';
import { guideFor } from './guideParts.ts';
import { type CultivarRequest, planCultivar } from './newCultivar.ts';
import { type LotRequest, planLot } from './newLot.ts';
import { type YardSettings, yardText } from './newYardText.ts';
import type { FileChange, YardToAddTo } from './openYard.ts';

/** Texts of the records that are shipped, by path. */
export type Shipped = ReadonlyMap<string, string>;

/** Folders whose records hold for any yard. */
const kept = ['places', 'guides'] as const;

const isIn = (path: string, folder: string) => path.startsWith(`${folder}/`);

/** The yard before its first tree. `place` is the one it stands in, where it is not among those shipped. */
export function bareYard(
  shipped: Shipped,
  settings: YardSettings,
  place: FileChange | null,
): { files: FileChange[]; yard: YardToAddTo } {
  const taken = [...shipped].filter(
    ([path]) =>
      kept.some(folder => isIn(path, folder)) ||
      (isIn(path, 'species') && settings.species.includes(stem(path))),
  );
  const files = [
    { path: 'yard.yaml', text: yardText(settings) },
    ...taken
      .filter(([path]) => path !== place?.path)
      .map(([path, text]) => ({
        path,
        text: isIn(path, 'guides') ? guideFor(text, settings.species) : text,
      })),
    ...(place ? [place] : []),
  ];
  const encoder = new TextEncoder();
  const { draft } = gather(
    files.map(({ path, text }) => ({ path, bytes: encoder.encode(text) })),
    { asOf: settings.today as Day, photos: [] },
  );
  if (!draft.yard) throw new RangeError('the settings of the new yard cannot be read');
  return {
    files,
    yard: {
      texts: new Map(files.map(({ path, text }) => [path, text])),
      records: {
        yard: draft.yard.value,
        species: new Map(draft.species.map(({ id, value }) => [id, value])),
        cultivars: new Map(),
        lots: [],
      },
    },
  };
}

/** A bare yard with its first cultivar and a lot of it, or why not. */
export function withFirstTree(
  { files, yard }: ReturnType<typeof bareYard>,
  cultivar: CultivarRequest,
  lot: Omit<LotRequest, 'cultivar'>,
): { files: FileChange[]; said: string } | { refused: string } {
  const tree = planCultivar(yard, cultivar);
  if ('refused' in tree) return tree;
  const id = stem(tree.changes[0]!.path);
  const cultivars = new Map([[id, {} as never]]);
  const first = planLot({ ...yard, records: { ...yard.records, cultivars } }, { ...lot, cultivar: id });
  if ('refused' in first) return first;
  return { files: [...files, ...tree.changes, ...first.changes], said: `${tree.said} ${first.said}` };
}

/** Species among texts that are shipped, for the question which are raised. */
export function shippedSpecies(shipped: Shipped): Pick<Species, 'id' | 'botanical' | 'common'>[] {
  const encoder = new TextEncoder();
  const files = [...shipped]
    .filter(([path]) => isIn(path, 'species'))
    .map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  return gather(files, { asOf: '2026-01-01' as Day, photos: [] }).draft.species.map(({ value }) => value);
}
