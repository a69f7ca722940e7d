import { ledgerOf, resolve } from '../../addresses/ledger.ts';
import { recordAddress } from '../../addresses/paths.ts';
import type { AddressRow } from '../../records/address.ts';
import type { LinkKind } from '../../records/video.ts';
import { atValue } from '../problem.ts';
import type { Check } from './check.ts';
import { checkReference } from './references.ts';

const where: Record<LinkKind, string> = {
  cultivar: 'Cultivars are in content/cultivars/.',
  lot: 'Lots are in content/lots/.',
  guide: 'Guides are in content/guides/.',
  place: 'Places are in content/places/.',
};

/** What a thing was renamed to, when the address list says so. */
function newName(kind: LinkKind, id: string, rows: readonly AddressRow[], known: ReadonlySet<string>) {
  const end = resolve(ledgerOf(rows), recordAddress(kind, id));
  if (!('to' in end)) return null;
  return [...known].find(other => recordAddress(kind, other) === end.to) ?? null;
}

/** A chapter links to something that exists. */
export const videoLink: Check = ({ videos, ids, allLotsKnown, addresses }) =>
  videos.flatMap(({ file, value }) =>
    value.chapters.flatMap(({ links }, chapter) =>
      links.flatMap(({ kind, id }, link) =>
        kind === 'lot' && !allLotsKnown
          ? []
          : checkReference({
              rule: 'video-link',
              file,
              spot: atValue('chapters', chapter, 'links', link),
              kind,
              id,
              known: ids[kind],
              now: ids[kind].has(id) ? null : newName(kind, id, addresses, ids[kind]),
              where: where[kind],
            }),
      ),
    ),
  );
