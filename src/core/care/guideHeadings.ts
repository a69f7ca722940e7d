/** The named parts of a guide: its headings, and the fragment each has on the page. */

import type { Nodes } from 'mdast';
import { type NamedPart, partOpenedBy } from '../markdown/parts.ts';
import type { Guide } from '../records/guide.ts';
import type { CareYear } from './careYear.ts';
import { conditionOf, knownOfReaders, type ReaderFacts, sightOf } from './guideConditions.ts';
import { hasFreezeAt } from './guideDates.ts';
import { calendarFacts } from './guideFacts.ts';
import { childrenOf, treeOf } from './guideTree.ts';

export type { NamedPart as GuidePart } from '../markdown/parts.ts';

/** The part of every guide's general page that is not in its text: the guide for each place. */
export const placesPart = 'places';

/** Names of the headings of a guide for any reader at all: what is hidden from some has its name all the same. */
export function everyPart(guide: Pick<Guide, 'body'>): Set<string> {
  const parts: NamedPart[] = [];
  const waiting: Nodes[] = [treeOf(guide)];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.type === 'heading') parts.push(partOpenedBy(node, parts));
    else waiting.push(...childrenOf(node).toReversed());
  }
  return new Set(parts.map(({ id }) => id));
}

/** The parts of a guide that a reader meets, in order. Never throws, whatever the text. */
function partsFor(guide: Pick<Guide, 'body'>, reader: ReaderFacts): NamedPart[] {
  const parts: NamedPart[] = [];
  const waiting: Nodes[] = [treeOf(guide)];
  for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
    if (node.type === 'heading') parts.push(partOpenedBy(node, parts));
    else if (
      node.type !== 'containerDirective' ||
      node.name !== 'part' ||
      !sightOf(conditionOf(node.attributes ?? {}), reader).hidden
    ) {
      waiting.push(...childrenOf(node).toReversed());
    }
  }
  return parts;
}

/** The parts of a guide as its general page has them, in order. Never throws, whatever the text. */
export function guideParts(guide: Pick<Guide, 'species' | 'forms' | 'body'>): NamedPart[] {
  return partsFor(guide, {
    placeClass: null,
    calendar: null,
    hasFreeze: null,
    stage: null,
    kept: null,
    ...knownOfReaders(guide),
  });
}

/** The parts of a guide as its page for a place has them, by the care year of its leading species there. */
export function guidePartsAt(guide: Pick<Guide, 'species' | 'forms' | 'body'>, year: CareYear): NamedPart[] {
  return partsFor(guide, {
    placeClass: year.placeClass,
    calendar: calendarFacts(year),
    hasFreeze: level => hasFreezeAt(year, level),
    stage: null,
    kept: null,
    ...knownOfReaders(guide),
    species: year.species.id,
  });
}
