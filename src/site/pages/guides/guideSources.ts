/** The sources of the sheets of guides, from the catalogue. */

import { recordAddress, recordOf } from '../../../core/addresses/paths.ts';
import type { Catalogue } from '../../../core/catalogue.ts';
import type { Guide } from '../../../core/records/guide.ts';
import type { Place } from '../../../core/records/place.ts';
import { guideText } from '../../../markdown/guideParts.ts';
import { hasNoTrees } from '../../../markdown/guideText.ts';
import { memoize } from '../../memo.ts';
import { whereabouts } from '../places/place.ts';
import { leadingFirst, leadingSpecies } from './guideSubject.ts';
import { oldNamesOf } from './guideViews.ts';
import { quotedFigures } from './quotedFigures.ts';
import type { SheetPlace, SheetSource } from './sheetSource.ts';

type Link = (path: string) => string;

/** The id a record was first published with: a calendar that knows an event by it does not take it for a new one after a rename. */
export function firstId(
  { firstAddresses }: Pick<Catalogue, 'firstAddresses'>,
  kind: 'guide' | 'place',
  id: string,
): string {
  const first = firstAddresses.get(recordAddress(kind, id));
  return (first === undefined ? null : recordOf(first)?.id) ?? id;
}

type Rest = Omit<SheetSource, 'text'>;

function restOf(all: Catalogue, guide: Guide): Rest | null {
  const leading = leadingSpecies(all, guide);
  if (leading === null) return null;
  const { id, title, kind, species, forms } = guide;
  return {
    guide: { id, title, kind, species, forms },
    oldNames: [...oldNamesOf(all, guide).here],
    figures: quotedFigures(guide),
    yardSpecies: leadingFirst(all.species, leading),
    asOf: all.asOf,
    firstId: firstId(all, 'guide', id),
    namingHost: all.namingHost,
  };
}

/** A guide has a page for every place. */
const keptRests = memoize((_all: Catalogue) => new Map<Guide, Rest | null>());

/** Null in a yard without species, where no guide has dates. */
export function sheetSource(all: Catalogue, guide: Guide, link: Link): SheetSource | null {
  const kept = keptRests(all);
  if (!kept.has(guide)) kept.set(guide, restOf(all, guide));
  const rest = kept.get(guide) ?? null;
  return rest && { ...rest, text: guideText(guide, link) };
}

/** The same for a browser; null too for a guide whose text no browser can write, since its parts speak of each other. */
export function sentSource(all: Catalogue, guide: Guide, link: Link): SheetSource | null {
  const source = sheetSource(all, guide, link);
  return source !== null && hasNoTrees(source.text) ? source : null;
}

/** A reference place as its sheets have it. */
export function sheetPlace(place: Place): SheetPlace {
  const { id, name, country } = place;
  return { id, name, where: whereabouts(place), country, hasPage: true };
}
