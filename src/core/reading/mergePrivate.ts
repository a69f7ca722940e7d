/** Puts what stands in the private folder where it would stand in the public files, so that every rule holds for both. */

import type { Cultivar } from '../records/cultivar.ts';
import type { WalkNote } from '../records/walk.ts';
import { normaliseCosts } from '../records/yard.ts';
import { checkReference } from './checks/references.ts';
import type { Draft } from './draft.ts';
import { atCell, atKey, atValue, type KeyPath, type Problem, quote } from './problem.ts';

/** Merges the private keys into the draft, and tells of keys in both places and of records that are not there. */
export function mergePrivate(draft: Draft): Problem[] {
  if (draft.yard?.written.costs) draft.costs = { file: draft.yard.file, written: draft.yard.written.costs };
  return [...mergeYard(draft), ...mergeCultivars(draft), ...mergeLots(draft), ...mergeWalks(draft)];
}

/** `key` stands at `path` in the private file and in the public one as well. */
function twice(file: string, key: string, path: KeyPath, see: NonNullable<Problem['see']>): Problem {
  return {
    rule: 'private-twice',
    file,
    spot: atKey(...path),
    got: key,
    expected: 'the key in one place',
    message: `${quote(key)} is given here and in {see} too`,
    remedy: 'keep one of the two; in a public repository, the one in the private folder.',
    see,
  };
}

function mergeYard(draft: Draft): Problem[] {
  const { yard, privateYard } = draft;
  if (!yard || !privateYard) return [];
  const { file, written } = privateYard;
  const problems = (['costs', 'private_note'] as const)
    .filter(key => written[key] !== undefined && yard.written[key] !== undefined)
    .map(key => twice(file, key, [key], { file: yard.file, path: [key] }));
  if (written.costs && !yard.written.costs) {
    draft.costs = { file, written: written.costs };
    yard.value = { ...yard.value, costs: normaliseCosts(written.costs) };
  }
  return problems;
}

function mergeCultivars({ cultivars, privateCultivars, ids }: Draft): Problem[] {
  const byId = new Map(cultivars.map(entry => [entry.id, entry]));
  return privateCultivars.flatMap(({ file, id, written }) => {
    const found = byId.get(id);
    if (!found) {
      const where = 'A file in private/cultivars/ is named after its cultivar.';
      const spot = { kind: 'file' } as const;
      return checkReference({
        rule: 'private-unknown',
        file,
        spot,
        kind: 'cultivar',
        id,
        known: ids.cultivar,
        where,
      });
    }
    if (written.requests !== undefined && found.written.requests === undefined)
      found.value = { ...found.value, requests: written.requests } satisfies Cultivar;
    return (['requests', 'private_note'] as const)
      .filter(key => written[key] !== undefined && found.written[key] !== undefined)
      .map(key => twice(file, key, [key], { file: found.file, path: [key] }));
  });
}

function mergeLots({ lots, lotPlaces, allLotsKnown, privateLots, ids }: Draft): Problem[] {
  const noted = new Map<string, NonNullable<Problem['see']>>();
  for (const { id, file, index, written } of lots)
    if (written.private_note !== undefined) noted.set(id, { file, path: [index, 'private_note'] });
  const known = new Set([...ids.lot, ...lotPlaces.map(({ id }) => id)]);
  return privateLots.flatMap(({ file, written }) =>
    written.flatMap(({ lot }, index): Problem[] => {
      const see = noted.get(lot);
      noted.set(lot, see ?? { file, path: [index] });
      if (see) return [twice(file, 'private_note', [index, 'private_note'], see)];
      if (known.has(lot) || !allLotsKnown) return [];
      const where = 'Lots are in content/lots/.';
      const spot = atValue(index, 'lot');
      return checkReference({ rule: 'private-unknown', file, spot, kind: 'lot', id: lot, known, where });
    }),
  );
}

/** A lot has one note of a day, in the walk or in the private one; that its lot is there is checked as for every walk. */
function mergeWalks({ walkNotes, privateWalks }: Draft): Problem[] {
  const isPrivate = new Set(privateWalks.map(({ file }) => file));
  const nameOf = ({ day, lot }: WalkNote) => `${day} ${lot}`;
  const noted = new Map(
    walkNotes.filter(({ file }) => !isPrivate.has(file)).map(note => [nameOf(note), note]),
  );
  return walkNotes.flatMap((note): Problem[] => {
    const other = isPrivate.has(note.file) ? noted.get(nameOf(note)) : undefined;
    if (other === undefined) return [];
    return [
      {
        ...twice(note.file, 'note', [], { file: other.file, path: [] }),
        spot: atCell(note.line, 'note'),
        message: `the note of ${quote(note.lot)} is given here and in ${other.file}:${other.line} too`,
      },
    ];
  });
}
